package hardware

import "ledgewright/engine/unit"

// A BracketKind is one kind of bracket in one size.
//
// Places are relative to the bracket's axis: u along the board, w across it from face
// A. A plate in an upright has its height along u, a plate in a level board along w.
type BracketKind struct {
	ID       string
	Family   Family
	Rod      unit.Length // diameter; 0: no rod
	Root     unit.Length // diameter of the rod's least section at the plate or the structure; 0: not known
	InWall   unit.Length // depth of the rod in the structure; 0 for a rod on a plate, or by the shop's habit
	Reach    unit.Length // fixed length of the rod in the board; 0: by the board's depth
	Drill    unit.Length // hole for a rod set in the structure
	Plate    Plate
	Screws   []Hole
	Pitch    unit.Length // between the rods of a bar, or the screws of a rail or cleat; 0: one only
	Margin   unit.Length // from a bar's, rail's or cleat's end to its first rod or screw
	Strip    Section     // of a rail or cleat; zero for others
	Bevel    bool        // a pair of cleats, bevelled 45° against each other
	Lock     Lock
	Seat     Seat
	Attitude Attitude
	Carries  bool // false: takes pull only
	Basis    Basis
}

// A Plate is the metal that lies against the wall, or in the module's back.
type Plate struct {
	AlongU    unit.Length
	AlongW    unit.Length // 0: no plate
	Thickness unit.Length
}

// A Hole is one hole for a screw. DU and DW are from the axis.
type Hole struct {
	DU, DW  unit.Length
	Screw   string // id
	Slotted bool
}

// A Section is that of a wooden strip: how far it stands out of the wall, and how high
// it is.
type Section struct{ Out, High unit.Length }

// A Family is what kinds of the same shape have in common.
type Family string

// The families.
const (
	PlateBack    Family = "plate-back"    // plate in a pocket in the back edge of a level board
	RodStructure Family = "rod-structure" // rod set in stud or masonry
	PlateUpright Family = "plate-upright" // plate in a pocket in the back edge of an upright
	PlateLining  Family = "plate-lining"  // plate let into the lining, on the stud
	Bar          Family = "bar"           // bar with several rods, in a groove in the back edge
	Hook         Family = "hook"          // keyhole or peg at the back of an upright
	Cleat        Family = "cleat"         // pair of bevelled cleats
	Rail         Family = "rail"          // screws through a back rail
)

// A Lock says what stops a module sliding off.
type Lock string

// The locks.
const (
	Open      Lock = ""
	GrubScrew Lock = "grub-screw" // from below, at mid rod
	Undercut  Lock = "undercut"   // a head behind a keyhole, or a bevel
	Screwed   Lock = "screwed"    // the screws go through the module's own wood
)

// A Seat says where a plate sits, and so what hides it.
type Seat string

// The seats.
const (
	InPocket Seat = "pocket"
	InLining Seat = "lining"
	OnWall   Seat = "wall"
	InModule Seat = "module"
)

// An Attitude is the way up of the board in which a kind works.
type Attitude string

// The attitudes.
const (
	Level Attitude = "level"
	Plumb Attitude = "plumb"
)

// Families returns every family, in the order of the table.
func Families() []Family {
	return []Family{PlateBack, RodStructure, PlateUpright, PlateLining, Bar, Hook, Cleat, Rail}
}
