package browser

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/words"
)

var (
	fine   = Facts{WebGL: true, Renderer: "ANGLE (Mesa, Adreno 618, OpenGL ES 3.2)"}
	minute = 60_000.0
)

func times(ms float64) []float64 {
	out := make([]float64, trialFrames)
	for i := range out {
		out[i] = ms
	}
	return out
}

func TestRenderersWithoutAGraphicsProcessor(t *testing.T) {
	for name, want := range map[string]bool{
		"ANGLE (Google, Vulkan 1.3.0 (SwiftShader Device (Subzero)), SwiftShader driver)": true,
		"llvmpipe (LLVM 15.0.6, 256 bits)":                                                true, "Microsoft Basic Render Driver": true, "Apple Software Renderer": true,
		"ANGLE (Intel, Mesa Intel(R) UHD Graphics 620, OpenGL 4.6)": false, "Apple GPU": false, "Mali-G52": false, "": false,
	} {
		require.Equal(t, want, software(name), name)
	}
}

func TestWhatIsFetched(t *testing.T) {
	for name, c := range map[string]struct {
		want  Want
		facts Facts
		acts  []glassAct
	}{
		"a graphics processor":       {WantAny, fine, []glassAct{glassLoad}},
		"no WebGL 2":                 {WantAny, Facts{Renderer: fine.Renderer}, nil},
		"a software renderer":        {WantAny, Facts{WebGL: true, Renderer: "SwiftShader"}, nil},
		"little traffic":             {WantAny, Facts{WebGL: true, SaveData: true}, nil},
		"asked for without any":      {WantStage, Facts{}, []glassAct{glassLoad}},
		"asked not, with everything": {WantSVG, fine, nil},
	} {
		g := newGlass()
		require.Equal(t, c.acts, g.choose(c.want, c.facts), name)
	}
}

func TestATrialThatIsPassed(t *testing.T) {
	g := newGlass()
	g.choose(WantAny, fine)
	require.Equal(t, []glassAct{glassTry}, g.ready())
	frames := []float64{300, 40, 14, 14, 14, 14, 9, 9} // the first ones make the shader
	require.Equal(t, []glassAct{glassShow}, g.measured(frames, 2))
	require.Equal(t, glassShown, g.phase)
}

// Slow frames get a second try with fewer pixels, and then the SVG stays.
func TestATrialThatIsNotPassed(t *testing.T) {
	g := newGlass()
	g.choose(WantAny, fine)
	g.ready()
	require.Equal(t, []glassAct{glassClear, glassLoad}, g.measured(times(14.1), 2))
	require.Equal(t, fewPixels, g.pixels)
	require.Equal(t, []glassAct{glassTry}, g.ready())
	require.Equal(t, []glassAct{glassHide, glassClear}, g.measured(times(14.1), 1.5))
	require.Equal(t, "slow", g.why)
	require.Nil(t, g.ready())
	g = newGlass()
	g.choose(WantAny, fine)
	g.ready()
	require.Equal(t, []glassAct{glassHide, glassClear}, g.measured(times(20), 1), "a screen that has no more pixels gets no second try")
}

func shown(want Want) *glass {
	g := newGlass()
	g.choose(want, fine)
	g.ready()
	g.measured(times(5), 2)
	return &g
}

func TestALostContextComesBack(t *testing.T) {
	for _, want := range []Want{WantAny, WantStage} {
		g := shown(want)
		require.Equal(t, []glassAct{glassHide}, g.hidden(true, minute))
		require.Equal(t, []glassAct{glassShow}, g.ready(), "without a second trial")
		require.Equal(t, []glassAct{glassHide}, g.hidden(true, 11.1*minute), "ten minutes later it is the first again")
		require.Equal(t, []glassAct{glassShow}, g.ready())
		require.Equal(t, []glassAct{glassHide, glassClear}, g.hidden(true, 21*minute))
		require.Equal(t, glassGivenUp, g.phase)
		require.Nil(t, g.ready())
		require.Equal(t, []glassAct{glassLoad}, g.choose(WantStage, fine), "the maker may choose it again")
	}
}

// The screen has other pixels, as when the window goes to another one: no loss.
func TestOtherPixelsAreNoLoss(t *testing.T) {
	g := shown(WantStage)
	for i := range 5 {
		require.Equal(t, []glassAct{glassHide}, g.hidden(false, float64(i)))
		require.Equal(t, []glassAct{glassShow}, g.ready())
	}
}

func TestADeathIsForThisVisit(t *testing.T) {
	for _, g := range []*glass{shown(WantAny), shown(WantStage)} {
		require.Equal(t, []glassAct{glassHide, glassClear}, g.died("out of memory"))
		require.Equal(t, "out of memory", g.why)
		require.Nil(t, g.died("again"))
		require.Nil(t, g.hidden(true, 1))
	}
}

func TestTheMakersSwitch(t *testing.T) {
	g := shown(WantAny)
	require.Nil(t, g.choose(WantStage, fine), "it is there already")
	require.Equal(t, []glassAct{glassHide, glassClear}, g.choose(WantSVG, fine))
	require.Equal(t, []glassAct{glassLoad}, g.choose(WantAny, fine))
}

// Whatever happens in whatever order: what is shown is loaded, and what was given up or
// is away is neither.
func TestAGlassInAnyOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, now, loaded, visible := newGlass(), 0.0, false, false
		for range rapid.IntRange(1, 40).Draw(t, "events") {
			now += rapid.Float64Range(0, 8*minute).Draw(t, "later")
			var acts []glassAct
			switch rapid.IntRange(0, 4).Draw(t, "event") {
			case 0:
				acts = g.choose(rapid.SampledFrom([]Want{WantAny, WantStage, WantSVG}).Draw(t, "want"), fine)
			case 1:
				acts = g.ready()
			case 2:
				acts = g.measured(times(rapid.Float64Range(1, 30).Draw(t, "ms")), rapid.SampledFrom([]float64{1, 1.5, 2}).Draw(t, "pixels"))
			case 3:
				acts = g.hidden(rapid.Bool().Draw(t, "lost"), now)
			case 4:
				acts = g.died("x")
			}
			for _, a := range acts {
				switch a {
				case glassLoad:
					require.False(t, loaded)
					loaded = true
				case glassClear:
					require.True(t, loaded)
					loaded, visible = false, false
				case glassShow:
					require.True(t, loaded)
					visible = true
				case glassHide:
					visible = false
				}
			}
			require.Equal(t, g.phase == glassShown, visible)
			require.Equal(t, g.phase != glassAway && g.phase != glassGivenUp, loaded)
		}
	})
}

// Why the picture is plain has words on the page.
func TestWhyThePictureIsPlain(t *testing.T) {
	for why, f := range map[string]Facts{"none": {}, "software": {WebGL: true, Renderer: "SwiftShader"}, "saving": {WebGL: true, SaveData: true}} {
		g := newGlass()
		g.choose(WantAny, f)
		require.Equal(t, why, g.plain())
	}
	g := newGlass()
	g.choose(WantAny, fine)
	require.Equal(t, "coming", g.plain())
	g.ready()
	g.measured(times(20), 1)
	require.Equal(t, "slow", g.plain())
	g = *shown(WantStage)
	require.Empty(t, g.plain())
	g.hidden(true, 0)
	require.Equal(t, "coming", g.plain())
	g.hidden(true, 1)
	require.Equal(t, "lost", g.plain())
	g = *shown(WantStage)
	g.died("a reason")
	require.Equal(t, "ended", g.plain())
	for _, why := range []string{"none", "software", "saving", "coming", "slow", "lost", "ended", "chosen", "address"} {
		require.True(t, words.Has("stage.why-"+why), why)
	}
}

// Where there is no place for it the stage goes, and what was given up stays so.
func TestAStageWithoutAPlace(t *testing.T) {
	g := shown(WantStage)
	require.Equal(t, []glassAct{glassHide, glassClear}, g.leave())
	require.Nil(t, g.leave())
	require.Equal(t, []glassAct{glassLoad}, g.choose(WantStage, fine))
	g.died("a reason")
	require.Nil(t, g.leave())
	require.Equal(t, glassGivenUp, g.phase)
}
