//go:build browser

package main

import (
	"strconv"
	"testing"
	"time"

	. "github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"ledgewright/testdata/visitor"
)

// These tests use the maker's page with its stage, in Chromium with software WebGL.

// stageHelp are short ways to the stage; window.glare counts the pictures in which neither
// stage nor SVG was to be seen, after each frame that the page has painted.
const stageHelp = `if (window === top) {
window.glass = () => document.querySelector('iframe')
window.inside = () => glass().contentWindow
window.lose = () => inside().document.querySelector('canvas').getContext('webgl2').getExtension('WEBGL_lose_context').loseContext()
window.staged = () => !!document.querySelector('.picture.staged') && glass()?.style.visibility === 'visible'
window.plain = () => { const w = document.querySelector('.world'); return !!w && getComputedStyle(w).visibility === 'visible' }
window.draws = () => inside().stageCounts().draws
window.glare = 0
window.seen = []
window.look = () => askFrame(() => setTimeout(() => {
  const now = staged() ? 'stage' : 'svg'
  if (now === 'svg' && !plain()) glare++
  if (seen.at(-1) !== now) seen.push(now)
  look() }))
}
`

// arrives waits for what needs the stage's program: ten megabytes that the browser has to
// compile, a while on a machine that does other things as well.
func arrives(b *visitor.Tab, js, want string) {
	b.T.Helper()
	for end := time.Now().Add(time.Minute); b.Text(js) != want && time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
	}
	b.Until(js, want)
}

// staged opens the study with a stage in the place of the picture.
func staged(t *testing.T, size visitor.Size, script string) *visitor.Tab {
	t.Helper()
	b := house.Visit(t, size, stageHelp+script).Go("?picture=stage")
	b.Tap("button", "Study")
	b.See("heading", "Arrange")
	require.Equal(t, "true", b.Text(`plain()`), "the SVG is there first")
	arrives(b, `staged()`, "true")
	return b
}

// The stage stands in the place of the picture, below figures and hand. A move of a finger
// is one draw in the frame that shows it, with a new drawing only where something is in
// the hand; and while nothing happens there is neither a frame nor a draw.
func TestTheStageInThePlaceOfThePicture(t *testing.T) {
	t.Parallel()
	b := staged(t, visitor.Tablet, "")
	b.Calm()
	require.Equal(t, "hidden visible visible true", b.Text(`['.world', '.over', '.fig'].map(q => getComputedStyle(document.querySelector(q) ?? document.querySelector('.hand')).visibility).join(' ') + ' ' +
		(document.elementFromPoint(400, 500).closest('[data-hand]') !== null)`))
	b.Run(`window.moves = []; addEventListener('pointermove', () => { const n = inside().stageCounts(); askFrame(() => setTimeout(() => { const m = inside().stageCounts(); moves.push([m.draws - n.draws, m.drawings - n.drawings].join()) })) }, true)`)
	pan := b.Wall(1500, 600)
	strokes(b, pan, visitor.Point{X: pan.X + 30, Y: pan.Y + 10})
	require.Equal(t, "1,0", b.Text(`[...new Set(moves)].join(' ')`), "looking further along")
	b.Tap("button", "Fit the wall")
	b.Tap("button", "Box")
	at := pose(b, "m2")
	from := b.Wall(at.X, at.Y)
	strokes(b, from, visitor.Point{X: from.X - 40, Y: from.Y + 60})
	require.Equal(t, "1,1", b.Text(`[...new Set(moves)].join(' ')`), "with a module in the hand")
	b.Steps(1)

	b.Wait("two seconds in which nothing happens but, at most once, that a minute ends", func() bool {
		before := b.Text(`[framesAsked, draws(), inside().stageFrames, inside().framesAsked]`)
		time.Sleep(2 * time.Second) // the rule is about two seconds
		return before == b.Text(`[framesAsked, draws(), inside().stageFrames, inside().framesAsked]`)
	})
	require.Equal(t, "0", b.Text(`inside().framesAsked`))

	// Keys, readers and the policy.
	for range 40 {
		b.Press(kb.Tab)
		require.NotEqual(t, "IFRAME", b.Text(`document.activeElement.tagName`))
	}
	require.Empty(t, b.Text(`inside().refused.join()`), "what the policy refused in the stage's own document")
	for _, f := range axe(b) {
		require.GreaterOrEqual(t, f.accepted(), 0, "%s %s: %s %s", f.Kind, f.Rule, f.Where, f.Why)
	}

	// Another size of the picture, and other pixels.
	for _, c := range []struct {
		size  visitor.Size
		scale float64
	}{{visitor.Upright, 1}, {visitor.Upright, 2}} {
		b.Do(EmulateViewport(c.size.Width, c.size.Height, EmulateScale(c.scale)))
		b.Tap("button", "Zoom in") // not every change of pixels is told by the browser; a draw sees it
		arrives(b, `staged() && inside().document.querySelector('canvas').width === devicePixelRatio * document.querySelector('.hand').clientWidth`, "true")
	}
	require.Equal(t, "0", b.Text(`glare`))
}

// strokes draws a finger along a line; each move waits until its frame is through.
func strokes(b *visitor.Tab, from, to visitor.Point) {
	b.T.Helper()
	b.Down(from)
	b.Moved(from.To(to, 0.5)) // from here on it is a drag
	b.Await(`new Promise(done => askFrame(() => setTimeout(() => { moves.length = 0; done('') }, 20)))`)
	for i := range 6 {
		b.Moved(from.To(to, 0.5+float64(i+1)/12))
		b.Await(`new Promise(done => askFrame(() => setTimeout(() => done(''), 20)))`)
	}
	b.Up()
}

// hours lets the page believe that time passes.
const hours = `if (window === top) { const now = performance.now.bind(performance); window.later = 0; performance.now = () => now() + later }`

// Twenty times the context is lost: the SVG is there at once, the stage comes back, and
// the page is none the wiser. Then the stage's program dies, and the SVG stays.
func TestTheStageIsLostTwentyTimesAndDies(t *testing.T) {
	t.Parallel()
	b := staged(t, visitor.Small, hours)
	b.Job("Survey")
	b.Run(`look()`)
	const losses = 20
	for i := range losses {
		b.Run(`window.later += 11 * 60 * 1000; seen.length = 0; lose()`)
		if i%5 == 0 {
			b.Fill("On the other side", "room "+strconv.Itoa(i))
		}
		arrives(b, `seen.slice(-2).join()`, "svg,stage")
		require.Equal(t, "true", b.Text(`inside().stageCounts().triangles > 100`))
	}
	require.Equal(t, "0 ", b.Text(`glare + ' ' + inside().refused.join()`), "frames without a picture, and what the policy refused")
	k := b.Keeps("the last edit", func(k visitor.Kept) bool { return k.Plan.Walls[0].FarSide == "room 15" })
	require.Len(t, k.Steps, 4, "every edit")

	b.Run(`seen.length = 0; try { inside().stageView() } catch {}`) // no arguments: its program panics
	b.Fill("On the other side", "room 20")
	arrives(b, `seen.at(-1)`, "svg")
	b.Steps(5)
	require.Equal(t, "null true 0", b.Text(`glass() + ' ' + plain() + ' ' + glare`))
	b.Job("Agree")
	require.Contains(t, b.Text(`document.querySelector('.panel').textContent`), "It is plain now: what paints by the graphics processor has stopped.")
	b.Forgive()
}

// real makes the software renderer pass for a graphics processor, and its frames for
// quick ones.
const real = `const ask = WebGL2RenderingContext.prototype.getParameter
WebGL2RenderingContext.prototype.getParameter = function (n) { return n === 37446 ? 'Mali-G52' : ask.call(this, n) }
if (window !== top) Object.defineProperty(window, 'stageTimed', { get: () => () => 6, set() {} })
`

// Who paints: whatever is best, what the maker chooses, which is kept, or what the address
// says.
func TestWhoPaintsThePicture(t *testing.T) {
	t.Parallel()
	says := func(b *visitor.Tab) string { return b.Text(`document.querySelector('.panel').textContent`) }
	b := house.Visit(t, visitor.Small, stageHelp).Go("")
	b.Tap("button", "Study")
	b.Job("Agree")
	b.Until(`glass() + ' ' + plain()`, "null true")
	require.Contains(t, says(b), "It is plain now: there is only software to do the work of a graphics processor.")
	b.Tap("radio", "by the graphics processor")
	arrives(b, `staged()`, "true")
	require.Contains(t, says(b), "The graphics processor paints it now.")

	b = house.Visit(t, visitor.Small, stageHelp+real).Go("")
	b.Tap("button", "Study")
	arrives(b, `staged()`, "true")
	b.Job("Agree")
	b.Tap("radio", "plainly")
	b.Until(`glass() + ' ' + plain()`, "null true")
	require.Contains(t, says(b), "It is plain now: you have chosen it.")
	b.Reload()
	b.Job("Agree")
	b.Calm()
	require.Contains(t, says(b), "It is plain now: you have chosen it.")
	b.Tap("radio", "as the page finds best")
	arrives(b, `staged()`, "true")
	b.Go("?picture=svg")
	b.Job("Agree")
	require.Contains(t, says(b), "It is plain now: the address of this page asks for it.")
	require.Equal(t, "null true", b.Text(`glass() + ' ' + plain()`))
}

// Where there is no picture there is no stage to be seen, and it comes back with the
// picture: after the bench, in the round, and after the start page, where it has no place.
func TestTheStageComesAndGoesWithThePicture(t *testing.T) {
	t.Parallel()
	b := staged(t, visitor.Small, "")
	drawings := func() string { b.Calm(); return b.Text(`inside().stageCounts().drawings`) }
	b.Job("Hang")
	b.Tap("button", "Bench")
	b.Until(`document.querySelector('.app').dataset.view`, "bench")
	before := drawings()
	b.Job("Arrange")
	require.NotEqual(t, before, drawings())
	require.Equal(t, "true", b.Text(`staged() && inside().document.querySelector('canvas').height === document.querySelector('.hand').clientHeight`))
	before = drawings()
	b.Tap("button", "In the round")
	b.See("slider", "Pull apart")
	require.NotEqual(t, before, drawings())
	b.Until(`staged() && inside().innerHeight === document.querySelector('.hand').clientHeight`, "true")
	b.Job("Make")
	b.Tap("button", "All parts") // leaves the bench
	b.Until(`document.querySelector("main").className + " " + getComputedStyle(glass()).visibility`, "wall shop hidden")
	b.Tap("button", "All jobs")
	b.See("list", "Kept in this browser")
	require.Equal(t, "null", b.Text(`glass()`))
	b.Tap("button", "Study")
	b.Job("Arrange")
	arrives(b, `staged()`, "true")
}
