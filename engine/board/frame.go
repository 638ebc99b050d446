package board

import "ledgewright/engine/unit"

// Plane returns where the point (u, w) of a board lies in the module's plane.
func (f Frame) Plane(u, w unit.Length) (x, y unit.Length) {
	dx, dy := unit.Rotate(u, -w, f.Dir)
	return f.X + dx, f.Y + dy
}

// Local is the way back from the module's plane: u and w of the point (x, y).
func (f Frame) Local(x, y unit.Length) (u, w unit.Length) {
	du, dw := unit.Rotate(x-f.X, y-f.Y, -f.Dir)
	return du, -dw
}

// Point returns where a point of the board lies in the module's frame.
func (b Board) Point(p Point) (x, y, z unit.Length) {
	x, y = b.Frame.Plane(p.U, p.W)
	return x, y, b.Frame.Z + p.V
}

// A Cut is where one end of a board is: u on face A and on face B.
type Cut struct{ AtA, AtB unit.Length }

// Least and Greatest return the smaller and the larger u of the two faces.
func (c Cut) Least() unit.Length { return min(c.AtA, c.AtB) }

// Greatest returns the larger u of the two faces.
func (c Cut) Greatest() unit.Length { return max(c.AtA, c.AtB) }

// At returns u of the cut at w in a board of thickness t.
func (c Cut) At(w, t unit.Length) unit.Length {
	switch {
	case w == 0 || c.AtA == c.AtB:
		return c.AtA
	case w == t:
		return c.AtB
	}
	return c.AtA + unit.Nearest((c.AtB-c.AtA).MM()*(w.MM()/t.MM()))
}

// Ends returns the cuts at the start and the end. An end without a cut is square.
func (b Board) Ends() (start, end Cut) {
	start, end = Cut{}, Cut{b.Length, b.Length}
	for i := range b.Features {
		f := &b.Features[i]
		switch {
		case f.Kind != EndCut:
		case f.Enter == Start:
			start = Cut{f.AtA, f.AtB}
		case f.Enter == End:
			end = Cut{f.AtA, f.AtB}
		}
	}
	return start, end
}

// On returns the smallest and the largest u of face A or B.
func (b Board) On(f Face) (from, to unit.Length) {
	start, end := b.Ends()
	if f == FaceB {
		return start.AtB, end.AtB
	}
	return start.AtA, end.AtA
}

// Corners returns the corners of one side, counter-clockwise as seen from outside the
// wood, before anything but the end cuts is taken away.
func (b Board) Corners(side Face) [4]Point {
	s, e := b.Ends()
	t, far := b.Thickness, b.Width
	switch side {
	case FaceA:
		return [4]Point{{s.AtA, 0, 0}, {s.AtA, far, 0}, {e.AtA, far, 0}, {e.AtA, 0, 0}}
	case FaceB:
		return [4]Point{{s.AtB, 0, t}, {e.AtB, 0, t}, {e.AtB, far, t}, {s.AtB, far, t}}
	case Back:
		return [4]Point{{s.AtA, 0, 0}, {e.AtA, 0, 0}, {e.AtB, 0, t}, {s.AtB, 0, t}}
	case Front:
		return [4]Point{{s.AtA, far, 0}, {s.AtB, far, t}, {e.AtB, far, t}, {e.AtA, far, 0}}
	case Start:
		return [4]Point{{s.AtA, 0, 0}, {s.AtB, 0, t}, {s.AtB, far, t}, {s.AtA, far, 0}}
	}
	return [4]Point{{e.AtA, 0, 0}, {e.AtA, far, 0}, {e.AtB, far, t}, {e.AtB, 0, t}}
}

// FaceArea returns the area of one side, before anything but the end cuts is taken
// away: what is planed and sanded.
func (b Board) FaceArea(side Face) unit.Area {
	s, e := b.Ends()
	switch side {
	case FaceA:
		return unit.Rectangle(e.AtA-s.AtA, b.Width)
	case FaceB:
		return unit.Rectangle(e.AtB-s.AtB, b.Width)
	case Back, Front:
		return (unit.Rectangle(e.AtA-s.AtA, b.Thickness) + unit.Rectangle(e.AtB-s.AtB, b.Thickness)) / 2
	case Start:
		return unit.Rectangle(slant(s, b.Thickness), b.Width)
	}
	return unit.Rectangle(slant(e, b.Thickness), b.Width)
}
