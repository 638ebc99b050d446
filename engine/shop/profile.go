// Package shop holds the maker's profile: units, tape, habits, covers, slacks, the
// rule for brackets, allowances and machines. A plan carries a copy, so that it
// means the same on every bench.
package shop

import (
	"ledgewright/engine/document"
	"ledgewright/engine/unit"
)

// Schema names the format of a profile that stands in a file of its own.
const Schema = "ledgewright/shop/1"

// A Profile is one workshop's way of working. [Defaults] gives every field with its
// reason. A member that a document leaves out has the default of the profile's
// system; a value outside its limits is refused.
type Profile struct {
	Schema   string         `json:"schema"`
	Name     string         `json:"name,omitempty"`
	System   unit.System    `json:"system"` // in which the shop measures and sets its machines
	Tape     Tape           `json:"tape"`
	Covers   Covers         `json:"covers"`
	Rods     Rods           `json:"rods"`
	Brackets BracketRule    `json:"brackets"`
	Joints   Joints         `json:"joints"`
	Grooves  Grooves        `json:"grooves"`
	Gaps     Gaps           `json:"gaps"`
	Stock    Stock          `json:"stock"`
	Machines Machines       `json:"machines"`
	Moisture Moisture       `json:"moisture"`
	Extra    document.Extra `json:"-"`
}

// Tape is the finest step read at the bench and on site.
type Tape struct {
	Bench unit.Length    `json:"bench"`
	Site  unit.Length    `json:"site"`
	Extra document.Extra `json:"-"`
}

// Covers are the least wood left between cuts and surfaces.
type Covers struct {
	Pocket       unit.Length    `json:"pocket"`     // above and below a pocket
	Bore         unit.Length    `json:"bore"`       // above and below a bore; half its rod where that is more
	BoreToSlot   unit.Length    `json:"boreToSlot"` // between a bore and a groove or slot
	BoreToHeel   unit.Length    `json:"boreToHeel"` // between a bore and the heel of a mitre
	PocketToHeel unit.Length    `json:"pocketToHeel"`
	Slot         unit.Length    `json:"slot"`     // from a reinforcement to the outside
	SlotThin     unit.Length    `json:"slotThin"` // the same in boards under Thin
	Thin         unit.Length    `json:"thin"`
	Front        unit.Length    `json:"front"` // wood in front of a rod's tip
	Plate        unit.Length    `json:"plate"` // play round a plate in its pocket, on each side
	Extra        document.Extra `json:"-"`
}

// Rods says how rods and their bores are sized.
type Rods struct {
	SlackWelded     unit.Length    `json:"slackWelded"`     // bore over rod, rods of one welded bar
	SlackSingle     unit.Length    `json:"slackSingle"`     // bore over rod, rods set singly
	Deeper          unit.Length    `json:"deeper"`          // bore deeper than the rod
	InStudDiameters int            `json:"inStudDiameters"` // depth in the structure, in rod diameters
	InStudLeast     unit.Length    `json:"inStudLeast"`
	Extra           document.Extra `json:"-"`
}

// The rules for placing brackets along a board.
const (
	RuleStuds    = "studs"    // on the studs within reach
	RuleOverhang = "overhang" // by the overhang, wherever the studs are
	RuleFixed    = "fixed"    // so far from each end
)

// BracketRule is the shop's rule for placing brackets along a board.
type BracketRule struct {
	Kind           string         `json:"kind"`           // id of a bracket in package hardware
	Rule           string         `json:"rule"`           // a Rule… constant
	Fixed          unit.Length    `json:"fixed"`          // from each end, for the rule "fixed"
	Overhang       int            `json:"overhang"`       // an overhang is at most L/Overhang
	FirstDiameters int            `json:"firstDiameters"` // least distance from an end, in rod diameters
	Extra          document.Extra `json:"-"`
}

// Joints holds the reinforcement habits.
type Joints struct {
	SplineThickness  document.Opt[unit.Length] `json:"splineThickness,omitempty"` // missing: a sixth of the thinner board
	SplineHeel       unit.Length               `json:"splineHeel"`                // slot from the heel, along the mitre
	SplinePlay       unit.Length               `json:"splinePlay"`                // both slots together over the spline's width
	TenonPitch       unit.Length               `json:"tenonPitch"`
	TenonEdge        unit.Length               `json:"tenonEdge"` // first tenon or dowel from an edge
	DowelPitch       unit.Length               `json:"dowelPitch"`
	KeyPitch         unit.Length               `json:"keyPitch"`
	KeyInside        unit.Length               `json:"keyInside"` // wood left between a key and the inside of the corner
	ScrewPitch       unit.Length               `json:"screwPitch"`
	HousingDepthPart int                       `json:"housingDepthPart"` // housing depth = thickness / this
	Extra            document.Extra            `json:"-"`
}

// Grooves holds the habits for light grooves.
type Grooves struct {
	DeepestPart int            `json:"deepestPart"` // depth at most t / this
	FromFront   unit.Length    `json:"fromFront"`
	StopShown   unit.Length    `json:"stopShown"`   // stop before an end that shows
	StopJoint   unit.Length    `json:"stopJoint"`   // stop before an end with a joint
	Pass        unit.Length    `json:"pass"`        // deepest router pass
	ChannelPlay unit.Length    `json:"channelPlay"` // groove over channel, in width
	Extra       document.Extra `json:"-"`
}

// Gaps are the least distances on the wall.
type Gaps struct {
	Touching unit.Length    `json:"touching"` // left between modules that stand together
	Apart    unit.Length    `json:"apart"`    // least between modules that do not
	Frame    unit.Length    `json:"frame"`    // to side walls, windows and doors
	Ceiling  unit.Length    `json:"ceiling"`
	InFront  unit.Length    `json:"inFront"` // beyond the rod, to slide a module on
	Socket   unit.Length    `json:"socket"`
	Extra    document.Extra `json:"-"`
}

// Stock holds the allowances from finished to rough size.
type Stock struct {
	Length      unit.Length    `json:"length"`
	Width       unit.Length    `json:"width"`
	Thickness   unit.Length    `json:"thickness"`
	Sanding     unit.Length    `json:"sanding"` // each face
	Kerf        unit.Length    `json:"kerf"`
	Thicknesses []unit.Length  `json:"thicknesses"` // finished thicknesses the shop works in
	Extra       document.Extra `json:"-"`
}

// Machines are the limits that a shape must respect to be made in this shop.
type Machines struct {
	Saw         Saw            `json:"saw"`
	DrillStroke unit.Length    `json:"drillStroke"`
	Wander      unit.Length    `json:"wander"` // a bore's wander over its depth, measured
	Extra       document.Extra `json:"-"`
}

// Saw is the saw that cuts the mitres.
type Saw struct {
	TiltsLeft  bool           `json:"tiltsLeft"`
	StopRight  bool           `json:"stopRight"`
	MaxTilt    unit.Angle     `json:"maxTilt"`
	HeightAt45 unit.Length    `json:"heightAt45"`
	Crosscut   unit.Length    `json:"crosscut"`
	StopReach  unit.Length    `json:"stopReach"`
	Extra      document.Extra `json:"-"`
}

// Moisture is the moisture content of the wood, in percent, in the shop and in use, and
// what is thought of how it moves between them. The last two are left out as long as nobody
// chose: profiles, and links, that are older than they stay as they are.
type Moisture struct {
	Shop    float64                   `json:"shop"`
	UseLow  float64                   `json:"useLow"`
	UseHigh float64                   `json:"useHigh"`
	Sawn    string                    `json:"sawn,omitempty"` // how boards are sawn, as package wood names it; empty: not known
	Seen    document.Opt[unit.Length] `json:"seen,omitempty"` // a gap that opens wider than this is seen; missing: 0.5 mm
	Extra   document.Extra            `json:"-"`
}

// seenAtArmsLength is a gap that is seen where nobody says otherwise; MostSeen is the widest
// that may be typed.
const (
	seenAtArmsLength = unit.Millimetre / 2
	MostSeen         = 5 * unit.Millimetre
)

// Gap returns the widest gap that is not seen.
func (m Moisture) Gap() unit.Length { return m.Seen.Or(seenAtArmsLength) }
