package hardware

import "ledgewright/engine/unit"

// metricRows holds the brackets sized in millimetres, one a line: id, family, rod, its root, its depth in the
// structure (0: the shop's habit), its hole there, plate (along u, along w, thickness),
// screw, pairs of screws, slots, pitch, wooden strip, lock, basis.
//
// Plates of level boards are 16 mm high for boards of 24 mm: a pocket of 18 with 3 above
// and below it, and 1 all round the plate. Screws stand 12 mm beside the rod, the
// farthest at which a 4.5 mm screw keeps 1.5 diameters of wood in a 38 mm stud (edge
// distance of NDS-2005, table 11.5.1A); wide plates, for masonry, 38 mm. A rod that is
// welded all round counts as whole at its plate; a threaded one has the core of M12, see
// the head of the package; where the fastening is not known, neither is the root. Lag
// rods have the cores of DIN 571 as we know them, not seen in print. A rod set in resin
// has 1 mm of it all round. Cleats and rails are ripped from 18 mm or 3/4 in stock, 45°
// between a pair of cleats, screws as far apart as studs are.
func metricRows() [40]row {
	return [...]row{
		{"plate-back-8", PlateBack, 8 * mm, 8 * mm, 0, 0, Plate{40 * mm, 12 * mm, 4 * mm}, "4.5x60", [2]unit.Length{12 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-back-10", PlateBack, 10 * mm, 10 * mm, 0, 0, Plate{40 * mm, 16 * mm, 5 * mm}, "4.5x60", [2]unit.Length{12 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-back-12", PlateBack, 12 * mm, 12 * mm, 0, 0, Plate{40 * mm, 16 * mm, 5 * mm}, "4.5x60", [2]unit.Length{12 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-back-14", PlateBack, 14 * mm, 14 * mm, 0, 0, Plate{40 * mm, 20 * mm, 5 * mm}, "4.5x60", [2]unit.Length{12 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-back-16", PlateBack, 16 * mm, 16 * mm, 0, 0, Plate{40 * mm, 24 * mm, 6 * mm}, "4.5x60", [2]unit.Length{13 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-back-12-threaded", PlateBack, 12 * mm, 9853 * um, 0, 0, Plate{40 * mm, 16 * mm, 5 * mm}, "4.5x60", [2]unit.Length{12 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-back-12-wide", PlateBack, 12 * mm, 12 * mm, 0, 0, Plate{96 * mm, 16 * mm, 5 * mm}, "4.5x60", [2]unit.Length{38 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-back-12-adjusted", PlateBack, 12 * mm, 9853 * um, 0, 0, Plate{96 * mm, 16 * mm, 5 * mm}, "4.5x60", [2]unit.Length{12 * mm, 38 * mm}, outerSlot, 0, Section{}, GrubScrew, Assumed},
		{"plate-back-12-slotted", PlateBack, 12 * mm, 0, 0, 0, Plate{96 * mm, 16 * mm, 5 * mm}, "4.5x60", [2]unit.Length{38 * mm, 0}, allSlots, 0, Section{}, GrubScrew, Assumed},
		{"plate-back-12-open", PlateBack, 12 * mm, 12 * mm, 0, 0, Plate{40 * mm, 16 * mm, 5 * mm}, "4.5x60", [2]unit.Length{12 * mm, 0}, round, 0, Section{}, Open, Assumed},
		{"rod-structure-8", RodStructure, 8 * mm, 8 * mm, 0, 10 * mm, Plate{}, "", [2]unit.Length{}, round, 0, Section{}, GrubScrew, Practice},
		{"rod-structure-10", RodStructure, 10 * mm, 10 * mm, 0, 12 * mm, Plate{}, "", [2]unit.Length{}, round, 0, Section{}, GrubScrew, Practice},
		{"rod-structure-12", RodStructure, 12 * mm, 12 * mm, 0, 14 * mm, Plate{}, "", [2]unit.Length{}, round, 0, Section{}, GrubScrew, Practice},
		{"rod-structure-14", RodStructure, 14 * mm, 14 * mm, 0, 16 * mm, Plate{}, "", [2]unit.Length{}, round, 0, Section{}, GrubScrew, Practice},
		{"rod-structure-16", RodStructure, 16 * mm, 16 * mm, 0, 18 * mm, Plate{}, "", [2]unit.Length{}, round, 0, Section{}, GrubScrew, Practice},
		{"rod-structure-10-lag", RodStructure, 10 * mm, 7 * mm, 0, 7 * mm, Plate{}, "", [2]unit.Length{}, round, 0, Section{}, GrubScrew, Practice},
		{"rod-structure-12-lag", RodStructure, 12 * mm, 9 * mm, 0, 9 * mm, Plate{}, "", [2]unit.Length{}, round, 0, Section{}, GrubScrew, Practice},
		{"rod-structure-12-open", RodStructure, 12 * mm, 12 * mm, 0, 14 * mm, Plate{}, "", [2]unit.Length{}, round, 0, Section{}, Open, Practice},
		{"plate-upright-8", PlateUpright, 8 * mm, 8 * mm, 0, 0, Plate{60 * mm, 12 * mm, 4 * mm}, "4.5x60", [2]unit.Length{20 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-upright-10", PlateUpright, 10 * mm, 10 * mm, 0, 0, Plate{60 * mm, 16 * mm, 5 * mm}, "4.5x60", [2]unit.Length{20 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-upright-12", PlateUpright, 12 * mm, 12 * mm, 0, 0, Plate{60 * mm, 16 * mm, 5 * mm}, "4.5x60", [2]unit.Length{22 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-upright-14", PlateUpright, 14 * mm, 14 * mm, 0, 0, Plate{80 * mm, 20 * mm, 5 * mm}, "4.5x60", [2]unit.Length{30 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-upright-16", PlateUpright, 16 * mm, 16 * mm, 0, 0, Plate{100 * mm, 24 * mm, 6 * mm}, "4.5x60", [2]unit.Length{38 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-lining-10", PlateLining, 10 * mm, 10 * mm, 0, 0, Plate{34 * mm, 60 * mm, 5 * mm}, "5x70", [2]unit.Length{20 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-lining-12", PlateLining, 12 * mm, 12 * mm, 0, 0, Plate{34 * mm, 60 * mm, 5 * mm}, "5x70", [2]unit.Length{20 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-lining-14", PlateLining, 14 * mm, 14 * mm, 0, 0, Plate{34 * mm, 80 * mm, 5 * mm}, "5x70", [2]unit.Length{30 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-lining-16", PlateLining, 16 * mm, 16 * mm, 0, 0, Plate{34 * mm, 100 * mm, 5 * mm}, "5x70", [2]unit.Length{38 * mm, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"bar-10-400", Bar, 10 * mm, 10 * mm, 0, 0, Plate{0, 16 * mm, 5 * mm}, "4.5x60", [2]unit.Length{12 * mm, 0}, round, 400 * mm, Section{}, GrubScrew, Assumed},
		{"bar-12-400", Bar, 12 * mm, 12 * mm, 0, 0, Plate{0, 16 * mm, 5 * mm}, "4.5x60", [2]unit.Length{12 * mm, 0}, round, 400 * mm, Section{}, GrubScrew, Assumed},
		{"bar-14-400", Bar, 14 * mm, 14 * mm, 0, 0, Plate{0, 20 * mm, 5 * mm}, "4.5x60", [2]unit.Length{12 * mm, 0}, round, 400 * mm, Section{}, GrubScrew, Assumed},
		{"bar-16-400", Bar, 16 * mm, 16 * mm, 0, 0, Plate{0, 24 * mm, 6 * mm}, "4.5x60", [2]unit.Length{13 * mm, 0}, round, 400 * mm, Section{}, GrubScrew, Assumed},
		{"bar-12-200", Bar, 12 * mm, 12 * mm, 0, 0, Plate{0, 16 * mm, 5 * mm}, "4.5x60", [2]unit.Length{12 * mm, 0}, round, 200 * mm, Section{}, GrubScrew, Assumed},
		{"bar-12-600", Bar, 12 * mm, 12 * mm, 0, 0, Plate{0, 16 * mm, 5 * mm}, "4.5x60", [2]unit.Length{12 * mm, 0}, round, 600 * mm, Section{}, GrubScrew, Assumed},
		{"hook-keyhole", Hook, 0, 0, 0, 0, Plate{40 * mm, 14 * mm, 2500 * um}, "5x70", [2]unit.Length{}, round, 0, Section{}, Undercut, Assumed},
		{"hook-keyhole-large", Hook, 0, 0, 0, 0, Plate{60 * mm, 18 * mm, 3 * mm}, "6x80", [2]unit.Length{}, round, 0, Section{}, Undercut, Assumed},
		{"hook-peg-8", Hook, 8 * mm, 5600 * um, 60 * mm, 5500 * um, Plate{}, "", [2]unit.Length{}, round, 0, Section{}, GrubScrew, Assumed},
		{"cleat-400", Cleat, 0, 0, 0, 0, Plate{}, "5x80", [2]unit.Length{}, round, 400 * mm, Section{18 * mm, 50 * mm}, Undercut, Practice},
		{"cleat-600", Cleat, 0, 0, 0, 0, Plate{}, "5x80", [2]unit.Length{}, round, 600 * mm, Section{18 * mm, 50 * mm}, Undercut, Practice},
		{"rail-400", Rail, 0, 0, 0, 0, Plate{}, "5x80", [2]unit.Length{}, round, 400 * mm, Section{18 * mm, 60 * mm}, Screwed, Practice},
		{"rail-600", Rail, 0, 0, 0, 0, Plate{}, "5x80", [2]unit.Length{}, round, 600 * mm, Section{18 * mm, 60 * mm}, Screwed, Practice},
	}
}

// inchRows holds the brackets sized in inches, on the same grounds.
func inchRows() [19]row {
	return [...]row{
		{"plate-back-3-8in", PlateBack, in * 3 / 8, in * 3 / 8, 0, 0, Plate{in * 13 / 8, in * 5 / 8, in * 3 / 16}, "no9x2-1-2in", [2]unit.Length{in * 15 / 32, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-back-1-2in", PlateBack, in / 2, in / 2, 0, 0, Plate{in * 13 / 8, in * 5 / 8, in * 3 / 16}, "no9x2-1-2in", [2]unit.Length{in * 15 / 32, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-back-5-8in", PlateBack, in * 5 / 8, in * 5 / 8, 0, 0, Plate{in * 13 / 8, in * 7 / 8, in * 3 / 16}, "no9x2-1-2in", [2]unit.Length{in / 2, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"rod-structure-3-8in", RodStructure, in * 3 / 8, in * 3 / 8, 0, in / 2, Plate{}, "", [2]unit.Length{}, round, 0, Section{}, GrubScrew, Practice},
		{"rod-structure-1-2in", RodStructure, in / 2, in / 2, 0, in * 5 / 8, Plate{}, "", [2]unit.Length{}, round, 0, Section{}, GrubScrew, Practice},
		{"rod-structure-5-8in", RodStructure, in * 5 / 8, in * 5 / 8, 0, in * 3 / 4, Plate{}, "", [2]unit.Length{}, round, 0, Section{}, GrubScrew, Practice},
		{"plate-upright-3-8in", PlateUpright, in * 3 / 8, in * 3 / 8, 0, 0, Plate{in * 5 / 2, in * 5 / 8, in * 3 / 16}, "no9x2-1-2in", [2]unit.Length{in * 7 / 8, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-upright-1-2in", PlateUpright, in / 2, in / 2, 0, 0, Plate{in * 5 / 2, in * 5 / 8, in * 3 / 16}, "no9x2-1-2in", [2]unit.Length{in * 7 / 8, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-upright-5-8in", PlateUpright, in * 5 / 8, in * 5 / 8, 0, 0, Plate{4 * in, in * 7 / 8, in * 3 / 16}, "no9x2-1-2in", [2]unit.Length{in * 3 / 2, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-lining-3-8in", PlateLining, in * 3 / 8, in * 3 / 8, 0, 0, Plate{in * 11 / 8, in * 5 / 2, in * 3 / 16}, "no10x3in", [2]unit.Length{in * 7 / 8, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-lining-1-2in", PlateLining, in / 2, in / 2, 0, 0, Plate{in * 11 / 8, in * 5 / 2, in * 3 / 16}, "no10x3in", [2]unit.Length{in * 7 / 8, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"plate-lining-5-8in", PlateLining, in * 5 / 8, in * 5 / 8, 0, 0, Plate{in * 11 / 8, 4 * in, in * 3 / 16}, "no10x3in", [2]unit.Length{in * 3 / 2, 0}, round, 0, Section{}, GrubScrew, Assumed},
		{"bar-3-8in-16in", Bar, in * 3 / 8, in * 3 / 8, 0, 0, Plate{0, in * 5 / 8, in * 3 / 16}, "no9x2-1-2in", [2]unit.Length{in * 15 / 32, 0}, round, 16 * in, Section{}, GrubScrew, Assumed},
		{"bar-1-2in-16in", Bar, in / 2, in / 2, 0, 0, Plate{0, in * 5 / 8, in * 3 / 16}, "no9x2-1-2in", [2]unit.Length{in * 15 / 32, 0}, round, 16 * in, Section{}, GrubScrew, Assumed},
		{"bar-5-8in-16in", Bar, in * 5 / 8, in * 5 / 8, 0, 0, Plate{0, in * 7 / 8, in * 3 / 16}, "no9x2-1-2in", [2]unit.Length{in / 2, 0}, round, 16 * in, Section{}, GrubScrew, Assumed},
		{"cleat-16in", Cleat, 0, 0, 0, 0, Plate{}, "no10x3in", [2]unit.Length{}, round, 16 * in, Section{in * 3 / 4, 2 * in}, Undercut, Practice},
		{"cleat-24in", Cleat, 0, 0, 0, 0, Plate{}, "no10x3in", [2]unit.Length{}, round, 24 * in, Section{in * 3 / 4, 2 * in}, Undercut, Practice},
		{"rail-16in", Rail, 0, 0, 0, 0, Plate{}, "no10x3in", [2]unit.Length{}, round, 16 * in, Section{in * 3 / 4, in * 5 / 2}, Screwed, Practice},
		{"rail-24in", Rail, 0, 0, 0, 0, Plate{}, "no10x3in", [2]unit.Length{}, round, 24 * in, Section{in * 3 / 4, in * 5 / 2}, Screwed, Practice},
	}
}
