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
	ID        string      `json:"id"` // module id + "." + index ("m1.2"), divider id, or bracket id + letter for rails and cleats
	Name      string      `json:"name,omitempty"`
	Role      Role        `json:"role"`
	Wood      string      `json:"wood"`      // id in package wood
	Length    unit.Length `json:"length"`    // greatest u − least u
	Width     unit.Length `json:"width"`     // extent in v
	Thickness unit.Length `json:"thickness"` // extent in w
	Frame     Frame       `json:"frame"`
	Features  []Feature   `json:"features"` // in a stated order: end cuts first, then by cause
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
	X   unit.Length `json:"x"`
	Y   unit.Length `json:"y"`
	Z   unit.Length `json:"z"`
	Dir unit.Angle  `json:"dir"`
}

// A Point is a place in a board's frame.
type Point struct {
	U unit.Length `json:"u"`
	V unit.Length `json:"v"`
	W unit.Length `json:"w"`
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
	What string `json:"what"`
	ID   string `json:"id,omitempty"`
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
	Kind     Kind        `json:"kind"`
	Cause    Cause       `json:"cause"`
	Enter    Face        `json:"enter,omitempty"`
	Mouth    Point       `json:"mouth,omitempty"`
	Along    unit.Length `json:"along,omitempty"`
	Across   unit.Length `json:"across,omitempty"`
	Diameter unit.Length `json:"diameter,omitempty"`
	Depth    unit.Length `json:"depth,omitempty"`
	Tilt     unit.Angle  `json:"tilt,omitempty"`
	Through  bool        `json:"through,omitempty"` // runs out of the board at the far side or at both ends; Depth then still states the wood removed

	AtA   unit.Length `json:"atA,omitempty"`
	AtB   unit.Length `json:"atB,omitempty"`   // end cuts
	Arris string      `json:"arris,omitempty"` // chamfers and round-overs: as in a plan's edges
	Size  unit.Length `json:"size,omitempty"`
	After Moment      `json:"after"` // when in the making it can first be cut
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
	First      string         `json:"first"`
	Second     string         `json:"second"`           // ids of the boards
	Number     int            `json:"number,omitempty"` // index of the board before it, from 1; 0 for a divider's end
	At         [2]unit.Length `json:"at"`               // in the module's plane: the inner point
	Outer      [2]unit.Length `json:"outer"`            // the outer point
	Interior   unit.Angle     `json:"interior"`         // between the boards, on the side turned to
	Tilt       [2]unit.Angle  `json:"tilt"`             // blade from square, first and second board
	Lead       [2]unit.Length `json:"lead"`             // long point ahead of short point, first and second; negative when the inner face is the longer
	GlueArea   unit.Area      `json:"glueArea"`
	SlotArea   unit.Area      `json:"slotArea,omitempty"`   // glued in slots, tenons and the like, besides
	Claim      unit.Pressure  `json:"claim,omitempty"`      // nominal stress that may be claimed on the joint's plane; 0: nothing claimed
	ClaimBasis string         `json:"claimBasis,omitempty"` // key of the words that say where Claim comes from
	Pieces     []Piece        `json:"pieces,omitempty"`     // loose pieces in it
}

// A Piece is one or more loose pieces of one size in a joint, to be bought or made:
// splines, tenons, dowels, keys, screws, plugs.
type Piece struct {
	What      string      `json:"what"` // key of the words "piece.<what>": "spline", "tenon", "dowel", "key", "screw", "plug"
	Count     int         `json:"count"`
	Thickness unit.Length `json:"thickness"`       // diameter of a round one
	Width     unit.Length `json:"width,omitempty"` // across the joint; 0 for a round one
	Length    unit.Length `json:"length"`
}

// A Fixing is one bracket as mechanics sees it.
type Fixing struct {
	Bracket  string   `json:"bracket"` // id of the bracket in the plan
	Kind     string   `json:"kind"`    // id in package hardware, for the list of what to buy; nothing is reckoned from it
	Board    string   `json:"board"`   // id of the board it carries
	At       Point    `json:"at"`      // axis where it meets the wall, in the board's frame
	Rods     []Rod    `json:"rods,omitempty"`
	Screws   []Screw  `json:"screws,omitempty"`
	Plate    Plate    `json:"plate"`
	Lock     string   `json:"lock,omitempty"` // "" none; "grub-screw", "pin", "resin", "screwed", "undercut" (a head behind a keyhole, a bevel): what stops the module sliding off
	Seat     string   `json:"seat"`           // where the plate sits: "pocket", "lining", "wall", "module"; hidden by what
	Attitude Attitude `json:"attitude"`
	Carries  bool     `json:"carries"` // false for a point that only ties, such as a top hook that takes pull

	Lift unit.Length `json:"lift,omitempty"` // how far the module is raised to hang it, clearance included; 0: it slides straight out
	Top  Face        `json:"top,omitempty"`  // side of the board that must be uppermost; empty: works either way up
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
	At       Point       `json:"at"` // axis at the board's wall edge
	Diameter unit.Length `json:"diameter"`
	Root     unit.Length `json:"root,omitempty"`   // diameter of the least section at the plate or the structure; 0: not known
	InBoard  unit.Length `json:"inBoard"`          // from the wall edge to the tip
	InWall   unit.Length `json:"inWall,omitempty"` // set into the structure; 0 for a rod on a plate
	Bore     unit.Length `json:"bore"`             // diameter of its bore
}

// A Screw is one screw, plug or rod hole in the wall.
type Screw struct {
	DU       unit.Length `json:"du"`
	DW       unit.Length `json:"dw"`       // from the fixing's At, along u and w of the board
	Diameter unit.Length `json:"diameter"` // nominal
	Root     unit.Length `json:"root"`
	Length   unit.Length `json:"length"` // shank under the head, or a rod's length in the wall
	Slotted  bool        `json:"slotted,omitempty"`
	Rod      bool        `json:"rod,omitempty"`  // the hole is a rod's own
	Drill    unit.Length `json:"drill"`          // hole to drill in the structure
	Plug     unit.Length `json:"plug,omitempty"` // hole to drill for its plug in masonry; 0: as Drill
}

// A Plate is the part of a bracket that lies against the wall.
type Plate struct {
	AlongU    unit.Length `json:"alongU"`
	AlongW    unit.Length `json:"alongW"` // 0: no plate
	Thickness unit.Length `json:"thickness"`
}

// A Strip is one light as electricity and the eye see it.
type Strip struct {
	Light      string      `json:"light"`            // id in the plan
	Kind       string      `json:"kind"`             // id in package hardware
	Source     string      `json:"source,omitempty"` // id of its driver or battery in package hardware
	Runs       []StripRun  `json:"runs"`             // one a board, in the order of the walk
	Groove     unit.Length `json:"groove"`           // length of the groove run, round corners
	Length     unit.Length `json:"length"`           // whole cut units inside it
	Units      int         `json:"units"`
	Watts      unit.Power  `json:"watts"`
	Drop       float64     `json:"drop"`                 // volts lost at the far end
	Supply     float64     `json:"supply"`               // volts
	RunHours   float64     `json:"runHours,omitempty"`   // battery only
	SourceLoad float64     `json:"sourceLoad,omitempty"` // watts asked of the source with its reserve, as a share of what it gives
	Lumens     float64     `json:"lumens,omitempty"`     // for each metre, through its cover
	Kelvin     float64     `json:"kelvin,omitempty"`     // colour of its light
	Dots       bool        `json:"dots,omitempty"`       // single chips show
	Book       Lit         `json:"book,omitempty"`       // missing: it does not shine down
}

// A Lit is what a strip gives on a book under its middle, direct light only.
type Lit struct {
	Board string      `json:"board,omitempty"` // that it lies on; empty: on none of the module's
	Below unit.Length `json:"below"`
	Lux   float64     `json:"lux"`
}

// A StripRun is the part of a strip that lies in one board, centre line in the
// board's frame, with the way the light leaves.
type StripRun struct {
	Board string `json:"board"`
	From  Point  `json:"from"`
	To    Point  `json:"to"`
	Face  Face   `json:"face"`
}
