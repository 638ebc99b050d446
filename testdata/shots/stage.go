package main

import "ledgewright/testdata/visitor"

// stage takes the wall by the stage, by day and in the evening, as a whole, near and with
// a module in the hand; the boards in the round; and the same by the SVG beside them.
func (p *photographer) stage(size visitor.Size) {
	for _, by := range []string{"stage", "svg"} {
		b := p.house.Visit(p, size, "").Go("?picture=" + by)
		b.Tap("button", example)
		b.See("heading", "Arrange")
		if by == "stage" {
			b.Until(`!!document.querySelector('.picture.staged')`, "true")
		}
		for _, view := range []string{"-day", "-evening"} {
			if view == "-evening" {
				evening(b)
			}
			p.take(b, by+view)
			b.Tap("button", "In the round")
			b.See("slider", "Pull apart")
			p.take(b, by+"-round"+view)
			b.Tap("button", "In the round")
			b.Calm()
			from := b.Wall(1100, 1700)
			for range 3 {
				b.Pinch([2]visitor.Point{{X: from.X - 30, Y: from.Y}, {X: from.X + 30, Y: from.Y}},
					[2]visitor.Point{{X: from.X - 60, Y: from.Y}, {X: from.X + 60, Y: from.Y}}, 4)
			}
			p.take(b, by+"-near"+view)
			b.Tap("button", "Fit the wall")
		}
		p.leave()
	}
}
