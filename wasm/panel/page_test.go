package panel

import (
	stdflag "flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine/edit"
	"ledgewright/engine/unit"
	"ledgewright/wasm/app"
	"ledgewright/wasm/hand"
)

var update = stdflag.Bool("update", false, "write the golden files anew")

var tabletSize = app.Size{Width: 754, Height: 660}

// steps goes through events.
func steps(s app.State, events ...app.Event) app.State {
	for _, e := range events {
		s, _ = app.Step(s, e)
	}
	return s
}

func startPage() app.State {
	return steps(app.State{}, app.Started{Now: "14:02", Size: tabletSize})
}

func opened(t *testing.T, name string) app.State {
	t.Helper()
	s := steps(startPage(), app.Open{Example: name}, app.Resized{Size: tabletSize})
	require.Equal(t, app.AtWork, s.Screen, s.Problem)
	return s
}

// states are pages of every job of every example, with nothing, one and several things
// chosen, and the start page.
func pagesOf(t *testing.T) map[string]app.State {
	t.Helper()
	out := map[string]app.State{
		"start": startPage(),
		"start with jobs": steps(startPage(), app.Listed{Jobs: []app.Listing{{ID: "j1", Title: "Hall", Summary: "2 modules", At: "13:40"}, {ID: "j2", Title: "Attic", At: "9:10"}}},
			app.NewJob{Width: "wide", Height: "2460"}),
		"bare wall": steps(startPage(), app.NewJob{Width: "2960", Height: "2460"}),
	}
	for _, name := range assets.Names() {
		s := opened(t, name)
		for i, job := range jobs() {
			out[name+" "+job] = steps(s, app.Go{Job: app.Job(i)})
		}
		one := steps(s, app.Choose{Module: s.Plan.Modules[0].ID})
		out[name+" one"] = one
		out[name+" round"] = steps(one, app.Show{What: app.InTheRound}, app.PullApart{Text: "35"})
		out[name+" places"] = steps(one, app.Suggest{Module: s.Plan.Modules[0].ID})
		if len(s.Plan.Modules) > 2 {
			out[name+" several"] = steps(one, app.Choose{Module: s.Plan.Modules[1].ID, Add: true}, app.Choose{Module: s.Plan.Modules[2].ID, Add: true})
		}
		if f, ok := figField(Page(&one), "fig-"+s.Plan.Modules[0].ID+"/left"); ok {
			out[name+" typing"] = steps(one, app.OpenTyping{Field: f}, app.TypedInto{Field: f, Text: "12"})
			out[name+" typing nonsense"] = steps(one, app.OpenTyping{Field: f}, app.TypedInto{Field: f, Text: "twelve"})
		}
	}
	return out
}

// eachIn calls do for a node and all inside it, with those above it.
func eachIn(n Node, do func(n Node, above []Node)) { framewalk(n, nil, do) }

func framewalk(n Node, above []Node, do func(Node, []Node)) {
	do(n, above)
	above = append(above[:len(above):len(above)], n)
	for _, k := range n.Kids {
		framewalk(k, above, do)
	}
}

func attrIn(n Node, name string) (string, bool) {
	for _, a := range n.Attrs {
		if a.Name == name {
			return a.Value, true
		}
	}
	return "", false
}

// textOf is what a node says by its text, hidden parts left out.
func textIn(n Node) string {
	if n.Tag == "" {
		return n.Text
	}
	if hidden, _ := attrIn(n, "aria-hidden"); hidden == "true" {
		return ""
	}
	out := ""
	for _, k := range n.Kids {
		out += textIn(k)
	}
	return out
}

func nodeIn(n Node, key string) (found Node, ok bool) {
	eachIn(n, func(n Node, _ []Node) {
		if n.Key == key && !ok {
			found, ok = n, true
		}
	})
	return found, ok
}

// fieldOf is the field of the figure with that key.
func figField(page Node, key string) (f app.Field, ok bool) {
	eachIn(page, func(n Node, _ []Node) {
		for _, h := range n.On {
			if e, is := h.Event.(app.OpenTyping); is && n.Key == key {
				f, ok = e.Field, true
			}
		}
	})
	return f, ok
}

// faults says what is wrong with a page.
func faults(page Node) (out []string) {
	fault := func(n Node, s string) { out = append(out, n.Tag+"#"+n.Key+": "+s) }
	ids, wanted := map[string]bool{}, map[string]bool{}
	labelled := map[string]bool{}
	eachIn(page, func(n Node, above []Node) {
		for _, a := range n.Attrs {
			switch {
			case a.Name == "style" || strings.HasPrefix(a.Name, "on"):
				fault(n, "has the attribute "+a.Name)
			case a.Name == "id":
				if ids[a.Value] {
					fault(n, "second element with the id "+a.Value)
				}
				if strings.ContainsAny(a.Value, " \t") {
					fault(n, "has a space in its id "+a.Value)
				}
				ids[a.Value] = true
			case a.Name == "for":
				wanted[a.Value], labelled[a.Value] = true, true
			case a.Name == "aria-labelledby" || a.Name == "aria-describedby" || a.Name == "aria-controls":
				wanted[a.Value] = true
			}
		}
		seen := map[string]bool{}
		for _, k := range n.Kids {
			if k.Key != "" && seen[k.Key] {
				fault(k, "second kid with this key")
			}
			seen[k.Key] = true
		}
		if n.Tag == "" && strings.Contains(n.Text, "?]") {
			fault(n, n.Text)
		}
	})
	eachIn(page, func(n Node, above []Node) {
		label, has := attrIn(n, "aria-label")
		id, _ := attrIn(n, "id")
		inLabel := slices.ContainsFunc(above, func(a Node) bool { return a.Tag == "label" && strings.TrimSpace(textIn(a)) != "" })
		_, by := attrIn(n, "aria-labelledby")
		switch n.Tag {
		case "button":
			if strings.TrimSpace(textIn(n)) == "" && label == "" {
				fault(n, "has no name")
			}
			if kind, _ := attrIn(n, "type"); kind != "button" && kind != "submit" {
				fault(n, "has no type")
			}
			if n.Key == "" {
				fault(n, "has no key")
			}
		case "input", "select", "textarea":
			if !labelled[id] && !inLabel && !has {
				fault(n, "has no label")
			}
		case "main", "nav", "aside", "form", "section", "fieldset", "ul":
			if n.Tag == "section" || n.Tag == "fieldset" || n.Tag == "ul" {
				break
			}
			if !has && !by {
				fault(n, "has no name")
			}
		}
	})
	for list := range wanted {
		for _, id := range strings.Fields(list) {
			if !ids[id] {
				out = append(out, "nothing has the id "+id)
			}
		}
	}
	slices.Sort(out)
	return out
}

func TestPagesAreInOrder(t *testing.T) {
	for name, s := range pagesOf(t) {
		require.Empty(t, faults(Page(&s)), name)
	}
}

func TestLintFindsFaults(t *testing.T) {
	for want, n := range map[string]Node{
		"style":     el("p", "", at("style", "color:red")),
		"onclick":   el("p", "", at("onclick", "x")),
		"no name":   el("button", "k", at("type", "button"), icon("undo")),
		"no type":   el("button", "k", text("Undo")),
		"no label":  el("input", "k"),
		"this key":  el("p", "", el("b", "k"), el("i", "k")),
		"with the":  el("p", "", el("b", "", at("id", "k")), el("i", "", at("id", "k"))),
		"nothing":   el("label", "", at("for", "gone")),
		"page.nope": el("p", "", text(say(&app.State{}, "page.nope"))),
	} {
		require.Contains(t, strings.Join(faults(n), "\n"), want)
	}
}

// Every field's line, with a value in it, is an edit that can be read, and every field
// has a key of its own.
func TestEveryFieldIsAnEdit(t *testing.T) {
	for name, s := range pagesOf(t) {
		owner := map[string]string{}
		eachIn(Page(&s), func(n Node, above []Node) {
			for _, h := range n.On {
				var f app.Field
				switch e := h.Event.(type) {
				case app.Entered:
					f = e.Field
				case app.OpenTyping:
					f = e.Field
				default:
					continue
				}
				if n.Tag == "form" { // the strip of a figure
					continue
				}
				require.NotEmpty(t, f.Key, name)
				require.NotEmpty(t, f.Label, "%s %s", name, f.Key)
				if of, ok := owner[f.Key]; ok && of != n.Key && f.Kind != app.ChoiceField {
					require.Fail(t, "two controls of one field", "%s: %s in %s and %s", name, f.Key, of, n.Key)
				}
				owner[f.Key] = n.Key
				value := map[app.FieldKind]string{app.LengthField: "100", app.AngleField: "45", app.CountField: "2", app.TextField: `"text"`, app.ChoiceField: `"choice"`, app.TickField: "true"}[f.Kind]
				for _, line := range strings.Split(f.Line, "\n") {
					_, err := edit.Decode([]byte(strings.ReplaceAll(line, `"$"`, value)))
					require.NoError(t, err, "%s %s: %s", name, f.Key, line)
				}
			}
		})
	}
}

// Every button that makes edits makes edits that the plan takes.
func TestEveryButtonCanBeDone(t *testing.T) {
	for name, s := range pagesOf(t) {
		eachIn(Page(&s), func(n Node, _ []Node) {
			for _, h := range n.On {
				do, ok := h.Event.(app.Do)
				if !ok {
					continue
				}
				require.NotEmpty(t, do.Edits, "%s %s", name, n.Key)
				p := s.Plan
				for _, e := range do.Edits {
					next, _, err := edit.Apply(p, e)
					require.NoError(t, err, "%s %s", name, n.Key)
					p = next
				}
			}
		})
	}
}

func TestLandmarks(t *testing.T) {
	page := Page(new(opened(t, "study")))
	require.Equal(t, "app", page.Key)
	for _, k := range []struct{ key, tag string }{{"head", "header"}, {"wall", "main"}, {"ledge", "section"}, {"panel", "aside"}, {"stick", "nav"}} {
		n, ok := nodeIn(page, k.key)
		require.True(t, ok, k.key)
		require.Equal(t, k.tag, n.Tag)
	}
	stick, _ := nodeIn(page, "stick")
	require.Len(t, stick.Kids, 5)
	n, _ := nodeIn(page, "job-arrange")
	current, _ := attrIn(n, "aria-current")
	require.Equal(t, "page", current)
	hand, _ := nodeIn(page, "hand")
	held, _ := attrIn(hand, "data-hand")
	require.Equal(t, "picture", held)
	ledge, _ := nodeIn(page, "ledge")
	require.Contains(t, textIn(ledge), "Fits")
	require.Contains(t, textIn(ledge), "Not checked")
}

// figureOf chooses a module of an example and returns the state and the field of one of
// its figures.
func figureOf(t *testing.T, name, module, what string) (app.State, app.Field) {
	t.Helper()
	s := steps(opened(t, name), app.Choose{Module: module})
	f, ok := figField(Page(&s), "fig-"+module+"/"+what)
	require.True(t, ok, "%s has no figure %s", module, what)
	return s, f
}

func TestTypedFiguresMoveTheModule(t *testing.T) {
	const mm = unit.Millimetre
	s, f := figureOf(t, "study", "m1", "left")
	moved := steps(s, app.OpenTyping{Field: f}, app.Entered{Field: f, Text: "321"})
	b, ok := boxOf(&moved, "m1")
	require.True(t, ok)
	require.Equal(t, 321*mm, b.MinX)

	s, f = figureOf(t, "study", "m1", "gap")
	was := resultOf(s.Build, s.Arrangement).Nearest[0]
	require.Equal(t, "m1", was.Module)
	moved = steps(s, app.Entered{Field: f, Text: s.Plan.Style().Length(was.Gap + 7*mm)})
	p, _ := pieceOf(&moved, moved.Plan, moved.Build, "m1")
	require.NotEqual(t, s.Plan.Arrangements[0].Poses, moved.Plan.Arrangements[0].Poses)
	if p.nearest.To == was.To {
		require.Equal(t, was.Gap+7*mm, p.nearest.Gap)
	}
}

func TestTypedHeightMovesWhatIsThere(t *testing.T) {
	s := steps(opened(t, "porch"), app.Choose{Module: "m1"})
	b, _ := boxOf(&s, "m1")
	f, ok := figField(Page(&s), "fig-height/"+b.MinY.Decimal())
	require.True(t, ok)
	moved := steps(s, app.Entered{Field: f, Text: "1234"})
	b, _ = boxOf(&moved, "m1")
	require.Equal(t, 1234*unit.Millimetre, b.MinY)
}

// The outside size of a ready shape is that of its boards: a U has it from both of its
// uprights, a box from its first two boards, a hexagon from none.
func TestTypedSizesChangeBoards(t *testing.T) {
	const mm = unit.Millimetre
	for _, c := range []struct {
		shape, joint          string
		widthTyped, highTyped bool
	}{
		{"shelf", "mitre", true, false},
		{"L", "mitre", true, true},
		{"L", "butt-first", true, true},
		{"U", "mitre", true, true},
		{"U", "butt-second", true, true},
		{"box", "mitre", true, true},
		{"box", "butt-first", true, true},
		{"Z", "mitre", false, true},
		{"hexagon", "mitre", false, false},
	} {
		name := c.shape + " " + c.joint
		members := []any{"shape", c.shape, "width", 600 * mm, "depth", 200 * mm, "thickness", 26 * mm, "wood", "white-oak", "arrangement", "a1", "x", 1400 * mm, "y", 1500 * mm}
		if c.shape != "shelf" {
			members = append(members, "height", 300*mm, "joint", c.joint)
		}
		s := steps(startPage(), app.NewJob{Width: "2960", Height: "2460"}, app.DoLine{Line: line("add-module", members...)})
		require.Len(t, s.Plan.Modules, 1, "%s: %s", name, s.Toast.Text)
		p, _ := pieceOf(&s, s.Plan, s.Build, "m1")
		for upright, want := range map[bool]bool{false: c.widthTyped, true: c.highTyped} {
			f, ok := p.size(&s, "k", upright)
			require.Equal(t, want, ok, "%s upright %t", name, upright)
			if !ok {
				continue
			}
			after, _ := pieceOf(new(steps(s, app.Entered{Field: f, Text: "437"})), s.Plan, s.Build, "m1")
			grown := steps(s, app.Entered{Field: f, Text: "437"})
			after, _ = pieceOf(&grown, grown.Plan, grown.Build, "m1")
			got, other, same := after.width(), after.height(), p.height()
			if upright {
				got, other, same = after.height(), after.width(), p.width()
			}
			require.Equal(t, 437*mm, got, "%s upright %t", name, upright)
			require.Equal(t, same, other, "%s upright %t", name, upright)
		}
	}
}

// A step of panning changes one transform and two properties, and the nodes of the
// drawing are the very same.
func TestPanChangesThreeValues(t *testing.T) {
	s := opened(t, "library")
	var p Painter
	before := p.Page(&s)
	s.Camera.X += 10
	s.Camera.Y -= 4
	after := p.Page(&s)
	a, b := differing(before, after)
	require.Equal(t, 1, a, "attributes")
	require.Equal(t, 2, b, "properties")
	w1, _ := nodeIn(before, "world")
	w2, _ := nodeIn(after, "world")
	require.Same(t, &w1.Kids[0], &w2.Kids[0])
}

// differing counts the attributes and properties that differ in two trees of one shape.
func differing(a, b Node) (attrs, props int) {
	for i := range a.Attrs {
		if a.Attrs[i] != b.Attrs[i] {
			attrs++
		}
	}
	for i := range a.Props {
		if a.Props[i] != b.Props[i] {
			props++
		}
	}
	for i := range a.Kids {
		x, y := differing(a.Kids[i], b.Kids[i])
		attrs, props = attrs+x, props+y
	}
	return attrs, props
}

func TestSameStateSamePage(t *testing.T) {
	for name, s := range pagesOf(t) {
		var p Painter
		first := p.Page(&s)
		require.Equal(t, first, Page(&s), name)
		require.Equal(t, first, p.Page(&s), name)
	}
}

// A figure's place is the camera's: the text of the drawing comes to stand over the
// same pixel as the drawing itself.
func TestFiguresStandOnTheDrawing(t *testing.T) {
	s := steps(opened(t, "study"), app.Choose{Module: "m1"}, app.Zoom{By: 1.7})
	page := Page(&s)
	hand, _ := nodeIn(page, "hand")
	get := func(n Node, name string) float64 {
		for _, p := range n.Props {
			if p.Name == name {
				return asNumber(t, p.Value)
			}
		}
		require.Fail(t, "no property "+name)
		return 0
	}
	b, _ := boxOf(&s, "m1")
	fig, ok := nodeIn(page, "fig-m1/left")
	require.True(t, ok)
	x, _ := s.Camera.Pixel(b.MinX.MM()/2, 0, s.Size)
	require.InDelta(t, x, get(hand, "--ox")+get(fig, "--x")*get(hand, "--s"), 0.05)
}

func asNumber(t *testing.T, s string) float64 {
	t.Helper()
	var x float64
	neg := strings.HasPrefix(s, "-")
	whole, rest, _ := strings.Cut(strings.TrimPrefix(s, "-"), ".")
	for _, c := range whole {
		x = x*10 + float64(c-'0')
	}
	at := 0.1
	for _, c := range rest {
		x, at = x+at*float64(c-'0'), at/10
	}
	if neg {
		return -x
	}
	return x
}

// While a module is in the hand, what stays keeps its nodes, and the panel too.
func TestADragDrawsOnlyWhatMoves(t *testing.T) {
	s := steps(opened(t, "study"), app.Choose{Module: "m1"})
	var p Painter
	before := p.Page(&s)
	b, _ := boxOf(&s, "m1")
	x, y := s.Camera.Pixel(b.MinX.MM()+100, b.MinY.MM()+10, s.Size)
	touch := func(k hand.Kind, dx float64) app.Event {
		return app.Pointer{Event: hand.Event{Kind: k, ID: 1, Type: hand.Touch, Primary: true, X: x + dx, Y: y, Time: dx}}
	}
	s = steps(s, touch(hand.Down, 0), touch(hand.Motion, 12), touch(hand.Motion, 30))
	require.True(t, holding(&s))
	first := p.Page(&s)
	s = steps(s, touch(hand.Motion, 95))
	second := p.Page(&s)
	w1, _ := nodeIn(first, "world")
	w2, _ := nodeIn(second, "world")
	require.Same(t, &w1.Kids[0], &w2.Kids[0])
	for _, k := range w1.Kids {
		require.False(t, strings.HasPrefix(k.Key, "m1/"), "%s stays behind", k.Key)
	}
	m1, _ := nodeIn(first, "moving")
	m2, _ := nodeIn(second, "moving")
	require.NotEmpty(t, m1.Kids)
	require.NotEqual(t, Write(m1), Write(m2))
	was, ok := nodeIn(second, "ghost-m1")
	require.True(t, ok)
	name, _ := attrIn(was, "class")
	require.Equal(t, "ghost was", name)
	p1, _ := nodeIn(before, "panel")
	p2, _ := nodeIn(second, "panel")
	require.Same(t, &p1.Kids[0], &p2.Kids[0])
	require.Empty(t, faults(second))

	s = steps(s, touch(hand.Up, 95))
	after := p.Page(&s)
	require.Equal(t, Page(&s), after)
	moving, _ := nodeIn(after, "moving")
	require.Empty(t, moving.Kids)
}

func TestTypingShowsAGhostAndMovesNothing(t *testing.T) {
	s, f := figureOf(t, "study", "m1", "left")
	s = steps(s, app.OpenTyping{Field: f}, app.TypedInto{Field: f, Text: "12"})
	page := Page(&s)
	_, ok := nodeIn(page, "ghost-m1")
	require.True(t, ok)
	fig, _ := nodeIn(page, "fig-m1/left")
	expanded, _ := attrIn(fig, "aria-expanded")
	require.Equal(t, "true", expanded)
	require.Equal(t, f.Value, textIn(fig))
	strip, ok := nodeIn(page, "typing-form")
	require.True(t, ok)
	require.Contains(t, textIn(strip), "12"+nobreak+"mm, was "+f.Value)
	s = steps(s, app.Dismiss{})
	_, ok = nodeIn(Page(&s), "typing-form")
	require.False(t, ok)
}

func TestGolden(t *testing.T) {
	bare := steps(startPage(), app.NewJob{Width: "2960", Height: "2460"}, app.Go{Job: app.Arrange})
	for name, s := range map[string]app.State{
		"start":         startPage(),
		"bare-arrange":  bare,
		"porch-arrange": opened(t, "porch"),
	} {
		page := Page(&s)
		file := filepath.Join("testdata", name+".txt")
		got := Write(withoutKids(withoutKids(page, "world"), "examples"))
		if *update {
			require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
		}
		want, err := os.ReadFile(file)
		require.NoError(t, err)
		require.Equal(t, string(want), got, name)
	}
}

// withoutKids leaves out what is inside the node with a key: what others draw.
func withoutKids(n Node, key string) Node {
	n.Kids = slices.Clone(n.Kids)
	for i, k := range n.Kids {
		if k.Key == key {
			k.Kids = nil
		}
		n.Kids[i] = withoutKids(k, key)
	}
	return n
}

// Figures are set as figures, with their units; names that hold figures are not.
func TestSentencesShowFigures(t *testing.T) {
	for sentence, want := range map[string]string{
		"Long: hole 1 misses stud 12 by 115.5 mm.": "Long: hole [1] misses stud [12] by [115.5_mm].",
		"m2 turns 22.5° in w1":                     "m2 turns [22.5°] in w1",
		"It is 20 1/2 in wide":                     "It is [20_{1/2}_in] wide",
		`9'-8 1/2", or 7'-0"`:                      `[9'-8_{1/2}"], or [7'-0"]`,
		"3/4 of it":                                "[{3/4}] of it",
		"12345 mm":                                 "[12~345_mm]",
		"no figure":                                "no figure",
	} {
		require.Equal(t, want, plainly(runs(sentence)), sentence)
	}
}

// plainly writes figures in brackets and fractions in braces.
func plainly(nodes kids) string {
	out := ""
	for _, n := range nodes {
		switch name, _ := attrIn(n, "class"); name {
		case "n":
			out += "[" + plainly(n.Kids) + "]"
		case "fr":
			out += "{" + plainly(n.Kids) + "}"
		default:
			out += n.Text
		}
	}
	return strings.NewReplacer(nobreak, "_", narrow, "~").Replace(out)
}
