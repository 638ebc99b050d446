package movement_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine"
	"ledgewright/engine/document"
	"ledgewright/engine/edit"
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/movement"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/testdata/jobs"
)

const mm = unit.Millimetre

// thick is an open U of white oak, 44 mm thick, with a divider of as much.
func thick() plan.Module {
	m := plan.Module{ID: "m1", Name: "Bench", Depth: 250 * mm, Wood: "white-oak", Closed: true}
	for i := range 4 {
		m.Boards = append(m.Boards, plan.Board{Length: document.Some((500 - 100*unit.Length(i%2)) * mm), Thickness: 44 * mm})
		m.Corners = append(m.Corners, plan.Corner{Turn: unit.QuarterTurn, Joint: plan.Mitre})
	}
	m.Dividers = []plan.Divider{{ID: "d1", Name: "Post", From: 1, To: 3, At: 250 * mm, Thickness: 44 * mm, Start: "housed", End: "housed"}}
	return m
}

func check(m plan.Module, s shop.Profile) []finding.Finding {
	r := module.Derive(m, s)
	return movement.Check(&r, &s.Moisture)
}

// said are findings and remedies in words.
func said(all []finding.Finding, system unit.System) (out []string) {
	style := unit.Style{System: system}
	for _, f := range all {
		out = append(out, engine.Say(f, style))
		for _, r := range f.Remedies {
			out = append(out, "- "+engine.SayRemedy(r, style))
		}
	}
	return out
}

// White oak from 8 to 11 %, not known how it is sawn: √2 · 44 · 0.00365 · 3 = 0.68 mm.
func TestGapsInWords(t *testing.T) {
	require.Equal(t, []string{
		"Bench: 4 mitres would open by more than 0.50 mm if nothing holds them; the widest is 0.68 mm, at corner 1 on the outside as the wood swells.",
		"- Take flat-sawn boards for this job; the gap is then 0.34 mm at most.",
		"- Bring the wood to 8.5 % of moisture before it is planed; the gap is then 0.57 mm at most.",
		"- Set a spline of the same wood and seal every face: that holds and slows it, and is not reckoned here.",
		"- Use thinner boards.",
		"- Take it as it is: let gaps up to 0.70 mm pass.",
		"Bench: Post needs 0.48 mm of free way beside it in its housings; between damp and dry a gap of 0.80 mm comes and goes. Over 0.50 mm it is seen.",
		"- Take flat-sawn boards for this job; the gap is then 0.40 mm at most.",
		"- Cut a shoulder on the divider that covers its housing.",
		"- Take it as it is: let gaps up to 0.90 mm pass.",
	}, said(check(thick(), shop.Default(unit.Metric)), unit.Metric))
	inches := said(check(thick(), shop.Default(unit.Inches)), unit.Inches)
	require.Equal(t, "Bench: 4 mitres would open by more than 0.020 in if nothing holds them; the widest is 0.027 in, at corner 1 on the outside as the wood swells.", inches[0])
}

func TestWoodsWithoutFiguresInWords(t *testing.T) {
	m := thick()
	m.Wood = "sapele"
	require.Equal(t, []string{
		"Bench: how Sapele moves with moisture is not known; what opens between shop and house is not checked.",
		"- Choose a wood whose movement is known, or ask the timber yard for its figures.",
	}, said(check(m, shop.Default(unit.Metric)), unit.Metric))
}

// Each wood is named once, however the boards take turns.
func TestAWoodIsNamedOnce(t *testing.T) {
	s := shop.Default(unit.Metric)
	r := module.Derive(thick(), s)
	for i := range 4 {
		r.Boards[i].Wood = []string{"sapele", "khaya"}[i%2]
	}
	var named []string
	for _, f := range movement.Check(&r, &s.Moisture) {
		if f.Kind.Key == "movement-not-checked" {
			named = append(named, f.Value.Text)
		}
	}
	require.Equal(t, []string{"Sapele", "African mahogany"}, named)
}

// Every remedy that is an edit can be done, and does what it says: the findings are fewer or
// the gap is smaller.
func TestRemediesHelp(t *testing.T) {
	p := jobs.One()
	m := thick()
	p.Modules = []plan.Module{m}
	p.Arrangements = nil
	before := check(m, p.Shop)
	tried := 0
	for i, f := range before {
		for _, r := range f.Remedies {
			if r.Edit.Do == "" {
				continue
			}
			e, err := edit.From(r.Edit)
			require.NoError(t, err)
			next, _, err := edit.Apply(p, e)
			require.NoError(t, err, r.Key)
			after := check(m, next.Shop)
			tried++
			better := len(after) < len(before) || after[i].Value.Length < f.Value.Length
			require.True(t, better, r.Key)
		}
	}
	require.Equal(t, 5, tried)
}

// The limit is the shop's: the same module has notes with a sharper eye and none with a
// milder one.
func TestTheLimitIsTheShops(t *testing.T) {
	s := shop.Default(unit.Metric)
	for seen, want := range map[unit.Length]int{mm / 10: 2, 7 * mm / 10: 1, 9 * mm / 10: 0} {
		s.Moisture.Seen = document.Some(seen)
		require.Len(t, check(thick(), s), want, seen)
	}
	s.Moisture.Seen = document.Opt[unit.Length]{}
	thin := thick()
	for i := range thin.Boards {
		thin.Boards[i].Thickness = 26 * mm
	}
	thin.Dividers[0].Thickness = 26 * mm
	require.Empty(t, check(thin, s), "boards of 26 mm move by less than is seen")
}

// The build of a job carries what this room finds, and lends it while nothing changes.
func TestABuildCarriesTheFindings(t *testing.T) {
	p := jobs.One()
	p.Modules = []plan.Module{thick()}
	p.Arrangements = nil
	b := engine.Derive(p, nil)
	again := engine.Derive(p, &b)
	for _, b := range []engine.Build{b, again} {
		n := 0
		for _, f := range b.Findings {
			if f.Kind.Key == "mitre-opens" || f.Kind.Key == "housing-opens" {
				n++
			}
		}
		require.Equal(t, 2, n)
	}
	p.Shop.Moisture.Seen = document.Some(mm)
	for _, f := range engine.Derive(p, &b).Findings {
		require.NotEqual(t, "mitre-opens", f.Kind.Key, "another profile lends nothing")
	}
}

// The examples are of woods that are known, and of thicknesses whose gaps are not seen.
func TestExamplesAreChecked(t *testing.T) {
	for _, name := range assets.Names() {
		p, err := assets.Plan(name)
		require.NoError(t, err)
		for _, m := range p.Modules {
			r := module.Derive(m, p.Shop)
			require.Len(t, movement.Boards(&r, &p.Shop.Moisture), len(r.Boards), name)
			require.Empty(t, movement.Check(&r, &p.Shop.Moisture), name)
			for _, mitre := range movement.Mitres(&r, &p.Shop.Moisture) {
				require.Positive(t, mitre.Heel, name)
				require.Positive(t, mitre.Toe, name)
				require.Less(t, mitre.Most(), mm, name)
			}
		}
	}
}

// Random modules of every shape: no figure is absurd, and what is found has its place.
func TestRandomModules(t *testing.T) {
	kinds := map[string]int{}
	for seed := range uint64(300) {
		p := jobs.RandomPlan(seed)
		for _, m := range p.Modules {
			r := module.Derive(m, p.Shop)
			for _, f := range movement.Check(&r, &p.Shop.Moisture) {
				kinds[f.Kind.Key]++
				require.Equal(t, m.ID, f.Place.Module)
				require.NotEmpty(t, f.Remedies)
			}
			for _, mitre := range movement.Mitres(&r, &p.Shop.Moisture) {
				require.LessOrEqual(t, mitre.Most(), m.Depth, "seed %d", seed)
				require.GreaterOrEqual(t, min(mitre.Heel, mitre.Toe), unit.Length(0))
			}
		}
	}
	require.Len(t, kinds, len(movement.Kinds()), "%v", kinds)
}
