package browser

import (
	"strconv"
	"strings"
	"syscall/js"

	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
	"ledgewright/wasm/hand"
	"ledgewright/wasm/panel"
)

// A window is the browser's window with the page in it.
type window struct {
	js.Value
	doc   *document
	place js.Value // where the page stands
	loop  *Loop
	frame js.Func
	turn  js.Func
	begun bool // the first page is in the document
	dead  bool

	hand   pointers
	store  store
	files  files
	polite speaker
	urgent speaker
	timers map[string]js.Value
	idle   bool // an idle call is asked for
	told   map[string]string
	hash   address
	pane   pane
}

// Run shows the page and answers to what happens, for ever.
func Run(step func(app.State, app.Event) (app.State, []app.Effect), page func(app.State, int) (panel.Node, bool), sight func() panel.Sight) {
	w := &window{Value: js.Global(), doc: newDocument(), timers: map[string]js.Value{}, told: map[string]string{}}
	w.place = w.doc.Call("getElementById", "page")
	w.loop = &Loop{Step: step, Page: page, Tree: NewTree(w.doc, &element{w.doc, w.place}), Out: w}
	w.frame = w.callback(func([]js.Value) { w.show() })
	w.turn = w.callback(func([]js.Value) {
		w.loop.Turn()
		w.pane.follow()
	})
	w.pane = pane{w: w, sight: sight}
	w.hand = pointers{w: w, down: map[int]*press{}}
	w.store = store{w: w, own: map[string]int{}}
	w.files = files{w: w}
	func() {
		defer w.guard()
		w.polite = w.speaker("status", "polite")
		w.urgent = w.speaker("alert", "assertive")
		w.listen()
		w.watch()
		w.store.open(w.start)
	}()
	select {}
}

// start sends the first event, with what is kept.
func (w *window) start(jobs []app.Listing, settings app.Settings, last string) {
	w.loop.Send(app.Started{
		Now: w.now(), Today: w.today(), Address: w.fragment(), Jobs: jobs, Settings: settings, Last: last,
		Size:    app.Size{Width: w.Get("innerWidth").Float(), Height: w.Get("innerHeight").Float()},
		Picture: w.asked(),
	})
	w.store.ask("persisted")
}

// AskTurn is for the loop.
func (w *window) AskTurn() { w.Call("setTimeout", w.turn, 0) }

// AskFrame is for the loop. A page that is not seen is not painted either, so there the
// first page does not wait for a frame that would not come.
func (w *window) AskFrame() {
	if !w.begun {
		w.Call("setTimeout", w.frame, 0)
		return
	}
	w.Call("requestAnimationFrame", w.frame)
}

// show brings the document up to the state.
func (w *window) show() {
	if !w.begun {
		w.place.Call("replaceChildren") // what stood there until the program was ready
	}
	w.loop.Frame()
	w.pane.follow()
	w.hand.follow()
	w.mirror()
	if !w.begun {
		w.begun = true
		w.Get("performance").Call("mark", "usable")
		w.whenIdle(1000, w.pane.begin)
	}
}

// mirror tells the document what the page's outermost element says of it.
func (w *window) mirror() {
	w.tell("data-view", w.loop.Tree.Root("data-view"), func(s string) {
		w.doc.Get("documentElement").Call("setAttribute", "data-view", s)
	})
	w.tell("data-title", w.loop.Tree.Root("data-title"), func(s string) { w.doc.Set("title", s) })
}

// tell does something with a text if it is another than the last time.
func (w *window) tell(name, text string, do func(string)) {
	if text != "" && w.told[name] != text {
		w.told[name] = text
		do(text)
	}
}

// Do carries out an effect.
func (w *window) Do(e app.Effect) {
	switch e := e.(type) {
	case app.Keep:
		w.store.keep(e)
	case app.ListKept:
		w.store.list()
	case app.ReadKept:
		w.store.read(e.ID)
	case app.ForgetKept:
		w.store.forget(e.ID)
	case app.KeepSettings:
		w.store.keepSettings(e.Settings)
	case app.Save:
		w.files.save(e)
	case app.PickFile:
		w.files.pick()
	case app.Say:
		w.say(e)
	case app.Again:
		w.again()
	case app.After:
		w.after(e)
	case app.Address:
		w.hash.set(w, e.Fragment)
	}
}

// Wake is for the loop: the hand asks to be told the time.
func (w *window) Wake(at float64) {
	w.timer("hand", at-w.clock(), func() {
		w.loop.Point(hand.Event{Kind: hand.Tick, Time: max(w.clock(), at)})
	})
}

// clock returns the time as events count it, in ms.
func (w *window) clock() float64 { return w.Get("performance").Call("now").Float() }

// now returns the time of day: "14:02".
func (w *window) now() string { return timeOf(w.Get("Date").New()) }

// today returns the day: "2026-05-31".
func (w *window) today() string { return dayOf(w.Get("Date").New()) }

func dayOf(date js.Value) string {
	return strconv.Itoa(date.Call("getFullYear").Int()) + "-" + two(date.Call("getMonth").Int()+1) + "-" + two(date.Call("getDate").Int())
}

func timeOf(date js.Value) string {
	return two(date.Call("getHours").Int()) + ":" + two(date.Call("getMinutes").Int())
}

func two(n int) string { return string([]byte{'0' + byte(n/10%10), '0' + byte(n%10)}) }

// word returns words of the catalogue that need no units.
func word(key string) string { return words.Text(key, nil, unit.Style{}) }

// callback makes a function for the browser to call. It recovers: what goes wrong in
// it ends the page in plain words and not the program without any.
func (w *window) callback(do func(args []js.Value)) js.Func {
	return js.FuncOf(func(_ js.Value, args []js.Value) any {
		if !w.dead {
			defer w.guard()
			do(args)
		}
		return nil
	})
}

// guard is deferred where the browser calls.
func (w *window) guard() {
	if r := recover(); r != nil {
		w.fail(recovered(r))
	}
}

// recovered says what was recovered.
func recovered(r any) string {
	switch r := r.(type) {
	case error:
		return r.Error()
	case string:
		return r
	}
	return "something that is no error"
}

// fail shows that the program has stopped, after a last attempt to keep the job.
func (w *window) fail(why string) {
	if w.dead {
		return
	}
	w.dead = true
	w.Get("console").Call("error", "Ledgewright has stopped: "+why)
	func() {
		defer func() { _ = recover() }()
		w.lastKeep()
	}()
	title, text, code := w.plain("h1", word("browser.stopped")), w.plain("p", word("browser.stopped-why")), w.plain("pre", why)
	again := w.plain("a", word("browser.load-again"))
	again.Call("setAttribute", "href", ".")
	main := w.plain("main", "")
	main.Set("className", "stopped")
	main.Call("append", title, text, again, code)
	w.place.Call("replaceChildren", main)
}

// lastKeep stores the last state that was whole.
func (w *window) lastKeep() {
	_, effects := w.loop.Step(w.loop.state, app.Flush())
	for _, e := range effects {
		if k, ok := e.(app.Keep); ok {
			w.store.keep(k)
		}
	}
}

// plain makes an element with a text.
func (w *window) plain(tag, text string) js.Value {
	e := w.doc.Call("createElement", tag)
	e.Set("textContent", text)
	return e
}

// on listens for good.
func (w *window) on(target js.Value, kind string, do func(e js.Value), options ...any) {
	f := w.callback(func(args []js.Value) { do(args[0]) })
	target.Call("addEventListener", append([]any{kind, f}, options...)...)
}

// once listens for the first of several events, and then to none.
func (w *window) once(target js.Value, do map[string]func(e js.Value)) {
	funcs := map[string]js.Func{}
	for kind, then := range do {
		funcs[kind] = js.FuncOf(func(_ js.Value, args []js.Value) any {
			for k, f := range funcs {
				target.Call("removeEventListener", k, f)
				f.Release()
			}
			defer w.guard()
			then(args[0])
			return nil
		})
		target.Call("addEventListener", kind, funcs[kind])
	}
}

// then waits for a promise.
func (w *window) then(promise js.Value, done func(v js.Value), failed func(name string)) {
	var ok, no js.Func
	end := func(do func(js.Value)) js.Func {
		return js.FuncOf(func(_ js.Value, args []js.Value) any {
			ok.Release()
			no.Release()
			defer w.guard()
			v := js.Undefined()
			if len(args) > 0 {
				v = args[0]
			}
			do(v)
			return nil
		})
	}
	ok = end(done)
	no = end(func(v js.Value) { failed(nameOf(v)) })
	promise.Call("then", ok, no)
}

// nameOf returns the name of what a browser throws: "QuotaExceededError".
func nameOf(v js.Value) string {
	if v.Type() == js.TypeObject && v.Get("name").Type() == js.TypeString {
		return v.Get("name").String()
	}
	return ""
}

// try does what the browser may refuse by throwing, and returns the name of what it
// threw, or nothing.
func try(do func()) (name string) {
	defer func() {
		if r := recover(); r != nil {
			thrown, ok := r.(js.Error)
			if !ok {
				panic(r)
			}
			if name = nameOf(thrown.Value); name == "" {
				name = "Error"
			}
		}
	}()
	do()
	return ""
}

// timer calls do after some ms; a later timer of the same name takes its place.
func (w *window) timer(name string, ms float64, do func()) {
	if old, ok := w.timers[name]; ok {
		w.Call("clearTimeout", old)
	}
	var f js.Func
	f = js.FuncOf(func(js.Value, []js.Value) any {
		f.Release()
		delete(w.timers, name)
		if !w.dead {
			defer w.guard()
			do()
		}
		return nil
	})
	w.timers[name] = w.Call("setTimeout", f, max(ms, 0))
}

func (w *window) after(e app.After) {
	w.timer("after "+e.Name, float64(e.Ms), func() { w.loop.Send(e.Event) })
}

// again sends Reckon when the page has nothing else to do.
func (w *window) again() {
	if w.idle {
		return
	}
	w.idle = true
	w.whenIdle(200, func() {
		w.idle = false
		w.loop.Send(app.Reckon{})
	})
}

// whenIdle calls do when the page has nothing else to do, or after some ms.
func (w *window) whenIdle(ms int, do func()) {
	var f js.Func
	f = js.FuncOf(func(js.Value, []js.Value) any {
		f.Release()
		if !w.dead {
			defer w.guard()
			do()
		}
		return nil
	})
	if w.Get("requestIdleCallback").Truthy() {
		w.Call("requestIdleCallback", f, map[string]any{"timeout": ms})
		return
	}
	w.Call("setTimeout", f, 1)
}

// fragment returns that of the address, without its sign.
func (w *window) fragment() string {
	return strings.TrimPrefix(w.Get("location").Get("hash").String(), "#")
}

// asked returns what the address wants the picture painted by: "stage", "svg", or nothing.
func (w *window) asked() string {
	by := w.Get("URLSearchParams").New(w.Get("location").Get("search")).Call("get", "picture")
	switch by.String() {
	case string(WantStage), string(WantSVG):
		return by.String()
	}
	return ""
}

// addressEvery is the least time between two writings of the address, in ms. Browsers
// refuse pages that write it often.
const addressEvery = 1000

// An address is the fragment as the page wants it.
type address struct {
	next float64
	want string
}

func (a *address) set(w *window, fragment string) {
	a.want = fragment
	now := w.clock()
	if now < a.next {
		w.timer("address", a.next-now, func() { a.write(w) })
		return
	}
	a.write(w)
}

func (a *address) write(w *window) {
	a.next = w.clock() + addressEvery
	at := w.Get("location").Get("pathname").String() + w.Get("location").Get("search").String()
	if a.want != "" {
		at += "#" + a.want
	}
	if why := try(func() { w.Get("history").Call("replaceState", w.Get("history").Get("state"), "", at) }); why != "" {
		w.Get("console").Call("warn", "the address could not be written: "+why)
	}
}

// speaker is a live region with what waits to be said in it.
type speaker struct {
	w      *window
	name   string
	region js.Value
	voice  voice
	odd    bool
}

// speaker makes a live region that is heard and not seen.
func (w *window) speaker(role, live string) speaker {
	region := w.plain("div", "")
	region.Call("setAttribute", "role", role)
	region.Call("setAttribute", "aria-live", live)
	for _, p := range [][2]string{
		{"position", "absolute"}, {"width", "1px"}, {"height", "1px"}, {"overflow", "hidden"},
		{"clip-path", "inset(50%)"}, {"white-space", "nowrap"},
	} {
		region.Get("style").Call("setProperty", p[0], p[1])
	}
	w.doc.Get("body").Call("append", region)
	return speaker{w: w, name: "speak " + live, region: region}
}

func (w *window) say(e app.Say) {
	s := &w.polite
	if e.Urgent {
		s = &w.urgent
	}
	s.voice.say(e.Text)
	s.speak()
}

// speak says what waits. A text that is the same as the last is only heard if it is not
// quite the same: every other one ends with a space.
func (s *speaker) speak() {
	text, again := s.voice.speak(s.w.clock())
	if text != "" {
		if s.odd = !s.odd; s.odd {
			text += "\u00a0"
		}
		s.region.Set("textContent", text)
	}
	if again >= 0 {
		s.w.timer(s.name, again, s.speak)
	}
}
