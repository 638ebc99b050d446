package link

import (
	"errors"
	"hash/crc32"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/document"
	"ledgewright/engine/edit"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/testdata/jobs"
)

// Job M: 48 modules. A link of up to 2 000 characters passes every messenger, one of
// up to 4 000 most; the page's address takes some of it.
func TestLengthsOfLinks(t *testing.T) {
	const address = len("https://shelves.example.org/workshop/#")
	for _, system := range []unit.System{unit.Metric, unit.Inches} {
		for arrangements, most := range map[int]int{1: Warn, 3: Most} {
			code, err := EncodePlan(shelves(t, system, 48, arrangements), Options{})
			require.NoError(t, err)
			t.Logf("48 modules anywhere, %d arrangements, %s: %d characters", arrangements, system, address+len(code))
			require.LessOrEqual(t, address+len(code), most)
			require.Equal(t, byte(versionColumns), code[1])
		}
	}
	for arrangements, most := range map[int]int{1: Warn, 3: Most} {
		code, err := EncodePlan(jobs.M(arrangements), Options{Names: true})
		require.NoError(t, err)
		t.Logf("job M, %d arrangements: %d characters", arrangements, address+len(code))
		require.LessOrEqual(t, address+len(code), most)
	}
}

func samples(t testing.TB) map[string]plan.Plan {
	return map[string]plan.Plan{
		"empty":            plan.New(unit.Metric),
		"empty in inches":  plan.New(unit.Inches),
		"one":              shelves(t, unit.Metric, 1, 1),
		"twelve in inches": shelves(t, unit.Inches, 12, 2),
		"forty-eight":      shelves(t, unit.Metric, 48, 3),
		"odd":              odd(t),
		"job L":            jobs.L(),
	}
}

func TestPlansComeBackByteForByte(t *testing.T) {
	for name, p := range samples(t) {
		code, err := EncodePlan(p, Options{Names: true})
		require.NoError(t, err, name)
		require.Equal(t, byte(versionColumns), code[1], name)
		back, err := DecodePlan(code)
		require.NoError(t, err, name)
		require.Equal(t, text(t, p), text(t, back), name)
		again, err := EncodePlan(back, Options{Names: true})
		require.NoError(t, err)
		require.Equal(t, code, again, name)
	}
}

func TestNamesStayAtHomeUnlessAsked(t *testing.T) {
	p := odd(t)
	code, err := EncodePlan(p, Options{})
	require.NoError(t, err)
	back, err := DecodePlan(code)
	require.NoError(t, err)
	require.Equal(t, text(t, Public(p)), text(t, back))
	for _, s := range []string{"L-014", "canal", "corner house", "ring twice", "Bench"} {
		require.NotContains(t, text(t, back), s)
		require.Contains(t, text(t, p), s)
	}
}

func TestCodesHaveTheLettersOfALink(t *testing.T) {
	for name, p := range samples(t) {
		code, err := EncodePlan(p, Options{})
		require.NoError(t, err)
		require.Empty(t, strings.Trim(code, alphabet), name)
		last := code[len(code)-1]
		require.NotContains(t, "-_", string(last), name)
		require.Equal(t, "P1", code[:2])
	}
}

// refused holds that a text is no link, and says that it arrived incomplete.
func refused(t testing.TB, code, why string) {
	t.Helper()
	_, err := DecodePlan(code)
	var e *Error
	require.ErrorAs(t, err, &e, why)
	require.Equal(t, Incomplete, e.Key, why)
}

func TestEveryCutIsFound(t *testing.T) {
	for _, p := range samples(t) {
		code, err := EncodePlan(p, Options{})
		require.NoError(t, err)
		for i := range code {
			refused(t, code[:i], "cut at the end")
			refused(t, code[i+1:], "cut at the front")
		}
		refused(t, "https://shelves.example.org/#", "all of it cut")
		refused(t, "https://shelves.example.org/", "cut with the #")
	}
}

// The sum that closes a code finds every changed letter, by its prime; here all of them
// are tried.
func TestEveryChangedLetterIsFound(t *testing.T) {
	for _, name := range []string{"one", "twelve in inches", "odd"} {
		code, err := EncodePlan(samples(t)[name], Options{})
		require.NoError(t, err)
		letters := []byte(code)
		for i, was := range letters {
			for _, c := range []byte(alphabet + ".~%\x00\xff") {
				if c == was {
					continue
				}
				letters[i] = c
				if e, ok := unseal(string(letters)); ok {
					t.Fatalf("letter %d changed from %c to %c opens: %v", i, was, c, e)
				}
			}
			letters[i] = was
		}
	}
}

func TestLettersThatChangePlacesAreFound(t *testing.T) {
	code, err := EncodePlan(samples(t)["one"], Options{})
	require.NoError(t, err)
	for i := range len(code) - 1 {
		swapped := code[:i] + code[i+1:i+2] + code[i:i+1] + code[i+2:]
		if swapped != code {
			refused(t, swapped, "two letters swapped")
		}
	}
}

// What a check of 12 bits lets pass, the checksum of the canonical text stops: a payload
// of another plan under this plan's head does not open.
func TestAPayloadWithTheWrongChecksumDoesNotOpen(t *testing.T) {
	p := shelves(t, unit.Metric, 2, 1)
	packed := func(p plan.Plan) []byte {
		n, err := document.Parse([]byte(text(t, p)))
		require.NoError(t, err)
		return deflated(pack(planShape(), n, p.Units.Step))
	}
	sum := crc32.ChecksumIEEE([]byte(text(t, p)))
	code, ok := seal(envelope{KindPlan, versionColumns, sum, packed(p)})
	require.True(t, ok)
	_, err := DecodePlan(code)
	require.NoError(t, err)
	other := p
	other.Modules = append([]plan.Module(nil), p.Modules...)
	other.Modules[0].Depth += unit.Millimetre
	code, ok = seal(envelope{KindPlan, versionColumns, sum, packed(other)})
	require.True(t, ok)
	refused(t, code, "another plan")
}

func TestLinksSurviveTheirWay(t *testing.T) {
	p := shelves(t, unit.Metric, 3, 1)
	code, err := EncodePlan(p, Options{Names: true})
	require.NoError(t, err)
	third := len(code) / 3
	for _, link := range []string{
		code,
		"https://shelves.example.org/workshop/#" + code,
		"https://shelves.example.org/workshop/%23" + code,
		"https://scan.example.net/?url=https://shelves.example.org/%23" + code,
		"  \n" + code + "\r\n",
		"<https://shelves.example.org/#" + code + ">.",
		"https://shelves.example.org/#" + code[:third] + "\r\n   " + code[third:],
		"#" + code[:third] + "\u200b" + code[third:] + "\u00a0",
	} {
		back, err := DecodePlan(link)
		require.NoError(t, err, link)
		require.Equal(t, text(t, p), text(t, back))
	}
}

func TestOtherKindsAndNewerVersionsSaySo(t *testing.T) {
	key := func(e envelope) string {
		code, ok := seal(e)
		require.True(t, ok)
		_, err := DecodePlan(code)
		var out *Error
		require.ErrorAs(t, err, &out)
		return out.Key
	}
	require.Equal(t, OtherKind, key(envelope{kind: KindOffer, version: '1'}))
	require.Equal(t, NewerVersion, key(envelope{kind: KindPlan, version: '2'}))
	require.Equal(t, Incomplete, key(envelope{kind: KindPlan, version: '1'}))
}

func TestNewerPlansTravelAsTheirText(t *testing.T) {
	p := shelves(t, unit.Metric, 2, 1)
	p.Schema = "ledgewright/plan/2"
	p.Extra = document.Extra{{Key: "doors", Value: `[{"swing":"left"}]`}}
	require.True(t, p.Newer())
	code, err := EncodePlan(p, Options{Names: true})
	require.NoError(t, err)
	require.Equal(t, byte(versionText), code[1])
	back, err := DecodePlan(code)
	require.NoError(t, err)
	require.Equal(t, text(t, p), text(t, back))
}

// Hostile links: what is small here is large unfolded. All must be refused, and fast.
func TestBombsAreRefused(t *testing.T) {
	zeros := strings.Repeat("\x00", 64<<20)
	many, err := document.Parse([]byte(text(t, crowd(t, mostModules+1))))
	require.NoError(t, err)
	shape := planShape()
	shape.members[6].most = 1 << 30 // so that it can be written
	for name, c := range map[string]struct {
		version byte
		raw     string
		key     string
	}{
		"text":           {versionText, zeros, TooLarge},
		"columns":        {versionColumns, zeros, TooLarge},
		"modules":        {versionColumns, string(pack(shape, many, unit.Millimetre)), TooLarge},
		"modules, text":  {versionText, text(t, crowd(t, mostModules+1)), TooLarge},
		"list of a lot":  {versionColumns, repeated(1 << 40), Incomplete},
		"list in a list": {versionColumns, repeated(400), TooLarge},
	} {
		code, ok := seal(envelope{KindPlan, c.version, crc32.ChecksumIEEE([]byte(c.raw)), deflated([]byte(c.raw))})
		require.True(t, ok, name)
		start := time.Now()
		_, err := DecodePlan(code)
		t.Logf("%s: %d characters refused in %v", name, len(code), time.Since(start))
		require.Less(t, time.Since(start), 2*time.Second, name) // 200 ms on a machine that does nothing else
		var e *Error
		require.ErrorAs(t, err, &e, name)
		require.Equal(t, c.key, e.Key, name)
	}
}

// crowd is a plan of many small modules.
func crowd(t testing.TB, n int) plan.Plan {
	p := plan.New(unit.Metric)
	for range n {
		next, _, err := edit.Apply(p, edit.AddModule{Shape: "shelf", Width: 300 * unit.Millimetre, Depth: 200 * unit.Millimetre,
			Thickness: 26 * unit.Millimetre, Wood: "white-oak"})
		require.NoError(t, err)
		p = next
	}
	return p
}

// repeated is columns in which every value is n and every object has all its members, but
// for texts.
func repeated(n int64) string {
	all := numbered(planShape())
	out := []byte{1}
	for i, f := range all {
		v := n
		if f.form == object && i == f.column {
			v = 0
			for j, m := range f.members {
				if !m.usual && m.form != word {
					v |= 2 << j
				}
			}
		}
		if f.form == word || f.form == profile || f.form == flag {
			v = 1
		}
		out = appendColumn(out, []int64{v, v}, wholeSteps())
	}
	out = append(out, 0)
	return string(appendColumn(out, nil, wholeSteps()))
}

func TestTooManyModulesForALink(t *testing.T) {
	_, err := EncodePlan(crowd(t, mostModules), Options{})
	require.NoError(t, err)
	_, err = EncodePlan(crowd(t, mostModules+1), Options{})
	var e *Error
	require.True(t, errors.As(err, &e))
	require.Equal(t, TooLarge, e.Key)
}

func TestColumnsComeBack(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		values := rapid.SliceOf(rapid.OneOf(
			rapid.Just(int64(0)), rapid.Int64Range(-1000, 1000), rapid.Int64Range(-1<<50, 1<<50),
			rapid.Custom(func(r *rapid.T) int64 { return 500_000 * rapid.Int64Range(-9000, 9000).Draw(r, "step") }),
		)).Draw(r, "values")
		steps := lengthSteps(unit.Length(rapid.Int64Range(1, 1<<20).Draw(r, "own")))
		c, rest, ok := readColumn(appendColumn(nil, values, steps), steps)
		require.True(r, ok)
		require.Empty(r, rest)
		for _, want := range values {
			got, ok := c.next()
			require.True(r, ok)
			require.Equal(r, want, got)
		}
		require.True(r, c.done())
	})
}

func TestDifferencesOfProfilesComeBack(t *testing.T) {
	for _, s := range []string{
		metricProfile1, inchProfile1, `{}`, `{"covers":{},"x":{"y":[1]}}`,
		strings.Replace(metricProfile1, `"covers":{`, `"covers":{"new":null,`, 1),
		strings.Replace(inchProfile1, `"system":"in",`, ``, 1),
	} {
		n, err := document.Parse([]byte(s))
		require.NoError(t, err)
		base, d := profileText(n)
		back, ok := profileNode(base, d)
		require.True(t, ok)
		require.True(t, same(n, back), s)
	}
	_, d := profileText(baseProfile(1))
	require.Empty(t, d)
}

func BenchmarkEncode48(b *testing.B) {
	p := shelves(b, unit.Metric, 48, 3)
	for b.Loop() {
		_, _ = EncodePlan(p, Options{})
	}
}

func BenchmarkDecode48(b *testing.B) {
	code, err := EncodePlan(shelves(b, unit.Metric, 48, 3), Options{})
	require.NoError(b, err)
	for b.Loop() {
		_, _ = DecodePlan(code)
	}
}

// Every example that the tool ships fits a link, with its names and without.
func TestLinksOfTheExamples(t *testing.T) {
	files, err := filepath.Glob("../../assets/plans/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		raw, err := os.ReadFile(file)
		require.NoError(t, err)
		p, err := plan.Decode(raw)
		require.NoError(t, err, file)
		for _, names := range []bool{false, true} {
			code, err := EncodePlan(p, Options{Names: names})
			require.NoError(t, err, file)
			t.Logf("%-14s %2d modules, %d arrangements: %d characters", filepath.Base(file), len(p.Modules), len(p.Arrangements), len(code))
			most := Warn
			if len(p.Arrangements) > 1 {
				most = Most
			}
			require.LessOrEqual(t, len(code), most, file)
			back, err := DecodePlan(code)
			require.NoError(t, err, file)
			want := p
			if !names {
				want = Public(p)
			}
			require.Equal(t, text(t, want), text(t, back), file)
		}
	}
}
