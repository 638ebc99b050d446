// Package board is the waist of the engine: boards with every cut as a feature in
// the board's own frame, and the corners, fixings and strips that go with them, as
// plain values without kinds.
//
// A board's frame: u along the walk, 0 at the smallest u of finished wood; v from
// the wall edge outward; w from face A into the wood. Face A lies left of the walk.
// (u, v, w) is right-handed. In the module's frame x and y span the plane of the
// chain and z points out of the wall; v is z for every board, so a board's place is
// one point and one angle.
package board

import "ledgewright/engine/unit"

// A Board is one piece of wood with all that is cut into it.
type Board struct {
	ID        string // module id + "." + index ("m1.2"), divider id, or bracket id + letter for rails and cleats
	Name      string
	Role      Role
	Wood      string      // id in package wood
	Length    unit.Length // greatest u − least u
	Width     unit.Length // extent in v
	Thickness unit.Length // extent in w
	Frame     Frame
	Features  []Feature // in a stated order: end cuts first, then by cause
}

// A Role says what a board is in its module.
type Role string

// The roles.
const (
	Chain   Role = "chain"
	Divider Role = "divider"
	Rail    Role = "rail" // a rail or cleat of a bracket
)

// A Frame places a board in its module: the point (0, 0, 0) of the board, and the
// direction of u, counter-clockwise from x. w points 90° clockwise from u.
type Frame struct {
	X, Y, Z unit.Length
	Dir     unit.Angle
}

// A Point is a place in a board's frame.
type Point struct {
	U, V, W unit.Length
}

// A Face is a side of a board.
type Face string

// The six sides.
const (
	FaceA Face = "A"     // w = 0
	FaceB Face = "B"     // w = thickness
	Back  Face = "back"  // v = 0, the wall edge
	Front Face = "front" // v = width
	Start Face = "start" // the end at small u
	End   Face = "end"   // the end at large u
)

// A Kind names a cut.
type Kind string

// The kinds of features.
const (
	EndCut    Kind = "end-cut"
	Groove    Kind = "groove"
	Bore      Kind = "bore"
	Pocket    Kind = "pocket"
	Slot      Kind = "slot"    // for a spline, loose tenon or key
	Housing   Kind = "housing" // takes the end of another board, a rebate included
	Chamfer   Kind = "chamfer"
	RoundOver Kind = "round-over"
)

// A Cause names the decision that asked for a feature: "corner" with the number of
// the board before it, or "divider", "bracket", "light" with an id, or "edge" with
// an arris.
type Cause struct {
	What string
	ID   string
}

// A Feature is one cut. Every cut but end cuts and arrises removes a straight prism
// or a cylinder that the tool enters by a mouth on one side of the board:
//
//   - Mouth is the centre of the mouth, on the side named by Enter.
//   - Along and Across are the size of the mouth: along u and across v on faces A
//     and B; along u and across w on the back and front edges; along v and across
//     the cut plane at an end. A round cut has a Diameter instead.
//   - Depth runs along the tool's axis: the inward normal of the side, turned by
//     Tilt in the u–w plane, + from u towards w. At an end the normal is that of a
//     square end (−u at the end, +u at the start); a mitre's slot states its Tilt.
//
// An end cut is the plane through u = AtA on face A and u = AtB on face B, square to
// the u–w plane. A chamfer or round-over has its Arris and Size.
type Feature struct {
	Kind     Kind
	Cause    Cause
	Enter    Face
	Mouth    Point
	Along    unit.Length
	Across   unit.Length
	Diameter unit.Length
	Depth    unit.Length
	Tilt     unit.Angle
	Through  bool // runs out of the board at the far side or at both ends; Depth then still states the wood removed

	AtA, AtB unit.Length // end cuts
	Arris    string      // chamfers and round-overs: as in a plan's edges
	Size     unit.Length
	After    Moment // when in the making it can first be cut
}

// A Moment orders cuts by what must exist before them.
type Moment string

// The moments: on the square blank, after the mitres are cut, after glue-up.
const (
	OnBlank    Moment = "blank"
	AfterMitre Moment = "mitre"
	AfterGlue  Moment = "glue"
)

// A Corner is where two boards meet, for those who reckon with it.
type Corner struct {
	First, Second string         // ids of the boards
	Number        int            // index of the board before it, from 1; 0 for a divider's end
	At            [2]unit.Length // in the module's plane: the inner point
	Outer         [2]unit.Length // the outer point
	Interior      unit.Angle     // between the boards, on the side turned to
	Tilt          [2]unit.Angle  // blade from square, first and second board
	Lead          [2]unit.Length // long point ahead of short point, first and second; negative when the inner face is the longer
	GlueArea      unit.Area
	SlotArea      unit.Area     // glued in slots, tenons and the like, besides
	Claim         unit.Pressure // nominal stress that may be claimed on the joint's plane; 0: nothing claimed
	ClaimBasis    string        // key of the words that say where Claim comes from
}

// A Fixing is one bracket as mechanics sees it.
type Fixing struct {
	Bracket  string // id of the bracket in the plan
	Board    string // id of the board it carries
	At       Point  // axis where it meets the wall, in the board's frame
	Rods     []Rod
	Screws   []Screw
	Plate    Plate
	Lock     string // "" none; "grub-screw", "pin", "resin", "screwed": what stops the module sliding off
	Seat     string // where the plate sits: "pocket", "lining", "wall", "module"; hidden by what
	Attitude Attitude
	Carries  bool // false for a point that only ties, such as a top hook that takes pull
}

// Attitude is the way up in which a fixing works.
type Attitude string

// The attitudes: the carrying board must be level, or plumb, within 2°.
const (
	Level Attitude = "level"
	Plumb Attitude = "plumb"
)

// A Rod stands out of the wall into a bore.
type Rod struct {
	At       Point // axis at the board's wall edge
	Diameter unit.Length
	Root     unit.Length // diameter of the least section at the plate or the structure; 0: not known
	InBoard  unit.Length // from the wall edge to the tip
	InWall   unit.Length // set into the structure; 0 for a rod on a plate
	Bore     unit.Length // diameter of its bore
}

// A Screw is one screw, plug or rod hole in the wall.
type Screw struct {
	DU, DW   unit.Length // from the fixing's At, along u and w of the board
	Diameter unit.Length // nominal
	Root     unit.Length
	Length   unit.Length // shank under the head, or a rod's length in the wall
	Slotted  bool
	Rod      bool        // the hole is a rod's own
	Drill    unit.Length // hole to drill in the structure
}

// A Plate is the part of a bracket that lies against the wall.
type Plate struct {
	AlongU, AlongW unit.Length // 0: no plate
	Thickness      unit.Length
}

// A Strip is one light as electricity and the eye see it.
type Strip struct {
	Light      string      // id in the plan
	Kind       string      // id in package hardware
	Runs       []StripRun  // one a board, in the order of the walk
	Groove     unit.Length // length of the groove run, round corners
	Length     unit.Length // whole cut units inside it
	Units      int
	Watts      unit.Power
	Drop       float64 // volts lost at the far end
	Supply     float64 // volts
	RunHours   float64 // battery only
	SourceLoad float64 // watts asked of the source with its reserve, as a share of what it gives
}

// A StripRun is the part of a strip that lies in one board, centre line in the
// board's frame, with the way the light leaves.
type StripRun struct {
	Board    string
	From, To Point
	Face     Face
}
