package panel

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/wasm/app"
)

// desk opens an example and plays events.
func desk(t testing.TB, example string, events ...app.Event) app.State {
	t.Helper()
	s, _ := app.Step(app.State{}, app.Started{Now: "14:02", Size: app.Size{Width: 754, Height: 660}})
	for _, e := range append([]app.Event{app.Open{Example: example}, app.Reckon{}}, events...) {
		s, _ = app.Step(s, e)
	}
	require.Equal(t, app.AtWork, s.Screen, s.Problem)
	return s
}

// eachDesk runs a check on every example, in every arrangement, off the bench and at it.
func eachDesk(t *testing.T, job app.Job, check func(t *testing.T, s app.State)) {
	for _, name := range assets.Names() {
		for _, bench := range []bool{false, true} {
			s := desk(t, name, app.Go{Job: job})
			if bench {
				s, _ = app.Step(s, app.Show{What: app.Bench})
			}
			for _, a := range s.Plan.Arrangements {
				s, _ = app.Step(s, app.ShowArrangement{ID: a.ID})
				title := name + "/" + a.ID
				if bench {
					title += "/bench"
				}
				t.Run(title, func(t *testing.T) { check(t, s) })
			}
		}
	}
}

// eachNode calls do for every node of trees, parents first.
func eachNode(nodes []Node, do func(Node)) {
	for _, n := range nodes {
		do(n)
		eachNode(n.Kids, do)
	}
}

// atKey returns the first node of that key.
func atKey(t testing.TB, nodes []Node, key string) Node {
	t.Helper()
	var found *Node
	eachNode(nodes, func(n Node) {
		if n.Key == key && found == nil {
			found = &n
		}
	})
	require.NotNil(t, found, "nothing has the key %s", key)
	return *found
}

func hasKey(nodes []Node, key string) (found bool) {
	eachNode(nodes, func(n Node) { found = found || n.Key == key })
	return found
}

// reads returns the text of a tree as it is read, blanks made plain.
func reads(nodes ...Node) string {
	var b strings.Builder
	eachNode(nodes, func(n Node) { b.WriteString(n.Text) })
	return strings.NewReplacer(narrow, "", nobreak, " ").Replace(b.String())
}

func deskAttr(n Node, name string) (string, bool) {
	for _, a := range n.Attrs {
		if a.Name == name {
			return a.Value, true
		}
	}
	return "", false
}

// rowsOf returns the cells of a table as text, its header first.
func rowsOf(nodes []Node) (rows [][]string) {
	eachNode(nodes, func(n Node) {
		if n.Tag != "tr" {
			return
		}
		var cells []string
		for _, k := range n.Kids {
			cells = append(cells, reads(k))
		}
		rows = append(rows, cells)
	})
	return rows
}

// click plays what a button sends.
func click(t testing.TB, s app.State, nodes []Node, key string) (app.State, []app.Effect) {
	t.Helper()
	for _, h := range atKey(t, nodes, key).On {
		if h.On == "click" {
			return app.Step(s, h.Event)
		}
	}
	require.Fail(t, "no button", key)
	return s, nil
}

// requireSound asks what every panel owes: keys that tell neighbours and controls apart,
// names, headers and captions, no styles, no missing words.
func requireSound(t *testing.T, nodes []Node) {
	t.Helper()
	ids, controls, names := map[string]bool{}, map[string]bool{}, map[string]bool{}
	unique := func(in map[string]bool, key, what string) {
		require.False(t, in[key], "%s twice: %s", what, key)
		in[key] = true
	}
	neighbours(t, nodes)
	eachNode(nodes, func(n Node) {
		neighbours(t, n.Kids)
		require.NotContains(t, n.Text, "?]", "words are missing")
		require.NotContains(t, n.Text, "\ufffd")
		if id, ok := deskAttr(n, "id"); ok {
			unique(ids, id, "id")
		}
		_, styled := deskAttr(n, "style")
		require.False(t, styled, "a style attribute")
		switch n.Tag {
		case "button":
			unique(controls, n.Key, "control")
			name, ok := deskAttr(n, "aria-label")
			if !ok {
				name = reads(n)
			}
			require.NotEmpty(t, name, n.Key)
			unique(names, name, "button named")
			require.Contains(t, strings.ToLower(name), strings.ToLower(firstWord(reads(n))), "the visible words belong to the name")
		case "input", "select":
			unique(controls, n.Key, "control")
			id, _ := deskAttr(n, "id")
			require.True(t, labelled(nodes, id), "no label for %s", n.Key)
		case "table":
			requireTable(t, n)
		case "h3", "h4":
			require.NotEmpty(t, reads(n))
		}
	})
}

func firstWord(s string) string {
	first, _, _ := strings.Cut(strings.TrimSpace(s), " ")
	return first
}

func neighbours(t *testing.T, kids []Node) {
	seen := map[string]bool{}
	for _, k := range kids {
		if k.Key != "" {
			require.False(t, seen[k.Key], "two neighbours of the key %s", k.Key)
			seen[k.Key] = true
		}
	}
}

func labelled(nodes []Node, id string) (found bool) {
	eachNode(nodes, func(n Node) {
		if of, ok := deskAttr(n, "for"); ok && n.Tag == "label" && of == id && reads(n) != "" {
			found = true
		}
	})
	return found
}

func requireTable(t *testing.T, n Node) {
	require.Equal(t, "caption", n.Kids[0].Tag)
	require.NotEmpty(t, reads(n.Kids[0]))
	rows := rowsOf([]Node{n})
	require.Greater(t, len(rows), 1, "a table without rows")
	for _, h := range rows[0] {
		require.NotEmpty(t, h)
	}
	for _, r := range rows[1:] {
		require.Len(t, r, len(rows[0]))
	}
	eachNode(n.Kids, func(k Node) {
		if k.Tag == "th" {
			scope, _ := deskAttr(k, "scope")
			require.Equal(t, "col", scope)
		}
	})
}

// requireFieldsWork enters a new value into every field and asks that it changes the plan.
func requireFieldsWork(t *testing.T, s app.State, nodes []Node) {
	t.Helper()
	eachNode(nodes, func(n Node) {
		for _, h := range n.On {
			e, ok := h.Event.(app.Entered)
			if !ok || h.On != "change" {
				continue
			}
			text := "Ash and Elder"
			if e.Field.Kind == app.LengthField {
				text = "17"
			}
			next, _ := app.Step(s, app.Entered{Field: e.Field, Text: text})
			require.Empty(t, next.Fields[e.Field.Key].Says, e.Field.Key)
			require.Len(t, next.History.Past, len(s.History.Past)+1, e.Field.Key)
			if e.Field.Optional || e.Field.Kind == app.TextField {
				e.Field.Value = text
				gone, _ := app.Step(next, app.Entered{Field: e.Field, Text: ""})
				require.Len(t, gone.History.Past, len(s.History.Past)+2, e.Field.Key)
			}
		}
	})
}
