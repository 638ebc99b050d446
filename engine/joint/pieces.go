package joint

import (
	"math"

	"ledgewright/engine/board"
	"ledgewright/engine/strength"
	"ledgewright/engine/unit"
)

// hidden sets out splines, loose tenons and dowels: slots in both boards, square to the
// joint's plane.
func (j *job) hidden() {
	if j.shape.Sides[0].Rebate+j.shape.Sides[1].Rebate > 0 {
		j.doesNotSuit()
		return
	}
	w := j.thickness()
	s := j.Shop.Joints.SplineHeel
	if j.shape.Through >= 0 {
		s = (j.shape.Plane - w) / 2 // a butt has no heel; the slot stands in the middle
	}
	deep, ok := j.deepest(s, w)
	if !ok || w <= 0 || s < 0 {
		j.noRoom(max(deep, 0), w)
		return
	}
	width, typed := j.across()
	d := (width + j.Shop.Joints.SplinePlay) / 2
	if d > deep {
		d = down(deep, j.step())
		if typed {
			j.tooWide(width, 2*d-j.Shop.Joints.SplinePlay)
		}
		width = 2*d - j.Shop.Joints.SplinePlay
	}
	j.setOut(s, w, d, width)
}

// deepest returns how deep a slot may go into both boards, and whether it is worth it:
// not if it would be shallower than it is wide.
func (j *job) deepest(s, w unit.Length) (deep unit.Length, ok bool) {
	a, fitsA := j.room(0, s, w)
	b, fitsB := j.room(1, s, w)
	deep = min(a, b)
	return deep, fitsA && fitsB && deep >= w && s+w < j.shape.Plane
}

// setOut cuts the slots for pieces of a width across the joint.
func (j *job) setOut(s, w, d, width unit.Length) {
	taken := j.taken(s, w, d)
	var rows []board.Span
	wanted := 0
	long := j.along(w)
	if j.Kind == Spline {
		rows = j.runs(taken)
		wanted = 1
	} else {
		rows, wanted = j.rows(long, taken)
	}
	if len(rows) < wanted {
		j.leftOut(len(rows), wanted)
	}
	longest := unit.Length(0)
	for _, r := range rows {
		longest = max(longest, r.To-r.From)
		for i := range 2 {
			j.add(i, j.slot(i, s, w, d, r.From, r.To, j.Kind == Dowel))
		}
		j.piece(j.Kind, w, width, r.To-r.From)
		glued := 2 * unit.Rectangle(width, r.To-r.From)
		mouth := unit.Rectangle(w, r.To-r.From)
		if j.Kind == Dowel {
			glued, mouth = math.Pi*unit.Rectangle(w, width), math.Pi/4*unit.Rectangle(w, w)
		}
		j.out.Corner.SlotArea += glued
		j.out.Corner.GlueArea -= mouth
	}
	j.checkSpline(longest)
}

// taken returns the stretches of v in which a slot would come too near to what is cut
// in either board already.
func (j *job) taken(s, w, d unit.Length) []board.Span {
	var spans []board.Span
	for i := range 2 {
		f := j.slot(i, s, w, d, 0, j.width, false)
		spans = append(spans, j.Boards[i].Taken(f, j.clear())...)
	}
	return board.Merge(spans)
}

// clear is the wood to be left between a piece's slot and any other cut.
func (j *job) clear() unit.Length { return max(j.Shop.Covers.BoreToSlot, j.Shop.Covers.Pocket) }

func (j *job) add(i int, f board.Feature) { j.out.Features[i] = append(j.out.Features[i], f) }

// piece adds one loose piece to the list, or one more of a size that stands there.
func (j *job) piece(what string, thickness, width, length unit.Length) {
	p := board.Piece{What: what, Count: 1, Thickness: thickness, Width: width, Length: length}
	if what == Dowel {
		p.Width, p.Length = 0, width
	}
	for i := range j.out.Corner.Pieces {
		q := &j.out.Corner.Pieces[i]
		if p.Count = q.Count; *q == p {
			q.Count++
			return
		}
	}
	p.Count = 1
	j.out.Corner.Pieces = append(j.out.Corner.Pieces, p)
}

// keys sets out keys: slots across the closed corner, cut from outside after glue-up,
// square to the joint's plane and down to a little before the inside. In each board the
// slot takes all that lies farther than that from the inner point.
func (j *job) keys() {
	inside, plane := j.Shop.Joints.KeyInside, j.shape.Plane
	tilts := [2]unit.Angle{j.shape.Sides[0].Tilt, j.shape.Sides[1].Tilt}
	if j.shape.Through >= 0 || tilts[0] <= 0 || tilts[1] <= 0 || plane <= inside {
		j.doesNotSuit()
		return
	}
	w := j.thickness()
	var deep [2]unit.Length
	for i := range 2 {
		sin, cos := tilts[i].SinCos()
		left := j.Boards[i].Thickness.MM() - float64(inside.MM()*cos)
		deep[i] = unit.Nearest(min(left/sin, j.Boards[i].Length.MM()))
	}
	rows, wanted := j.rows(w, j.takenByKeys(deep))
	if len(rows) < wanted {
		j.leftOut(len(rows), wanted)
	}
	for _, r := range rows {
		for i := range 2 {
			j.add(i, j.key(i, deep[i], r))
			j.out.Corner.SlotArea += unit.Rectangle(plane-inside, deep[i]) // both sides of half a rectangle
		}
		j.piece(Key, w, plane-inside, deep[0]+deep[1])
		j.out.Corner.GlueArea -= unit.Rectangle(plane-inside, w)
	}
}

func (j *job) key(i int, deep unit.Length, r board.Span) board.Feature {
	inside := j.Shop.Joints.KeyInside
	f := j.slot(i, inside, j.shape.Plane-inside, deep, r.From, r.To, false)
	f.Through, f.After = true, board.AfterGlue
	return f
}

func (j *job) takenByKeys(deep [2]unit.Length) []board.Span {
	var spans []board.Span
	for i := range 2 {
		f := j.key(i, deep[i], board.Span{From: 0, To: j.width})
		spans = append(spans, j.Boards[i].Taken(f, j.clear())...)
	}
	return board.Merge(spans)
}

// Screws go through one board, from its outside, into the end of the other; their heads
// lie under plugs. All measures in diameters of the screw are our assumption.
const (
	plugDiameters  = 2 // plug's diameter
	plugDepthMost  = 8 * mm
	pilotTenths    = 7 // pilot's diameter in tenths
	screwDiameters = 8 // length of the screw in the other board
	leastDiameters = 4 // at least, where a slanting screw finds no more wood
)

// screws sets out screws and plugs through the through board of a butt or rebate, or
// through the first board of a mitre.
func (j *job) screws() {
	th := max(j.shape.Through, 0)
	other := 1 - th
	d := j.thickness()
	at := j.screwAt(th, other)
	path := j.Boards[th].Thickness - at.y - j.shape.Sides[th].Rebate
	grip := j.grip(other, at, d)
	switch {
	case path < 2*d || j.shape.Plane < 3*d || at.out > 0:
		j.noRoom(max(path, 0), 2*d)
		return
	case grip < leastDiameters*d:
		j.noRoom(max(grip, 0), leastDiameters*d)
		return
	}
	plug := plugDiameters * d
	head := min(plugDepthMost, path/2)
	rows, wanted := j.rows(plug, j.takenByScrews(th, at, plug, path))
	if len(rows) < wanted {
		j.leftOut(len(rows), wanted)
	}
	for _, r := range rows {
		v := r.From + (r.To-r.From)/2
		j.add(th, j.fromOutside(th, at.x, v, plug, head))
		hole := j.fromOutside(th, at.x, v, d, path)
		hole.Through = true
		j.add(th, hole)
		j.add(other, j.pilot(other, at, v, d, grip))
		j.piece(Screw, d, 0, path-head+grip)
		j.piece("plug", plug, 0, head)
	}
}

// A screwPlace is where a screw's axis crosses the joint: x and y in the through board,
// l along the plane, out: how far a plug would stick out of the board's end.
type screwPlace struct{ x, y, l, out unit.Length }

// screwAt puts the screws in the middle of the joint's plane.
func (j *job) screwAt(th, other int) screwPlace {
	p := screwPlace{l: j.shape.Plane / 2}
	p.x = p.l
	if j.shape.Through < 0 {
		sin, cos := j.shape.Sides[th].Tilt.SinCos()
		p.x, p.y = unit.Nearest(p.l.MM()*sin), unit.Nearest(p.l.MM()*cos)
	}
	p.out = p.x + j.thickness() - j.shape.Sides[th].Outer
	return p
}

// grip returns how far a screw may go into board i: its axis runs towards one of the
// faces unless the corner is square, and keeps the cover from it.
func (j *job) grip(i int, at screwPlace, d unit.Length) unit.Length {
	t, keep := j.Boards[i].Thickness.MM(), (j.cover(i) + d/2).MM()
	y := at.l.MM() * j.shape.Sides[i].Tilt.Cos()
	near, far := y-keep, t-keep-y // wood to the inner and the outer face
	cos := j.shape.Interior.Cos()
	long := screwDiameters * d.MM()
	switch {
	case near < 0 || far < 0:
		return 0
	case cos > 1e-6:
		long = min(long, far/cos)
	case cos < -1e-6:
		long = min(long, near/-cos)
	}
	return unit.Nearest(long)
}

// fromOutside is a round cut from the outer face, square to it.
func (j *job) fromOutside(i int, x, v, diameter, depth unit.Length) board.Feature {
	seat := j.seats[i]
	u, w := seat.place(x, seat.Thickness)
	return board.Feature{
		Kind: board.Bore, Cause: cause(j.Number), Enter: seat.outside(),
		Mouth: board.Point{U: u, V: v, W: w}, Diameter: diameter, Depth: depth, After: board.AfterGlue,
	}
}

// pilot is the screw's hole in the other board. Its axis runs square to the through
// board, which stands at the interior angle: 90° − θ from the other board's length.
func (j *job) pilot(i int, at screwPlace, v, d, grip unit.Length) board.Feature {
	seat := j.seats[i]
	f := board.Feature{
		Kind: board.Bore, Cause: cause(j.Number), Enter: seat.At, Mouth: j.onPlane(i, at.l),
		Diameter: d * pilotTenths / 10, Depth: grip, After: board.AfterGlue,
		Tilt: seat.tilt(unit.QuarterTurn - j.shape.Interior),
	}
	f.Mouth.V = v
	return f
}

func (j *job) takenByScrews(th int, at screwPlace, plug, path unit.Length) []board.Span {
	f := j.fromOutside(th, at.x, j.width/2, plug, path)
	f.Diameter, f.Along, f.Across = 0, plug, j.width
	spans := j.Boards[th].Taken(f, j.clear())
	g := j.pilot(1-th, at, j.width/2, plug, screwDiameters*j.thickness())
	g.Across, g.Diameter, g.Along = g.Diameter, 0, j.width
	return board.Merge(append(spans, j.Boards[1-th].Taken(g, j.clear())...))
}

// What may be claimed of a glued mitre, as nominal stress on its plane, is what package
// strength allows; splines and tenons glued on 60 % of the width or more count. The tests
// that it comes from had square corners; nothing is claimed where a board's end is nearer
// than 30° to square across its grain, nor of butts and rebates, which glue end grain.
const (
	leastTilt      = 30 * unit.Degree
	reinforcedPart = 0.6
)

// claim fills in what may be claimed.
func (j *job) claim() {
	c := &j.out.Corner
	c.ClaimBasis = "claim.none"
	least := min(j.shape.Sides[0].Tilt, j.shape.Sides[1].Tilt)
	if j.shape.Through >= 0 || least < leastTilt-unit.MicroDegree {
		return
	}
	c.Claim, c.ClaimBasis = claimed(false), "claim.mitre"
	long := unit.Length(0)
	for _, p := range c.Pieces {
		if p.What == Spline || p.What == Tenon {
			long += unit.Length(p.Count) * p.Length
		}
	}
	if long.MM() >= reinforcedPart*j.width.MM() {
		c.Claim, c.ClaimBasis = claimed(true), "claim.mitre-reinforced"
	}
}

// claimed returns what package strength claims of a mitre; it reckons in MPa.
func claimed(reinforced bool) unit.Pressure {
	return unit.Pressure(strength.MitreAllowed(reinforced) * 1e6)
}
