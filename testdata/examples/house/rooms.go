package house

import (
	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// Jobs returns the examples, the smallest first.
func Jobs() []Job {
	return []Job{
		{"porch", porch()}, {"hall", hall()}, {"kitchen", kitchen()}, {"bath", bath()}, {"laundry", laundry()},
		{"attic", attic()}, {"larder", larder()}, {"stair", stair()},
		{"nursery", nursery()}, {"study", study()}, {"music", music()}, {"landing", landing()}, {"library", library()},
	}
}

// porch: one board on two rods set in the studs, for gloves and keys.
func porch() plan.Plan {
	d := begin(unit.Metric, "W-01", "Porch shelf", "Gloves, keys and post beside the front door.")
	d.wall(plan.Wall{
		Name: "Beside the front door", Width: 2100 * mm, Height: 2400 * mm, FloorRise: some(0), CeilingRise: some(0),
		Build: plan.BuildStuds, Lining: plan.Lining{Kind: "plasterboard", Thickness: some(12500 * unit.Micrometre)},
		Studs:     studs(45*mm, 95*mm, 400*mm, 400*mm),
		CableRule: "uk", FarSide: "Outside wall, insulated", BuiltYear: document.Some(2009),
		Plumb: []plan.Plumb{{X: 200 * mm, Over: 1800 * mm, Lean: 2 * mm}, {X: 800 * mm, Over: 1800 * mm, Lean: 2 * mm}, {X: 1200 * mm, Over: 1800 * mm, Lean: 1 * mm}},
		Flat:  []plan.Flat{{X: 200 * mm, Y: 1450 * mm, Over: 1000 * mm, Gap: -1 * mm}},
		Obstacles: []plan.Obstacle{
			thing(plan.Door, 1180*mm, 0, 920*mm, 2080*mm, 60*mm),
			thing(plan.Switch, 1060*mm, 1050*mm, 86*mm, 86*mm, 10*mm),
		},
	})
	board := eased(shelf("Shelf", "white-oak", 180*mm, 26*mm, 620*mm), "round", 3*mm, "front-a", "front-b")
	d.hang(board, 290*mm, 1424*mm, 0).rods("rod-structure-12", 1, 400*mm, 800*mm)
	return d.Plan
}

// kitchen: two thick shelves over the worktop, each on a bar with three rods, in brick.
func kitchen() plan.Plan {
	d := begin(unit.Inches, "W-02", "Kitchen, range wall", "Plates below, jars above; the worktop must stay clear.")
	d.wall(plan.Wall{
		Name: "Range wall", Width: 126 * inch, Height: 97 * inch, FloorRise: some(0), CeilingRise: some(0),
		Build: plan.BuildBrick, Lining: plan.Lining{Kind: "plaster", Thickness: some(inch / 2)},
		CableRule: "uk", FarSide: "Yard", BuiltYear: document.Some(1931),
		Plumb: []plan.Plumb{{X: 20 * inch, Over: 72 * inch, Lean: inch / 8}, {X: 60 * inch, Over: 72 * inch, Lean: inch / 8}, {X: 100 * inch, Over: 72 * inch, Lean: inch / 16}},
		Obstacles: []plan.Obstacle{
			named("Worktop", thing(plan.Other, 0, 0, 72*inch, 36*inch, 25*inch)),
			thing(plan.Window, 78*inch, 40*inch, 40*inch, 44*inch, 3*inch),
			thing(plan.Socket, 61*inch, 42*inch, 6*inch, 7*inch/2, inch/2),
		},
	})
	for i, name := range []string{"Plates", "Jars"} {
		board := eased(shelf(name, "white-ash", 9*inch, 5*inch/4, 46*inch), "chamfer", inch/8, "front-a", "front-b")
		d.hang(board, 10*inch, unit.Length(54+16*i)*inch, 0).bar("bar-1-2in-16in", 1, 17*inch, 36*inch)
	}
	d.line(54 * inch)
	return d.Plan
}

// hall: a coat shelf with an upright end, on rods set in the masonry behind a board on
// dabs.
func hall() plan.Plan {
	d := begin(unit.Metric, "W-03", "Hall, coat shelf", "Hats above, hooks below; the upright keeps the bags off the door.")
	d.wall(plan.Wall{
		Name: "Party wall", Width: 2600 * mm, Height: 2420 * mm, FloorRise: some(0), CeilingRise: some(0),
		Build: plan.BuildDabs, Lining: plan.Lining{Kind: "plasterboard", Thickness: some(25 * mm)},
		CableRule: "uk", FarSide: "Next house", BuiltYear: document.Some(2003),
		Plumb: []plan.Plumb{{X: 400 * mm, Over: 1800 * mm, Lean: 1 * mm}, {X: 1000 * mm, Over: 1800 * mm, Lean: 1 * mm}, {X: 1800 * mm, Over: 1800 * mm, Lean: 2 * mm}},
		Obstacles: []plan.Obstacle{
			thing(plan.Door, 1700*mm, 0, 900*mm, 2060*mm, 60*mm),
			thing(plan.Switch, 1560*mm, 1050*mm, 86*mm, 86*mm, 10*mm),
		},
	})
	m := mitred("Coats", "american-beech", 220*mm, 26*mm, []unit.Angle{right}, 1000*mm, 340*mm)
	m = joined(m, "tenon")
	d.hang(eased(m, "round", 3*mm, "front-a", "front-b"), 350*mm, 1400*mm, 0).
		rods("rod-structure-12", 1, 500*mm, 850*mm, 1200*mm)
	return d.Plan
}

// bath: a box with a divider over the basin, screwed through its back rail.
func bath() plan.Plan {
	d := begin(unit.Metric, "W-04", "Bathroom, basin wall", "Towels and bottles; tiled to the ceiling.")
	d.wall(plan.Wall{
		Name: "Basin wall", Width: 1900 * mm, Height: 2380 * mm, FloorRise: some(4 * mm), CeilingRise: some(0),
		Build: plan.BuildStuds, Lining: plan.Lining{Kind: "tile-over-plasterboard", Thickness: some(22 * mm)},
		Studs:     studs(45*mm, 95*mm, 350*mm, 400*mm),
		CableRule: "uk", FarSide: "Stair", BuiltYear: document.Some(2014),
		Plumb: []plan.Plumb{{X: 300 * mm, Over: 1800 * mm, Lean: 1 * mm}, {X: 900 * mm, Over: 1800 * mm, Lean: 0}, {X: 1600 * mm, Over: 1800 * mm, Lean: -1 * mm}},
		Obstacles: []plan.Obstacle{
			named("Basin", thing(plan.Other, 600*mm, 0, 700*mm, 860*mm, 460*mm)),
			named("Shower screen", thing(plan.Other, 1560*mm, 0, 340*mm, 2050*mm, 900*mm)),
		},
	})
	m := box("Towels", "western-larch", 160*mm, 26*mm, 900*mm, 320*mm)
	m.Dividers = []plan.Divider{{From: 1, To: 3, At: 600 * mm, Thickness: 20 * mm, Start: "housed", End: "housed"}}
	d.hang(m, 500*mm, 1500*mm, 0).bar("rail-400", 3, 1150*mm, 500*mm)
	board := eased(shelf("Bottles", "western-larch", 120*mm, 26*mm, 620*mm), "round", 3*mm, "front-a", "front-b")
	d.hang(board, 640*mm, 1180*mm, 0).rods("rod-structure-10", 1, 750*mm, 1150*mm)
	return d.Plan
}

// laundry: a long box with two dividers, on a cleat in hollow block.
func laundry() plan.Plan {
	d := begin(unit.Metric, "W-05", "Laundry, over the machines", "Soap, pegs and linen over the two machines.")
	d.wall(plan.Wall{
		Name: "Machine wall", Width: 2200 * mm, Height: 2350 * mm, FloorRise: some(-10 * mm), CeilingRise: some(0),
		Build: plan.BuildHollow, Lining: plan.Lining{Kind: "plaster", Thickness: some(14 * mm)},
		CableRule: "uk", FarSide: "Store", BuiltYear: document.Some(2003),
		Plumb: []plan.Plumb{{X: 400 * mm, Over: 1800 * mm, Lean: -1 * mm}, {X: 1000 * mm, Over: 1800 * mm, Lean: -1 * mm}, {X: 1800 * mm, Over: 1800 * mm, Lean: 0}},
		Obstacles: []plan.Obstacle{
			named("Machines", thing(plan.Other, 350*mm, 0, 1250*mm, 900*mm, 640*mm)),
			thing(plan.Socket, 1750*mm, 1000*mm, 146*mm, 86*mm, 10*mm),
			thing(plan.Pipe, 2080*mm, 0, 60*mm, 2350*mm, 70*mm),
		},
	})
	m := box("Linen", "american-beech", 280*mm, 26*mm, 1300*mm, 360*mm)
	for _, at := range []unit.Length{440 * mm, 860 * mm} {
		m.Dividers = append(m.Dividers, plan.Divider{From: 1, To: 3, At: at, Thickness: 20 * mm, Start: "housed", End: "butt"})
	}
	d.hang(m, 325*mm, 1450*mm, 0).bar("cleat-400", 3, 1525*mm, 1200*mm)
	return d.Plan
}

// attic: a shallow box and a peg shelf beside the bed, across the metal studs of a light
// partition. A rod has nothing to hold in there, so both hang from strips with a screw in
// every stud; what those carry is not checked, and the note says what was agreed.
func attic() plan.Plan {
	d := begin(unit.Metric, "W-13", "Attic, day-bed wall", "Paperbacks and a lamp only: the studs are thin steel, so a screw in each is proved by a pull before anything is put up.")
	d.wall(plan.Wall{
		Name: "Day-bed wall", Width: 2600 * mm, Height: 2250 * mm, FloorRise: some(0), CeilingRise: some(0),
		Build: plan.BuildStuds, Lining: plan.Lining{Kind: "plasterboard", Thickness: some(25 * mm)},
		Studs:     metal(studs(35*mm, 70*mm, 300*mm, 600*mm)),
		CableRule: "uk", FarSide: "Attic stair", BuiltYear: document.Some(2019),
		Plumb: []plan.Plumb{{X: 300 * mm, Over: 1800 * mm, Lean: 0}, {X: 900 * mm, Over: 1800 * mm, Lean: 1 * mm}, {X: 1500 * mm, Over: 1800 * mm, Lean: 1 * mm}},
		Flat:  []plan.Flat{{X: 250 * mm, Y: 1300 * mm, Over: 1300 * mm, Gap: 1 * mm}},
		Obstacles: []plan.Obstacle{
			named("Day bed", thing(plan.Furniture, 150*mm, 0, 1500*mm, 620*mm, 2000*mm)),
			thing(plan.Socket, 1900*mm, 450*mm, 146*mm, 86*mm, 10*mm),
		},
	})
	const wood, thick = "yellow-poplar", 26 * mm
	d.hang(box("Paperbacks", wood, 150*mm, thick, 800*mm, 260*mm), 800*mm, 1250*mm, 0).bar("cleat-600", 3, 1500*mm, 700*mm)
	board := eased(shelf("Pegs", wood, 110*mm, thick, 1380*mm), "round", 3*mm, "front-a", "front-b")
	d.hang(board, 210*mm, 1700*mm, 0).bar("rail-600", 1, 300*mm, 1300*mm)
	d.line(1250 * mm)
	return d.Plan
}

// larder: a tall ladder of shelves on plates in the backs of its uprights.
func larder() plan.Plan {
	d := begin(unit.Metric, "W-06", "Larder, cold wall", "Jars in reach, nothing on the floor.")
	d.wall(plan.Wall{
		Name: "Cold wall", Width: 1700 * mm, Height: 2450 * mm, FloorRise: some(-6 * mm), CeilingRise: some(0),
		Build: plan.BuildStuds, Lining: plan.Lining{Kind: "plasterboard", Thickness: some(15 * mm)},
		Studs:     studs(45*mm, 120*mm, 250*mm, 400*mm),
		CableRule: "uk", FarSide: "Outside wall", BuiltYear: document.Some(2014),
		Plumb: []plan.Plumb{{X: 250 * mm, Over: 1800 * mm, Lean: -2 * mm}, {X: 650 * mm, Over: 1800 * mm, Lean: -2 * mm}, {X: 1450 * mm, Over: 1800 * mm, Lean: -1 * mm}},
		Obstacles: []plan.Obstacle{
			thing(plan.Switch, 1500*mm, 1050*mm, 86*mm, 86*mm, 10*mm),
		},
	})
	tall := func(name string, x, y, height unit.Length, shelves ...unit.Length) {
		turns := []unit.Angle{left, left, left, left}
		m := chain(name, "yellow-birch", 200*mm, 26*mm, turns, plan.ButtSecond, plan.Reinforcement{Kind: "tenon"}, 374*mm, height, 0, 0)
		m.Corners[1].Joint, m.Corners[3].Joint = plan.ButtFirst, plan.ButtFirst // the uprights run through
		for _, s := range shelves {
			m.Dividers = append(m.Dividers, plan.Divider{From: 2, To: 4, At: s, Thickness: 20 * mm, Start: "housed", End: "housed"})
		}
		d.hang(m, x, y, 0).
			rods("plate-upright-12", 2, y+height-80*mm).rods("plate-upright-12", 4, y+height-80*mm).
			rods("hook-keyhole", 2, y+120*mm).rods("hook-keyhole", 4, y+120*mm)
	}
	tall("Tall", 237*mm, 700*mm, 1350*mm, 330*mm, 640*mm, 950*mm)
	tall("Short", 1037*mm, 1250*mm, 800*mm, 270*mm, 530*mm)
	return d.Plan
}

// stair: three steps of ash that climb with the stair, on studs of an old wall that
// stand where they like.
func stair() plan.Plan {
	d := begin(unit.Metric, "W-07", "Stair wall", "Three steps that climb with the stair.")
	w := plan.Wall{
		Name: "Stair wall", Width: 3700 * mm, Height: 3100 * mm, FloorRise: some(0), CeilingRise: some(12 * mm),
		Build: plan.BuildLath, Lining: plan.Lining{Kind: "plaster", Thickness: some(28 * mm)},
		Studs:     plan.Studs{Material: "wood", Width: some(50 * mm), Depth: some(100 * mm)},
		CableRule: "uk", FarSide: "Parlour", BuiltYear: document.Some(1912),
		Plumb: []plan.Plumb{{X: 600 * mm, Over: 1800 * mm, Lean: 4 * mm}, {X: 1700 * mm, Over: 1800 * mm, Lean: 6 * mm}, {X: 2800 * mm, Over: 1800 * mm, Lean: 3 * mm}},
		Flat:  []plan.Flat{{X: 500 * mm, Y: 1300 * mm, Over: 1200 * mm, Gap: 2 * mm}, {X: 1700 * mm, Y: 1700 * mm, Over: 1200 * mm, Gap: -3 * mm}},
	}
	for _, x := range []unit.Length{225, 580, 945, 1310, 1655, 2020, 2365, 2720, 3070, 3425} {
		w.Studs.Each = append(w.Studs.Each, plan.Stud{X: x * mm, State: plan.EdgesFound})
	}
	for i := range unit.Length(7) {
		w.Obstacles = append(w.Obstacles, named("Stair", thing(plan.Other, (250+i*260)*mm, 0, 260*mm, (185+i*185)*mm, 900*mm)))
	}
	d.wall(w)
	step := func(name string, x, y, lower, upper unit.Length, rods ...unit.Length) {
		m := mitred(name, "white-ash", 180*mm, 26*mm, []unit.Angle{left, right}, lower, 300*mm, upper)
		d.hang(m, x, y, 0).rods("rod-structure-12", 1, rods[:2]...).rods("rod-structure-12", 3, rods[2:]...)
	}
	step("First step", 460*mm, 1250*mm, 620*mm, 380*mm, 580*mm, 945*mm, 1310*mm)
	step("Second step", 1540*mm, 1700*mm, 610*mm, 370*mm, 1655*mm, 2020*mm, 2365*mm)
	step("Third step", 2600*mm, 2150*mm, 620*mm, 380*mm, 2720*mm, 3070*mm, 3425*mm)
	d.datum(1500*mm, 1850*mm)
	return d.Plan
}

// nursery: five hexagons on rods set in aerated block, as a comb or in a row.
func nursery() plan.Plan {
	d := begin(unit.Metric, "W-08", "Nursery, comb", "Five cells; they may be hung as a comb or as a row.")
	d.wall(plan.Wall{
		Name: "Garden wall", Width: 3300 * mm, Height: 2400 * mm, FloorRise: some(0), CeilingRise: some(0),
		Build: plan.BuildAerated, Lining: plan.Lining{Kind: "plaster", Thickness: some(12 * mm)},
		CableRule: "uk", FarSide: "Garden", BuiltYear: document.Some(1994),
		Plumb: []plan.Plumb{{X: 600 * mm, Over: 1800 * mm, Lean: 0}, {X: 1500 * mm, Over: 1800 * mm, Lean: 1 * mm}, {X: 2600 * mm, Over: 1800 * mm, Lean: 0}},
		Obstacles: []plan.Obstacle{
			thing(plan.Furniture, 300*mm, 0, 1200*mm, 900*mm, 620*mm),
			thing(plan.Socket, 2960*mm, 280*mm, 146*mm, 86*mm, 10*mm),
		},
	})
	turn := 60 * unit.Degree
	cell := mitred("", "sugar-maple", 180*mm, 26*mm, []unit.Angle{turn, turn, turn, turn, turn, turn},
		260*mm, 260*mm, 260*mm, 260*mm, 0, 0)
	// Cells touch, 3 mm apart: a column is 390 + 3·cos 30° from the last, half a cell up is
	// 260·sin 60° + 3·sin 30°.
	const column, half = 392_598_076 * unit.Nanometre, 226_666_605 * unit.Nanometre
	places := [5][2]unit.Length{ // column, halves up
		{0, 0}, {1, 1}, {2, 0}, {3, 1}, {2, 2},
	}
	for i, at := range places {
		m := cell
		m.Name = []string{"One", "Two", "Three", "Four", "Five"}[i]
		x, y := 420*mm+at[0]*column, 1150*mm+at[1]*half
		d.hang(m, x, y, 0).rods("rod-structure-12", 4, x+195*mm, x+325*mm)
	}
	d.present().Name = "Comb"
	d.arrangement("Row")
	for i := range places {
		d.again(i, unit.Length(230+i*560)*mm, 1377*mm, 0, false)
	}
	d.line(1377 * mm)
	return d.Plan
}

// study: the wall over the desk, four shapes on plates let in on the studs, one lit.
func study() plan.Plan {
	d := begin(unit.Metric, "W-09", "Study, desk wall", "Books within reach of the chair, the screen clear.")
	d.wall(plan.Wall{
		Name: "Desk wall", Width: 4200 * mm, Height: 2500 * mm, FloorRise: some(3 * mm), CeilingRise: some(0),
		Build: plan.BuildStuds, Lining: plan.Lining{Kind: "plasterboard", Thickness: some(12500 * unit.Micrometre)},
		Studs:     studs(45*mm, 95*mm, 300*mm, 400*mm),
		CableRule: "uk", FarSide: "Landing", BuiltYear: document.Some(2009),
		Plumb: []plan.Plumb{{X: 300 * mm, Over: 1800 * mm, Lean: 2 * mm}, {X: 1500 * mm, Over: 1800 * mm, Lean: 1 * mm}, {X: 2700 * mm, Over: 1800 * mm, Lean: 2 * mm}},
		Flat:  []plan.Flat{{X: 500 * mm, Y: 1700 * mm, Over: 2000 * mm, Gap: 2 * mm}},
		Obstacles: []plan.Obstacle{
			thing(plan.Furniture, 420*mm, 0, 1900*mm, 740*mm, 700*mm),
			thing(plan.Window, 2950*mm, 950*mm, 950*mm, 1250*mm, 60*mm),
			thing(plan.Radiator, 3000*mm, 150*mm, 850*mm, 560*mm, 90*mm),
			thing(plan.Socket, 2390*mm, 300*mm, 146*mm, 86*mm, 10*mm),
		},
	})
	const oak, deep, thick = "white-oak", 200 * mm, 26 * mm
	long := mitred("Long", oak, deep, thick, []unit.Angle{left}, 320*mm, 1100*mm)
	long.GrainWrap = true
	d.hang(long, 550*mm, 1700*mm, down).rods("plate-lining-12", 2, 700*mm, 1500*mm).lit(plan.Light{
		First: 2, Last: 2, Face: "B", FromFront: some(20 * mm), Width: 12300 * unit.Micrometre, Depth: 7 * mm,
		StartStop: some(40 * mm), EndStop: some(15 * mm), Strip: "strip-24-9.6",
		Power: plan.Power{Source: "driver-24-15", Exit: "start", Lead: some(2500 * mm)},
	})
	d.hang(box("Box", oak, deep, thick, 520*mm, 380*mm), 1840*mm, 1700*mm, 0).rods("plate-lining-12", 3, 1900*mm, 2300*mm)
	step := mitred("Step", oak, deep, thick, []unit.Angle{left, right}, 680*mm, 280*mm, 830*mm)
	d.hang(step, 960*mm, 1130*mm, 0).rods("plate-lining-12", 1, 1100*mm, 1500*mm).rods("plate-lining-12", 3, 1900*mm, 2300*mm)
	d.hang(tray("Tray", oak, deep, thick, 620*mm, 220*mm), 190*mm, 1240*mm, down).rods("plate-lining-12", 2, 300*mm, 700*mm)
	d.line(1726 * mm)
	return d.Plan
}

// music: deep record boxes on cleats, in concrete.
func music() plan.Plan {
	d := begin(unit.Metric, "W-10", "Music room, records", "About 400 records and what plays them.")
	d.wall(plan.Wall{
		Name: "Long concrete wall", Width: 4000 * mm, Height: 2550 * mm, FloorRise: some(0), CeilingRise: some(0),
		Build: plan.BuildConcrete, Lining: plan.Lining{Kind: "none"},
		CableRule: "uk", FarSide: "Earth", BuiltYear: document.Some(1974),
		Plumb: []plan.Plumb{{X: 500 * mm, Over: 1800 * mm, Lean: -2 * mm}, {X: 2000 * mm, Over: 1800 * mm, Lean: -3 * mm}, {X: 3500 * mm, Over: 1800 * mm, Lean: -2 * mm}},
		Flat:  []plan.Flat{{X: 400 * mm, Y: 1200 * mm, Over: 2000 * mm, Gap: 3 * mm}},
		Obstacles: []plan.Obstacle{
			thing(plan.Socket, 3600*mm, 300*mm, 146*mm, 86*mm, 12*mm),
		},
	})
	records := func(name string, x, y, width unit.Length, dividers ...unit.Length) {
		turns := []unit.Angle{left, left, left, left}
		m := chain(name, "black-walnut", 360*mm, 32*mm, turns, plan.RebateSecond, plan.Reinforcement{Kind: "screw"}, width, 400*mm, 0, 0)
		m.Corners[1].Joint, m.Corners[3].Joint = plan.RebateFirst, plan.RebateFirst // the uprights carry the rebates
		for _, at := range dividers {
			m.Dividers = append(m.Dividers, plan.Divider{From: 1, To: 3, At: at, Thickness: 20 * mm, Start: "housed", End: "housed"})
		}
		d.hang(m, x, y, 0).bar("cleat-400", 3, x+width-100*mm, width-100*mm)
	}
	records("Records left", 400*mm, 800*mm, 1000*mm, 345*mm, 655*mm)
	records("Records right", 1500*mm, 800*mm, 1000*mm, 345*mm, 655*mm)
	records("Turntable", 2600*mm, 800*mm, 800*mm)
	top := eased(shelf("Speakers", "black-walnut", 280*mm, 32*mm, 1400*mm), "round", 3*mm, "front-a", "front-b")
	d.hang(top, 750*mm, 1700*mm, 0).rods("rod-structure-14", 1, 1000*mm, 1450*mm, 1900*mm)
	d.line(800 * mm)
	return d.Plan
}

// landing: five pieces that can be hung in three ways on the same studs.
func landing() plan.Plan {
	d := begin(unit.Inches, "W-11", "Landing, five pieces", "Five pieces, three ways to hang them.")
	d.wall(plan.Wall{
		Name: "Landing", Width: 150 * inch, Height: 96 * inch, FloorRise: some(0), CeilingRise: some(0),
		Build: plan.BuildStuds, Lining: plan.Lining{Kind: "plasterboard", Thickness: some(inch / 2)},
		Studs:     studs(3*inch/2, 7*inch/2, 14*inch, 16*inch),
		CableRule: "uk", FarSide: "Bathroom", BuiltYear: document.Some(1998),
		Plumb: []plan.Plumb{{X: 14 * inch, Over: 72 * inch, Lean: 0}, {X: 78 * inch, Over: 72 * inch, Lean: inch / 16}, {X: 126 * inch, Over: 72 * inch, Lean: 0}},
		Obstacles: []plan.Obstacle{
			thing(plan.Furniture, 20*inch, 0, 60*inch, 30*inch, 14*inch),
			thing(plan.Switch, 137*inch, 40*inch, 7*inch/2, 7*inch/2, inch/2),
		},
	})
	return d.landings()
}

// landings hangs the five pieces in their three ways. Bores are drilled once; every
// way puts them on studs, which stand 16 in apart from 14 in.
func (d *draft) landings() plan.Plan {
	const walnut, deep, thick, kind = "black-walnut", 8 * inch, 5 * inch / 4, "plate-back-1-2in"
	d.present().Name = "Line"
	d.hang(shelf("Plank", walnut, deep, thick, 44*inch), 8*inch, 60*inch, 0).rods(kind, 1, 14*inch, 46*inch)
	ell := mitred("Ell", walnut, deep, thick, []unit.Angle{left}, 12*inch, 30*inch)
	p := d.hang(ell, 55*inch, 60*inch, down).rods(kind, 2, 62*inch, 78*inch)
	for _, u := range []unit.Length{9 * inch, 25 * inch} { // for the way in which it hangs back to front
		p.add(plan.Bracket{Kind: kind, Board: 2, At: u, Edge: "front"})
	}
	d.hang(joined(box("Box", walnut, deep, thick, 22*inch, 14*inch), "key"), 91*inch, 60*inch, 0).rods(kind, 3, 94*inch, 110*inch)
	step := mitred("Step", walnut, deep, thick, []unit.Angle{left, right}, 24*inch, 10*inch, 24*inch)
	d.hang(step, 10*inch, 45*inch, 0).rods(kind, 1, 14*inch, 30*inch).rods(kind, 3, 46*inch)
	d.hang(tray("Tray", walnut, deep, thick, 24*inch, 9*inch), 90*inch, 46*inch, down).rods(kind, 2, 94*inch, 110*inch)
	d.line(60 * inch)
	const plank, elbow, cube, stepped, open = 0, 1, 2, 3, 4
	d.arrangement("Climb")
	d.again(plank, 40*inch, 60*inch, 0, false)
	d.again(elbow, 9*inch, 48*inch, left, true)
	d.again(cube, 11*inch, 66*inch, 0, false)
	d.again(stepped, 90*inch, 70*inch, 0, false)
	d.again(open, 90*inch, 52*inch, down, false)
	d.arrangement("Two rows")
	d.again(plank, 24*inch, 72*inch, 0, false)
	d.again(elbow, 7*inch, 48*inch, down, false)
	d.again(cube, 43*inch, 46*inch, 0, false)
	d.again(stepped, 74*inch, 65*inch, 0, false)
	d.again(open, 74*inch, 46*inch, down, false)
	d.line(72 * inch)
	return d.Plan
}

// library: 48 pieces on the long wall, eight bays of six, each on the two studs of its
// bay.
func library() plan.Plan {
	d := begin(unit.Metric, "W-12", "Library, long wall", "Eight bays of six; the lowest pieces are closed for the heaviest books.")
	w := plan.Wall{
		Name: "Long wall", Width: 9700 * mm, Height: 3200 * mm, FloorRise: some(8 * mm), CeilingRise: some(0),
		Build: plan.BuildStuds, Lining: plan.Lining{Kind: "plasterboard", Thickness: some(25 * mm)},
		Studs:     studs(45*mm, 145*mm, 350*mm, 600*mm),
		CableRule: "uk", FarSide: "Weir, outside wall", BuiltYear: document.Some(2009),
		Flat: []plan.Flat{{X: 1000 * mm, Y: 1500 * mm, Over: 2000 * mm, Gap: 2 * mm}, {X: 6000 * mm, Y: 1500 * mm, Over: 2000 * mm, Gap: 1 * mm}},
		Obstacles: []plan.Obstacle{
			thing(plan.Socket, 1777*mm, 300*mm, 146*mm, 86*mm, 10*mm),
			thing(plan.Socket, 6577*mm, 300*mm, 146*mm, 86*mm, 10*mm),
		},
	}
	for _, x := range []unit.Length{350, 4550, 9350} {
		w.Plumb = append(w.Plumb, plan.Plumb{X: x * mm, Over: 1800 * mm, Lean: 1 * mm})
	}
	d.wall(w)
	for bay := range 8 {
		for row := range 6 {
			d.bay(bay, row)
		}
	}
	d.line(540 * mm)
	d.line(2640 * mm)
	return d.Plan
}

// bay hangs the piece of one bay and row. Its rods stand on the bay's two studs, 600
// apart, and the piece reaches over them by the same on both sides.
func (d *draft) bay(bay, row int) {
	const oak, deep, thick, kind = "northern-red-oak", 250 * mm, 32 * mm, "plate-back-14"
	name := string(rune('A'+bay)) + string(rune('1'+row))
	first := unit.Length(350+1200*bay) * mm
	y := unit.Length(540+420*row) * mm
	at := func(width unit.Length) unit.Length { return first + 300*mm - width/2 }
	switch shapes[row][bay] {
	case 'b': // box with a divider
		m := box(name, oak, deep, thick, 1100*mm, 340*mm)
		m.Dividers = []plan.Divider{{From: 1, To: 3, At: 550 * mm, Thickness: 20 * mm, Start: "housed", End: "housed"}}
		d.hang(m, at(1100*mm), y, 0).rods(kind, 3, first, first+600*mm)
	case 'c': // small box
		d.hang(joined(box(name, oak, deep, thick, 800*mm, 300*mm), "dowel"), at(800*mm), y, 0).rods(kind, 3, first, first+600*mm)
	case 'l': // shelf with an upright at its left end
		m := mitred(name, oak, deep, thick, []unit.Angle{left}, 260*mm, 1100*mm)
		d.hang(m, at(1100*mm), y, down).rods(kind, 2, first, first+600*mm)
	case 'r': // at its right end
		m := mitred(name, oak, deep, thick, []unit.Angle{left}, 1100*mm, 260*mm)
		d.hang(m, at(1100*mm), y, 0).rods(kind, 1, first, first+600*mm)
	case 'u':
		d.hang(tray(name, oak, deep, thick, 900*mm, 200*mm), at(900*mm), y, down).rods(kind, 2, first, first+600*mm)
	case 's':
		d.hang(shelf(name, oak, deep, thick, 1100*mm), at(1100*mm), y, 0).rods(kind, 1, first, first+600*mm)
	case 'n': // narrow
		d.hang(shelf(name, oak, deep, thick, 760*mm), at(760*mm), y, 0).rods(kind, 1, first, first+600*mm)
	}
}

// shapes is the long wall, bay by bay from the left, the lowest row first.
var shapes = [6]string{
	"bbbbbbbb",
	"lsnsrlsr",
	"sucsusnu",
	"rlsnlrsc",
	"nsusrsln",
	"lscssurs",
}
