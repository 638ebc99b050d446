// Toy is a page with one of everything that package browser does, for its tests in a
// real browser. What it is told stands in the list "log".
package main

import (
	"fmt"
	"strconv"
	"strings"

	"ledgewright/wasm/app"
	"ledgewright/wasm/browser"
	"ledgewright/wasm/hand"
	"ledgewright/wasm/panel"
)

func main() {
	browser.Run(step, func(s app.State, _ int) (panel.Node, bool) { return page(s), true }, func() panel.Sight { return panel.Sight{} })
}

// step keeps its log in Problem and what was typed in Fields.
func step(s app.State, e app.Event) (app.State, []app.Effect) {
	log := func(format string, args ...any) { s.Problem += fmt.Sprintf(format, args...) + "\n" }
	switch e := e.(type) {
	case app.Started:
		s.Settings, s.Jobs = e.Settings, e.Jobs
		log("started jobs=%d last=%q theme=%q address=%q", len(e.Jobs), e.Last, e.Settings.Theme, e.Address)
		for _, j := range e.Jobs {
			log("job %s %q %q", j.ID, j.Title, j.Summary)
		}
		if e.Address != "" {
			return s, []app.Effect{app.Address{}}
		}
	case app.Resized:
		s.Size = e.Size
		log("resized %.0fx%.0f", e.Size.Width, e.Size.Height)
	case app.Pointer:
		h, gestures := s.Hand.Step(e.Event)
		s.Hand = h
		for _, g := range gestures {
			if g.Kind != hand.Drag && g.Kind != hand.PanZoom {
				log("gesture %d at %.0f,%.0f", g.Kind, g.X, g.Y)
			}
			s.Camera.X += g.DX
			if g.Kind == hand.PanZoom {
				s.Camera.Y++
				s.Camera.Scale = g.Scale
			}
		}
	case app.TypedInto:
		s.Fields = map[string]app.Echo{e.Field.Key: {Text: e.Text}}
	case app.Entered:
		s.Fields = nil
		log("entered %s %q", e.Field.Key, e.Text)
	case app.Set:
		s.Settings.Theme = e.Value
		return s, []app.Effect{app.KeepSettings{Settings: s.Settings}}
	case app.NewJob:
		log("new %sx%s", e.Width, e.Height)
	case app.Opened:
		log("opened %q %q", e.Name, e.Text)
	case app.Key:
		log("key %s control=%t shift=%t field=%t", e.Name, e.Control, e.Shift, e.InField)
	case app.Reckon:
		log("reckoned")
	case app.Undo:
		panic("the toy was told to break")
	case app.Redo:
		s.SheetAt++
		return s, []app.Effect{app.Again{}, app.Say{Text: "Done again: " + strconv.Itoa(s.SheetAt)}}
	case app.Show:
		s.On = map[app.Switch]bool{e.What: !s.On[e.What]}
		return s, []app.Effect{app.Focus{Key: "close"}}
	case app.Dismiss:
		s.On = nil
		log("dismissed")
	case app.OpenTyping:
		log("typing opened")
	default:
		return store(s, e)
	}
	return s, nil
}

// store takes the events of keeping and handing on.
func store(s app.State, e app.Event) (app.State, []app.Effect) {
	log := func(format string, args ...any) { s.Problem += fmt.Sprintf(format, args...) + "\n" }
	switch e := e.(type) {
	case app.Go:
		s.Store.Revision++
		return s, []app.Effect{app.Keep{ID: "j1", Title: "Reading corner", Summary: "4 modules", Revision: s.Store.Revision,
			Before: s.Store.Stored, Record: "record " + strconv.Itoa(s.Store.Revision), Blank: s.Store.Revision > 2}}
	case app.Home: // a state that does not follow the one that is stored
		return s, []app.Effect{app.Keep{ID: "j1", Title: "Another tab", Revision: 99, Before: 1, Record: "lost"}}
	case app.Kept:
		log("kept %d %q", e.Revision, e.Err)
		if e.Err == "" {
			s.Store.Stored = e.Revision
		}
	case app.Open:
		return s, []app.Effect{app.ReadKept{ID: e.Kept}}
	case app.Read:
		log("read %s %q %q", e.ID, e.Record, e.Err)
	case app.Forget:
		return s, []app.Effect{app.ForgetKept{ID: e.ID}, app.ListKept{}}
	case app.Listed:
		log("listed %d", len(e.Jobs))
	case app.HandOn:
		return s, []app.Effect{app.Save{By: e.By, What: e.What, Name: map[string]string{"plan": "corner.json"}[e.What],
			Type: "application/json", Text: map[string]string{"plan": `{"é":"½"}`, "link": "A1code"}[e.What]}}
	case app.Done:
		log("done %s %q", e.What, e.Err)
	case app.Clock:
	default:
		log("%T", e)
	}
	return s, nil
}

func page(s app.State) panel.Node {
	root := node("div", "", "data-view", "evening", "data-title", "Toy · "+strconv.Itoa(s.SheetAt))
	lines := strings.Split(strings.TrimSuffix(s.Problem, "\n"), "\n")
	list := node("ol", "", "id", "log")
	for _, l := range lines {
		list.Kids = append(list.Kids, node("li", l))
	}
	root.Kids = []panel.Node{picture(s), form(s), buttons(), dialog(s), list}
	return root
}

func node(tag, text string, attrs ...string) panel.Node {
	n := &panel.Element{Tag: tag}
	if text != "" {
		n.Kids = []panel.Node{{Text: text}}
	}
	for i := 0; i < len(attrs); i += 2 {
		n.Attrs = append(n.Attrs, panel.Attr{Name: attrs[i], Value: attrs[i+1]})
	}
	return n
}

func on(kind string, e app.Event, n panel.Node) panel.Node {
	n.On = append(n.On, panel.Handler{On: kind, Event: e})
	return n
}

// picture is the hand's element with a control in it, and what the hand did in it.
func picture(s app.State) panel.Node {
	figure := on("click", app.OpenTyping{}, node("button", "816", "id", "figure", "type", "button"))
	at := &panel.Element{Tag: "text", SVG: true, Attrs: []panel.Attr{{Name: "id", Value: "pan"}},
		Kids: []panel.Node{{Text: fmt.Sprintf("%.0f %.0f %.3f", s.Camera.X, s.Camera.Y, s.Camera.Scale)}}}
	svg := &panel.Element{Tag: "svg", SVG: true, Kids: []panel.Node{at}, Attrs: []panel.Attr{{Name: "viewBox", Value: "0 0 400 200"}}}
	p := node("div", "", "id", "picture", "data-hand", "", "tabindex", "0", "aria-label", "Wall")
	p.Kids = []panel.Node{svg, figure}
	return p
}

func form(s app.State) panel.Node {
	f := app.Field{Key: "length", Value: "816"}
	value := f.Value
	if echo, ok := s.Fields[f.Key]; ok {
		value = echo.Text
	}
	length := node("input", "", "id", "length", "value", value, "aria-label", "Length")
	length.Key = f.Key
	length = on("change", app.Entered{Field: f}, on("input", app.TypedInto{Field: f}, length))
	wall := on("submit", app.NewJob{}, node("form", "", "id", "wall"))
	wall.Kids = []panel.Node{node("input", "", "name", "width", "id", "width"), node("input", "", "name", "height"), node("button", "Draw")}
	theme := on("change", app.Set{Name: "theme"}, node("select", "", "id", "theme"))
	for _, o := range []string{"day", "evening"} {
		n := node("option", o, "value", o)
		if s.Settings.Theme == o {
			n.Attrs = append(n.Attrs, panel.Attr{Name: "selected"})
		}
		theme.Kids = append(theme.Kids, n)
	}
	box := node("div", "")
	if s.SheetAt%2 == 1 { // things come and go before the field
		box.Kids = []panel.Node{node("p", "a line"), node("h2", "a heading")}
	}
	box.Kids = append(box.Kids, length, wall, theme, node("input", "", "type", "file", "id", "file"))
	return box
}

func buttons() panel.Node {
	box := node("div", "")
	for _, b := range []struct {
		id string
		e  app.Event
	}{
		{"redo", app.Redo{}}, {"break", app.Undo{}}, {"show", app.Show{What: app.Bench}},
		{"keep", app.Go{}}, {"conflict", app.Home{}}, {"read", app.Open{Kept: "j1"}}, {"forget", app.Forget{ID: "j1"}},
		{"download", app.HandOn{What: "plan", By: "download"}}, {"copy", app.HandOn{What: "link", By: "copy"}},
		{"share", app.HandOn{What: "plan", By: "share"}}, {"half", app.PressKey{Key: " 1/2", Into: "length"}},
	} {
		box.Kids = append(box.Kids, on("click", b.e, node("button", b.id, "id", b.id, "type", "button")))
	}
	return box
}

func dialog(s app.State) panel.Node {
	d := node("dialog", "", "id", "dialog", "aria-label", "Move to")
	if s.On[app.Bench] {
		d.Attrs = append(d.Attrs, panel.Attr{Name: "open"})
	}
	close := on("click", app.Dismiss{}, node("button", "Close", "id", "close"))
	close.Key = "close"
	d.Kids = []panel.Node{close}
	return d
}
