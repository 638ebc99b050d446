//go:build browser

package main

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/testdata/visitor"
)

// spaced is the spacing of WCAG 2.2, 1.4.12: lines of 1.5, 0.12 em between letters, 0.16 em between
// words, 2 em below paragraphs. It is laid over all text, that of the drawings too.
const spaced = `const sheet = new CSSStyleSheet()
sheet.replaceSync('*{line-height:1.5!important;letter-spacing:.12em!important;word-spacing:.16em!important}p{margin-bottom:2em!important}')
document.adoptedStyleSheets = [sheet]`

// With text spaced as a reader may need it, nothing is cut off and nothing scrolls sideways.
func TestTextSpacing(t *testing.T) {
	t.Parallel()
	for _, size := range []visitor.Size{visitor.Small, visitor.Tablet, visitor.Upright} {
		t.Run(size.String(), func(t *testing.T) {
			t.Parallel()
			b := house.Visit(t, size, "").Go("")
			b.Run(spaced)
			require.Equal(t, "0.12", b.Text(`(s => (parseFloat(s.letterSpacing) / parseFloat(s.fontSize)).toFixed(2))(getComputedStyle(document.querySelector('aside p')))`), "the spacing is in force")
			look := func(at string) {
				t.Helper()
				b.Calm()
				for _, line := range strings.Split(b.Text(cramped)+"\n"+b.Text(cut), "\n") {
					if line != "" {
						t.Errorf("%s: %s", at, line)
					}
				}
			}
			look("start")
			b.Tap("button", "Study")
			eachView(b, look)
		})
	}
}

// cut says which texts are cut off: they reach out of something around them that hides
// what reaches out and does not scroll. Words for readers only are meant to be hidden; figures
// of the picture leave it as it is moved under the finger, and stand in the panel too.
const cut = `(() => { const said = [], all = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
  for (let n = all.nextNode(); n; n = all.nextNode()) {
    const of = n.parentElement, style = getComputedStyle(of)
    if (!n.data.trim() || style.visibility === 'hidden' || of.closest('svg, select, textarea, .fig, .note')) continue
    const range = document.createRange(); range.selectNodeContents(n)
    const rects = [...range.getClientRects()].filter(r => r.width > 0)
    for (let e = of, x = true, y = true; e && rects.length; e = e.parentElement) {
      const s = getComputedStyle(e), r = e.getBoundingClientRect()
      if (s.clipPath.startsWith('inset')) break
      if (/auto|scroll/.test(s.overflowX)) x = false
      if (/auto|scroll/.test(s.overflowY)) y = false
      const outX = x && s.overflowX !== 'visible' && rects.some(t => t.right > r.right + 1 || t.left < r.left - 1)
      const outY = y && s.overflowY !== 'visible' && rects.some(t => t.bottom > r.bottom + 1 + .25 * t.height || t.top < r.top - 1 - .25 * t.height)
      if (outX || outY) { said.push('cut off “' + n.data.trim().slice(0, 40) + '” by ' + e.tagName.toLowerCase() + '.' + e.className); break }
    }
  }
  return [...new Set(said)].slice(0, 12).join('\n') })()`

// smaller lists the controls that are smaller than wished and may be.
var smaller = []struct{ part, why string }{
	{"tools-320", "on 320 px the tools of the wall stay in the picture's width: 36 px wide and 44 high, with no gap that could be missed"},
	{"fig", "a figure of the picture: a field of the panel, or a row of a table, has the same at full size"},
}

// Under the finger everything is 44 px high and wide, at the bench 56, but what is listed above.
func TestTargets(t *testing.T) {
	t.Parallel()
	for _, size := range visitor.Sizes() {
		t.Run(size.String(), func(t *testing.T) {
			t.Parallel()
			b := house.Visit(t, size, "").Go("")
			look := func(at string) {
				t.Helper()
				b.Calm()
				least := 44.0
				if strings.HasSuffix(at, "bench") {
					least = 56
				}
				found := targets(b)
				require.Greater(t, len(found), 4, at)
				for _, f := range found {
					if min(f.Width, f.Height) < least-0.5 && !f.maySmaller() {
						t.Errorf("%s: %s is %.0f × %.0f", at, f.Name, f.Width, f.Height)
					}
				}
			}
			look("start")
			b.Tap("button", "Study")
			eachView(b, look)
		})
	}
}

// A target is a control with the box that takes a tap.
type target struct {
	Name, Class   string
	Width, Height float64
}

func (f target) maySmaller() bool {
	for _, s := range smaller {
		if strings.Contains(" "+f.Class+" ", " "+s.part+" ") {
			return true
		}
	}
	return false
}

// targets measures all controls that are shown: a label belongs to its control, and so
// does what the style sheet lays over it.
func targets(b *visitor.Tab) (out []target) {
	b.T.Helper()
	text := b.Text(`JSON.stringify([...document.querySelectorAll('button, a[href], input, select, textarea, summary')].flatMap(e => {
	  const of = e.closest('label') || e, r = of.getBoundingClientRect(), a = getComputedStyle(of, '::after')
	  if (r.width === 0 || !e.checkVisibility({visibilityProperty: true})) return []
	  const over = a.content !== 'none' && a.position === 'absolute'
	  return [{Name: e.tagName.toLowerCase() + ' “' + (e.getAttribute('aria-label') || e.textContent || e.id).trim().slice(0, 40) + '”', Class: e.className + ' ' + (e.closest('.tools') ? 'tools-' + innerWidth : ''),
	    Width: Math.max(r.width, over && parseFloat(a.width) || 0), Height: Math.max(r.height, over && parseFloat(a.height) || 0)}] }))`)
	require.NoError(b.T, json.Unmarshal([]byte(text), &out), fmt.Sprint(text))
	return out
}
