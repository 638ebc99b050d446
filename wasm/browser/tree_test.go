package browser

import (
	"fmt"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"ledgewright/engine/unit"
	"ledgewright/wasm/app"
	"ledgewright/wasm/panel"
	"pgregory.net/rapid"
)

func el(tag string, kids ...panel.Node) panel.Node { return &panel.Element{Tag: tag, Kids: kids} }
func text(s string) panel.Node                     { return &panel.Element{Text: s} }

func keyed(key string, n panel.Node) panel.Node { n.Key = key; return n }

func with(n panel.Node, pairs ...string) panel.Node {
	for i := 0; i < len(pairs); i += 2 {
		n.Attrs = append(n.Attrs, panel.Attr{Name: pairs[i], Value: pairs[i+1]})
	}
	return n
}

func on(kind string, e app.Event, n panel.Node) panel.Node {
	n.On = append(n.On, panel.Handler{On: kind, Event: e})
	return n
}

// built is the page as it stands when it is made from nothing.
func built(n panel.Node) string {
	d, t := newFake()
	t.Apply(n)
	return d.body.String()
}

var tags = []string{"div", "p", "li", "button", "input", "input", "select", "textarea", "dialog", "g"}

// node draws a page. Keys are unique among neighbours, as they must be.
func drawNode(depth int) *rapid.Generator[panel.Node] {
	return rapid.Custom(func(t *rapid.T) panel.Node {
		if rapid.IntRange(0, 4).Draw(t, "text") == 0 {
			return text(rapid.SampledFrom([]string{"a", "b", "816"}).Draw(t, "run"))
		}
		n := &panel.Element{Tag: rapid.SampledFrom(tags).Draw(t, "tag")}
		n.SVG = n.Tag == "g"
		for _, name := range []string{"class", "tabindex", "data-here", "hidden"} {
			if rapid.IntRange(0, 3).Draw(t, name) == 0 {
				n = with(n, name, rapid.SampledFrom([]string{"", "1", "2"}).Draw(t, "value"))
			}
		}
		if rapid.IntRange(0, 3).Draw(t, "prop") == 0 {
			n.Props = []panel.Attr{{Name: "--x", Value: rapid.SampledFrom([]string{"1px", "2px"}).Draw(t, "px")}}
		}
		if rapid.Bool().Draw(t, "handler") {
			n = on("click", app.Undo{}, n)
		}
		return drawInside(t, n, depth)
	})
}

func drawInside(t *rapid.T, n panel.Node, depth int) panel.Node {
	some := rapid.SampledFrom([]string{"", "1", "2960"}).Draw(t, "holds")
	switch n.Tag {
	case "input":
		kind := rapid.SampledFrom([]string{"text", "checkbox", "radio"}).Draw(t, "type")
		n = with(n, "type", kind)
		switch {
		case kind == "text":
			n = with(n, "value", some)
		case some != "":
			n = with(n, "checked", "")
		}
		if kind == "radio" {
			// One name for each radio button: a page with two of one name on is no page.
			n = with(n, "name", strconv.Itoa(rapid.IntRange(0, 1<<30).Draw(t, "name")))
		}
	case "textarea":
		n.Kids = []panel.Node{text(some)}
	case "select":
		count := rapid.IntRange(1, 4).Draw(t, "options")
		at := rapid.IntRange(-1, count-1).Draw(t, "selected")
		keys := rapid.Permutation([]string{"", "a", "b", "c", "d"}).Draw(t, "option keys")
		for i := range count {
			o := keyed(keys[i], el("option", text(strconv.Itoa(i))))
			if i == at {
				o = with(o, "selected", "")
			}
			n.Kids = append(n.Kids, o)
		}
	default:
		if n.Tag == "dialog" && some != "" {
			n = with(n, "open", "")
		}
		if depth > 0 {
			n.Kids = drawKids(t, depth-1)
		}
	}
	return n
}

func drawKids(t *rapid.T, depth int) []panel.Node {
	kids := rapid.SliceOfN(drawNode(depth), 0, 5).Draw(t, "kids")
	keys := rapid.Permutation([]int{0, 1, 2, 3, 4, 5, 6, 7, 8}).Draw(t, "keys")
	for i := range kids {
		if kids[i].Tag != "" && keys[i] < 6 {
			kids[i].Key = "k" + strconv.Itoa(keys[i])
		}
	}
	return kids
}

func drawPage(t *rapid.T, name string) panel.Node {
	n := el("div")
	n.Kids = rapid.Custom(func(t *rapid.T) []panel.Node { return drawKids(t, 3) }).Draw(t, name)
	return n
}

// What the difference leaves is what the page is when made from nothing.
func TestDifferenceLeavesThePage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, tree := newFake()
		for i := range 4 {
			p := drawPage(t, "page "+strconv.Itoa(i))
			tree.Apply(p)
			require.Equal(t, built(p), d.body.String())
		}
	})
}

func TestSamePageChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, tree := newFake()
		tree.Apply(drawPage(t, "before"))
		p := drawPage(t, "page")
		tree.Apply(p)
		d.ops, d.log = 0, nil
		tree.Apply(p)
		require.Zero(t, d.ops, "%v", d.log)
	})
}

// No mark is left behind by what is gone, and each is found under its own.
func TestMarksFollowThePage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, tree := newFake()
		for i := range 3 {
			tree.Apply(drawPage(t, "page "+strconv.Itoa(i)))
		}
		seen := 0
		d.body.each(func(f *fake) {
			if f.mark != 0 {
				seen++
				require.Same(t, f, tree.marked[f.mark].el.(*fake))
			}
		})
		require.Len(t, tree.marked, seen)
	})
}

// shuffle draws another order of a page's kids, some gone, some new.
func shuffle(t *rapid.T, kids []panel.Node, must string) []panel.Node {
	out := rapid.Permutation(kids).Draw(t, "order")
	var now []panel.Node
	for i, k := range out {
		if k.Key == must || rapid.Bool().Draw(t, "stays "+strconv.Itoa(i)) {
			now = append(now, k)
		}
		if rapid.IntRange(0, 3).Draw(t, "new "+strconv.Itoa(i)) == 0 {
			now = append(now, el("p", text("new")))
		}
	}
	return now
}

// The focus stays on its element, whatever happens about it: that element is neither
// replaced nor taken out for a moment.
func TestFocusIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, tree := newFake()
		var kids []panel.Node
		n := rapid.IntRange(1, 9).Draw(t, "kids")
		for i := range n {
			kids = append(kids, keyed("k"+strconv.Itoa(i), el("div", with(el("input"), "value", "1"))))
		}
		tree.Apply(el("div", kids...))
		at := rapid.IntRange(0, n-1).Draw(t, "focus")
		field := d.body.kids[0].kids[at].kids[0]
		field.Focus()
		for range 3 {
			now := shuffle(t, kids, "k"+strconv.Itoa(at))
			d.log = nil
			tree.Apply(el("div", now...))
			require.Same(t, field, d.active)
			require.NotContains(t, d.log, "focus", "it was never lost")
			require.Equal(t, built(el("div", now...)), d.body.String())
		}
	})
}

// One without a key keeps the focus as long as there is a place that it can take.
func TestFocusIsKeptWithoutAKey(t *testing.T) {
	d, tree := newFake()
	tree.Apply(el("div", el("input"), el("p"), el("p")))
	input := d.body.kids[0].kids[0]
	input.Focus()
	for _, page := range []panel.Node{
		el("div", el("p"), el("h2"), el("input"), el("p")),
		el("div", el("input")),
		el("div", el("p"), el("input"), el("h2")),
	} {
		tree.Apply(page)
		require.Same(t, input, d.active)
		require.Equal(t, built(page), d.body.String())
	}
}

func TestFocusFollowsTheKeyElsewhere(t *testing.T) {
	d, tree := newFake()
	b := keyed("undo", el("button"))
	tree.Apply(el("div", el("p", b), el("ul")))
	d.body.kids[0].kids[0].kids[0].Focus()
	tree.Apply(el("div", el("p"), el("ul", b)))
	require.Same(t, d.body.kids[0].kids[1].kids[0], d.active)
}

// The keyboard goes on beside what is gone; no field is opened by that.
func TestFocusOfWhatIsGoneGoesToANeighbour(t *testing.T) {
	d, tree := newFake()
	row := func(key string) panel.Node { return keyed(key, el("li", el("input"), el("button"))) }
	tree.Apply(el("div", el("ul", row("a"), row("b")), el("ol", row("c"))))
	list := d.body.kids[0].kids[0]
	list.kids[1].kids[1].Focus()
	tree.Apply(el("div", el("ul", row("a")), el("ol", row("c"))))
	require.Same(t, list.kids[0].kids[1], d.active)
	tree.Apply(el("div", el("ol", row("c"))))
	require.Nil(t, d.active, "nothing near is left")
}

// Keyed kids move by the fewest moves: all but a longest rising run.
func TestFewestMoves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, tree := newFake()
		n := rapid.IntRange(1, 7).Draw(t, "n")
		var kids []panel.Node
		for i := range n {
			kids = append(kids, keyed(strconv.Itoa(i), el("p")))
		}
		tree.Apply(el("div", kids...))
		order := rapid.Permutation(kids).Draw(t, "order")
		d.ops = 0
		tree.Apply(el("div", order...))
		require.Equal(t, n-longestRun(order), d.ops)
	})
}

// longestRun tries every subset.
func longestRun(order []panel.Node) (best int) {
	for set := range 1 << len(order) {
		last, count, rising := "", 0, true
		for i, n := range order {
			if set>>i&1 == 1 {
				rising = rising && n.Key > last
				last = n.Key
				count++
			}
		}
		if rising {
			best = max(best, count)
		}
	}
	return best
}

func field(value string) panel.Node {
	f := app.Field{Key: "length", Value: value}
	return on("change", app.Entered{Field: f}, on("input", app.TypedInto{Field: f}, keyed("length", with(el("input"), "value", value))))
}

// typed does as a person: text comes into the control, and the document tells.
func typed(tree *Tree, f *fake, s string) Answer {
	f.value = s
	return tree.Hear(Signal{On: "input", Mark: f.mark})
}

func TestTypingIsKept(t *testing.T) {
	d, tree := newFake()
	tree.Apply(el("div", field("816")))
	input := d.body.kids[0].kids[0]
	require.Equal(t, "816", input.value)
	input.Focus()

	a := typed(tree, input, "90")
	require.Equal(t, "90", a.Event.(app.TypedInto).Text)
	tree.Apply(el("div", field("816")))
	require.Equal(t, "90", input.value, "the page does not know of the typing")
	tree.Apply(el("div", field("820")))
	require.Equal(t, "90", input.value, "the page says something else, but not because of the typing")

	a = typed(tree, input, "900")
	require.Equal(t, "900", a.Event.(app.TypedInto).Text)
	tree.Apply(el("div", field("900")))
	tree.Apply(el("div", field("900 1/2")))
	require.Equal(t, "900 1/2", input.value, "the page followed the typing, and an arrow key changed the figure")
}

func TestAFieldOfWhichThePageSaysNothingKeepsItsText(t *testing.T) {
	d, tree := newFake()
	page := func(title string) panel.Node {
		return el("form", el("h2", text(title)), with(el("input"), "name", "width"), with(el("input"), "name", "height"))
	}
	tree.Apply(page("New"))
	width, height := d.body.kids[0].kids[1], d.body.kids[0].kids[2]
	width.Focus()
	typed(tree, width, "2960")
	height.Focus()
	tree.Hear(Signal{On: "change", Mark: width.mark})
	typed(tree, height, "wide")
	tree.Apply(page("New, and what is wrong"))
	require.Equal(t, "2960 wide", width.value+" "+height.value)
}

func TestFinishedFieldShowsWhatThePageSays(t *testing.T) {
	for _, leave := range []struct {
		name string
		do   func(d *fakeDocument, tree *Tree, f *fake) Answer
	}{
		{"enter", func(_ *fakeDocument, tree *Tree, f *fake) Answer {
			return tree.Hear(Signal{On: "keydown", Mark: f.mark, Key: "Enter"})
		}},
		{"leaving", func(d *fakeDocument, tree *Tree, f *fake) Answer {
			d.active = nil
			return tree.Hear(Signal{On: "change", Mark: f.mark})
		}},
	} {
		t.Run(leave.name, func(t *testing.T) {
			d, tree := newFake()
			tree.Apply(field("816"))
			input := d.body.kids[0]
			input.Focus()
			typed(tree, input, "800+16")
			a := leave.do(d, tree, input)
			require.Equal(t, "800+16", a.Event.(app.Entered).Text)
			tree.Apply(field("816"))
			require.Equal(t, "816", input.value)
		})
	}
}

func TestControlsFollowThePageAfterAPersonTouchedThem(t *testing.T) {
	d, tree := newFake()
	radio := func(name, checked string) panel.Node {
		n := with(el("input"), "type", "radio", "name", "view", "value", name)
		if name == checked {
			n = with(n, "checked", "")
		}
		return n
	}
	page := el("div",
		on("change", app.Entered{Field: app.Field{Kind: app.TickField}}, with(el("input"), "type", "checkbox")),
		on("change", app.Set{Name: "units"}, el("select", el("option", text("mm")), el("option", text("inch")))),
		radio("day", "day"), radio("evening", "day"))
	tree.Apply(page)
	kids := d.body.kids[0].kids
	want := d.body.String()

	kids[0].tick(true)
	require.Equal(t, "true", tree.Hear(Signal{On: "change", Mark: kids[0].mark}).Event.(app.Entered).Text)
	kids[1].pick(1)
	kids[1].value = "inch"
	require.Equal(t, app.Set{Name: "units", Value: "inch"}, tree.Hear(Signal{On: "change", Mark: kids[1].mark}).Event)
	kids[1].value = ""
	kids[3].tick(true)
	tree.Hear(Signal{On: "change", Mark: kids[3].mark})

	tree.Apply(page) // the page refused all of it
	require.Equal(t, want, d.body.String())
}

// An option that is chosen stays so when it moves, in a browser; the page means the one
// that it says.
func TestChoiceFollowsThePageWhenOptionsMove(t *testing.T) {
	d, tree := newFake()
	option := func(key string) panel.Node { return keyed(key, el("option", text(key))) }
	tree.Apply(el("select", option("day"), with(option("evening"), "selected", "")))
	list := d.body.kids[0]
	require.Equal(t, 1, list.option())
	tree.Apply(el("select", option("evening"), with(option("day"), "selected", "")))
	require.Equal(t, 1, list.option())
}

func TestDialogOpensOverThePageAndClosesBeforeItGoes(t *testing.T) {
	d, tree := newFake()
	open := keyed("d", with(el("dialog", text("Move to")), "open", ""))
	tree.Apply(el("div", open))
	dialog := d.body.kids[0].kids[0]
	require.True(t, dialog.modal)
	require.NotContains(t, dialog.attrs, "open")

	require.Equal(t, Answer{Event: app.Dismiss{}, Prevent: true}, tree.Hear(Signal{On: "cancel", Mark: dialog.mark}))
	tree.Apply(el("div", keyed("d", el("dialog", text("Move to")))))
	require.False(t, dialog.modal)

	tree.Apply(el("div", open))
	d.log = nil
	tree.Apply(el("div"))
	require.Equal(t, []string{"close", "remove dialog"}, d.log)
}

func TestDialogThatClosedOfItselfOpensAgain(t *testing.T) {
	d, tree := newFake()
	open := on("cancel", app.Dismiss{}, with(el("dialog"), "open", ""))
	tree.Apply(open)
	dialog := d.body.kids[0]
	dialog.modal = false
	require.Equal(t, app.Dismiss{}, tree.Hear(Signal{On: "close", Mark: dialog.mark}).Event)
	tree.Apply(open)
	require.True(t, dialog.modal, "the page still says that it is open")
}

func TestScrollsToWhatAppears(t *testing.T) {
	d, tree := newFake()
	tree.Apply(el("ul", el("li"), with(el("li"), "data-here", "")))
	list := d.body.kids[0]
	require.Equal(t, 1, list.kids[1].scrolled)
	tree.Apply(el("ul", with(el("li"), "data-here", ""), with(el("li"), "data-here", "")))
	require.Equal(t, 1, list.kids[0].scrolled)
	require.Equal(t, 1, list.kids[1].scrolled, "it was there already")
}

func TestNothingIsReadAsProgramOrStyle(t *testing.T) {
	d, tree := newFake()
	tree.Apply(with(el("a"), "onclick", "x()", "style", "color:red", "srcdoc", "<p>", "href", "#panel"))
	require.Equal(t, map[string]string{"href": "#panel"}, d.body.kids[0].attrs)
}

func TestHeldElementIsTheOneWithTheHand(t *testing.T) {
	_, tree := newFake()
	tree.Apply(el("div", el("p")))
	_, ok := tree.Held()
	require.False(t, ok)
	tree.Apply(el("div", el("p"), with(el("div"), "data-hand", "")))
	first, ok := tree.Held()
	require.True(t, ok)
	tree.Apply(el("div", with(el("div"), "data-hand", ""), el("p")))
	again, _ := tree.Held()
	require.Same(t, first, again)
	tree.Apply(el("div"))
	_, ok = tree.Held()
	require.False(t, ok)
}

// A page may keep a part of the last one; a control in it that a person touched is set
// right even so.
func TestKeptPartCostsNothingUntilItIsTouched(t *testing.T) {
	d, tree := newFake()
	part := []panel.Node{on("change", app.Undo{}, with(el("input"), "type", "checkbox")), el("p")}
	tree.Apply(el("div", part...))
	box := d.body.kids[0].kids[0]
	tree.Apply(el("div", part...))
	box.tick(true)
	tree.Hear(Signal{On: "change", Mark: box.mark})
	tree.Apply(el("div", part...))
	require.False(t, box.checked)

	allocations := testing.AllocsPerRun(10, func() { tree.Apply(&panel.Element{Tag: "div", Kids: part}) })
	require.LessOrEqual(t, allocations, 2.0)
}

// While a part of the page is still to come, what a person put into a control there is
// left alone; the whole page sets it right.
func TestPartOfAPageLeavesTheRestAlone(t *testing.T) {
	d, tree := newFake()
	kept := on("change", app.Undo{}, with(el("input"), "type", "checkbox"))
	tree.Apply(el("div", kept, text("1")))
	box := d.body.kids[0].kids[0]
	box.tick(true)
	tree.Hear(Signal{On: "change", Mark: box.mark})
	tree.ApplyPart(el("div", kept, text("2")))
	require.True(t, box.checked)
	require.Equal(t, "2", d.body.kids[0].kids[1].text)
	tree.Apply(el("div", kept, text("2")))
	require.False(t, box.checked)
}

func TestRootSpeaksForTheDocument(t *testing.T) {
	_, tree := newFake()
	require.Empty(t, tree.Root("data-view"))
	tree.Apply(with(el("div"), "data-view", "evening"))
	require.Equal(t, "evening", tree.Root("data-view"))
}

// A page of the size of a panel with its picture, six rows of which change.
func BenchmarkApplySixRows(b *testing.B) {
	page := func(value int) panel.Node {
		rows := el("ul")
		for i := range 240 {
			n := i
			if i < 6 {
				n = value
			}
			rows.Kids = append(rows.Kids, keyed(strconv.Itoa(i), with(el("li", text(fmt.Sprint(unit.Length(n)))), "class", "row")))
		}
		return rows
	}
	_, tree := newFake()
	for i := range b.N {
		tree.Apply(page(i))
	}
}
