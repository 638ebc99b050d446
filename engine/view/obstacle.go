package view

import (
	"strconv"

	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
)

// A pen draws in the rectangle of one obstacle.
type pen struct {
	p          *painter
	id         string
	x, y, w, h float64
}

// obstacles draws what is on the wall or before it, in pencil, furniture last.
func (p *painter) obstacles() {
	for _, before := range [...]bool{false, true} {
		for i := range p.w.Obstacles {
			o := &p.w.Obstacles[i]
			if (o.Kind == plan.Furniture) != before || o.Width <= 0 || o.Height <= 0 {
				continue
			}
			k := pen{p, o.ID, o.X.MM(), o.Y.MM(), o.Width.MM(), o.Height.MM()}
			k.draw(o.Kind)
		}
	}
}

func (k pen) draw(kind string) {
	switch kind {
	case plan.Window:
		k.window()
	case plan.Door:
		k.door()
	case plan.Radiator:
		k.radiator()
	case plan.Socket:
		k.socket()
	case plan.Switch:
		k.switches()
	case plan.Pipe:
		k.pipe()
	case plan.Picture:
		k.picture()
	case plan.Furniture:
		k.furniture()
	default:
		k.fill("cloth", drawing.Line{}, drawing.Rect(k.x, k.y, k.w, k.h)).Fade = 0.25
		k.box("", dashed("pencil", 1, 6, 4), 0, 0, k.w, k.h, 0)
		k.lines("pencil", 0.75, 0.72, 0, 0, k.w, k.h, 0, k.h, k.w, 0)
	}
}

// fill draws a shape.
func (k pen) fill(tone drawing.Tone, line drawing.Line, path []drawing.Step) *drawing.Item {
	return k.p.path(drawing.LayerRoom, k.id, tone, line, path)
}

// box draws a rectangle with rounded corners, from the obstacle's lower left.
func (k pen) box(tone drawing.Tone, line drawing.Line, x, y, w, h, r float64) {
	path := drawing.Rect(k.x+x, k.y+y, w, h)
	if r > 0 {
		path = drawing.RoundRect(k.x+x, k.y+y, w, h, r)
	}
	k.fill(tone, line, path)
}

// lines draws straight lines, four numbers each.
func (k pen) lines(tone drawing.Tone, px, fade float64, ends ...float64) {
	var path []drawing.Step
	for i := 0; i+3 < len(ends); i += 4 {
		path = append(path, drawing.Move(k.x+ends[i], k.y+ends[i+1]), drawing.LineTo(k.x+ends[i+2], k.y+ends[i+3]))
	}
	k.fill("", stroke(tone, px), path).Fade = fade
}

func (k pen) window() {
	f := min(max(0.062*min(k.w, k.h), 18), 55)
	k.box("frame", stroke("wall-ink", 1.4), 0, 0, k.w, k.h, 0)
	gw, gh := k.w-2*f, k.h-2*f
	if gw <= 0 || gh <= 0 {
		return
	}
	leaves := 1
	if k.w > 620 {
		leaves = 2
	}
	if k.w > 1700 {
		leaves = 3
	}
	pane := (gw - float64(leaves-1)*f) / float64(leaves)
	for i := range leaves {
		x := f + float64(i)*(pane+f)
		k.box("glass", stroke("line", 1), x, f, pane, gh, 0)
		if k.h > 700 {
			k.lines("line", 1, 0.5, x, f+0.56*gh, x+pane, f+0.56*gh)
		}
		s := min(pane, gh)
		k.lines("shine", 1.5, 0.2, x+0.2*pane, f+0.12*gh, x+0.2*pane+0.42*s, f+0.12*gh+0.58*s*0.9)
		k.lines("shine", 1.5, 0.2, x+0.36*pane, f+0.12*gh, x+0.36*pane+0.24*s, f+0.12*gh+0.34*s*0.9)
	}
	if k.y > 200 {
		k.box("frame", stroke("wall-ink", 1.4), -46, -40, k.w+92, 40, 0)
	}
}

func (k pen) door() {
	const jamb = 62
	k.box("frame", stroke("wall-ink", 1.4), 0, 0, k.w, k.h, 0)
	w, h := k.w-2*jamb, k.h-jamb
	if w < 150 || h < 300 {
		return
	}
	k.box("cloth", stroke("line", 1), jamb, 0, w, h, 0)
	inset := 0.16 * w
	rails := [...][2]float64{{0.09, 0.42}, {0.51, 0.93}}
	for _, r := range rails {
		k.box("frame", stroke("line", 0.9), jamb+inset, r[0]*h, w-2*inset, (r[1]-r[0])*h, 0)
		k.box("", stroke("line", 0.75), jamb+inset+22, r[0]*h+22, w-2*inset-44, (r[1]-r[0])*h-44, 0)
	}
	k.fill("metal", stroke("line", 1), drawing.Circle(k.x+jamb+w-0.08*w, k.y+0.47*h, 22))
	k.box("metal", stroke("line", 1), jamb+w-0.08*w-95, 0.47*h-9, 95, 18, 9)
}

func (k pen) radiator() {
	k.box("metal", stroke("line", 1), 0, 0, k.w, k.h, 10)
	var ends []float64
	n := int(k.w / 52)
	for i := 1; i < n && n < 200; i++ {
		x := k.w * float64(i) / float64(n)
		ends = append(ends, x, 0.035*k.h, x, 0.965*k.h)
	}
	k.lines("line", 0.75, 0.3, ends...)
	k.lines("line", 1, 0.25, 0, 0.93*k.h, k.w, 0.93*k.h)
	if k.y > 60 {
		k.box("metal", stroke("line", 0.9), 0.04*k.w, -46, 18, 46, 0)
		k.box("metal", stroke("line", 0.9), 0.96*k.w-18, -46, 18, 46, 0)
	}
}

func (k pen) socket() {
	k.box("leaf", stroke("wall-ink", 1.1), 0, 0, k.w, k.h, 8)
	gangs := 1
	if k.w > 1.35*k.h {
		gangs = 2
	}
	s := min(k.w/float64(gangs), k.h)
	for i := range gangs {
		x, y := k.w*(float64(i)+0.5)/float64(gangs), 0.44*k.h
		k.lines("line", 1, 0, x, y, x, y+0.26*s, x-0.2*s, y, x+0.2*s, y)
	}
}

func (k pen) switches() {
	k.box("leaf", stroke("wall-ink", 1.1), 0, 0, k.w, k.h, 8)
	gangs := max(int(k.w/85+0.5), 1)
	for i := range min(gangs, 6) {
		w := k.w / float64(gangs)
		x := w * (float64(i) + 0.5)
		k.box("frame", stroke("line", 1), x-0.17*w, 0.24*k.h, 0.34*w, 0.52*k.h, 3)
		k.lines("line", 0.75, 0.2, x-0.17*w, 0.5*k.h, x+0.17*w, 0.5*k.h)
	}
}

func (k pen) pipe() {
	k.box("metal", stroke("line", 1), 0, 0, k.w, k.h, 0)
	if k.h >= k.w {
		k.lines("line", 0.75, 0.4, 0.3*k.w, 0, 0.3*k.w, k.h)
		k.box("metal", stroke("line", 1), -0.3*k.w, 0.5*k.h, 1.6*k.w, min(1.2*k.w, 0.1*k.h), 0)
		return
	}
	k.lines("line", 0.75, 0.4, 0, 0.7*k.h, k.w, 0.7*k.h)
}

func (k pen) picture() {
	f := 0.07 * min(k.w, k.h)
	k.box("frame", stroke("pencil", 1.3), 0, 0, k.w, k.h, 0)
	k.box("leaf", stroke("pencil", 0.9), f, f, k.w-2*f, k.h-2*f, 0)
	m := 2.1 * f
	k.box("picture", stroke("pencil", 0.8), m, m, k.w-2*m, k.h-2*m, 0)
	k.sketch("", stroke("pencil", 0.9), "M12 66C26 58 34 38 44 44C54 50 56 60 66 54C74 48 80 52 88 58M12 74C30 70 52 78 88 70", 100, 100)
	k.fill("", stroke("pencil", 0.9), drawing.Circle(k.x+0.68*k.w, k.y+0.68*k.h, 0.06*min(k.w, k.h)))
}

// furniture guesses from its size what stands there: only its outline matters.
func (k pen) furniture() {
	pencil := stroke("pencil", 1.1)
	switch {
	case k.h > 1250:
		k.cupboard()
	case k.h > 640 && k.h < 800 && k.w > 650:
		k.sketch("cloth", pencil, "M30 40L30 740L62 740L62 40M1138 40L1138 740L1170 740L1170 40M62 60L62 130L1138 130L1138 60", 1200, 740)
		k.sketch("cloth", pencil, "M0 0L1200 0L1200 42L0 42Z", 1200, 740)
	case k.w > 1.35*k.h:
		for _, s := range sofa() {
			k.sketch("cloth", pencil, s, 1800, 850)
		}
	default:
		for i, s := range armchair() {
			tone := drawing.Tone("cloth")
			if i == 1 {
				tone = ""
			}
			k.sketch(tone, pencil, s, 710, 880)
		}
	}
}

func (k pen) cupboard() {
	pencil := stroke("pencil", 1.1)
	k.box("cloth", pencil, 0, 0, k.w, k.h, 0)
	k.box("cloth", pencil, -12, k.h-44, k.w+24, 44, 0)
	k.lines("pencil", 1.1, 0, 0, 80, k.w, 80, k.w/2, 80, k.w/2, k.h-44)
	for _, x := range [...]float64{0.06, 0.56} {
		k.box("", stroke("pencil", 0.9), x*k.w, 150, 0.38*k.w, k.h-270, 0)
	}
	for _, x := range [...]float64{k.w/2 - 28, k.w/2 + 28} {
		k.fill("", pencil, drawing.Circle(k.x+x, k.y+0.5*k.h, 10))
	}
}

// armchair and sofa are pencil outlines on grids of 710 × 880 and 1800 × 850, y down.
func armchair() []string {
	return []string{
		"M72 580C60 360 68 110 90 42C100 8 140 0 355 0C570 0 610 8 620 42C642 110 650 360 638 580Z",
		"M355 8C351 180 351 320 355 418M120 80C116 190 117 320 122 410M590 80C594 190 593 320 588 410",
		"M86 550L624 550C632 548 638 490 630 450C626 422 610 416 570 414C430 407 270 407 140 414C100 416 84 422 80 450C72 490 78 548 86 550Z",
		"M82 588L628 588L628 704L82 704Z",
		"M8 760L0 290C0 258 20 248 44 250C68 252 82 268 82 292L82 710Z",
		"M702 760L710 290C710 258 690 248 666 250C642 252 628 268 628 292L628 710Z",
		"M12 760L78 760L60 880L30 880Z",
		"M698 760L632 760L650 880L680 880Z",
	}
}

func sofa() []string {
	return []string{
		"M110 570C95 380 100 130 122 62C134 16 176 6 320 2L1480 2C1624 6 1666 16 1678 62C1700 130 1705 380 1690 570Z",
		"M640 8C632 160 632 290 640 400C812 388 988 388 1160 400C1168 290 1168 160 1160 8",
		"M140 540L640 540C650 530 650 430 640 412C560 396 230 396 150 412C132 430 132 530 140 540Z",
		"M650 540L1150 540C1160 530 1160 430 1150 412C1070 396 730 396 650 412C640 430 640 530 650 540Z",
		"M1160 540L1660 540C1668 530 1668 430 1650 412C1570 396 1240 396 1160 412C1150 430 1150 530 1160 540Z",
		"M118 560L1682 560L1682 700L118 700Z",
		"M8 740L0 290C0 254 24 244 58 246C94 248 118 264 118 296L118 706Z",
		"M1792 740L1800 290C1800 254 1776 244 1742 246C1706 248 1682 264 1682 296L1682 706Z",
		"M26 740L96 740L80 850L46 850Z", "M1774 740L1704 740L1720 850L1754 850Z",
	}
}

// sketch draws a path of absolute M, L, C and Z on a grid of w × h, y down, stretched to
// the obstacle.
func (k pen) sketch(tone drawing.Tone, line drawing.Line, data string, w, h float64) {
	at := func(x, y float64) point { return point{X: k.x + x/w*k.w, Y: k.y + (h-y)/h*k.h} }
	k.fill(tone, line, sketched(data, at))
}

// sketched reads the data of a sketch.
func sketched(data string, at func(x, y float64) point) []drawing.Step {
	var out []drawing.Step
	var to byte
	var n []float64
	for i := 0; i < len(data); {
		c := data[i]
		if c == 'Z' {
			out = append(out, drawing.Close())
		}
		if c < '0' || c > '9' {
			if c != ' ' {
				to = c
			}
			i++
			continue
		}
		j := i
		for j < len(data) && (data[j] >= '0' && data[j] <= '9' || data[j] == '.') {
			j++
		}
		x, _ := strconv.ParseFloat(data[i:j], 64)
		n, i = append(n, x), j
		switch {
		case to == 'C' && len(n) == 6:
			out = append(out, drawing.Step{To: 'C', P1: at(n[0], n[1]), P2: at(n[2], n[3]), P: at(n[4], n[5])})
			n = n[:0]
		case to != 'C' && len(n) == 2:
			out = append(out, drawing.Step{To: to, P: at(n[0], n[1])})
			n = n[:0]
		}
	}
	return out
}

func itoa(n int) string { return strconv.Itoa(n) }
