//go:build browser

package main

import (
	"strings"
	"testing"

	"ledgewright/testdata/visitor"
)

// crossing lists what is written on the wall and lies over something else that is written
// there, or under a tool or beyond the picture's edge.
const crossing = `(() => {
  const wall = document.querySelector('.wall').getBoundingClientRect(), out = []
  const shown = q => [...document.querySelectorAll(q)].map(n => ({n, r: n.getBoundingClientRect()})).filter(o => o.r.width > 0)
  const figs = shown('.hand .fig, .hand .note'), tools = shown('.tools .set')
  const over = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1
  figs.forEach((a, i) => {
    for (const b of figs.slice(0, i)) if (over(a.r, b.r)) out.push(a.n.textContent + ' over ' + b.n.textContent)
    for (const b of tools) if (over(a.r, b.r)) out.push(a.n.textContent + ' under the tools')
    if (a.r.left < wall.left || a.r.right > wall.right + 1 || a.r.top < wall.top || a.r.bottom > wall.bottom) out.push(a.n.textContent + ' cut off')
  })
  return out.join('\n')
})()`

// What is written on the wall in Survey and Hang is whole and apart, as the browser sets
// it: on a wide wall, one in inches and a narrow one with a floor that falls, at four sizes.
func TestFiguresOnTheWallAreWholeAndApart(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"Study", "Kitchen", "Larder"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			b := house.Visit(t, visitor.Tablet, "").Go("")
			b.Tap("button", name)
			b.See("heading", "Arrange")
			for _, job := range []string{"Survey", "Hang"} {
				b.Job(job)
				for _, size := range visitor.Sizes() {
					b.Resize(size)
					b.Calm()
					for _, line := range strings.Split(b.Text(crossing), "\n") {
						if line != "" {
							t.Errorf("%s at %s: %s", job, size, line)
						}
					}
				}
			}
		})
	}
}
