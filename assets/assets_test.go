package assets_test

import (
	"os"
	"path"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/assets/fonts"
	"ledgewright/engine/hardware"
	"ledgewright/engine/plan"
	"ledgewright/testdata/examples/house"
)

// What is committed is what testdata/examples writes. Renew it with:
// go run ./testdata/examples assets
func TestExamplesAreThoseOfTheHouse(t *testing.T) {
	var names []string
	for _, j := range house.Jobs() {
		names = append(names, j.Name)
		want, err := plan.Pretty(j.Plan)
		require.NoError(t, err)
		have, err := os.ReadFile("plans/" + j.Name + ".json")
		require.NoError(t, err)
		require.Equal(t, string(want), string(have))
		text, err := assets.Text(j.Name)
		require.NoError(t, err)
		require.Equal(t, string(want), string(text))
		p, err := assets.Plan(j.Name)
		require.NoError(t, err)
		require.Equal(t, j.Plan, p)
	}
	require.Equal(t, names, assets.Names())
	require.GreaterOrEqual(t, len(names), 8)
}

func TestEveryExampleHasOneWordAndOneSentence(t *testing.T) {
	for _, e := range assets.Examples() {
		require.Regexp(t, `^[a-z]+$`, e.Name)
		require.Regexp(t, `^[A-Z0-9][^.]+\.$`, e.Says)
	}
	_, err := assets.Text("../fonts/OFL")
	require.EqualError(t, err, `no example is called "../fonts/OFL"`)
	_, err = assets.Plan("cellar")
	require.EqualError(t, err, `no example is called "cellar"`)
}

// seen is what the examples use, by what it is.
type seen map[string]bool

func (s seen) module(m plan.Module) {
	for _, c := range m.Corners {
		s["joint "+c.Joint], s["reinforcement "+c.Reinforcement.Kind] = true, true
	}
	for _, b := range m.Brackets {
		k, _ := hardware.Bracket(b.Kind)
		s["bracket "+string(k.Family)] = true
		s["edge "+b.Edge] = true
	}
	for _, d := range m.Dividers {
		s["divider "+d.Start], s["divider "+d.End] = true, true
	}
	for _, b := range m.Boards {
		for _, e := range b.Edges {
			s["cut "+e.Cut] = true
		}
	}
	s["light"] = s["light"] || len(m.Lights) > 0
	s["closed"] = s["closed"] || m.Closed
	s["grain wrap"] = s["grain wrap"] || m.GrainWrap
}

// Between them the examples use every kind of thing that a plan can hold.
func TestExamplesUseEverything(t *testing.T) {
	s := seen{}
	most := 0
	for _, name := range assets.Names() {
		p, err := assets.Plan(name)
		require.NoError(t, err)
		most = max(most, len(p.Modules))
		s["units "+string(p.Units.System)] = true
		for _, w := range p.Walls {
			s["wall "+w.Build], s["studs "+w.Studs.Material] = true, true
		}
		for _, m := range p.Modules {
			s.module(m)
		}
		for _, a := range p.Arrangements {
			s["lines"] = s["lines"] || len(a.Lines) > 0
			s["flip"] = s["flip"] || slices.ContainsFunc(a.Poses, func(p plan.Pose) bool { return p.Flip })
		}
		s["arrangements"] = s["arrangements"] || len(p.Arrangements) > 1
	}
	require.Equal(t, 48, most)
	want := []string{
		"units mm", "units in", "arrangements", "lines", "flip", "light", "closed", "grain wrap", "edge front",
		"wall studs", "studs wood", "studs metal", "wall lath-and-plaster", "wall board-on-dabs", "wall brick", "wall hollow-block", "wall aerated-block", "wall concrete",
		"joint mitre", "joint butt-first", "joint butt-second", "joint rebate-first", "joint rebate-second",
		"reinforcement spline", "reinforcement tenon", "reinforcement dowel", "reinforcement key", "reinforcement screw",
		"divider housed", "divider butt", "cut chamfer", "cut round",
	}
	for _, f := range hardware.Families() {
		want = append(want, "bracket "+string(f))
	}
	for _, w := range want {
		require.True(t, s[w], "no example uses %s", w)
	}
}

func TestFontsComeWithTheirLicence(t *testing.T) {
	licence := false
	for _, f := range fonts.All() {
		if path.Ext(f.Name) == ".woff2" {
			require.Equal(t, "wOF2", string(f.Body[:4]), f.Name)
		}
		licence = licence || f.Name == "OFL.txt"
	}
	require.True(t, licence)
}
