package visitor

import (
	"encoding/json"
	"slices"
	"strings"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/runtime"
	. "github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// A Thing is something on the page with a role and a name.
type Thing struct {
	Role, Name string
	node       cdp.BackendNodeID
	is         *accessibility.Node
}

// All returns the things of a role whose name matches: the name itself, or its
// beginning with "…" at its end, or its end with "…" before it. Names are compared with
// plain spaces.
func (b *Tab) All(role, name string) (out []Thing) {
	b.T.Helper()
	for _, n := range b.ofRole(role) {
		t := Thing{Role: role, Name: plain(valueOf(n.Name)), node: n.BackendDOMNodeID, is: n}
		if !n.Ignored && n.BackendDOMNodeID != 0 && matches(t.Name, name) {
			out = append(out, t)
		}
	}
	return out
}

// ofRole asks the accessibility tree. A page that is just being changed is asked again.
func (b *Tab) ofRole(role string) []*accessibility.Node {
	b.T.Helper()
	for range 20 {
		doc, err := Call(b.Ctx, runtime.Evaluate, runtime.EvaluateParams{Expression: "document"})
		require.NoError(b.T, err)
		r, err := Call(b.Ctx, accessibility.QueryAXTree, accessibility.QueryAXTreeParams{ObjectID: doc.Result.ObjectID, Role: role})
		if err == nil {
			return r.Nodes
		}
	}
	return nil
}

func valueOf(v *accessibility.Value) string {
	var s string
	if v != nil {
		_ = json.Unmarshal(v.Value, &s) // of no string, none
	}
	return s
}

// plain makes all spaces plain ones, and single.
func plain(s string) string {
	return strings.Join(strings.Fields(strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(s)), " ")
}

func matches(name, pattern string) bool {
	if end, ok := strings.CutPrefix(pattern, "…"); ok {
		return strings.HasSuffix(name, end)
	}
	if begin, ok := strings.CutSuffix(pattern, "…"); ok {
		return strings.HasPrefix(name, begin)
	}
	return name == pattern
}

// Has reports whether there is such a thing now.
func (b *Tab) Has(role, name string) bool { b.T.Helper(); return len(b.All(role, name)) > 0 }

// See waits until there is such a thing, and returns it; of several, the first.
func (b *Tab) See(role, name string) (t Thing) {
	b.T.Helper()
	b.Wait(role+" “"+name+"”", func() bool {
		all := b.All(role, name)
		if len(all) > 0 {
			t = all[0]
		}
		return len(all) > 0
	})
	return t
}

// Gone waits until there is no such thing.
func (b *Tab) Gone(role, name string) {
	b.T.Helper()
	b.Wait(role+" “"+name+"” to go", func() bool { return !b.Has(role, name) })
}

// Names returns the names of all things of a role.
func (b *Tab) Names(role string) (out []string) {
	b.T.Helper()
	for _, t := range b.All(role, "…") {
		out = append(out, t.Name)
	}
	return out
}

// Says waits until the page says something, anywhere in its visible text.
func (b *Tab) Says(text string) {
	b.T.Helper()
	b.Wait("the page to say “"+text+"”", func() bool { return strings.Contains(plain(b.Text("document.body.innerText")), text) })
}

// State returns a property of a thing, such as "pressed", "expanded", "checked",
// "disabled", "focused".
func (t Thing) State(name string) string {
	i := slices.IndexFunc(t.is.Properties, func(p *accessibility.Property) bool { return string(p.Name) == name })
	if i < 0 {
		return ""
	}
	return strings.Trim(string(t.is.Properties[i].Value.Value), `"`)
}

// Described returns the words that describe a thing besides its name.
func (t Thing) Described() string { return plain(valueOf(t.is.Description)) }

// Value returns what stands in a control.
func (b *Tab) Value(t Thing) string {
	b.T.Helper()
	return b.on(t, `function() { return String(this.value) }`)
}

// on calls a function on the element of a thing.
func (b *Tab) on(t Thing, function string) string {
	b.T.Helper()
	o, err := Call(b.Ctx, dom.ResolveNode, dom.ResolveNodeParams{BackendNodeID: t.node})
	require.NoError(b.T, err, "%s “%s” is gone", t.Role, t.Name)
	yes := true
	r, err := Call(b.Ctx, runtime.CallFunctionOn, runtime.CallFunctionOnParams{FunctionDeclaration: function, ObjectID: o.Object.ObjectID, ReturnByValue: &yes})
	require.NoError(b.T, err)
	require.Nil(b.T, r.ExceptionDetails)
	var s string
	_ = json.Unmarshal(r.Result.Value, &s) // of no string, none
	return s
}

// place scrolls a thing into view and returns a point of it that nothing covers.
func (b *Tab) place(t Thing) (x, y float64, ok bool) {
	b.T.Helper()
	text := b.on(t, `function() {
	  const seen = r => r.width > 0 && r.bottom > 0 && r.right > 0 && r.top < innerHeight && r.left < innerWidth
	  const free = () => {
	    for (const r of this.getClientRects()) if (seen(r))
	      for (const fy of [.5, .25, .75]) for (const fx of [.5, .25, .75]) {
	        const x = r.left + fx * r.width, y = r.top + fy * r.height, at = document.elementFromPoint(x, y)
	        if (at && (at === this || this.contains(at) || (this.labels && [...this.labels].some(l => l.contains(at))))) return JSON.stringify([x, y])
	      }
	  }
	  let at = free()
	  if (!at) { this.scrollIntoView({block: 'center', behavior: 'instant'}); at = free() }
	  return at || '' }`)
	var p [2]float64
	if text == "" || json.Unmarshal([]byte(text), &p) != nil {
		return 0, 0, false
	}
	return p[0], p[1], true
}

// Focused returns the role and name of what has the focus.
func (b *Tab) Focused() Thing {
	b.T.Helper()
	o, err := Call(b.Ctx, runtime.Evaluate, runtime.EvaluateParams{Expression: "document.activeElement"})
	require.NoError(b.T, err)
	r, err := Call(b.Ctx, accessibility.GetPartialAXTree, accessibility.GetPartialAXTreeParams{ObjectID: o.Result.ObjectID})
	require.NoError(b.T, err)
	for _, n := range r.Nodes {
		if !n.Ignored {
			return Thing{Role: valueOf(n.Role), Name: plain(valueOf(n.Name)), node: n.BackendDOMNodeID, is: n}
		}
	}
	return Thing{}
}
