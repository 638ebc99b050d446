package panel

import (
	"encoding/csv"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine"
	"ledgewright/engine/link"
	"ledgewright/engine/plan"
	"ledgewright/wasm/app"
)

func TestAgreeIsSound(t *testing.T) {
	for _, name := range assets.Names() {
		s := desk(t, name, app.Go{Job: app.Agree})
		requireSound(t, agree(&s))
		requireFieldsWork(t, s, agree(&s))
	}
}

func saved(t *testing.T, s app.State, key string) app.Save {
	t.Helper()
	_, effects := click(t, s, agree(&s), key)
	require.Len(t, effects, 1, key)
	save, ok := effects[0].(app.Save)
	require.True(t, ok, "%s: %#v", key, effects[0])
	return save
}

// A link opens as the same design, and names do not travel in it.
func TestTheLinkIsThePlanWithoutNames(t *testing.T) {
	for _, name := range assets.Names() {
		s := desk(t, name, app.Go{Job: app.Agree})
		s, _ = app.Step(s, app.Entered{Field: deskField(t, agree(&s), "job-client"), Text: "Ash and Elder"})
		require.Equal(t, "Ash and Elder", s.Plan.Job.Client)
		for _, by := range []string{"copy", "share"} {
			save := saved(t, s, by+"-link")
			require.Equal(t, by, save.By)
			p, err := link.DecodePlan(save.Text)
			require.NoError(t, err)
			require.Empty(t, p.Job)
			want, err := plan.Encode(link.Public(s.Plan))
			require.NoError(t, err)
			got, err := plan.Encode(p)
			require.NoError(t, err)
			require.Equal(t, string(want), string(got))
		}
	}
}

func TestFilesComeOut(t *testing.T) {
	for _, name := range assets.Names() {
		s := desk(t, name, app.Go{Job: app.Agree})
		for _, by := range []string{"download", "copy", "share"} {
			p, err := plan.Decode([]byte(saved(t, s, by+"-plan").Text))
			require.NoError(t, err)
			want, err := plan.Encode(s.Plan)
			require.NoError(t, err)
			got, err := plan.Encode(p)
			require.NoError(t, err)
			require.Equal(t, string(want), string(got))

			b, err := engine.Decode([]byte(saved(t, s, by+"-build").Text))
			require.NoError(t, err)
			require.Len(t, b.Modules, len(s.Build.Modules))

			rows, err := csv.NewReader(strings.NewReader(saved(t, s, by+"-parts").Text)).ReadAll()
			require.NoError(t, err)
			require.Len(t, rows, len(s.Build.Parts.Parts)+1)

			picture := saved(t, s, by+"-picture")
			require.Equal(t, "image/svg+xml", picture.Type)
			require.Contains(t, picture.Text, "<svg")
			require.Equal(t, by, picture.By)
		}
	}
}

// The length that is shown is that of the link's code; above the limit the buttons are
// gone and the sentence says why.
func TestLongLinksAreSaid(t *testing.T) {
	s := desk(t, "library", app.Go{Job: app.Agree})
	code := saved(t, s, "copy-link").Text
	says := reads(atKey(t, agree(&s), "link-length"))
	require.Contains(t, says, fmtCount(len(code))+" ")
	require.Equal(t, len(code) > link.Warn, strings.Contains(says, "surer"))
	r := rand.New(rand.NewPCG(1, 2))
	for _, id := range idsOf(s.Plan) {
		name := ""
		for range 8 {
			name += strconv.FormatUint(r.Uint64(), 36)
		}
		s, _ = app.Step(s, app.DoLine{Line: line("set-module", "module", id, "name", name)})
	}
	require.False(t, hasKey(agree(&s), "copy-link"))
	require.Contains(t, reads(atKey(t, agree(&s), "link")), "Hand on the plan as a file")
	requireSound(t, agree(&s))
}

func fmtCount(n int) string { return reads(parted(strconv.Itoa(n))...) }

func idsOf(p plan.Plan) (ids []string) {
	for _, m := range p.Modules {
		ids = append(ids, m.ID)
	}
	return ids
}

func TestWhatIsNotCheckedIsListed(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Agree})
	says := reads(atKey(t, agree(&s), "not-checked"))
	require.Contains(t, says, "what each shelf can carry is not checked")
	require.Contains(t, says, "nobody may climb")
	require.True(t, hasKey(agree(&s), "caution-children"))
}

func TestAllJobsLeadsHome(t *testing.T) {
	s := desk(t, "porch", app.Go{Job: app.Agree})
	s, _ = click(t, s, agree(&s), "all-jobs")
	require.Equal(t, app.AtStart, s.Screen)
}

func BenchmarkAgree(b *testing.B) {
	s := desk(b, "library", app.Go{Job: app.Agree})
	for b.Loop() {
		agree(&s)
	}
}

func BenchmarkMake(b *testing.B) {
	s := desk(b, "library", app.Go{Job: app.Make})
	for b.Loop() {
		makeJob(&s)
	}
}

func BenchmarkHang(b *testing.B) {
	s := desk(b, "library", app.Go{Job: app.Hang})
	for b.Loop() {
		hang(&s)
	}
}

// The link of a plan is encoded when the plan changes, not at every page.
func TestTheLinkIsEncodedOncePerRevision(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Agree})
	var p Painter
	before := p.link(&s)
	require.Equal(t, encodeLink(&s), before)
	p.code.code = "kept"
	require.Equal(t, "kept", p.link(&s).code)
	s, _ = app.Step(s, app.DoLine{Line: line("take-off", "arrangement", s.Arrangement, "module", "m1")})
	after := p.link(&s)
	require.Equal(t, encodeLink(&s), after)
	require.NotEqual(t, before.code, after.code)
	s.Store.ID += "-else"
	require.Equal(t, encodeLink(&s), p.link(&s))
}
