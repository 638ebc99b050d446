package view

import (
	"cmp"

	"ledgewright/engine/board"
	"ledgewright/engine/drawing"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
)

// A plane is one view: where the board's coordinates come to on the paper. The second
// coordinate is v on faces and w on edges.
type plane struct {
	o    point
	k    float64
	down bool // the second coordinate grows downwards
}

func (p plane) at(u, s float64) point {
	if p.down {
		s = -s
	}
	return point{X: p.o.X + p.k*u, Y: p.o.Y + p.k*s}
}

// hiddenLine is that of what lies behind wood.
func hiddenLine() drawing.Line { return inkLine(thin, 2, 1.2) }

// backView draws the back edge: the profile with its mitres, what enters by the edge, and
// hidden what enters elsewhere.
func (k *bench) backView() {
	k.group = "back"
	stops := k.edgeStops(board.Back)
	tags := k.tags(board.Back, false)
	room := firstOut
	if len(stops) > 0 {
		room = firstOut + extPast + 4 + 2*figureEm
	}
	if len(tags) > 0 {
		room += 7
	}
	height := k.k * k.b.Thickness.MM()
	p := plane{o: point{X: roomLeft, Y: k.y - room - height}, k: k.k}
	k.profile(p)
	k.edgeCuts(p, board.Back)
	k.sideName("view.back", p.o.Y+height/2)
	out := point{Y: 1}
	far := firstOut
	if len(tags) > 0 {
		far += 7
	}
	k.running(p.at(0, k.b.Thickness.MM()), point{X: 1}, out, far, stops)
	k.across(p, board.Back)
	k.balloons(tags, p, p.o.Y+height+4.5)
	k.y = p.o.Y
}

// frontView draws the front edge, w downwards.
func (k *bench) frontView() {
	k.group = "front"
	height := k.k * k.b.Thickness.MM()
	p := plane{o: point{X: roomLeft, Y: k.y - firstOut}, k: k.k, down: true}
	k.profile(p)
	k.edgeCuts(p, board.Front)
	k.sideName("view.front", p.o.Y-height/2)
	tags := k.tags(board.Front, false)
	far := firstOut + 7
	reach := k.running(p.at(0, k.b.Thickness.MM()), point{X: 1}, point{Y: -1}, far, k.edgeStops(board.Front))
	k.across(p, board.Front)
	k.balloons(tags, p, p.o.Y-height-4.5)
	k.y = p.o.Y - height - reach
}

// profile fills and outlines the board in the u–w plane, its through housings taken out.
func (k *bench) profile(p plane) {
	var path []drawing.Step
	for _, q := range k.b.Profile() {
		path = append(path, drawing.Step{To: 'L', P: p.at(q.U.MM(), q.W.MM())})
	}
	if len(path) == 0 {
		return
	}
	path[0].To = 'M'
	path = append(path, drawing.Close())
	w := drawing.Wood{Species: k.b.Wood, Seed: plank(k.b.ID, 0), Edge: true, Origin: p.o, Along: point{X: k.k}, Across: p.second()}
	k.add(drawing.Item{ID: k.group + "/edge", Layer: drawing.LayerBoards, Kind: drawing.WoodKind, Path: path, Wood: w, Line: inkLine(thick)})
}

func (p plane) second() point {
	if p.down {
		return point{Y: -p.k}
	}
	return point{Y: p.k}
}

// edgeCuts draws the cuts in an edge view.
func (k *bench) edgeCuts(p plane, side board.Face) {
	for _, f := range k.b.Features {
		k.arrisInEdge(p, f, side)
		e, ok := k.extentOf(f)
		if !ok || k.outsideOf(f) {
			continue
		}
		line := hiddenLine()
		if f.Enter == side {
			line = inkLine(thick)
		}
		var path []drawing.Step
		if e.round && (f.Enter == board.Back || f.Enter == board.Front) {
			c := p.at(f.Mouth.U.MM(), f.Mouth.W.MM())
			path = drawing.Circle(c.X, c.Y, k.k*f.Diameter.MM()/2)
		} else {
			path = drawing.Polygon(p.at(e.quad[0].X, e.quad[0].Y), p.at(e.quad[1].X, e.quad[1].Y), p.at(e.quad[2].X, e.quad[2].Y), p.at(e.quad[3].X, e.quad[3].Y))
		}
		tone := drawing.Tone("")
		if f.Enter == side {
			tone = "groove"
		}
		k.shape(tone, line, path)
		if e.round {
			k.axisInEdge(p, f, e)
		}
	}
}

// outsideOf reports whether the profile shows a cut already.
func (k *bench) outsideOf(f board.Feature) bool {
	return f.Kind == board.Housing && f.Tilt == 0 && f.Mouth.V-f.Across/2 <= 0 && f.Mouth.V+(f.Across+1)/2 >= k.b.Width
}

// axisInEdge draws the centre lines of a bore in an edge view.
func (k *bench) axisInEdge(p plane, f board.Feature, e extent) {
	c := p.at(f.Mouth.U.MM(), f.Mouth.W.MM())
	r := k.k*f.Diameter.MM()/2 + 1.5
	if f.Enter != board.Back && f.Enter != board.Front {
		a, b := middle(e.quad[0], e.quad[1]), middle(e.quad[2], e.quad[3])
		a, b = p.at(a.X, a.Y), p.at(b.X, b.Y)
		d := direct(a, b)
		k.shape("", centreLine(), drawing.Segment(a.X-1.5*d.X, a.Y-1.5*d.Y, b.X+1.5*d.X, b.Y+1.5*d.Y))
		return
	}
	k.shape("", centreLine(), []drawing.Step{
		drawing.Move(c.X-r, c.Y), drawing.LineTo(c.X+r, c.Y), drawing.Move(c.X, c.Y-r), drawing.LineTo(c.X, c.Y+r),
	})
}

func centreLine() drawing.Line { return inkLine(0.18, 3, 0.8, 0.6, 0.8) }

// arrisInEdge shows a chamfer or a round-over along the board as a line on the edge.
func (k *bench) arrisInEdge(p plane, f board.Feature, side board.Face) {
	if f.Kind != board.Chamfer && f.Kind != board.RoundOver {
		return
	}
	w := 0.0
	switch f.Arris {
	case string(side) + "-a":
		w = f.Size.MM()
	case string(side) + "-b":
		w = (k.b.Thickness - f.Size).MM()
	default:
		return
	}
	a, b := p.at(k.start.Greatest().MM(), w), p.at(k.end.Least().MM(), w)
	k.shape("", inkLine(thin), drawing.Segment(a.X, a.Y, b.X, b.Y))
}

// faceView draws face A (v down) or face B (v up).
func (k *bench) faceView(face board.Face) {
	k.group = string(face)
	above := firstOut
	if face == board.FaceB {
		above = firstOut + 4
	}
	height := k.k * k.b.Width.MM()
	p := plane{o: point{X: roomLeft, Y: k.y - above}, k: k.k, down: face == board.FaceA}
	if !p.down {
		p.o.Y -= height
	}
	k.outline(p, face)
	k.faceCuts(p, face)
	low := p.o.Y
	if p.down {
		low -= height
	}
	k.sideName("view.face."+map[board.Face]string{board.FaceA: "a", board.FaceB: "b"}[face], low+height/2)
	far := k.running(point{X: p.o.X, Y: low}, point{X: 1}, point{Y: -1}, firstOut, k.edgeStops(face))
	if len(k.edgeStops(face)) > 0 {
		far += 4
	}
	far = k.lengths(p, face, low, far)
	k.acrossFace(p, face)
	k.balloons(k.tags(face, true), p, 0)
	k.y = low - far - 2
}

// outline draws the face with its ends: a slanted end shows beyond the face, or hides
// behind it.
func (k *bench) outline(p plane, face board.Face) {
	from, to := k.b.On(face)
	wide := k.b.Width.MM()
	left, right := min(from, k.start.Least()).MM(), max(to, k.end.Greatest()).MM()
	a, b := p.at(left, 0), p.at(right, wide)
	w := drawing.Wood{Species: k.b.Wood, Seed: plank(k.b.ID, 0), Origin: p.at(0, 0), Along: point{X: k.k}, Across: p.second()}
	k.add(drawing.Item{
		ID: k.group + "/face", Layer: drawing.LayerBoards, Kind: drawing.WoodKind, Wood: w, Line: inkLine(thick),
		Path: drawing.Polygon(a, point{X: b.X, Y: a.Y}, b, point{X: a.X, Y: b.Y}),
	})
	other := board.FaceA
	if face == board.FaceA {
		other = board.FaceB
	}
	otherFrom, otherTo := k.b.On(other)
	for _, q := range [...][2]unit.Length{{from, otherFrom}, {to, otherTo}} {
		if q[0] == q[1] {
			continue
		}
		for i, u := range q {
			if u.MM() == left || u.MM() == right {
				continue
			}
			line := inkLine(thick)
			if i == 1 { // the far face's arris lies behind the wood
				line = hiddenLine()
			}
			s, e := p.at(u.MM(), 0), p.at(u.MM(), wide)
			k.shape("", line, drawing.Segment(s.X, s.Y, e.X, e.Y))
		}
	}
}

// faceCuts draws the cuts in the view of a face.
func (k *bench) faceCuts(p plane, face board.Face) {
	for _, f := range k.b.Features {
		k.arrisInFace(p, f, face)
		e, ok := k.extentOf(f)
		if !ok {
			continue
		}
		seen := f.Enter == face
		line, tone := hiddenLine(), drawing.Tone("")
		if seen {
			line, tone = inkLine(thick), "groove"
		}
		if e.round && (f.Enter == board.FaceA || f.Enter == board.FaceB) && f.Tilt == 0 {
			c := p.at(f.Mouth.U.MM(), f.Mouth.V.MM())
			k.shape(tone, line, drawing.Circle(c.X, c.Y, k.k*f.Diameter.MM()/2))
			r := k.k*f.Diameter.MM()/2 + 1.5
			k.shape("", centreLine(), []drawing.Step{
				drawing.Move(c.X-r, c.Y), drawing.LineTo(c.X+r, c.Y), drawing.Move(c.X, c.Y-r), drawing.LineTo(c.X, c.Y+r),
			})
			continue
		}
		u := [2]float64{max(e.u[0], k.start.Least().MM()), min(e.u[1], k.end.Greatest().MM())}
		v := [2]float64{max(e.v[0], 0), min(e.v[1], k.b.Width.MM())}
		a, b := p.at(u[0], v[0]), p.at(u[1], v[1])
		k.shape(tone, line, drawing.Polygon(a, point{X: b.X, Y: a.Y}, b, point{X: a.X, Y: b.Y})).Fade = 0
		if tone != "" {
			k.items[len(k.items)-1].Fade = 0.25
		}
		if e.round {
			m := [2]float64{(u[0] + u[1]) / 2, (v[0] + v[1]) / 2}
			a, b := p.at(m[0], v[0]), p.at(m[0], v[1])
			if f.Enter != board.Back && f.Enter != board.Front {
				a, b = p.at(u[0], m[1]), p.at(u[1], m[1])
			}
			d := direct(a, b)
			k.shape("", centreLine(), drawing.Segment(a.X-1.5*d.X, a.Y-1.5*d.Y, b.X+1.5*d.X, b.Y+1.5*d.Y))
		}
	}
}

// arrisInFace shows a chamfer or a round-over as a line on the face.
func (k *bench) arrisInFace(p plane, f board.Feature, face board.Face) {
	if f.Kind != board.Chamfer && f.Kind != board.RoundOver {
		return
	}
	suffix := map[board.Face]string{board.FaceA: "-a", board.FaceB: "-b"}[face]
	s := f.Size.MM()
	from, to := k.b.On(face)
	var a, b point
	switch f.Arris {
	case "front" + suffix:
		a, b = p.at(from.MM(), k.b.Width.MM()-s), p.at(to.MM(), k.b.Width.MM()-s)
	case "back" + suffix:
		a, b = p.at(from.MM(), s), p.at(to.MM(), s)
	case "start" + suffix:
		a, b = p.at(from.MM()+s, 0), p.at(from.MM()+s, k.b.Width.MM())
	case "end" + suffix:
		a, b = p.at(to.MM()-s, 0), p.at(to.MM()-s, k.b.Width.MM())
	default:
		return
	}
	k.shape("", inkLine(thin), drawing.Segment(a.X, a.Y, b.X, b.Y))
}

// lengths dimensions the length on the face where it is not the whole length, and under
// face A the whole length. It returns how far down it went.
func (k *bench) lengths(p plane, face board.Face, low, far float64) float64 {
	from, to := k.b.On(face)
	x := point{X: 1}
	down := point{Y: -1}
	at := func(u unit.Length) point { return point{X: p.o.X + k.k*u.MM(), Y: low} }
	if from != k.start.Least() || to != k.end.Greatest() {
		k.linear(at(from), at(to), x, down, far, k.figureOf(to-from))
		far += nextOut
	}
	if face != board.FaceA {
		return far
	}
	if other, end := k.b.On(board.FaceB); !k.enters(board.FaceB) && (other != k.start.Least() || end != k.end.Greatest()) {
		k.linear(at(other), at(end), x, down, far, k.say("view.on-b")+" "+k.figureOf(end-other))
		far += nextOut
	}
	k.linear(at(k.start.Least()), at(k.end.Greatest()), x, down, far, k.figureOf(k.b.Length))
	return far + extPast
}

// sideName writes which view it is, at the left under its figures' room.
func (k *bench) sideName(key string, y float64) {
	k.text("", "ink-2", drawing.Text{At: point{X: 0, Y: y - 1.1}, Size: wordEm, String: k.say(key), Anchor: drawing.AnchorStart})
}

// edgeStops lists the places along the board of the cuts that enter by a side.
func (k *bench) edgeStops(side board.Face) (out []stop) {
	for _, f := range k.b.Features {
		e, ok := k.extentOf(f)
		if !ok || f.Enter != side {
			continue
		}
		if e.round || f.Tilt != 0 {
			out = append(out, stop{at: k.k * f.Mouth.U.MM(), figure: k.figureOf(f.Mouth.U)})
			continue
		}
		if f.Kind == board.Groove && f.Through {
			continue // from end to end
		}
		from := f.Mouth.U - f.Along/2
		for _, u := range [...]unit.Length{from, from + f.Along} {
			if u > 0 && u < k.b.Length {
				out = append(out, stop{at: k.k * u.MM(), figure: k.figureOf(u)})
			}
		}
	}
	return out
}

// across dimensions an edge view across the board's thickness: running figures from face
// A at the left, the thickness and the letters of the faces at the right.
func (k *bench) across(p plane, side board.Face) {
	up := point{Y: 1}
	if p.down {
		up = point{Y: -1}
	}
	var stops []stop
	for _, f := range k.b.Features {
		e, ok := k.extentOf(f)
		if !ok || f.Enter != side {
			continue
		}
		if e.round {
			stops = append(stops, stop{at: k.k * f.Mouth.W.MM(), figure: k.figureOf(f.Mouth.W)})
			continue
		}
		from := f.Mouth.W - f.Across/2
		for _, w := range [...]unit.Length{from, from + f.Across} {
			stops = append(stops, stop{at: k.k * w.MM(), figure: k.figureOf(w)})
		}
	}
	k.running(p.at(k.start.Least().MM(), 0), up, point{X: -1}, firstOut-3, stops)
	right := p.at(k.end.Greatest().MM(), 0)
	top := p.at(k.end.Greatest().MM(), k.b.Thickness.MM())
	if side == board.Back { // each size once
		k.linear(right, top, up, point{X: 1}, firstOut, k.figureOf(k.b.Thickness))
	}
	for i, q := range [...]point{right, top} {
		k.text("", "ink", drawing.Text{
			At: plus(point{X: q.X + 2.4, Y: q.Y - 1.2}, up, float64(2*i-1)*1.6), Size: wordEm, String: string([...]board.Face{board.FaceA, board.FaceB}[i]), Bold: true,
		})
	}
}

// acrossFace dimensions a face from the back edge: running figures at the left, the width
// at the right.
func (k *bench) acrossFace(p plane, face board.Face) {
	dir := point{Y: -1}
	if !p.down {
		dir = point{Y: 1}
	}
	var stops []stop
	for _, f := range k.b.Features {
		e, ok := k.extentOf(f)
		if !ok || f.Enter != face {
			continue
		}
		if e.round {
			stops = append(stops, stop{at: k.k * f.Mouth.V.MM(), figure: k.figureOf(f.Mouth.V)})
			continue
		}
		from := f.Mouth.V - f.Across/2
		for _, v := range [...]unit.Length{from, from + f.Across} {
			if v > 0 && v < k.b.Width {
				stops = append(stops, stop{at: k.k * v.MM(), figure: k.figureOf(v)})
			}
		}
	}
	k.running(p.at(k.start.Least().MM(), 0), dir, point{X: -1}, firstOut-3, stops)
	if face == board.FaceA {
		u := k.end.Greatest().MM()
		k.linear(p.at(u, 0), p.at(u, k.b.Width.MM()), dir, point{X: 1}, firstOut, k.figureOf(k.b.Width))
	}
}

// A tag is a letter that names a cut in a view.
type tag struct {
	letter string
	at     point // in the board: u and the view's second coordinate
}

// tags lists the letters of the cuts that enter by a side; on a face at the cut itself.
func (k *bench) tags(side board.Face, face bool) (out []tag) {
	for _, f := range k.b.Features {
		e, ok := k.extentOf(f)
		if !ok || f.Enter != side {
			continue
		}
		t := tag{letter: k.letterOf(f), at: point{X: f.Mouth.U.MM(), Y: f.Mouth.W.MM()}}
		if face {
			t.at = point{X: min(max((e.u[0]+e.u[1])/2, 0), k.b.Length.MM()), Y: (e.v[0] + e.v[1]) / 2}
		}
		out = append(out, t)
	}
	rank.By(out, func(a, b tag) int { return cmp.Compare(a.at.X, b.at.X) })
	return out
}

// balloonRadius is that of the circle round a letter.
const balloonRadius = 2.5

// balloons draws the letters: in a row at the height y with leaders to the cuts, or beside
// each cut where y is 0.
func (k *bench) balloons(tags []tag, p plane, y float64) {
	at := make([]float64, len(tags))
	for i, t := range tags {
		at[i] = p.at(t.at.X, t.at.Y).X
		if y == 0 { // beside the cut, on the side where there is board
			at[i] += 7
			if t.at.X > k.end.Greatest().MM()-12/k.k {
				at[i] -= 14
			}
		}
	}
	places := apart(at, 2*balloonRadius+0.8)
	for i, t := range tags {
		foot := p.at(t.at.X, t.at.Y)
		c := point{X: places[i], Y: y}
		if y == 0 {
			c.Y = foot.Y - 6
		}
		k.balloon(t.letter, foot, c)
	}
}

// balloon draws a letter in a circle, where there is room, with a leader that ends in a
// dot.
func (s *sheetOf) balloon(letter string, foot, c point) {
	const r = balloonRadius
	c = plus(c, s.room(drawing.Box{MinX: c.X - r, MinY: c.Y - r, MaxX: c.X + r, MaxY: c.Y + r}), 1)
	edge := plus(c, direct(c, foot), r)
	s.add(drawing.Item{Layer: drawing.LayerMarks, Kind: drawing.PathKind, Line: inkLine(thin), Path: drawing.Segment(edge.X, edge.Y, foot.X, foot.Y)})
	s.add(drawing.Item{Layer: drawing.LayerMarks, Kind: drawing.PathKind, Tone: "ink", Path: drawing.Circle(foot.X, foot.Y, 0.45)})
	s.ring(letter, c)
}

// ring writes a letter in a circle.
func (s *sheetOf) ring(letter string, c point) {
	const r = balloonRadius
	s.add(drawing.Item{Layer: drawing.LayerMarks, Kind: drawing.PathKind, Tone: "leaf", Line: inkLine(thin), Path: drawing.Circle(c.X, c.Y, r)})
	s.add(drawing.Item{Layer: drawing.LayerSizes, Kind: drawing.TextKind, Tone: "ink", Text: drawing.Text{At: point{X: c.X, Y: c.Y - 1.1}, Size: wordEm, String: letter}})
	s.wrote = append(s.wrote, drawing.Box{MinX: c.X - r, MinY: c.Y - r, MaxX: c.X + r, MaxY: c.Y + r})
}
