package panel

import (
	"math"
	"strings"

	"ledgewright/engine/board"
	"ledgewright/engine/drawing"
	engpart "ledgewright/engine/part"
	"ledgewright/engine/unit"
	"ledgewright/engine/view"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// pixelsPerMM is the scale at which drawings on paper are shown: their smallest letters,
// 3.4 mm high, are then over 12 px. At the bench they are larger.
const (
	pixelsPerMM = 3.6
	benchLarger = 1.5
)

// Widths that a board's drawing may take, in mm of paper: what fits the picture, but no
// less than figures need.
const (
	leastSheet = 150
	mostSheet  = 277
)

// besideDrawing is what stands left and right of a drawing in the place of the wall, px:
// twice the padding of 22 in page.css, and the frame.
const besideDrawing = 46

// drawn returns a drawing as one picture with a name, in a box of its own that scrolls.
func drawn(s *app.State, key, name string, d drawing.Drawing) Node {
	o := drawing.SVGOptions{Scale: pixelsPerMM, Prefix: key + "-", Woods: view.Woods(), Grain: 2}
	if s.On[app.Bench] {
		o.Scale *= benchLarger
	}
	if evening(s) {
		o.Theme = drawing.Evening
	}
	sink := nodeSink{}
	drawing.WriteSVG(d, o, &sink)
	root := anonymous(sink.root, false)
	root.Kids = withoutTitle(root.Kids)
	var attrs []Attr
	for _, a := range root.Attrs {
		if a.Name == "width" || a.Name == "height" || a.Name == "viewBox" || a.Name == "font-family" {
			attrs = append(attrs, a)
		}
	}
	root.Attrs = append(attrs, Attr{"role", "img"}, Attr{"aria-label", name})
	return el("div", key, class("scroll drawing"), attr("tabindex=0"), attr("role=region"), at("aria-label", name), root)
}

// anonymous takes keys and ids from a picture that is drawn anew as a whole; what is
// defined for others to point at keeps its id.
func anonymous(n Node, defined bool) Node {
	n.Key = ""
	defined = defined || n.Tag == "defs"
	if !defined {
		var attrs []Attr
		for _, a := range n.Attrs {
			if a.Name != "id" {
				attrs = append(attrs, a)
			}
		}
		n.Attrs = attrs
	}
	of := make([]Node, len(n.Kids))
	for i, k := range n.Kids {
		of[i] = anonymous(k, defined)
	}
	n.Kids = of
	return n
}

// partAt is the part at hand: its figures and every cut.
func partAt(s *app.State) Node {
	p, b := partBoard(s)
	return section("part", partTitle(s, p), partSays(s, p), pairs("part-sizes", partPairs(s, p, b)...), cutTable(s, b))
}

// partDrawn is the drawing of the part at hand.
func partDrawn(s *app.State) Node {
	p, b := partBoard(s)
	return el("section", "part-drawn", at("aria-label", partTitle(s, p)),
		el("p", "title", class("b"), said(partTitle(s, p))), boardDrawing(s, p, b))
}

// partBoard is the part at hand, and the first of its boards.
func partBoard(s *app.State) (engpart.Part, board.Board) {
	p := s.Build.Parts.Parts[partInHand(s)]
	m, _ := moduleOfBoard(s, p.Boards[0])
	b, _ := boardOf(m, p.Boards[0])
	return p, b
}

func partTitle(s *app.State, p engpart.Part) string {
	return say(s, "make.part", words.Count("n", p.Number), words.Name("name", p.Name))
}

// partSays says how many there are, for which boards, and what the part is not.
func partSays(s *app.State, p engpart.Part) part {
	var boards []string
	for _, id := range p.Boards {
		boards = append(boards, boardName(s, id))
	}
	return parts{
		el("p", "for", said(say(s, "make.pieces", words.Count("n", p.Quantity), words.Name("boards", strings.Join(boards, ", "))))),
		when(p.MirrorOf > 0, el("p", "twin", class("b"), said(twin(s, p)))),
	}
}

// partPairs are the sizes of a part, ends and edges.
func partPairs(s *app.State, p engpart.Part, b board.Board) []pair {
	style := s.Plan.Style()
	out := []pair{{lengthName(s, p), style.WithUnit(p.Overall)}}
	if p.Inside != p.Overall {
		out = append(out, pair{insideName(s, b), style.WithUnit(p.Inside)})
	}
	out = append(out,
		pair{term(s, "make.width"), style.WithUnit(p.Width)}, pair{term(s, "make.thickness"), style.WithUnit(p.Thickness)},
		pair{term(s, "make.left-end"), say(s, p.Start)}, pair{term(s, "make.right-end"), say(s, p.End)},
		pair{term(s, "make.wood"), woodName(p.Wood)})
	if len(p.Edges) > 0 {
		out = append(out, pair{term(s, "make.col-edges"), edgesOf(s, p)})
	}
	return out
}

func lengthName(s *app.State, p engpart.Part) string {
	if p.Inside == p.Overall {
		return term(s, "make.length")
	}
	return term(s, "make.overall")
}

func insideName(s *app.State, b board.Board) string {
	if b.Role == board.Divider {
		return term(s, "make.seen")
	}
	return term(s, "make.inside")
}

func boardDrawing(s *app.State, p engpart.Part, b board.Board) Node {
	scale := pixelsPerMM
	if s.On[app.Bench] {
		scale *= benchLarger
	}
	o := view.Options{Style: s.Plan.Style(), Sheet: mostSheet}
	if s.Size.Width > 0 {
		o.Sheet = min(max((s.Size.Width-besideDrawing)/scale, leastSheet), mostSheet)
	}
	name := say(s, "make.drawing", words.Count("n", p.Number), words.Name("board", boardName(s, b.ID)))
	o.Names = []string{capital(boardName(s, b.ID))}
	return drawn(s, "drawing", name, view.Board(b, o))
}

// cutTable lists every cut of a board but its ends, each from edges that exist when it is
// made.
func cutTable(s *app.State, b board.Board) Node {
	var rows []row
	var arrises kids
	for i, f := range b.Features {
		switch f.Kind {
		case board.EndCut:
		case board.Chamfer, board.RoundOver:
			arrises.add(note("arris-"+numeral(i), capital(arris(s, f))))
		default:
			cells := append(cutCells(s, b, f), part(text(cause(s, b, f.Cause))))
			rows = append(rows, row{key: "cut-" + numeral(i), cells: cells})
		}
	}
	if rows == nil {
		return el("div", "cuts", note("no-cuts", say(s, "make.no-cuts", words.Name("board", boardName(s, b.ID)))), arrises)
	}
	columns := append(cutColumns(), column{title: "make.col-for", area: pairArea, words: true})
	return el("div", "cuts", table(s, "cut-table", perUnit(s, "make.cuts", words.Name("board", boardName(s, b.ID))), columns, rows), arrises)
}

func arris(s *app.State, f board.Feature) string {
	return say(s, "view.cut."+string(f.Kind), words.Word("arris", "view.arris."+f.Arris), words.Name("size", s.Plan.Style().Length(f.Size)))
}

func cause(s *app.State, b board.Board, c board.Cause) string {
	m, _ := moduleOfBoard(s, b.ID)
	return say(s, "make.for-"+c.What, words.Name("id", numberIn(s, m.ID, c.What, c.ID)))
}

func cutColumns() []column {
	return []column{
		{title: "make.col-cut", area: "cut", words: true}, {title: "make.col-along", area: pairArea, words: true},
		{title: "make.col-across", area: pairArea, words: true}, {title: "make.col-mouth", area: pairArea}, {title: "make.col-deep", area: pairArea, right: true},
	}
}

// cutCells are what a cut is, where it is along and across, its mouth and its depth.
func cutCells(s *app.State, b board.Board, f board.Feature) []part {
	style := s.Plan.Style()
	size := say(s, "make.mouth", words.Name("along", style.Length(f.Along)), words.Name("across", style.Length(f.Across)))
	deep := style.Length(f.Depth)
	if f.Diameter > 0 {
		size = say(s, "make.round", words.Name("diameter", style.Length(f.Diameter)))
		if f.Through {
			deep = term(s, "make.right-through")
		}
	}
	along, across := placesOf(s, b, f)
	return []part{said(capital(cutName(s, f))), said(along), said(across), fractions(size), fractions(deep)}
}

func cutName(s *app.State, f board.Feature) string {
	what := "cut." + string(f.Kind)
	if f.Diameter > 0 {
		what = "cut.bore"
	}
	cut := words.Word("cut", what)
	if f.Tilt != 0 && f.Enter != board.Start && f.Enter != board.End {
		cut = words.Name("cut", say(s, "make.cut-tilted", cut, words.Angle("tilt", f.Tilt)))
	}
	side := words.Word("side", "view.side."+strings.ToLower(string(f.Enter)))
	if f.After == board.OnBlank {
		return say(s, "make.cut", cut, side)
	}
	return say(s, "make.cut-after", cut, side, words.Word("after", "view.cut.after."+string(f.After)))
}

// placesOf says where a cut is. On faces and long edges: along the board from the left
// end, and across it from the back edge or face A. In an end: along its surface from the
// heel, as the drawing has it, and from the back edge.
func placesOf(s *app.State, b board.Board, f board.Feature) (along, across string) {
	long, wide := f.Along, f.Across
	if f.Diameter > 0 {
		long, wide = 0, 0
	}
	switch f.Enter {
	case board.Start, board.End:
		h := heelOf(b, f.Enter)
		return h.place(s, f, wide), place(s, "back", f.Mouth.V, long, b.Width)
	case board.Back, board.Front:
		return lengthways(s, b, f, long), place(s, "face", f.Mouth.W, wide, b.Thickness)
	}
	return lengthways(s, b, f, long), place(s, "back", f.Mouth.V, wide, b.Width)
}

// lengthways is a place along a board. A groove that runs out at both ends runs its whole
// length.
func lengthways(s *app.State, b board.Board, f board.Feature, long unit.Length) string {
	if f.Kind == board.Groove && f.Through {
		return term(s, "make.all-left")
	}
	return place(s, "left", f.Mouth.U, long, b.Length)
}

// place says where a cut of a size lies on a measure that goes from 0 to most: its middle,
// where it is round and has no size, else where it begins and ends.
func place(s *app.State, from string, middle, size, most unit.Length, args ...words.Arg) string {
	style := s.Plan.Style()
	low, high := max(middle-size/2, 0), min(middle+size-size/2, most)
	switch {
	case size == 0:
		return say(s, "make.at-"+from, append(args, words.Name("at", style.Length(middle)))...)
	case low <= unit.Touch && high >= most-unit.Touch:
		return say(s, "make.all-"+from, args...)
	}
	return say(s, "make.span-"+from, append(args, words.Name("from", style.Length(low)), words.Name("to", style.Length(high)))...)
}

// A heel is where the figures along an end's surface begin: the arris on the face that is
// shorter there, face A where both are as long.
type heel struct {
	u, w   float64 // mm
	du, dw float64 // unit vector along the surface
	face   board.Face
	size   unit.Length // of the surface
}

func heelOf(b board.Board, end board.Face) heel {
	cut, last := b.Ends()
	aIsShort := cut.AtA >= cut.AtB
	if end == board.End {
		cut = last
		aIsShort = cut.AtA <= cut.AtB
	}
	t, lead := b.Thickness.MM(), (cut.AtB - cut.AtA).MM()
	size := math.Hypot(lead, t)
	h := heel{u: cut.AtA.MM(), du: lead / size, dw: t / size, face: board.FaceA, size: unit.Nearest(size)}
	if !aIsShort {
		h.u, h.w, h.du, h.dw, h.face = cut.AtB.MM(), t, -h.du, -h.dw, board.FaceB
	}
	return h
}

// place says where a cut lies on the surface.
func (h heel) place(s *app.State, f board.Feature, size unit.Length) string {
	middle := (f.Mouth.U.MM()-h.u)*h.du + (f.Mouth.W.MM()-h.w)*h.dw
	return place(s, "heel", unit.Nearest(middle), size, h.size, words.Name("face", string(h.face)))
}
