// Package app is the page's state machine: Step(state, event) gives the next state
// and what the browser has to do. It touches no browser and runs natively.
//
// A State is a value; everything on the page can be worked out from it.
package app

import (
	"ledgewright/engine"
	"ledgewright/engine/edit"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/wasm/hand"
)

// A Screen is what the whole window shows.
type Screen uint8

// The screens.
const (
	AtStart Screen = iota
	AtWork
)

// A Job is one of the five jobs, always reachable.
type Job uint8

// The jobs.
const (
	Survey Job = iota
	Arrange
	Make
	Hang
	Agree
)

// A Switch is something that is on or off.
type Switch string

// The switches.
const (
	Evening      Switch = "evening"
	Bench        Switch = "bench"
	Studs        Switch = "studs"
	Bands        Switch = "bands"
	NoSnapStud   Switch = "snap-stud"
	NoSnapLine   Switch = "snap-line"
	NoSnapFlush  Switch = "snap-flush"
	NoSnapGap    Switch = "snap-gap"
	NoSnapCentre Switch = "snap-centre"
	LineTool     Switch = "line-tool" // the next tap or typed height makes a line
	Several      Switch = "several"   // taps add to what is chosen
	Help         Switch = "help"      // the panel says how the page works
	InTheRound   Switch = "round"     // the picture shows the boards in the round
	Alone        Switch = "alone"     // there, only the chosen module
)

// Size is that of the picture in CSS pixels.
type Size struct{ Width, Height float64 }

// Settings outlive the job.
type Settings struct {
	Theme string      `json:"theme"`          // "day", "evening"
	Hand  string      `json:"hand"`           // "right", "left"
	Units unit.System `json:"units"`          // of new plans
	Week  string      `json:"week,omitempty"` // "read": what may become of jobs that nobody opens

	Picture string `json:"picture,omitempty"` // what paints it: "stage", "svg", or nothing: whichever is best here
}

// A State is all that the page shows.
type State struct {
	Screen   Screen
	Job      Job
	Settings Settings
	On       map[Switch]bool
	Size     Size
	Camera   Camera
	Round    Round

	Plan    plan.Plan
	Build   engine.Build
	History History
	Store   Store
	Lasting Lasting
	Jobs    []Listing
	Now     string // time of day
	Today   string // "2026-05-31"

	Wall        string   // id of the wall in view
	Arrangement string   // id of the arrangement in view; empty: none yet
	Chosen      []string // ids of modules, in the order of choosing
	At          Thing    // what is looked at inside the chosen module, or on the wall

	Rests   bool // nothing has changed for a while
	Painted Painting

	Hand    hand.Hand
	Drag    Drag
	Typing  Typing
	Using   Field // of the panel, while it has the focus
	Preview Preview
	Places  Places
	written *written // of the plan and of the oldest that can be reached, as they were kept
	oldest  *written
	Fields  map[string]Echo // by field key: what was read in fields of the panel
	Toast   Toast
	SheetAt int    // 0 low, 1 half, 2 full
	Problem string // a sentence on the start page: why a file or link did not open
}

// A Thing is something smaller than a module: a board, a corner, a stud …
type Thing struct {
	Kind  string // "board", "corner", "divider", "bracket", "light", "edge", "obstacle", "stud", "line", "plumb", "flat", "finding", "point", "field" with the field's key as ID
	Owner string // id of the module or wall
	ID    string // id, for things that have one
	Index int    // number from 1, for things that have none
}

// A Field is a figure or word that can be typed: where its value goes.
type Field struct {
	Key      string // unique on the page
	Label    string // what is typed, in words
	Kind     FieldKind
	Line     string      // the edit as in a document, with "$" where the value goes; or several, one a line
	Value    string      // the present text
	Least    unit.Length // of lengths, where Least < Most
	Most     unit.Length
	Optional bool // an empty text takes the value away

	// What is typed may be measured from elsewhere: the edit's value is then
	// Offset + Sign · typed. A Sign of 0 is +1.
	Offset unit.Length
	Sign   int
}

// A FieldKind says how a field's text is read.
type FieldKind uint8

// Kinds of fields.
const (
	LengthField FieldKind = iota
	AngleField
	CountField
	TextField
	ChoiceField // the text is one of the values offered
	TickField   // "true" or "false"
)

// An Echo is what was read in a field.
type Echo struct {
	Text string // as typed
	Says string // what was understood, or what is wrong
	Bad  bool
}

// Typing is the typing strip on a figure of the picture.
type Typing struct {
	Open   bool
	Field  Field
	Echo   Echo
	Was    string
	Causes string // what it would cause, in a sentence
}

// A Preview is a plan that is looked at and not yet made: during a drag, while a
// figure is typed, or while a remedy is tried.
type Preview struct {
	Shown bool
	Tried bool // a remedy that is looked at
	Plan  plan.Plan
	Build engine.Build
}

// A Drag is a module, or several, in the hand.
type Drag struct {
	Active       bool
	Modules      []string
	FromX, FromY unit.Length // pivot of the first at the start
	Snaps        []wall.Snap // what it sticks to, for the picture
	Pan          bool        // the hand moves the picture instead
	AtX, AtY     float64     // there: the pixel to which it has
}

// History is the steps that can be undone and redone, the last of each first to go.
type History struct {
	Past, Future []Past
}

// A Past is a plan and the name of the edit that led away from it.
type Past struct {
	Plan  plan.Plan
	Name  edit.Name
	Lines []string // the edits, as in a document
}

// Store says how the job is kept.
type Store struct {
	ID       string
	Revision int    // of the present plan
	Stored   int    // revision known to be stored
	Turned   bool   // another job or arrangement is in view than the one that was stored
	At       string // when
	Err      string // why it could not be stored
	CopyAt   string // last copy outside this browser: its day, and the time of day
	Copied   int    // revision of it; of a new job, the first
	Due      bool   // so much has changed since, or for so long, that one is reminded of it
	Awaits   bool   // it is seen to that one is reminded after a while
}

// Lasting is what the browser says of whether it keeps what is stored.
type Lasting uint8

// The answers.
const (
	NotAsked Lasting = iota
	Lasts
	MayGo
)

// A Listing is one kept job in the list.
type Listing struct {
	ID      string `json:"id"`
	Title   string `json:"title"`
	Summary string `json:"summary"`
	At      string `json:"at"`
}

// A Toast is a sentence at the foot of the wall.
type Toast struct {
	Text string
	Undo bool
}
