package jobs

import (
	"strconv"

	"ledgewright/engine/document"
	"ledgewright/engine/hardware"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// One is a job of one module: a U with its arms down and a light under its shelf.
func One() plan.Plan {
	k := newBench("One", 1)
	k.wall(1, 1, 400*mm)
	k.module(uDown, 0)
	k.plan.Modules[0].Lights = []plan.Light{k.groove(2)}
	k.arrange(0, 1, 0, 1)
	return k.done()
}

// S is a job of 12 modules in three rows of four on one wall.
func S() plan.Plan {
	k := newBench("S", 12)
	k.wall(4, 1, 400*mm)
	k.modules(12, 0)
	k.arrange(0, 1, 0, 12)
	k.plan.Arrangements[0].Datum = plan.Datum{Level: document.Some(1060 * mm), Plumb: document.Some(600 * mm)}
	return k.done()
}

// M is a job of 48 modules in three rows of sixteen on one wall, in the given number of
// arrangements, at most eight.
func M(arrangements int) plan.Plan {
	k := newBench("M", 48)
	k.wall(16, 2, 400*mm)
	k.modules(48, 0)
	for i, stride := range []int{1, 5, 7, 11, 13, 17, 19, 23}[:arrangements] {
		k.arrange(0, stride, 0, 48)
		k.plan.Arrangements[i].Name = "Order " + strconv.Itoa(i+1)
	}
	return k.done()
}

// L is a job of 200 modules on three walls, whose studs stand 400 mm, 16 in and 400 mm
// apart.
func L() plan.Plan {
	k := newBench("L", 200)
	at := 0
	for i, columns := range []int{24, 22, 21} {
		k.wall(columns, 3, []unit.Length{400 * mm, 16 * in, 400 * mm}[i])
		n := min(3*columns, 200-at)
		k.modules(n, i)
		k.arrange(i, 1, at, n)
		at += n
	}
	return k.done()
}

// rows are the heights of the lines on which the tops of the carrying shelves stand.
func rows() []unit.Length { return []unit.Length{2540 * mm, 1800 * mm, 1060 * mm} }

// The cell of a module: what it may take up beside the stud of its first bracket and
// below the line of its row. Cells lie two studs and 740 mm apart.
const (
	cellLeft  = -190
	cellRight = 590
	cellUp    = 60
	cellDown  = -640
)

// A bench builds one job.
type bench struct {
	draw    draw
	ids     ids
	plan    plan.Plan
	pitch   []unit.Length // of the studs, wall by wall
	columns []int
	carries []int // number of the board that carries, module by module
	turns   []unit.Angle
}

func newBench(title string, seed uint64) *bench {
	k := &bench{draw: draw{seed}, plan: plan.New(unit.Metric)}
	k.plan.Job = plan.Job{Number: "J-" + title, Title: "Job " + title, Date: "2031-04-30"}
	return k
}

func (k *bench) done() plan.Plan {
	k.plan.Counters = k.ids.counters
	return k.plan
}

// wall adds a wall with room for so many columns of modules, a door at its right end
// and sockets between studs.
func (k *bench) wall(columns, sockets int, pitch unit.Length) {
	w := plan.Wall{
		ID: k.ids.next(plan.LetterWall), Name: "Wall " + strconv.Itoa(len(k.plan.Walls)+1),
		Width: 2*pitch*unit.Length(columns) + 1800*mm, Height: 2800 * mm,
		Build: plan.BuildStuds, Lining: plan.Lining{Kind: "plasterboard", Thickness: document.Some(mm * 25 / 2)},
		Studs: plan.Studs{
			Material: "wood", Width: document.Some(38 * mm), Depth: document.Some(89 * mm),
			First: document.Some(200 * mm), Spacing: document.Some(pitch), State: plan.EdgesFound,
		},
		FloorRise: document.Some(4 * mm), CeilingRise: document.Some(-3 * mm), BuiltYear: document.Some(2004),
		CableRule: "uk", FarSide: "Own rooms",
		Plumb: []plan.Plumb{{X: 300 * mm, Over: 1800 * mm, Lean: 2 * mm}, {X: 900 * mm, Over: 1800 * mm, Lean: mm}, {X: 1500 * mm, Over: 1800 * mm, Lean: -mm}},
	}
	for i := range sockets {
		column := unit.Length(i * columns / sockets)
		w.Obstacles = append(w.Obstacles, plan.Obstacle{
			ID: k.ids.next(plan.LetterObstacle), Kind: plan.Socket, X: 200*mm + pitch + 2*pitch*column + pitch/2 - 73*mm, Y: 150 * mm,
			Width: 146 * mm, Height: 86 * mm, Depth: document.Some(10 * mm),
		})
	}
	w.Obstacles = append(w.Obstacles, plan.Obstacle{
		ID: k.ids.next(plan.LetterObstacle), Kind: plan.Door, X: w.Width - 1000*mm, Width: 900 * mm, Height: 2100 * mm, Depth: document.Some(40 * mm),
	})
	k.plan.Walls = append(k.plan.Walls, w)
	k.pitch, k.columns = append(k.pitch, pitch), append(k.columns, columns)
}

// modules adds n modules of all shapes, made for the studs of wall i.
func (k *bench) modules(n, i int) {
	shapes := []shape{plainShelf, uDown, box, leftL, zShape, uDown, rightL, hexagon, free}
	for j := range n {
		k.module(shapes[j%len(shapes)], i)
	}
}

// module adds a module of a shape with its id, brackets, and sometimes a light.
func (k *bench) module(of shape, wall int) {
	d := &k.draw
	n := len(k.plan.Modules) + 1
	pitch := k.pitch[wall]
	m, carry, turn := fitted(d, of, pitch)
	m.ID, m.Name = k.ids.next(plan.LetterModule), m.Name+" "+strconv.Itoa(n)
	m.GrainWrap = len(m.Boards) > 1 && d.chance(40)
	m.Hung = turn
	for i := range m.Dividers {
		m.Dividers[i].ID = k.ids.next(plan.LetterDivider)
	}
	if len(m.Dividers) == 0 && d.chance(25) {
		m.Lights = []plan.Light{k.groove(carry)}
	}
	kind := hardware.Sized(one(d, "rod-structure", "rod-structure", "rod-structure", "plate-lining", "plate-back"), m.Depth, unit.Metric)
	first := overhang(m.Boards[carry-1].Length.Value, pitch)
	for _, at := range []unit.Length{first, first + pitch} {
		m.Brackets = append(m.Brackets, plan.Bracket{ID: k.ids.next(plan.LetterBracket), Kind: kind, Board: carry, At: at})
	}
	k.plan.Modules = append(k.plan.Modules, m)
	k.carries, k.turns = append(k.carries, carry), append(k.turns, turn)
}

// overhang returns where the first of two brackets a pitch apart stands, so that the
// board is carried evenly.
func overhang(length, pitch unit.Length) unit.Length { return (length - pitch) / 2 }

// groove is a light in the underside of a carrying board, in front of the rods.
func (k *bench) groove(board int) plan.Light {
	return plan.Light{
		ID: k.ids.next(plan.LetterLight), First: board, Last: board, Face: "B", FromFront: document.Some(34 * mm), Width: 12 * mm, Depth: 8 * mm,
		StartStop: document.Some(40 * mm), EndStop: document.Some(40 * mm), Strip: "strip-24-9.6",
		Power: plan.Power{Source: "driver-24-30", Exit: "start", Lead: document.Some(1500 * mm)},
	}
}

// arrange adds an arrangement on wall i of n modules from the given one on. Module j
// hangs in the cell with the number j·stride modulo n, row by row.
func (k *bench) arrange(i, stride, from, n int) {
	a := plan.Arrangement{ID: k.ids.next(plan.LetterArrangement), Name: "On " + k.plan.Walls[i].Name, Wall: k.plan.Walls[i].ID}
	for _, h := range rows() {
		a.Lines = append(a.Lines, plan.Line{ID: k.ids.next(plan.LetterLine), Height: h})
	}
	for j := range n {
		cell := j * stride % n
		row, column := cell/k.columns[i], cell%k.columns[i]
		stud := 200*mm + k.pitch[i] + 2*k.pitch[i]*unit.Length(column)
		a.Poses = append(a.Poses, k.hang(from+j, stud, rows()[row]))
	}
	k.plan.Arrangements = append(k.plan.Arrangements, a)
}

// hang poses a module so that its first bracket meets the stud and the top of the
// carrying board the line.
func (k *bench) hang(i int, stud, line unit.Length) plan.Pose {
	m, turn := lengthened(k.plan.Modules[i]), k.turns[i]
	l := lay(m)
	u := m.Brackets[0].At.MM()
	x, y := l.boards[k.carries[i]-1].point(u, 0)
	minX, minY, maxX, maxY := l.box(0)
	sin, cos := turn.SinCos()
	dx, dy := x-(minX+maxX)/2, y-(minY+maxY)/2
	return plan.Pose{
		Module: m.ID, Turn: turn,
		X: stud - unit.Nearest(dx*cos-dy*sin), Y: line - unit.Nearest(dx*sin+dy*cos),
	}
}
