package browser

import (
	"testing"

	"github.com/stretchr/testify/require"
	"ledgewright/wasm/app"
	"ledgewright/wasm/panel"
)

// heard applies a page and sends a signal from its element of that tag.
func heard(t *testing.T, page panel.Node, tag string, values map[string]string, s Signal) Answer {
	d, tree := newFake()
	tree.Apply(page)
	d.body.each(func(f *fake) {
		if v, ok := values[f.attrs["name"]]; ok && f.tag != "form" {
			f.value = v
		}
		if f.tag == tag && s.Mark == 0 {
			s.Mark = f.mark
		}
	})
	require.NotZero(t, s.Mark, "no marked %s", tag)
	return tree.Hear(s)
}

func TestClickMeansTheNearestHandler(t *testing.T) {
	row := on("click", app.Choose{Module: "m1"}, el("li", el("button", text("Box")), on("click", app.Undo{}, el("a"))))
	require.Equal(t, Answer{Event: app.Choose{Module: "m1"}}, heard(t, row, "button", nil, Signal{On: "click"}))
	require.Equal(t, Answer{Event: app.Undo{}, Prevent: true}, heard(t, row, "a", nil, Signal{On: "click"}))
	require.Equal(t, Answer{}, heard(t, el("p", el("button")), "button", nil, Signal{On: "click"}))
}

func TestControlInARowIsNotTheRow(t *testing.T) {
	row := on("click", app.Choose{Module: "m1"}, el("li", el("input"), on("click", app.Undo{}, el("select"))))
	require.Equal(t, Answer{}, heard(t, row, "input", nil, Signal{On: "click"}))
	require.Equal(t, Answer{Event: app.Undo{}}, heard(t, row, "select", nil, Signal{On: "click"}))
}

func TestKeysOfTheStripLeaveTheFocus(t *testing.T) {
	_, tree := newFake()
	tree.Apply(el("div", on("click", app.PressKey{Key: "½"}, el("button", el("span"))), on("click", app.Undo{}, el("button"))))
	require.True(t, tree.KeepsFocus(1))
	require.False(t, tree.KeepsFocus(2))
	require.False(t, tree.KeepsFocus(0))
}

// A key of the strip goes into its field where the caret stands, and counts as typed there.
func TestKeysOfTheStripGoToTheCaret(t *testing.T) {
	d, tree := newFake()
	page := func(value string) panel.Node {
		return el("div", field(value), on("click", app.PressKey{Key: " 1/2", Into: "length"}, el("button")),
			on("click", app.PressKey{Key: "/", Into: "gone"}, el("button")))
	}
	tree.Apply(page("20 mm"))
	typed := d.body.kids[0].kids[0]
	typed.Focus()
	typed.caret = [2]int{2, 2}
	press := func() string { return tree.Hear(Signal{On: "click", Mark: 2}).Event.(app.TypedInto).Text }
	require.Equal(t, "20 1/2 mm", press())
	tree.Apply(page("20 1/2 mm"))
	require.Equal(t, "20 1/2 1/2 mm", press(), "the caret stands behind what was put in")
	tree.Apply(page("20 mm"))
	require.Equal(t, "20 1/2 1/2 mm", typed.value, "it is being typed, also by keys of the strip")
	require.Equal(t, Answer{}, tree.Hear(Signal{On: "click", Mark: 3}), "its field is gone")
}

func TestSignalOfWhatIsGoneMeansNothing(t *testing.T) {
	_, tree := newFake()
	tree.Apply(on("click", app.Undo{}, el("button")))
	tree.Apply(el("p"))
	require.Equal(t, Answer{}, tree.Hear(Signal{On: "click", Mark: 1}))
}

func TestFormSendsWhatItsFieldsSay(t *testing.T) {
	name := func(n panel.Node, s string) panel.Node { return with(n, "name", s) }
	width, height := name(el("input"), "width"), name(el("input"), "height")
	values := map[string]string{"width": "2960", "height": "2460", "code": "A1"}
	for _, c := range []struct {
		name string
		form panel.Node
		want app.Event
	}{
		{"a wall", on("submit", app.NewJob{}, el("form", el("p", height), width, el("button"))), app.NewJob{Width: "2960", Height: "2460"}},
		{"a code", on("submit", app.Opened{}, el("form", width, name(el("textarea"), "code"), el("button"))), app.Opened{Text: "A1"}},
		{"a code in a line", on("submit", app.Opened{}, el("form", name(el("input"), "code"), el("button"))), app.Opened{Text: "A1"}},
		{"a field", on("submit", app.Entered{}, el("form", with(el("input"), "type", "checkbox"), width, height, el("button"))), app.Entered{Text: "2960"}},
		{"anything else", on("submit", app.Undo{}, el("form", width, el("button"))), app.Undo{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, Answer{Event: c.want, Prevent: true}, heard(t, c.form, "button", values, Signal{On: "submit"}))
		})
	}
	require.Equal(t, Answer{Prevent: true}, heard(t, el("form", el("button")), "button", nil, Signal{On: "submit"}),
		"no form is ever sent by the browser")
}

func TestKeysInAFigure(t *testing.T) {
	figure := on("keydown", app.Dismiss{}, el("div",
		on("keydown", app.StepField{}, on("change", app.Entered{}, with(el("input"), "name", "length")))))
	for _, c := range []struct {
		key   string
		shift bool
		want  app.Event
	}{
		{"ArrowUp", false, app.StepField{By: 1}},
		{"ArrowDown", false, app.StepField{By: -1}},
		{"PageUp", false, app.StepField{By: 10}},
		{"PageDown", false, app.StepField{By: -10}},
		{"ArrowUp", true, nil}, // extends what is selected in the text
		{"Home", false, nil},
		{"Escape", false, app.Dismiss{}},
		{"Enter", false, app.Entered{Text: "816"}},
		{"8", false, nil},
	} {
		got := heard(t, figure, "input", map[string]string{"length": "816"}, Signal{On: "keydown", Key: c.key, Shift: c.shift})
		require.Equal(t, Answer{Event: c.want, Prevent: c.want != nil}, got, c.key)
	}
}

func TestEnterInAFormIsLeftToTheForm(t *testing.T) {
	form := on("submit", app.Entered{}, el("form", on("change", app.Entered{}, el("input"))))
	require.Equal(t, Answer{}, heard(t, form, "input", nil, Signal{On: "keydown", Key: "Enter"}))
}

func TestKeysOnWhatIsNoButton(t *testing.T) {
	piece := on("keydown", app.Choose{Module: "m1"}, with(el("g", el("button")), "tabindex", "0"))
	require.Equal(t, Answer{Event: app.Choose{Module: "m1"}, Prevent: true}, heard(t, piece, "g", nil, Signal{On: "keydown", Key: " "}))
	require.Equal(t, Answer{}, heard(t, piece, "button", nil, Signal{On: "keydown", Key: " "}), "the button has its own click")
	all := on("keydown", app.Key{InField: true}, with(el("g"), "tabindex", "0"))
	require.Equal(t, Answer{Event: app.Key{Name: "z", Control: true, InField: true}, Prevent: true},
		heard(t, all, "g", nil, Signal{On: "keydown", Key: "z", Control: true}))
}

func TestChoiceGoesIntoTheEventThatAsksForOne(t *testing.T) {
	choice := func(e app.Event) panel.Node { return on("change", e, with(el("select"), "name", "which")) }
	for _, c := range []struct{ e, want app.Event }{
		{app.Set{Name: "theme"}, app.Set{Name: "theme", Value: "w2"}},
		{app.Set{Name: "theme", Value: "day"}, app.Set{Name: "theme", Value: "day"}},
		{app.ShowWall{}, app.ShowWall{ID: "w2"}},
		{app.ShowArrangement{}, app.ShowArrangement{ID: "w2"}},
		{app.Undo{}, app.Undo{}},
	} {
		got := heard(t, choice(c.e), "select", map[string]string{"which": "w2"}, Signal{On: "change"})
		require.Equal(t, Answer{Event: c.want}, got)
	}
}

// A button is pointed at and left as a whole: its words, and the row it stands in, are not
// the button.
func TestOnlyTheVeryElementIsPointedAt(t *testing.T) {
	_, tree := newFake()
	look, leave := app.Try{Line: "x"}, app.Try{}
	tree.Apply(el("div", on("pointerenter", look, on("pointerleave", leave, on("focusin", look, on("focusout", leave,
		el("button", on("click", app.Undo{}, el("span")))))))))
	var button, span int
	for mark, o := range tree.marked {
		switch o.is.Tag {
		case "button":
			button = mark
		case "span":
			span = mark
		}
	}
	require.NotZero(t, button)
	require.NotZero(t, span)
	for kind, want := range map[string]app.Event{"pointerenter": look, "focusin": look, "pointerleave": leave, "focusout": leave} {
		require.Equal(t, Answer{Event: want}, tree.Hear(Signal{On: kind, Mark: button}), kind)
		require.Equal(t, Answer{}, tree.Hear(Signal{On: kind, Mark: span}), kind)
	}
}
