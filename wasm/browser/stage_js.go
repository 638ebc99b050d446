package browser

import (
	"strconv"
	"syscall/js"

	"ledgewright/engine/drawing"
	"ledgewright/wasm/panel"
)

// stagePage is the stage's document, beside the page's.
const stagePage = "stage.html"

// A View is how a drawing is seen: pixels of the page for a millimetre, where (0, 0) of
// the drawing is in the stage's own window, and the theme.
type View = panel.View

// A Stage paints drawings with the graphics processor, in a frame of its own below
// the rest of the page's picture. All calls to it are here, each in a recover: a stage that has died throws.
type Stage struct {
	glass   glass
	place   js.Value         // the frame is put into it
	frame   js.Value         // undefined where there is none
	changed func(shown bool) // is told when the stage takes the picture's place, and when it gives it back

	pack   drawing.Packer
	bytes  []byte   // of the drawing
	over   []byte   // of the one over it
	array  js.Value // of the page, whose buffer the stage reads
	room   int      // of array
	view   View
	times  []float64
	shown  bool
	facts  *Facts           // of the machine, once it was asked
	events [3]js.Func       // load of the frame; pagehide and resize of its document
	plain  string           // what was told last
	told   func(why string) // is told why the SVG is shown, whenever that is another reason
}

// NewStage readies a stage that comes into the place when it is chosen. Until it says so
// by changed, in the browser's own time, the page shows the SVG.
func NewStage(place js.Value, changed func(shown bool)) *Stage {
	s := &Stage{glass: newGlass(), pack: drawing.Packer{Bare: true}, place: place, frame: js.Undefined(), array: js.Undefined(), changed: changed}
	s.told = func(string) {}
	s.events = [3]js.Func{
		s.heard(func([]js.Value) { s.loaded() }),
		s.heard(func([]js.Value) { s.gone() }),
		s.heard(func([]js.Value) { s.sized() }),
	}
	window := js.Global()
	window.Set("stageReady", s.heard(func(args []js.Value) {
		if s.mine(args[0]) {
			s.listen()
			s.send()
			s.do(s.glass.ready())
		}
	}))
	window.Set("stageGone", s.heard(func(args []js.Value) {
		if s.mine(args[0]) {
			s.do(s.glass.died(args[1].String()))
		}
	}))
	return s
}

// Choose takes what the maker wants, once the page is usable and whenever it changes.
func (s *Stage) Choose(want Want) {
	if want == WantAny && s.facts == nil {
		f := machine()
		s.facts = &f
	}
	facts := Facts{}
	if s.facts != nil {
		facts = *s.facts
	}
	s.do(s.glass.choose(want, facts))
}

// Stand puts the stage into a place, as the maker wants it; no place is undefined. A
// frame that is moved loads anew, and one that was given up stays so until the maker
// wants something else.
func (s *Stage) Stand(place js.Value, want Want) {
	moved := !place.Equal(s.place)
	if moved {
		s.do(s.glass.leave())
		s.place = place
	}
	if place.IsUndefined() || want == s.glass.want && (!moved || s.glass.phase == glassGivenUp) {
		return
	}
	s.Choose(want)
}

// Awake reports whether there is a stage, or one is coming: whether a drawing is of use
// to it.
func (s *Stage) Awake() bool { return s.glass.up() }

// Shown reports whether the stage stands in the picture's place.
func (s *Stage) Shown() bool { return s.shown }

// Why returns why the stage was given up, for the console; empty while it is not.
func (s *Stage) Why() string { return s.glass.why }

// Draw shows a drawing, before it returns. While there is no stage it only keeps it.
func (s *Stage) Draw(d *drawing.Drawing, v View) {
	s.bytes, s.over, s.view = s.pack.Append(s.bytes[:0], d), s.over[:0], v
	if s.up() {
		s.send()
		s.draw()
	}
}

// Carry is Draw for a drawing with another over it, which is in the hand. Where the lower
// one is the same as before it is nil.
func (s *Stage) Carry(under, over *drawing.Drawing, v View) {
	if under != nil {
		s.bytes = s.pack.Append(s.bytes[:0], under)
	}
	s.over, s.view = s.pack.Append(s.over[:0], over), v
	switch {
	case !s.up():
		return
	case under != nil:
		s.send()
	default:
		s.give("stageOver", s.over)
		s.tellView()
	}
	s.draw()
}

// Look shows the same drawing in another view.
func (s *Stage) Look(v View) {
	s.view = v
	if s.up() {
		s.tellView()
		s.draw()
	}
}

// up reports whether there is a stage that can be spoken to.
func (s *Stage) up() bool { return s.glass.phase == glassTrial || s.glass.phase == glassShown }

// send hands over drawings and view.
func (s *Stage) send() {
	s.give("stageDrawing", s.bytes)
	s.give("stageOver", s.over)
	s.tellView()
}

// give hands over a drawing, if there is one.
func (s *Stage) give(name string, bytes []byte) {
	if len(bytes) == 0 {
		return
	}
	if s.room < len(bytes) {
		s.room = len(bytes) * 5 / 4
		s.array = js.Global().Get("Uint8Array").New(s.room)
	}
	js.CopyBytesToJS(s.array, bytes)
	if wrong := s.call(name, s.array.Get("buffer"), len(bytes)); wrong.Type() == js.TypeString && wrong.String() != "" {
		s.do(s.glass.died(wrong.String()))
	}
}

func (s *Stage) tellView() { s.call("stageView", s.view.Scale, s.view.X, s.view.Y, s.view.Evening) }

func (s *Stage) draw() { s.call("stageFrame") }

// call calls the stage. One that throws has died.
func (s *Stage) call(name string, args ...any) (v js.Value) {
	defer s.guard()
	if s.frame.IsUndefined() {
		return js.Undefined()
	}
	return s.frame.Get("contentWindow").Call(name, args...)
}

// guard is deferred around everything that touches the stage.
func (s *Stage) guard() {
	if r := recover(); r != nil {
		s.do(s.glass.died(recovered(r)))
	}
}

// heard makes a function for the browser to call, that cannot end the page.
func (s *Stage) heard(do func(args []js.Value)) js.Func {
	return js.FuncOf(func(_ js.Value, args []js.Value) any {
		defer s.guard()
		do(args)
		return nil
	})
}

// do carries out what the glass decides.
func (s *Stage) do(acts []glassAct) {
	for _, a := range acts {
		switch a {
		case glassLoad:
			s.load()
		case glassClear:
			s.clear()
		case glassShow:
			s.draw()
			if s.glass.phase == glassShown { // it did not die of that
				s.show(true)
			}
		case glassHide:
			s.show(false)
		case glassTry:
			s.times = s.times[:0]
			s.trial()
		}
	}
	if plain := s.glass.plain(); plain != s.plain {
		s.plain = plain
		s.told(plain)
	}
}

// load puts the frame into the page. It is inert: keys, pointers and what reads the page
// aloud pass by; and hidden by visibility, since one without size draws nothing.
func (s *Stage) load() {
	f := js.Global().Get("document").Call("createElement", "iframe")
	f.Set("className", "stage")
	f.Call("setAttribute", "inert", "")
	f.Call("setAttribute", "title", "")
	f.Get("style").Set("visibility", "hidden")
	f.Call("addEventListener", "load", s.events[0])
	f.Set("src", stagePage+"?pixels="+strconv.FormatFloat(s.glass.pixels, 'f', -1, 64))
	s.frame = f
	s.place.Call("append", f)
}

func (s *Stage) clear() {
	if !s.frame.IsUndefined() {
		f := s.frame
		s.frame = js.Undefined()
		f.Call("remove")
	}
}

func (s *Stage) show(on bool) {
	if s.shown == on {
		return
	}
	s.shown = on
	if !s.frame.IsUndefined() {
		s.frame.Get("style").Set("visibility", map[bool]string{true: "visible", false: "hidden"}[on])
	}
	s.changed(on)
}

// mine reports whether a window is that of the present frame.
func (s *Stage) mine(w js.Value) bool {
	return !s.frame.IsUndefined() && s.frame.Get("contentWindow").Equal(w)
}

// loaded is the end of loading the stage's document, whichever it is: one without the
// loader's function is an error page.
func (s *Stage) loaded() {
	if s.frame.IsUndefined() {
		return
	}
	if s.frame.Get("contentWindow").Get("stageFrame").Type() != js.TypeFunction {
		s.do(s.glass.died("it could not be loaded"))
		return
	}
	s.listen()
}

// listen waits for the end of the present document; to do so twice is to do so once.
func (s *Stage) listen() {
	s.frame.Get("contentWindow").Call("addEventListener", "pagehide", s.events[1])
	s.frame.Get("contentWindow").Call("addEventListener", "resize", s.events[2])
}

// sized draws again in another size, or after a time in which there was no room for it.
func (s *Stage) sized() {
	if s.up() {
		s.draw()
	}
}

// gone is the end of the stage's document: it loads again by itself.
func (s *Stage) gone() {
	if !s.frame.IsUndefined() {
		s.do(s.glass.hidden(s.frame.Get("contentWindow").Get("stageLost").Truthy(), js.Global().Get("performance").Call("now").Float()))
	}
}

// trial measures one frame after the other, when the browser has nothing else to do.
func (s *Stage) trial() {
	var once js.Func
	once = s.heard(func([]js.Value) {
		once.Release()
		if s.glass.phase != glassTrial {
			return
		}
		if t := s.call("stageTimed"); t.Type() == js.TypeNumber {
			s.times = append(s.times, t.Float())
		}
		if len(s.times) < trialFrames {
			s.trial()
			return
		}
		s.do(s.glass.measured(s.times, s.call("stagePixels").Float()))
	})
	if idle := js.Global().Get("requestIdleCallback"); idle.Type() == js.TypeFunction {
		idle.Invoke(once)
		return
	}
	js.Global().Call("setTimeout", once, 50)
}

// machine asks the browser what it paints with.
func machine() (f Facts) {
	defer func() { _ = recover() }() // what cannot be asked is not there
	window := js.Global()
	if c := window.Get("navigator").Get("connection"); c.Truthy() {
		f.SaveData = c.Get("saveData").Truthy()
	}
	options := window.Get("Object").New()
	options.Set("failIfMajorPerformanceCaveat", true)
	gl := window.Get("document").Call("createElement", "canvas").Call("getContext", "webgl2", options)
	if !gl.Truthy() {
		return f
	}
	f.WebGL = true
	name := gl.Get("RENDERER")
	if e := gl.Call("getExtension", "WEBGL_debug_renderer_info"); e.Truthy() {
		name = e.Get("UNMASKED_RENDERER_WEBGL")
	}
	f.Renderer = gl.Call("getParameter", name).String()
	if e := gl.Call("getExtension", "WEBGL_lose_context"); e.Truthy() {
		e.Call("loseContext") // a browser has few of them
	}
	return f
}
