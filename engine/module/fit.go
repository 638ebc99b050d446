package module

import (
	"ledgewright/engine/board"
	"ledgewright/engine/joint"
	"ledgewright/engine/light"
	"ledgewright/engine/mount"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// upright is how far from plumb, in the module's frame, a board may stand to count as
// an upright.
const upright = 2 * unit.Degree

// carrier returns the board that a bracket stands on.
func (w *work) carrier(b plan.Bracket) *board.Board {
	if b.Divider != "" {
		for i := len(w.m.Boards); i < len(w.boards); i++ {
			if w.boards[i].ID == b.Divider {
				return &w.boards[i]
			}
		}
		return nil
	}
	if b.Board < 1 || b.Board > len(w.m.Boards) {
		return nil
	}
	return &w.boards[b.Board-1]
}

// fitBrackets fits every bracket to its board.
func (w *work) fitBrackets() {
	for _, p := range w.m.Brackets {
		b := w.carrier(p)
		if b == nil {
			continue // the plan's check says so, or the divider's own finding
		}
		hung := *b
		hung.Frame = turned(b.Frame, w.m.Hung)
		got := mount.Fit(mount.Input{
			Bracket: p.ID, Module: w.m.ID, Kind: p.Kind, Board: hung, Upright: isUpright(hung.Frame.Dir),
			At: p.At, Edge: board.Face(p.Edge), Length: p.Length.Value, Shop: w.s,
		})
		b.Features = append(b.Features, got.Features...)
		for _, x := range got.Extra {
			x.Frame = turned(x.Frame, -w.m.Hung)
			w.extra = append(w.extra, x)
		}
		w.out.Fixings = append(w.out.Fixings, got.Fixing)
		w.sayAll(got.Findings)
	}
}

// turned returns a frame turned about the module's origin: into the attitude in which the
// module hangs, where a bracket asks what is upright and what is below, and back.
func turned(f board.Frame, by unit.Angle) board.Frame {
	f.X, f.Y = unit.Rotate(f.X, f.Y, by)
	f.Dir = (f.Dir + by).Turn()
	return f
}

func isUpright(dir unit.Angle) bool {
	return (dir.Turn()%unit.HalfTurn - unit.QuarterTurn).Abs() <= upright
}

// fitLights cuts the groove of every light in the boards of its run.
func (w *work) fitLights() {
	for _, l := range w.m.Lights {
		run := w.run(l)
		if len(run) == 0 {
			continue // the plan's check says so
		}
		in := light.Input{
			Light: l.ID, Module: w.m.ID, Face: board.Face(l.Face), FromFront: l.FromFront,
			Width: l.Width, Depth: l.Depth, StartStop: l.StartStop, EndStop: l.EndStop,
			Strip: l.Strip, Source: l.Power.Source, Exit: l.Power.Exit, Lead: l.Power.Lead.Value, Shop: w.s,
		}
		for k, i := range run {
			in.Boards = append(in.Boards, w.boards[i])
			if k > 0 {
				in.Joined = append(in.Joined, w.m.Corners[run[k-1]].Joint == joint.Mitre)
			}
		}
		got := light.Fit(in)
		for k, i := range run {
			if k < len(got.Features) {
				w.boards[i].Features = append(w.boards[i].Features, got.Features[k]...)
			}
		}
		w.out.Strips = append(w.out.Strips, got.Strip)
		w.sayAll(got.Findings)
	}
}

// shine works out what each strip gives on the board below, once all boards are there.
func (w *work) shine() {
	for i := range w.out.Strips {
		w.out.Strips[i].Book = light.Book(w.out.Boards, &w.out.Strips[i], w.m.Hung)
	}
}

// run returns the boards of a light, from its first to its last, round the closing
// corner if need be.
func (w *work) run(l plan.Light) (run []int) {
	n := len(w.m.Boards)
	if l.First < 1 || l.First > n || l.Last < 1 || l.Last > n || l.Last < l.First && !w.m.Closed {
		return nil
	}
	for i := l.First - 1; ; i = (i + 1) % n {
		run = append(run, i)
		if i == l.Last-1 {
			return run
		}
	}
}
