package edit

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
)

// Outside sizes of ready shapes, measured on the boxes of the modules as they are worked
// out, the right way up. U 520 × 260 and Z 816 × 260 in 24 mm are the worked shapes; the
// flat to flat of a regular hexagon of side 300 is 300·√3 = 519.615242 mm.
func TestReadyShapesHaveTheirOutsideSizes(t *testing.T) {
	sized := func(shape string, w, h unit.Length) Ready {
		return Ready{Shape: shape, Width: w, Height: h, Depth: 200 * mm, Thickness: 24 * mm, Wood: "white-oak"}
	}
	joined := func(r Ready, joint string) Ready { r.Joint = joint; return r }
	split := sized("Z", 816*mm, 260*mm)
	split.Upper = 320 * mm
	typed := sized("box", 400*mm, 300*mm)
	typed.Typed = true
	flat := unit.Length(519_615_242)
	cases := []struct {
		ready   Ready
		lengths []unit.Length // typed ones; 0 to close
		w, h    unit.Length
	}{
		{sized("shelf", 900*mm, 0), []unit.Length{900 * mm}, 900 * mm, 24 * mm},
		{sized("L", 600*mm, 260*mm), []unit.Length{260 * mm, 600 * mm}, 600 * mm, 260 * mm},
		{sized("U", 520*mm, 260*mm), []unit.Length{260 * mm, 520 * mm, 260 * mm}, 520 * mm, 260 * mm},
		{joined(sized("U", 520*mm, 260*mm), plan.ButtFirst), []unit.Length{260 * mm, 496 * mm, 236 * mm}, 520 * mm, 260 * mm},
		{joined(sized("U", 520*mm, 260*mm), plan.ButtSecond), []unit.Length{236 * mm, 496 * mm, 260 * mm}, 520 * mm, 260 * mm},
		{sized("Z", 816*mm, 260*mm), []unit.Length{420 * mm, 260 * mm, 420 * mm}, 816 * mm, 260 * mm},
		{split, []unit.Length{320 * mm, 260 * mm, 520 * mm}, 816 * mm, 260 * mm},
		{joined(split, plan.ButtFirst), []unit.Length{320 * mm, 236 * mm, 496 * mm}, 816 * mm, 260 * mm},
		{joined(split, plan.ButtSecond), []unit.Length{296 * mm, 236 * mm, 520 * mm}, 816 * mm, 260 * mm},
		{sized("box", 400*mm, 300*mm), []unit.Length{400 * mm, 300 * mm, 0, 0}, 400 * mm, 300 * mm},
		{typed, []unit.Length{400 * mm, 300 * mm, 400 * mm, 300 * mm}, 400 * mm, 300 * mm},
		{sized("hexagon", 600*mm, 0), []unit.Length{300 * mm, 300 * mm, 300 * mm, 300 * mm, 0, 0}, 600 * mm, flat},
		{sized("hexagon", 700*mm, flat), []unit.Length{400 * mm, 300 * mm, 300 * mm, 400 * mm, 0, 0}, 700 * mm, flat},
	}
	s := plan.New(unit.Metric).Shop
	for _, c := range cases {
		m, err := c.ready.module()
		require.NoError(t, err)
		var lengths []unit.Length
		for _, b := range m.Boards {
			lengths = append(lengths, b.Length.Value)
		}
		require.Equal(t, c.lengths, lengths, "%+v", c.ready)
		box := wall.Place(module.Derive(m, s), plan.Pose{Turn: m.Hung}).Box
		require.LessOrEqual(t, (box.MaxX - box.MinX - c.w).Abs(), 2*unit.Nanometre, "%+v", c.ready)
		require.LessOrEqual(t, (box.MaxY - box.MinY - c.h).Abs(), 2*unit.Nanometre, "%+v", c.ready)
	}
}

func TestUsualSizesMakeEveryShape(t *testing.T) {
	for _, s := range Shapes() {
		r := s.Sizes
		r.Wood = "white-oak"
		m, err := r.module()
		require.NoError(t, err, s.ID)
		require.Equal(t, s.Closed, m.Closed)
		require.Equal(t, s.Turn, m.Hung)
		for _, c := range m.Corners {
			require.Equal(t, plan.Corner{Turn: c.Turn, Joint: plan.Mitre, Reinforcement: plan.Reinforcement{Kind: "spline"}}, c)
		}
	}
}

func TestShapesThatCannotBeAreRefused(t *testing.T) {
	for say, s := range map[string]string{
		"there is no shape Q":             `"shape":"Q","width":500,"depth":200,"thickness":26,"wood":"white-oak"`,
		"height is missing":               `"shape":"U","width":500,"depth":200,"thickness":26,"wood":"white-oak"`,
		"wood is missing":                 `"shape":"shelf","width":500,"depth":200,"thickness":26`,
		"this shape has no height":        `"shape":"shelf","width":500,"height":200,"depth":200,"thickness":26,"wood":"white-oak"`,
		"width is -5 mm; it must be more": `"shape":"shelf","width":-5,"depth":200,"thickness":26,"wood":"white-oak"`,
		"board 2 would be -2 mm long":     `"shape":"U","width":24,"height":200,"depth":200,"thickness":26,"wood":"white-oak","joint":"butt-first"`,
		"joint is \"rebate-first\"":       `"shape":"U","width":50,"height":200,"depth":200,"thickness":26,"wood":"white-oak","joint":"rebate-first"`,
		"module and shape are both given": `"shape":"U","module":{"id":"m1","depth":1,"wood":"x","boards":[]}`,
	} {
		fails(t, plan.New(unit.Metric), `{"do":"add-module",`+s+`}`, say)
	}
}
