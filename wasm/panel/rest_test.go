package panel

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine/unit"
	"ledgewright/wasm/app"
)

// strands counts the lines of grain in the picture: those that let the wood shine through.
func strands(t *testing.T, s *app.State) (n int) {
	t.Helper()
	world, ok := nodeIn(Page(s), "world")
	require.True(t, ok)
	eachNode(world.Kids, func(k Node) {
		if _, ok := deskAttr(k, "stroke-opacity"); ok {
			n++
		}
	})
	return n
}

// An edit is seen at once, on flat wood; the grain comes when the page has time.
func TestGrainWaitsForRest(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Arrange})
	flat := strands(t, &s)
	s.Rests = true
	still := strands(t, &s)
	require.Greater(t, still, flat)
	s, effects := app.Step(s, app.DoLine{Line: line("move", "arrangement", s.Arrangement, "module", "m1", "dx", 10*unit.Millimetre)})
	require.Less(t, strands(t, &s), still)
	for _, e := range effects {
		if after, ok := e.(app.After); ok && after.Name == "grain" {
			s, _ = app.Step(s, after.Event)
		}
	}
	require.Equal(t, still, strands(t, &s))
}

// Whatever can be done about a finding is shown while its button is pointed at or has the
// focus: the same edit that the button makes, and nothing once it is left.
func TestRemediesAreTriedBeforeTheyAreTaken(t *testing.T) {
	tried := 0
	for _, name := range assets.Names() {
		s := desk(t, name, app.Go{Job: app.Arrange}, app.DoLine{Line: line("set-module", "module", "m1", "wood", "driftwood")})
		eachNode([]Node{Page(&s)}, func(n Node) {
			events := map[string]app.Event{}
			for _, h := range n.On {
				events[h.On] = h.Event
			}
			look, ok := events["focusin"].(app.Try)
			if !ok {
				return
			}
			tried++
			require.Equal(t, look, events["pointerenter"])
			require.Equal(t, app.Try{}, events["focusout"])
			require.Equal(t, app.Try{}, events["pointerleave"])
			shown, _ := app.Step(s, look)
			require.True(t, shown.Preview.Shown, look.Line)
			made, _ := app.Step(s, events["click"])
			require.Equal(t, made.Plan, shown.Preview.Plan, look.Line)
			for range 50 { // slow work, in slices
				made, _ = app.Step(made, app.Reckon{})
			}
			would, _ := nodeIn(Page(&shown), "ledge")
			will, _ := nodeIn(Page(&made), "ledge")
			require.Equal(t, reads(will), reads(would), "the verdicts say what would come of it")
			left, _ := app.Step(shown, app.Try{})
			require.False(t, left.Preview.Shown)
		})
	}
	require.Positive(t, tried, "no page has a remedy that the tool can do")
}

// While nothing is chosen a form can be begun with one board, which then is chosen.
func TestAFormBeginsOnArrange(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Arrange}, app.Choose{})
	n := len(s.Plan.Modules)
	s, _ = click(t, s, []Node{Page(&s)}, "new-form")
	require.Len(t, s.Plan.Modules, n+1)
	made := s.Plan.Modules[n]
	require.Equal(t, []string{made.ID}, s.Chosen)
	require.Len(t, made.Boards, 1)
	require.False(t, hasKey([]Node{Page(&s)}, "new-form"))
	require.True(t, hasKey([]Node{Page(&s)}, "editor-module"))
}

// On narrow windows figures and lines of what is not chosen are hidden together.
func TestSizesOfAllAreMarkedForNarrowWindows(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Arrange}, app.Choose{})
	names := func(s app.State) (picture string, minor int) {
		page := Page(&s)
		p, _ := nodeIn(page, "picture")
		picture, _ = deskAttr(p, "class")
		eachNode([]Node{page}, func(n Node) {
			if names, _ := deskAttr(n, "class"); strings.HasSuffix(names, " minor") {
				minor++
			}
		})
		return picture, minor
	}
	picture, minor := names(s)
	require.Equal(t, "picture unchosen", picture)
	require.Positive(t, minor)
	world, _ := nodeIn(Page(&s), "world")
	sizes := 0
	for _, k := range world.Kids {
		if names, _ := deskAttr(k, "class"); names == "sizes" {
			sizes++
		}
	}
	require.Positive(t, sizes, "the class that page.css hides")
	s, _ = app.Step(s, app.Choose{Module: s.Plan.Modules[0].ID})
	picture, minor = names(s)
	require.Equal(t, "picture", picture)
	require.Zero(t, minor)
}
