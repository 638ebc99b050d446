// Package drawing is the second waist: a picture as one list in painter's order, in
// millimetres, y up. Writers turn it into SVG, PDF or a GPU scene.
package drawing

// A Drawing is a picture. Items later in the list lie on top.
type Drawing struct {
	Title string
	Lang  string  // BCP 47 tag of its words; empty: not said
	Box   Box     // what is shown
	Paper bool    // a millimetre of the drawing is one of paper: it is at its scale already
	Pixel float64 // mm of the drawing that are to be about a pixel of the screen; 0: 1
	Items []Item
}

// A Box is a rectangle, in millimetres.
type Box struct{ MinX, MinY, MaxX, MaxY float64 }

// A Point is a place, in millimetres, y up.
type Point struct{ X, Y float64 }

// An Item is one thing in a picture. Which of Path, Wood, Text and Glow is in use is
// said by Kind.
type Item struct {
	ID    string // stable: what it shows, such as "m1.2/front"; empty for decoration
	Group string // the thing it belongs to ("m1", "w1", "dim"): items of a group move together
	Layer Layer
	Kind  Kind
	Tone  Tone    // of the fill of a path, the ink of a text
	Fade  float64 // 0 as it is … 1 not to be seen
	Soft  float64 // edges blurred over so many millimetres; a writer that cannot blur leaves it out
	Line  Line    // outline
	Path  []Step
	Wood  Wood
	Text  Text
	Glow  Glow
}

// A Layer groups items that are shown or hidden together.
type Layer string

// Layers of the wall picture, bottom up.
const (
	LayerWall   Layer = "wall"   // wall, floor, ceiling
	LayerBehind Layer = "behind" // studs, expected cables
	LayerRoom   Layer = "room"   // obstacles
	LayerShadow Layer = "shadow"
	LayerBoards Layer = "boards"
	LayerLight  Layer = "light"
	LayerMarks  Layer = "marks" // bracket points
	LayerSizes  Layer = "sizes" // dimensions
)

// A Kind says what an item is.
type Kind uint8

// The kinds.
const (
	PathKind Kind = iota + 1
	WoodKind
	TextKind
	GlowKind
)

// A Tone is a named colour of the look, such as "wall", "ink", "chalk", "warn". Empty
// is no fill. Writers own the table of tones.
type Tone string

// A Line is how an outline is drawn. Width zero draws none.
type Line struct {
	Tone  Tone
	Width float64
	MM    bool      // width in millimetres of the drawing; else in pixels, whatever the zoom
	Dash  []float64 // in the unit of Width
	Round bool      // round caps and joins
}

// A Step is one step of a path.
type Step struct {
	To     byte // 'M', 'L', 'C' (P1, P2 are the controls), 'Z'
	P      Point
	P1, P2 Point
}

// Wood fills Path with the wood of a species. The plank's own coordinates are
// (along, across) in millimetres; Origin is where plank (WindowAlong, WindowAcross)
// lies in the picture, Along is the picture's direction of the grain.
type Wood struct {
	Species                   string
	Seed                      uint64 // of the plank: same seed, same figure
	Origin                    Point
	Along                     Point // unit vector, or shorter where the face is foreshortened along the grain
	Across                    Point // likewise across
	WindowAlong, WindowAcross float64
	End                       bool    // end grain: along is then across the width, across through the thickness
	Edge                      bool    // edge grain: near-straight lines
	Shade                     float64 // −1 black … 0 as it is … +1 white
}

// Text is one line of text.
type Text struct {
	At     Point
	Size   float64 // mm
	String string
	Anchor Anchor
	Turn   float64 // degrees, counter-clockwise
	Figure bool    // set in the face for figures
	Bold   bool
	Slant  bool // said by hand, not measured
	Halo   Tone // painted round the letters; empty: none
}

// An Anchor says which point of a text At is.
type Anchor uint8

// The anchors, on the baseline.
const (
	AnchorMiddle Anchor = iota
	AnchorStart
	AnchorEnd
)

// Glow is the wash of light that a strip throws on what is behind it: strongest along
// the line From–To, fading out over Reach in the direction Toward.
type Glow struct {
	From, To Point
	Reach    float64 // mm
	Cut      float64 // it is stopped so far from the line, by a board; zero: nothing stops it
	Toward   Point   // unit vector; zero: down
	Before   float64 // how far it spreads past From, mm
	After    float64 // and past To
	Kelvin   float64 // colour of the light; zero: 2 700
}
