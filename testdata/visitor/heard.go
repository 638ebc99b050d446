package visitor

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/runtime"
	. "github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// Heard returns the page as Chromium's accessibility tree has it, a line each: role,
// name, what describes it, value, and its states; what is inside stands indented below.
// What a reader steps over or says once is left out: boxes without role and name, the
// label of a control that is named by it, the runs of a text that its owner has as its
// name or value. Runs of text that follow each other are one line.
func (b *Tab) Heard() string {
	b.T.Helper()
	b.Calm()
	r, err := Call(b.Ctx, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
	require.NoError(b.T, err)
	require.NotEmpty(b.T, r.Nodes)
	h := hearing{of: map[accessibility.NodeID]*accessibility.Node{}, current: b.current()}
	for _, n := range r.Nodes {
		h.of[n.NodeID] = n
	}
	h.write(r.Nodes[0], "", "")
	h.flush()
	return h.out.String()
}

// current finds what is marked as the present one of several, which this tree lacks.
func (b *Tab) current() map[cdp.BackendNodeID]bool {
	out := map[cdp.BackendNodeID]bool{}
	for i := range int(b.number(`document.querySelectorAll('[aria-current]').length`)) {
		o, err := Call(b.Ctx, runtime.Evaluate, runtime.EvaluateParams{Expression: fmt.Sprintf("document.querySelectorAll('[aria-current]')[%d]", i)})
		require.NoError(b.T, err)
		n, err := Call(b.Ctx, dom.DescribeNode, dom.DescribeNodeParams{ObjectID: o.Result.ObjectID})
		require.NoError(b.T, err)
		out[n.Node.BackendNodeID] = true
	}
	return out
}

// number returns what an expression comes to, as a number.
func (b *Tab) number(js string) float64 {
	b.T.Helper()
	f, err := strconv.ParseFloat(b.Text(js), 64)
	require.NoError(b.T, err, js)
	return f
}

// A hearing writes a tree down.
type hearing struct {
	of      map[accessibility.NodeID]*accessibility.Node
	current map[cdp.BackendNodeID]bool
	out     strings.Builder
	text    []string // runs that are one line with what follows
	indent  string   // of that line
}

// plainBoxes are the roles of boxes that say nothing themselves.
var plainBoxes = []string{"generic", "none", "rowgroup", "paragraph", "RootWebArea", "ListMarker"}

// write writes a node and what is inside it; within is what its owner has said already.
func (h *hearing) write(n *accessibility.Node, indent, within string) {
	role, name := valueOf(n.Role), plain(valueOf(n.Name))
	switch {
	case role == "LabelText" || role == "InlineTextBox" || role == "MenuListPopup":
		if role == "LabelText" { // it may hold the control itself
			h.inside(n, indent, name+within+h.textOf(n))
		}
		return
	case role == "StaticText":
		if !n.Ignored && name != "" && !strings.Contains(within, name) {
			h.text, h.indent = append(h.text, name), indent
		}
		return
	case role == "LineBreak":
		h.flush()
		return
	case n.Ignored || slices.Contains(plainBoxes, role):
		if role == "paragraph" {
			h.flush()
		}
		h.inside(n, indent, within)
		return
	}
	h.flush()
	if role == "cell" || role == "caption" {
		name = "" // it is what stands inside
	}
	h.out.WriteString(indent + h.spoken(n, role, name) + "\n")
	h.inside(n, indent+"  ", name+"\n"+plain(valueOf(n.Value)))
	h.flush()
}

func (h *hearing) inside(n *accessibility.Node, indent, within string) {
	for _, id := range n.ChildIDs {
		if kid := h.of[id]; kid != nil {
			h.write(kid, indent, within)
		}
	}
}

// textOf is all text inside a node.
func (h *hearing) textOf(n *accessibility.Node) (out string) {
	for _, id := range n.ChildIDs {
		if kid := h.of[id]; kid != nil {
			if valueOf(kid.Role) == "StaticText" {
				out += "\n" + plain(valueOf(kid.Name))
			}
			out += h.textOf(kid)
		}
	}
	return out
}

// flush ends a line of text.
func (h *hearing) flush() {
	if len(h.text) > 0 {
		h.out.WriteString(h.indent + "“" + strings.Join(h.text, " ") + "”\n")
	}
	h.text = nil
}

// spoken is the line of one node.
func (h *hearing) spoken(n *accessibility.Node, role, name string) string {
	line := role
	if name != "" {
		line += " “" + name + "”"
	}
	if v := plain(valueOf(n.Value)); v != "" {
		line += " = " + v
	}
	if d := plain(valueOf(n.Description)); d != "" {
		line += " — " + d
	}
	if h.current[n.BackendDOMNodeID] {
		line += " [current]"
	}
	for _, p := range n.Properties {
		if s := stateOf(role, p); s != "" {
			line += " [" + s + "]"
		}
	}
	return line
}

// stateOf is a property that a reader says, in a word or two; nothing for what is so of
// every control.
func stateOf(role string, p *accessibility.Property) string {
	v := ""
	if p.Value != nil {
		v = strings.Trim(string(p.Value.Value), `"`)
	}
	switch name := string(p.Name); name {
	case "level":
		if role == "heading" {
			return name + " " + v
		}
	case "pressed", "checked", "expanded":
		return name + " " + v
	case "disabled", "invalid", "required", "busy":
		if v != "false" {
			return name
		}
	case "live":
		return name + " " + v
	}
	return ""
}
