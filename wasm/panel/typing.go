package panel

import (
	"slices"
	"strconv"

	"ledgewright/engine/module"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// typingKey is the key of the field in the typing strip.
const typingKey = "typing"

// typing is the strip in which a figure of the picture is typed.
func typing(s *app.State) Node {
	t := s.Typing
	x, y := stripAt(s)
	value := t.Echo.Text
	return el("form", "typing-form", class("typing"), at("aria-label", term(s, "page.typing")),
		set("--tx", px(x)), set("--ty", px(y)),
		on("submit", app.Entered{Field: t.Field}), on("keydown", app.Dismiss{}),
		el("div", "line", class("line"),
			el("div", "", class("field"),
				el("label", "", attr("for=f-typing"), text(t.Field.Label)),
				el("input", typingKey, attr("id=f-typing"), attr("type=text"), attr("inputmode=decimal"), attr("autocomplete=off"),
					at("value", value), attr("aria-describedby=typing-says"), when(t.Echo.Bad, attr("aria-invalid=true")),
					on("input", app.TypedInto{Field: t.Field}), on("keydown", app.StepField{Field: t.Field, By: 1}))),
			el("button", "typing-set", attr("type=submit"), class("btn main"), text(term(s, "page.set"))),
			button("typing-leave", term(s, "page.leave"), app.Dismiss{}, class("btn plain"))),
		el("p", "says", attr("id=typing-says"), attr("role=status"), class("small mute"), typedSays(s)),
		keys(s, app.Field{Key: typingKey}))
}

// used are the handlers of a field of lengths: while it has the focus, or a key of its
// strip, the strip is there.
func used(f app.Field) part {
	return parts{on("focusin", app.UseField{Field: f}), on("focusout", app.UseField{})}
}

// docked is the strip of keys for the field of the panel that has the focus, at the
// panel's foot.
func docked(s *app.State) part {
	if s.Using.Key == "" {
		return parts(nil)
	}
	return el("div", "docked", class("docked"), keys(s, s.Using))
}

// typedSays is what was read, what it was, and what it would cause.
func typedSays(s *app.State) kids {
	t := s.Typing
	if t.Echo.Bad {
		return kids{el("span", "bad", class("is-warn"), said(t.Echo.Says))}
	}
	var out kids
	if t.Echo.Says != "" {
		out.add(el("b", "reads", said(t.Echo.Says)), text(", "))
	}
	out.add(runs(say(s, "page.was", words.Name("was", t.Was)))...)
	if t.Causes != "" {
		out.add(text(". "), el("span", "causes", said(t.Causes)))
	}
	return out
}

// withDocked is a panel with that strip; without, it is the panel itself.
func withDocked(s *app.State, panel Node) Node {
	if s.Using.Key == "" {
		return panel
	}
	whole := *panel
	whole.Kids = slices.Clone(whole.Kids)
	docked(s).join(&whole)
	return &whole
}

// keys are those that a phone's pad for figures has not; they go into a field.
func keys(s *app.State, into app.Field) Node {
	other, unitKey, system := " in", "in", s.Plan.Units.System
	if s.Screen == app.AtStart {
		system = s.Settings.Units
	}
	if system == unit.Inches {
		other, unitKey = " mm", "mm"
	}
	n := el("div", "keys", class("keys"), attr("role=group"), at("aria-label", term(s, "page.keys")))
	for _, k := range [...]struct{ key, face, says string }{
		{" 1/2", "1/2", "page.key-half"}, {" 1/4", "1/4", "page.key-quarter"}, {" 1/8", "1/8", "page.key-eighth"},
		{" 1/16", "1/16", "page.key-sixteenth"}, {"/", "/", "page.key-over"}, {" ", "␣", "page.key-space"},
		{"'", "′", "page.key-feet"}, {`"`, "″", "page.key-inches"}, {"-", "−", "page.key-minus"}, {"+", "+", "page.key-plus"},
		{other, unitKey, "page.key-" + unitKey},
	} {
		n.add(el("button", "key-"+k.face, attr("type=button"), at("aria-label", say(s, k.says)),
			onClick(app.PressKey{Key: k.key, Into: into.Key}), when(into.Key != typingKey, used(into)), fractions(k.face)))
	}
	return n
}

// Size of the strip, and its distance from what it must not cover, in pixels.
const (
	stripWidth  = 308.0
	stripHeight = 236.0
	stripGap    = 14.0
)

// stripAt finds a place for the strip: beside the piece that is worked on, never over
// it, and within the picture.
func stripAt(s *app.State) (x, y float64) {
	mostX, mostY := max(s.Size.Width-stripWidth-stripGap, 0), max(s.Size.Height-stripHeight-stripGap, 0)
	left, top, right, bottom, ok := pieceOnScreen(s)
	if !ok {
		return mostX, min(stripGap, mostY)
	}
	midX, midY := (left+right-stripWidth)/2, (top+bottom-stripHeight)/2
	for _, c := range [...][2]float64{
		{right + stripGap, midY}, {left - stripWidth - stripGap, midY},
		{midX, bottom + 4*stripGap}, {midX, top - stripHeight - 4*stripGap},
	} {
		x, y = min(max(c[0], stripGap), mostX), min(max(c[1], stripGap), mostY)
		if x >= right || x+stripWidth <= left || y >= bottom || y+stripHeight <= top {
			return x, y
		}
	}
	return mostX, mostY
}

// pieceOnScreen is the box of the module that is chosen, in pixels.
func pieceOnScreen(s *app.State) (left, top, right, bottom float64, ok bool) {
	b, ok := boxOf(s, lastOf(s.Chosen))
	if !ok {
		return 0, 0, 0, 0, false
	}
	left, bottom = s.Camera.Pixel(b.MinX.MM(), b.MinY.MM(), s.Size)
	right, top = s.Camera.Pixel(b.MaxX.MM(), b.MaxY.MM(), s.Size)
	return left, top, right, bottom, true
}

// boxOf is the box of a module on the wall, as decided.
func boxOf(s *app.State, id string) (module.Box, bool) {
	for _, p := range resultOf(s.Build, s.Arrangement).Placed {
		if p.Module == id {
			return p.Box, true
		}
	}
	return module.Box{}, false
}

func lastOf(ids []string) string {
	if len(ids) == 0 {
		return ""
	}
	return ids[len(ids)-1]
}

// px writes a length of the screen.
func px(x float64) string { return strconv.FormatFloat(x, 'f', 1, 64) + "px" }
