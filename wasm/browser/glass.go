package browser

import (
	"slices"
	"strings"
)

// The stage is a pane of glass below the page's figures: a program of its own that may
// be too slow for a machine, lose the graphics processor, or die. A glass decides, from
// what the browser tells, when it is loaded and when it is shown. Wherever it is not
// shown the SVG is, at once; nothing else of the page changes.
//
//	away ──chosen──► loading ──ready──► on trial ──fast──► shown
//	                    ▲                  │ slow: once more with fewer pixels, then given up
//	                    └──context lost────┴── shown (twice in ten minutes: given up)
//
// It never comes back by itself once it is given up; the maker may choose it again.

// A Want is what the maker, or the address, wants the picture painted by.
type Want string

// The wants. Without one it is measured.
const (
	WantAny   Want = ""
	WantStage Want = "stage"
	WantSVG   Want = "svg"
)

// Facts are what can be known of a machine before the stage is fetched.
type Facts struct {
	WebGL    bool   // WebGL 2, without a major performance caveat
	Renderer string // what paints
	SaveData bool   // the maker has asked for little traffic
}

// unfit returns why the stage is not worth fetching, empty where it is.
func (f Facts) unfit() string {
	switch {
	case f.SaveData:
		return "saving"
	case !f.WebGL:
		return "none"
	case software(f.Renderer):
		return "software"
	}
	return ""
}

// software reports whether a renderer's name is that of one without a graphics processor.
func software(renderer string) bool {
	r := strings.ToLower(renderer)
	for _, name := range []string{"swiftshader", "llvmpipe", "softpipe", "software", "basic render", "paravirtual"} {
		if strings.Contains(r, name) {
			return true
		}
	}
	return false
}

// A phase is how far a glass has come.
type phase uint8

const (
	glassAway phase = iota
	glassLoading
	glassTrial
	glassShown
	glassGivenUp
)

// A glassAct is something that is to be done.
type glassAct uint8

const (
	glassLoad  glassAct = iota + 1 // put the stage into the document, with at most so many pixels
	glassClear                     // take it out
	glassShow                      // show it in place of the SVG
	glassHide                      // show the SVG
	glassTry                       // measure its frames
)

// Limits of what is shown.
const (
	manyPixels = 2.0
	fewPixels  = 1.5

	slowFrame   = 14.0           // ms: with two for the browser, a frame of 60 in a second
	trialFrames = 8              // the median of so many counts
	lossSpan    = 10 * 60 * 1000 // ms in which two losses are one too many
)

// A glass is the stage as the page knows it.
type glass struct {
	phase  phase
	want   Want
	pixels float64 // the most for one of the page's
	lost   float64 // when the context was lost last; below 0: never
	why    string  // it was given up
	unfit  string  // why it was not even fetched
}

func newGlass() glass { return glass{pixels: manyPixels, lost: -1} }

// choose takes what the maker wants. A glass that was given up gets a new try.
func (g *glass) choose(want Want, f Facts) []glassAct {
	up := g.up()
	g.want, g.why, g.unfit = want, "", ""
	if want == WantAny {
		g.unfit = f.unfit()
	}
	if want != WantSVG && g.unfit == "" {
		if up {
			return nil
		}
		*g = glass{phase: glassLoading, want: want, pixels: manyPixels, lost: -1}
		return []glassAct{glassLoad}
	}
	g.phase = glassAway
	if !up {
		return nil
	}
	return []glassAct{glassHide, glassClear}
}

// leave takes that there is no place for the stage any more, until one is chosen for again.
func (g *glass) leave() []glassAct {
	if !g.up() {
		return nil
	}
	g.phase = glassAway
	return []glassAct{glassHide, glassClear}
}

// up reports whether there is a stage, or one is coming.
func (g *glass) up() bool {
	return g.phase == glassLoading || g.phase == glassTrial || g.phase == glassShown
}

// plain is why the SVG is shown, as the page has words for it; empty where the maker
// wants it.
func (g *glass) plain() string {
	switch {
	case g.phase == glassLoading || g.phase == glassTrial:
		return "coming"
	case g.phase != glassGivenUp:
		return g.unfit
	case g.why == gaveSlow:
		return "slow"
	case g.why == gaveLost:
		return "lost"
	}
	return "ended"
}

// Why a glass is given up, of itself.
const (
	gaveSlow = "slow"
	gaveLost = "lost twice"
)

// ready takes that the stage has started, at first or again.
func (g *glass) ready() []glassAct {
	if g.phase != glassLoading {
		return nil
	}
	if g.want == WantStage || g.lost >= 0 { // asked for, or it has passed its trial before
		g.phase = glassShown
		return []glassAct{glassShow}
	}
	g.phase = glassTrial
	return []glassAct{glassTry}
}

// measured takes the times of its first frames, in ms, at so many pixels.
func (g *glass) measured(frames []float64, pixels float64) []glassAct {
	if g.phase != glassTrial || len(frames) == 0 {
		return nil
	}
	slices.Sort(frames)
	if g.want == WantStage || frames[len(frames)/2] <= slowFrame { // it may have been asked for meanwhile
		g.phase = glassShown
		return []glassAct{glassShow}
	}
	if pixels > fewPixels {
		g.phase, g.pixels = glassLoading, fewPixels
		return []glassAct{glassClear, glassLoad}
	}
	return g.giveUp(gaveSlow)
}

// hidden takes that the stage's document has gone and will come again, at a time in ms:
// with its context lost, or as the screen has other pixels now.
func (g *glass) hidden(lost bool, now float64) []glassAct {
	if g.phase != glassTrial && g.phase != glassShown && !(lost && g.phase == glassLoading) {
		return nil
	}
	if lost && g.lost >= 0 && now-g.lost < lossSpan {
		return g.giveUp(gaveLost)
	}
	if lost {
		g.lost = now
	}
	g.phase = glassLoading
	return []glassAct{glassHide}
}

// died takes that the stage has ended, or would not start.
func (g *glass) died(why string) []glassAct {
	if g.phase == glassAway || g.phase == glassGivenUp {
		return nil
	}
	return g.giveUp(why)
}

func (g *glass) giveUp(why string) []glassAct {
	g.phase, g.why = glassGivenUp, why
	return []glassAct{glassHide, glassClear}
}
