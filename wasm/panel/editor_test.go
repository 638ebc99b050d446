package panel

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine/edit"
	"ledgewright/engine/plan"
	samples "ledgewright/testdata/jobs"
	"ledgewright/wasm/app"
)

// atWork is the page with a plan open.
func atWork(t *testing.T, p plan.Plan) app.State {
	t.Helper()
	text, err := plan.Encode(p)
	require.NoError(t, err)
	s, _ := app.Step(app.State{}, app.Started{Now: "14:02", Size: app.Size{Width: 754, Height: 660}})
	s, _ = app.Step(s, app.Opened{Name: "plan", Text: string(text)})
	require.Equal(t, app.AtWork, s.Screen, s.Problem)
	return s
}

// subjects are the plans on which the panels are tried: every example, and random ones.
func subjects(t *testing.T, random uint64) map[string]plan.Plan {
	t.Helper()
	all := map[string]plan.Plan{}
	for _, name := range assets.Names() {
		p, err := assets.Plan(name)
		require.NoError(t, err)
		all[name] = p
	}
	for seed := range random {
		all["random "+strconv.FormatUint(seed, 10)] = samples.RandomPlan(seed)
	}
	return all
}

// panels are the two panels in every state that a plan gives: a survey of each wall, an
// editor for each module.
func panels(s app.State) (states []app.State, trees []Node) {
	for _, w := range s.Plan.Walls {
		now, _ := app.Step(s, app.ShowWall{ID: w.ID})
		states, trees = append(states, now), append(trees, el("div", "", kids(survey(&now))))
	}
	for _, m := range s.Plan.Modules {
		now, _ := app.Step(s, app.Choose{Module: m.ID})
		states, trees = append(states, now), append(trees, el("div", "", wholeEditor(&now)))
	}
	return states, trees
}

// wholeEditor is the editor as the page has it, in its parts.
func wholeEditor(s *app.State) kids {
	if len(s.Chosen) == 0 {
		return kids{noEditor(s)}
	}
	return append(kids(editorOfBoards(s)), editorOfFittings(s)...)
}

// walk visits a node and all below it.
func walk(n Node, visit func(Node)) {
	visit(n)
	for _, k := range n.Kids {
		walk(k, visit)
	}
}

// textOf is all text of a node, as a reader has it.
func textOf(n Node) string {
	if n.Tag == "" {
		return n.Text
	}
	if attrOf(n, "aria-hidden") == "true" {
		return ""
	}
	var b strings.Builder
	for _, k := range n.Kids {
		b.WriteString(textOf(k))
	}
	return strings.TrimSpace(strings.ReplaceAll(b.String(), nobreak, " "))
}

func attrOf(n Node, name string) string {
	for _, a := range n.Attrs {
		if a.Name == name {
			return a.Value
		}
	}
	return ""
}

// nameOf is what a reader calls a control: its aria-label, its label, or its text.
func nameOf(n Node, labels map[string]string) string {
	if says := attrOf(n, "aria-label"); says != "" {
		return says
	}
	if says := labels[attrOf(n, "id")]; says != "" && attrOf(n, "id") != "" {
		return says
	}
	return textOf(n)
}

// labelsOf are the labels of a tree by the ids that they are for; a tick's label, which
// holds its box, is under the box's key.
func labelsOf(n Node) map[string]string {
	labels := map[string]string{}
	walk(n, func(n Node) {
		if n.Tag == "label" && attrOf(n, "for") != "" {
			labels[attrOf(n, "for")] = textOf(n)
		}
	})
	return labels
}

// fieldsOf are the fields of a tree that are entered.
func fieldsOf(n Node) (out []app.Field) {
	walk(n, func(n Node) {
		for _, h := range n.On {
			if e, ok := h.Event.(app.Entered); ok {
				out = append(out, e.Field)
			}
		}
	})
	return out
}

func TestKeysAndNamesOfThePanels(t *testing.T) {
	for name, p := range subjects(t, 50) {
		_, trees := panels(atWork(t, p))
		for _, tree := range trees {
			checkNames(t, name, tree)
		}
	}
}

// checkNames holds that keys of controls and ids stand once, that every control has a
// name of its own kind, and that what describes another is there.
func checkNames(t *testing.T, subject string, tree Node) {
	t.Helper()
	keys, ids, labels := map[string]bool{}, map[string]bool{}, labelsOf(tree)
	var described []string
	walk(tree, func(n Node) {
		require.NotContains(t, n.Text, "?]", subject)
		if id := attrOf(n, "id"); id != "" {
			require.False(t, ids[id], "%s: two of id %s", subject, id)
			ids[id] = true
		}
		for _, a := range []string{"aria-describedby", "aria-labelledby", "for"} {
			described = append(described, strings.Fields(attrOf(n, a))...)
		}
		switch n.Tag {
		case "button", "input", "select", "details", "summary":
			require.NotEmpty(t, n.Key, "%s: %s", subject, textOf(n))
			require.False(t, keys[n.Key], "%s: two of key %s", subject, n.Key)
			keys[n.Key] = true
			if n.Tag != "details" && attrOf(n, "type") != "checkbox" {
				require.NotEmpty(t, nameOf(n, labels), "%s: %s", subject, n.Key)
			}
		}
	})
	for _, id := range described {
		require.True(t, ids[id], "%s: nothing has the id %s", subject, id)
	}
	for _, f := range fieldsOf(tree) {
		require.NotEmpty(t, f.Label, f.Key)
	}
}

// A field that makes something new, or does something again, holds nothing itself.
func verb(f app.Field) bool {
	return strings.Contains(f.Line, `"do":"add-stud"`) || strings.Contains(f.Line, `"do":"place-brackets"`)
}

// What a field holds, typed into it again, leaves the plan as it is, to the byte. A field
// never stands for another figure than the plan's, rounded or misread.
func TestWhatAFieldHoldsIsWhatThePlanHolds(t *testing.T) {
	fields := 0
	for name, p := range subjects(t, 50) {
		states, trees := panels(atWork(t, p))
		for i, s := range states {
			s = alone(s)
			want, err := plan.Encode(s.Plan)
			require.NoError(t, err)
			for _, f := range fieldsOf(trees[i]) {
				fields++
				typedBack(t, name, s, f, string(want))
			}
		}
	}
	require.Greater(t, fields, 20_000, "few fields were tried")
}

// alone is a state with nothing in its plan but the wall in view or the module chosen, so
// that thousands of edits are tried in seconds.
func alone(s app.State) app.State {
	w, _ := s.Plan.Wall(s.Wall)
	s.Plan.Walls, s.Plan.Arrangements = []plan.Wall{w}, nil
	if len(s.Chosen) == 0 {
		s.Plan.Modules = nil
		return s
	}
	m, _ := s.Plan.Module(s.Chosen[0])
	s.Plan.Modules = []plan.Module{m}
	return s
}

func typedBack(t *testing.T, subject string, s app.State, f app.Field, want string) {
	t.Helper()
	held := f.Value
	f.Value = "\x00" // what is typed is then an edit, even of nothing
	next, _ := app.Step(s, app.Entered{Field: f, Text: held})
	if held == "" && !f.Optional && (f.Kind == app.LengthField || verb(f)) {
		return // there is nothing in it to type again
	}
	if strings.TrimSpace(held) != held {
		return // white space round words is dropped, here as everywhere
	}
	require.False(t, next.Fields[f.Key].Bad, "%s: %s: %q: %s", subject, f.Key, held, next.Fields[f.Key].Says)
	require.Len(t, next.History.Past, len(s.History.Past)+1, "%s: %s: %q: %s", subject, f.Key, held, next.Toast.Text)
	have, err := plan.Encode(next.Plan)
	require.NoError(t, err)
	require.True(t, want == string(have), "%s: %s: %q became another plan", subject, f.Key, held)
}

// Every edit that a button carries is one that the engine takes, on a plan in order.
func TestEveryButtonDoesWhatItCarries(t *testing.T) {
	for name, p := range subjects(t, 20) {
		states, trees := panels(atWork(t, p))
		for i, s := range states {
			walk(trees[i], func(n Node) {
				for _, h := range n.On {
					tryButton(t, name, s, n, h.Event)
				}
			})
		}
	}
}

func tryButton(t *testing.T, subject string, s app.State, n Node, e app.Event) {
	t.Helper()
	var edits []edit.Edit
	switch e := e.(type) {
	case app.DoLine:
		one, err := edit.Decode([]byte(e.Line))
		require.NoError(t, err, e.Line)
		edits = []edit.Edit{one}
	case app.Do:
		edits = e.Edits
	}
	p := s.Plan
	for _, one := range edits {
		next, _, err := edit.Apply(p, one)
		if one.Do() == "place-brackets" && err != nil {
			require.ErrorContains(t, err, "none of its boards stands as its brackets need it", subject)
			continue // the maker is told what would help
		}
		require.NoError(t, err, "%s: %s", subject, n.Key)
		p = next
	}
}

// A fact that is asked for leads to a field that is there.
func TestWhatIsAskedForHasItsField(t *testing.T) {
	for name, p := range subjects(t, 50) {
		_, trees := panels(atWork(t, p))
		for _, tree := range trees {
			keys := map[string]bool{}
			walk(tree, func(n Node) { keys[n.Key] = true })
			walk(tree, func(n Node) {
				for _, h := range n.On {
					if e, ok := h.Event.(app.Point); ok && e.At.Kind == fieldThing {
						require.True(t, keys[e.At.ID], "%s: %s leads to %s", name, n.Key, e.At.ID)
					}
				}
			})
		}
	}
}

// A plan that is out of order is shown all the same, so that it can be put right.
func TestPlansOutOfOrderAreShown(t *testing.T) {
	breaks := map[string]func(*plan.Plan){
		"no boards":  func(p *plan.Plan) { p.Modules[0].Boards, p.Modules[0].Corners = nil, nil },
		"no corners": func(p *plan.Plan) { p.Modules[0].Corners = nil },
		"corners too many": func(p *plan.Plan) {
			p.Modules[0].Corners = append(p.Modules[0].Corners, p.Modules[0].Corners...)
		},
		"closed of one": func(p *plan.Plan) {
			p.Modules[0].Closed, p.Modules[0].Boards, p.Modules[0].Corners = true, p.Modules[0].Boards[:1], p.Modules[0].Corners[:1]
		},
		"unknown words": func(p *plan.Plan) {
			p.Modules[0].Wood, p.Modules[0].Corners[0].Joint, p.Modules[0].Brackets[0].Kind = "no wood", "glue", "string"
			p.Walls[0].Build, p.Walls[0].CableRule, p.Walls[0].Obstacles[0].Kind, p.Walls[0].Studs.State = "straw", "mine", "cat", "sure"
		},
		"nowhere": func(p *plan.Plan) {
			p.Modules[0].Brackets[0].Board, p.Modules[0].Brackets[1].Board, p.Modules[0].Brackets[1].Divider = 99, 0, "d99"
			p.Modules[0].Lights = []plan.Light{{ID: "l90", First: 98, Last: -1, Face: "C", Strip: "none"}}
			p.Modules[0].Dividers = []plan.Divider{{ID: "d91", From: 99, To: 99}}
		},
	}
	for name, breaks := range breaks {
		p, err := assets.Plan("study")
		require.NoError(t, err)
		breaks(&p)
		_, trees := panels(atWork(t, p))
		for _, tree := range trees {
			checkNames(t, name, tree)
		}
	}
	s := atWork(t, plan.New("in"))
	require.Contains(t, textOf(el("div", "", kids(survey(&s)))), "No wall yet")
}
