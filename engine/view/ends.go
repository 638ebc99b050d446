package view

import (
	"math"
	"strings"

	"ledgewright/engine/board"
	"ledgewright/engine/drawing"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// An endView is one end of a board.
type endView struct {
	side  board.Face
	cut   board.Cut
	slots []board.Feature // that enter by the end
	t     float64
}

// ends draws the ends that are not plain: their sections side by side, and the surface of
// the end where slots stop short of the edges.
func (k *bench) ends() {
	x, low := roomLeft, k.y
	for _, v := range [...]endView{{side: board.Start, cut: k.start}, {side: board.End, cut: k.end}} {
		v.t = k.b.Thickness.MM()
		for _, f := range k.b.Features {
			if f.Enter == v.side && f.Kind != board.EndCut {
				v.slots = append(v.slots, f)
			}
		}
		if v.cut.AtA == v.cut.AtB && len(v.slots) == 0 {
			continue
		}
		k.group = string(v.side)
		right, bottom := k.section(v, point{X: x, Y: k.y - 6})
		if len(v.slots) > 0 {
			b := k.surface(v, point{X: x, Y: bottom - 4})
			bottom = b
			right = max(right, x+k.endScale(k.b.Width.MM(), 110)*k.b.Width.MM()+30)
		}
		x, low = max(right+16, roomLeft+125), min(low, bottom)
	}
	k.y = low
}

// endScale returns the largest usual scale at which a size fits.
func (k *bench) endScale(size, room float64) float64 {
	for _, n := range [...]float64{1, 2, 5, 10} {
		if size/n <= room {
			return 1 / n
		}
	}
	return room / size
}

// heel returns where the figures along an end's surface begin: the arris on the face that
// is shorter there, face A where both are as long; and the unit vector from there.
func (v endView) heel() (at, along point, face board.Face) {
	a, b := point{X: v.cut.AtA.MM(), Y: 0}, point{X: v.cut.AtB.MM(), Y: v.t}
	short := a.X < b.X
	if v.side == board.Start {
		short = a.X > b.X
	}
	if short || a.X == b.X {
		return a, direct(a, b), board.FaceA
	}
	return b, direct(b, a), board.FaceB
}

// section draws the u–w section near an end at its own scale, and returns how far right
// and how low it went. top is the place of its title.
func (k *bench) section(v endView, top point) (right, bottom float64) {
	s := k.endScale(v.t*2.6, 110)
	long := math.Abs(v.cut.AtA.MM()-v.cut.AtB.MM()) + 1.1*v.t
	for _, f := range v.slots {
		long = max(long, math.Abs(v.cut.AtA.MM()-v.cut.AtB.MM())+f.Depth.MM()+0.3*v.t)
	}
	long = min(long, k.b.Length.MM(), 80/s)
	title := k.say("view.section", words.Word("end", "view.side."+string(v.side)), words.Name("scale", ratio(s)))
	k.text("", "ink-2", drawing.Text{At: top, Size: wordEm, String: title, Anchor: drawing.AnchorStart})
	o := point{X: top.X + 12, Y: top.Y - 8 - s*v.t}
	p := plane{o: o, k: s}
	shift := v.cut.Least().MM()
	inner := shift + long
	if v.side == board.End {
		shift = v.cut.Greatest().MM() - long
		inner = shift
	}
	p.o.X -= s * shift
	k.sectionWood(p, v, inner)
	k.sectionSlots(p, v)
	k.sectionAngle(p, v)
	k.sectionFigures(p, v)
	for _, q := range [...]struct {
		w    float64
		name board.Face
	}{{0.17 * v.t, board.FaceA}, {0.83 * v.t, board.FaceB}} {
		x := inner - 4.5/s
		if v.side == board.End {
			x = inner + 4.5/s
		}
		at := p.at(x, q.w)
		k.text("", "ink", drawing.Text{At: point{X: at.X, Y: at.Y - 1.2}, Size: wordEm, String: string(q.name), Bold: true})
	}
	return o.X + s*long + 30, o.Y - 16
}

// sectionWood draws the wood, ending in a break line inside the board.
func (k *bench) sectionWood(p plane, v endView, inner float64) {
	a, b := v.cut.AtA.MM(), v.cut.AtB.MM()
	wave := func(w float64) point { return p.at(inner+0.06*v.t*math.Sin(w/v.t*6), w) }
	path := []drawing.Step{{To: 'M', P: p.at(a, 0)}, {To: 'L', P: p.at(b, v.t)}}
	var line []drawing.Step
	for i := 8; i >= 0; i-- {
		q := wave(v.t * float64(i) / 8)
		path = append(path, drawing.Step{To: 'L', P: q})
		line = append(line, drawing.Step{To: 'L', P: q})
	}
	line[0].To = 'M'
	path = append(path, drawing.Close())
	w := drawing.Wood{Species: k.b.Wood, Seed: plank(k.b.ID, 0), Edge: true, Origin: p.at(0, 0), Along: point{X: p.k}, Across: point{Y: p.k}}
	k.add(drawing.Item{Layer: drawing.LayerBoards, Kind: drawing.WoodKind, Path: path, Wood: w})
	q0, q1 := wave(0), wave(v.t)
	k.shape("", inkLine(thick), []drawing.Step{{To: 'M', P: q0}, {To: 'L', P: p.at(a, 0)}, {To: 'L', P: p.at(b, v.t)}, {To: 'L', P: q1}})
	k.shape("", inkLine(thin), line)
}

func (k *bench) sectionSlots(p plane, v endView) {
	for _, f := range v.slots {
		e, ok := k.extentOf(f)
		if !ok {
			continue
		}
		var path []drawing.Step
		for i, q := range e.quad {
			to := byte('L')
			if i == 0 {
				to = 'M'
			}
			path = append(path, drawing.Step{To: to, P: p.at(q.X, q.Y)})
		}
		k.shape("leaf", inkLine(thick), append(path, drawing.Close()))
	}
}

// sectionAngle shows the tilt of the blade from square.
func (k *bench) sectionAngle(p plane, v endView) {
	lead := (v.cut.AtA - v.cut.AtB).MM()
	if lead == 0 {
		return
	}
	tilt := math.Atan(math.Abs(lead) / v.t)
	heel, _, face := v.heel()
	tip, down := point{X: v.cut.AtB.MM(), Y: v.t}, -1.0
	if face == board.FaceB {
		tip, down = point{X: v.cut.AtA.MM(), Y: 0}, 1
	}
	inward := 1.0
	if v.side == board.End {
		inward = -1
	}
	_ = heel
	a := p.at(tip.X, tip.Y)
	reach := p.k*v.t + 4
	k.dims([]drawing.Step{{To: 'M', P: a}, {To: 'L', P: point{X: a.X, Y: a.Y + down*reach}}})
	r := 0.72 * p.k * v.t
	var arc []drawing.Step
	for i := range 9 {
		t := tilt * float64(i) / 8
		to := byte('L')
		if i == 0 {
			to = 'M'
		}
		arc = append(arc, drawing.Step{To: to, P: point{X: a.X + inward*r*math.Sin(t), Y: a.Y + down*r*math.Cos(t)}})
	}
	k.dims(arc)
	text := k.o.Style.Angle(unit.NearestAngle(tilt * 180 / math.Pi))
	at := point{X: a.X + inward*1.2, Y: a.Y + down*(reach+0.5)}
	if down < 0 {
		at.Y -= 0.7 * figureEm
	}
	anchor := drawing.AnchorStart
	if inward < 0 {
		anchor = drawing.AnchorEnd
	}
	k.figure(drawing.Text{At: at, String: text, Anchor: anchor})
}

// sectionFigures dimensions the slots along the end's surface, from the heel.
func (k *bench) sectionFigures(p plane, v endView) {
	heel, along, face := v.heel()
	out := point{X: along.Y, Y: -along.X}
	if (v.side == board.Start) == (out.X > 0) {
		out = scaled(out, -1)
	}
	var stops []stop
	for _, f := range v.slots {
		l := dot(sub(point{X: f.Mouth.U.MM(), Y: f.Mouth.W.MM()}, heel), along)
		if f.Diameter > 0 {
			stops = append(stops, stop{at: p.k * l, figure: k.figureOf(unit.Nearest(l))})
			continue
		}
		for _, d := range [...]float64{l - f.Across.MM()/2, l + f.Across.MM()/2} {
			stops = append(stops, stop{at: p.k * d, figure: k.figureOf(unit.Nearest(d))})
		}
	}
	k.running(p.at(heel.X, heel.Y), along, out, 7, stops)
	_ = face
}

// surface draws the end itself, v to the right from the back edge, the heel below, with the
// places of its slots across the width. It returns how low it went.
func (k *bench) surface(v endView, top point) float64 {
	s := k.endScale(k.b.Width.MM(), 110)
	heel, along, face := v.heel()
	other := board.FaceB
	if face == board.FaceB {
		other = board.FaceA
	}
	wide := math.Hypot((v.cut.AtA - v.cut.AtB).MM(), v.t)
	title := k.say("view.surface", words.Name("scale", ratio(s)))
	k.text("", "ink-2", drawing.Text{At: top, Size: wordEm, String: title, Anchor: drawing.AnchorStart})
	p := plane{o: point{X: top.X + 6, Y: top.Y - 10 - s*wide}, k: s}
	w := drawing.Wood{Species: k.b.Wood, Seed: plank(k.b.ID, 0), End: true, Origin: p.o, Along: point{X: s}, Across: point{Y: s}}
	a, b := p.at(0, 0), p.at(k.b.Width.MM(), wide)
	k.add(drawing.Item{
		ID: k.group + "/surface", Layer: drawing.LayerBoards, Kind: drawing.WoodKind, Wood: w, Line: inkLine(thick),
		Path: drawing.Rect(a.X, a.Y, b.X-a.X, b.Y-a.Y),
	})
	var stops []stop
	var tags []tag
	for _, f := range v.slots {
		l := dot(sub(point{X: f.Mouth.U.MM(), Y: f.Mouth.W.MM()}, heel), along)
		tags = append(tags, tag{letter: k.letterOf(f), at: point{X: f.Mouth.V.MM(), Y: l}})
		if f.Diameter > 0 {
			c := p.at(f.Mouth.V.MM(), l)
			k.shape("leaf", inkLine(thick), drawing.Circle(c.X, c.Y, s*f.Diameter.MM()/2))
			stops = append(stops, stop{at: s * f.Mouth.V.MM(), figure: k.figureOf(f.Mouth.V)})
			continue
		}
		from := f.Mouth.V - f.Along/2
		c := p.at(max(from.MM(), 0), l-f.Across.MM()/2)
		k.shape("leaf", inkLine(thick), drawing.Rect(c.X, c.Y, s*(min(from+f.Along, k.b.Width)-max(from, 0)).MM(), s*f.Across.MM()))
		for _, q := range [...]unit.Length{from, from + f.Along} {
			if q > 0 && q < k.b.Width {
				stops = append(stops, stop{at: s * q.MM(), figure: k.figureOf(q)})
			}
		}
	}
	for i, f := range [...]board.Face{face, other} {
		k.text("", "ink", drawing.Text{At: point{X: b.X + 3, Y: a.Y + float64(i)*(b.Y-a.Y) - 1.2 + 1.2*float64(1-2*i)}, Size: wordEm, String: string(f), Bold: true})
	}
	k.balloons(tags, p, b.Y+4.2)
	far := k.running(a, point{X: 1}, point{Y: -1}, firstOut-3, stops)
	return a.Y - far
}

// list writes what each letter stands for, and how the arrises are treated.
func (k *bench) list() {
	k.group = "list"
	y := k.y - 8
	for _, b := range k.wrote {
		y = min(y, b.MinY-8)
	}
	line := func(letter, s string) {
		if letter != "" {
			k.ring(letter, point{X: balloonRadius, Y: y + 1.1})
		}
		k.text("", "ink", drawing.Text{At: point{X: 8, Y: y}, Size: wordEm, String: s, Anchor: drawing.AnchorStart})
		y -= 6.4
	}
	for _, c := range k.cuts {
		f := c.is[0]
		if f.Kind == board.Chamfer || f.Kind == board.RoundOver {
			line("", k.say("view.cut."+string(f.Kind), words.Word("arris", "view.arris."+f.Arris), words.Name("size", k.figureOf(f.Size))))
			continue
		}
		line(c.letter, k.describe(c))
	}
	k.y = y
}

// describe says how a cut is made.
func (k *bench) describe(c cut) string {
	f := c.is[0]
	key := "view.cut." + string(f.Kind)
	if f.Diameter > 0 {
		key = "view.cut.bore"
	}
	args := []words.Arg{
		words.Name("diameter", k.figureOf(f.Diameter)), words.Name("depth", k.figureOf(f.Depth)),
		words.Word("side", "view.side."+strings.ToLower(string(f.Enter))),
	}
	if f.Through && f.Diameter > 0 {
		key = "view.cut.bore.through"
	}
	s := k.say(key, args...)
	if len(c.is) > 1 {
		s = k.say("view.many", words.Count("n", len(c.is)), words.Name("what", s))
	}
	if f.Tilt != 0 && f.Enter != board.Start && f.Enter != board.End {
		s += ", " + k.say("view.cut.tilt", words.Angle("tilt", f.Tilt))
	}
	if f.After != board.OnBlank {
		s += ", " + k.say("view.cut.after."+string(f.After))
	}
	return s
}
