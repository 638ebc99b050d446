package mount

import (
	"ledgewright/engine/board"
	"ledgewright/engine/hardware"
	"ledgewright/engine/unit"
)

// most bounds the rods of a bar and the screws of a rail.
const most = 100

// rods fits one rod or a bar of several: bores, pocket, lock holes, checks.
func (j *job) rods() {
	n, long := j.row()
	if !j.checkStrip(j.At-j.kind.Margin, long) {
		return
	}
	reach, bore := j.reach(), j.bore()
	places := make([]unit.Length, n)
	for i := range places {
		places[i] = j.At + j.kind.Pitch*unit.Length(i)
	}
	j.addBores(places, reach, bore)
	pocket := j.addPocket(long)
	if j.kind.Lock == hardware.GrubScrew {
		j.addLocks(places, reach)
	}
	j.checkCount(n, long)
	j.checkLock()
	j.checkSlots()
	j.checkRoot()
	j.checkPlate()
	j.checkBore(reach+j.Shop.Rods.Deeper, bore)
	j.checkEnds(places, bore, pocket)
}

// row returns how many rods or screws a bar, rail or cleat has, and how long it is. A
// kind without pitch has one, and no length.
func (j *job) row() (n int, long unit.Length) {
	k := &j.kind
	if k.Pitch == 0 {
		return 1, 0
	}
	long = j.Length
	if long <= 0 {
		long = j.ownLength()
	}
	n = int(min(max(long-2*k.Margin, 0)/k.Pitch, most-1)) + 1
	return n, long
}

// ownLength returns the length of a bar, rail or cleat that nobody chose: it ends as far
// from the far end of the board as it starts from the near one, or takes the second rod
// or screw if that lies further; a bar ends with its last rod.
func (j *job) ownLength() unit.Length {
	k := &j.kind
	room := max(j.Board.Length-2*j.At, 0)
	if room < k.Pitch && j.At+k.Pitch+k.Margin <= j.Board.Length {
		room = k.Pitch
	}
	if k.Family == hardware.Bar {
		room -= room % k.Pitch
	}
	return 2*k.Margin + room
}

// reach returns how far a rod goes into the board from its wall edge.
func (j *job) reach() unit.Length {
	if j.kind.Reach > 0 {
		return j.kind.Reach
	}
	deep := j.Board.Width
	least := max(deep.MulDiv(2, 3), deep.MulDiv(5, 8)+10*unit.Millimetre)
	return up(least, j.step())
}

// step is what rods are cut to: whole 5 mm, or quarter inches.
func (j *job) step() unit.Length {
	if j.Shop.System == unit.Inches {
		return unit.Inch / 4
	}
	return 5 * unit.Millimetre
}

// up returns l rounded up to a whole number of steps.
func up(l, step unit.Length) unit.Length {
	if l%step == 0 {
		return l
	}
	return l - l%step + step
}

// bore returns the diameter of a rod's bore.
func (j *job) bore() unit.Length {
	if j.kind.Family == hardware.Bar {
		return j.kind.Rod + j.Shop.Rods.SlackWelded
	}
	return j.kind.Rod + j.Shop.Rods.SlackSingle
}

// inWall returns how deep a rod is set in the structure; 0 for a rod on a plate.
func (j *job) inWall() unit.Length {
	switch {
	case j.kind.Drill == 0:
		return 0
	case j.kind.InWall > 0:
		return j.kind.InWall
	}
	return max(j.kind.Rod*unit.Length(j.Shop.Rods.InStudDiameters), j.Shop.Rods.InStudLeast)
}

// addBores cuts the bores and states their rods and screws.
func (j *job) addBores(places []unit.Length, reach, bore unit.Length) {
	f := &j.out.Fixing
	for _, u := range places {
		j.out.Features = append(j.out.Features, board.Feature{
			Kind: board.Bore, Cause: j.cause(), Enter: j.Edge, Mouth: j.at(u),
			Diameter: bore, Depth: reach + j.Shop.Rods.Deeper, After: board.OnBlank,
		})
		f.Rods = append(f.Rods, board.Rod{
			At: j.at(u), Diameter: j.kind.Rod, Root: j.kind.Root, InBoard: reach, InWall: j.inWall(), Bore: bore,
		})
		for _, h := range j.kind.Screws {
			f.Screws = append(f.Screws, j.screw(h, u-j.At))
		}
		if j.kind.Drill > 0 {
			f.Screws = append(f.Screws, board.Screw{
				DU: u - j.At, Diameter: j.kind.Rod, Root: j.kind.Root, Length: j.inWall(),
				Rod: true, Drill: j.kind.Drill, Plug: j.kind.Drill,
			})
		}
	}
}

// addPocket cuts the pocket of a plate or bar, and returns its extent along the board;
// that of the bore's mouth where there is none.
func (j *job) addPocket(long unit.Length) (extent [2]unit.Length) {
	plate := &j.out.Fixing.Plate
	centre := j.At
	if long > 0 {
		plate.AlongU = long
		centre = j.At - j.kind.Margin + long/2
	}
	if j.kind.Seat != hardware.InPocket {
		return [2]unit.Length{j.At, j.At}
	}
	play := j.Shop.Covers.Plate
	pocket := board.Feature{
		Kind: board.Pocket, Cause: j.cause(), Enter: j.Edge, Mouth: j.at(centre),
		Along: plate.AlongU + 2*play, Across: plate.AlongW + 2*play, Depth: plate.Thickness + play,
		After: board.OnBlank,
	}
	j.out.Features = append(j.out.Features, pocket)
	from := centre - pocket.Along/2
	return [2]unit.Length{from, from + pocket.Along}
}

// lockHole is the hole of a lock: a grub screw in its insert, under an 8 mm plug.
const lockHole = 8 * unit.Millimetre

// addLocks drills the lock holes, from below to the rods at their middle.
func (j *job) addLocks(places []unit.Length, reach unit.Length) {
	under := j.underside()
	for _, u := range places {
		j.out.Features = append(j.out.Features, board.Feature{
			Kind: board.Bore, Cause: j.cause(), Enter: under,
			Mouth:    board.Point{U: u, V: j.v(reach / 2), W: j.face(under)},
			Diameter: lockHole, Depth: j.Board.Thickness / 2, After: board.AfterGlue,
		})
	}
}
