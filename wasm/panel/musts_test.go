package panel

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/wasm/app"
)

// Whatever is clicked is a control of HTML's own; nothing is painted on a canvas, stands
// in a hover text only, or takes the keys away from a reader.
func TestControlsAreNative(t *testing.T) {
	native := []string{"button", "a", "summary", "input", "select", "textarea"}
	clicked := 0
	for name, s := range pagesOf(t) {
		eachIn(Page(&s), func(n Node, above []Node) {
			require.NotContains(t, []string{"canvas", "iframe", "script", "style"}, n.Tag, name)
			role, _ := attrIn(n, "role")
			require.NotEqual(t, "application", role, name)
			_, hint := attrIn(n, "title")
			require.False(t, hint, "%s: %s is explained on hover only", name, n.Key)
			for _, h := range n.On {
				if h.On == "click" {
					clicked++
					require.True(t, slices.Contains(native, n.Tag), "%s: %s#%s is clicked", name, n.Tag, n.Key)
				}
			}
		})
	}
	require.Greater(t, clicked, 1000)
}

// The picture is hidden from readers, and each of its modules has a row in a list.
func TestPictureHasItsList(t *testing.T) {
	s := opened(t, "study")
	page := Page(&s)
	picture, ok := nodeIn(page, "picture")
	require.True(t, ok)
	hidden, _ := attrIn(picture, "aria-hidden")
	require.Equal(t, "true", hidden)
	panel, _ := nodeIn(page, "panel")
	for _, m := range s.Plan.Modules {
		require.Contains(t, textIn(panel), m.Label())
	}
}

// The strip for figures has the keys that a phone's pad for figures lacks.
func TestStripHasTheKeysThatPadsLack(t *testing.T) {
	s := steps(opened(t, "study"), app.Choose{Module: "m1"})
	f, ok := figField(Page(&s), "fig-m1/left")
	require.True(t, ok)
	s = steps(s, app.OpenTyping{Field: f})
	page := Page(&s)
	input, ok := nodeIn(page, "typing")
	require.True(t, ok)
	kind, _ := attrIn(input, "type")
	require.Equal(t, "text", kind)
	for _, key := range []string{"1/2", "1/4", "1/8", "1/16", "/", "␣", "′", "″", "−", "+"} {
		_, ok := nodeIn(page, "key-"+key)
		require.True(t, ok, key)
	}
}

// What a drag over bare wall does has its arrows wherever the wall is not seen as a whole.
func TestArrowsOfTheViewAreThereWhenZoomed(t *testing.T) {
	s := opened(t, "study")
	for _, job := range []app.Job{app.Survey, app.Arrange, app.Hang, app.Agree} {
		s = steps(s, app.Go{Job: job}, app.Fit{})
		_, ok := nodeIn(Page(&s), "panning")
		require.False(t, ok)
		s = steps(s, app.Zoom{By: 2})
		tools, ok := nodeIn(Page(&s), "panning")
		require.True(t, ok)
		require.Len(t, tools.Kids, 4)
		for _, arrow := range tools.Kids {
			require.NotEqual(t, s.Camera, steps(s, eventOn(arrow, "click")).Camera, arrow.Key)
		}
	}
}

// Every field of lengths in the panel has the same strip while it has the focus, or a key
// of the strip has; no other field has one.
func TestFieldsOfThePanelHaveTheStrip(t *testing.T) {
	s := steps(opened(t, "study"), app.Choose{Module: "m1"})
	lengths := 0
	for _, job := range []app.Job{app.Survey, app.Arrange, app.Hang} {
		s = steps(s, app.Go{Job: job})
		for _, input := range inputsIn(Page(&s)) {
			typed, ok := eventOn(input, "input").(app.TypedInto)
			if !ok || typed.Field.Kind != app.LengthField {
				require.NotContains(t, kindsOf(input), "focusin", input.Key)
				continue
			}
			kind, _ := attrIn(input, "type")
			require.Equal(t, "text", kind)
			lengths++
			in := steps(s, eventOn(input, "focusin"))
			strip, ok := nodeIn(Page(&in), "docked")
			require.True(t, ok, input.Key)
			key, ok := nodeIn(strip, "key-/")
			require.True(t, ok)
			require.Equal(t, app.PressKey{Key: "/", Into: input.Key}, eventOn(key, "click"))
			in = steps(in, eventOn(input, "focusout"), eventOn(key, "focusin"))
			_, ok = nodeIn(Page(&in), "docked")
			require.True(t, ok, "the focus went to the strip")
			in = steps(in, eventOn(key, "focusout"))
			_, ok = nodeIn(Page(&in), "docked")
			require.False(t, ok)
		}
	}
	require.Greater(t, lengths, 20)
}

func inputsIn(n Node) (out []Node) {
	if n.Tag == "input" {
		out = append(out, n)
	}
	for _, k := range n.Kids {
		out = append(out, inputsIn(k)...)
	}
	return out
}

func eventOn(n Node, kind string) app.Event {
	for _, h := range n.On {
		if h.On == kind {
			return h.Event
		}
	}
	return nil
}

func kindsOf(n Node) (out []string) {
	for _, h := range n.On {
		out = append(out, h.On)
	}
	return out
}

// For a left hand the page says so, and its style sheet turns it round.
func TestPageTurnsRoundForALeftHand(t *testing.T) {
	for hand, want := range map[string]string{"right": "right", "left": "left"} {
		s := steps(opened(t, "study"), app.Set{Name: "hand", Value: hand})
		side, _ := attrIn(Page(&s), "data-side")
		require.Equal(t, want, side)
	}
}
