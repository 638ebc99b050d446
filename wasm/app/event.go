package app

import (
	"ledgewright/engine/edit"
	"ledgewright/wasm/hand"
)

// An Event is something that happened to the page. Events are plain data; a control
// of the page carries the event that it sends.
type Event interface{ event() }

// Events of the page as a whole.
type (
	// Started is the first event: what the browser knows when the program starts.
	Started struct {
		Now      string // "14:02"
		Today    string // "2026-05-31"
		Size     Size
		Address  string // fragment of the address: a plan's code, or nothing
		Jobs     []Listing
		Settings Settings
		Last     string // id of the job that was open last
		Picture  string // what the address wants the picture painted by: "stage", "svg", or nothing
	}
	// Resized says that the picture has another size.
	Resized struct{ Size Size }
	// Clock says what time and day it is, for "kept at".
	Clock struct{ Now, Today string }
	// Go changes the job in hand.
	Go struct{ Job Job }
	// Home goes back to the start page.
	Home struct{}
	// Show turns one of the switches.
	Show struct{ What Switch }
	// Set changes a setting: "theme", "hand", "units", "week", "picture".
	Set struct{ Name, Value string }
	// Sheet moves the sheet of the panel on narrow windows to its next height.
	Sheet struct{}
	// Dismiss takes away the toast, the dialog or the typing strip.
	Dismiss struct{}
	// Reckon asks for the next slice of slow work.
	Reckon struct{}
)

// Stage says whether the graphics processor paints the picture now, or why it does not.
type Stage struct {
	Shown bool
	Why   string // "coming", "none", "software", "saving", "slow", "lost", "ended"
}

// Events that change the plan.
type (
	// Do makes edits, as one step that can be undone under one name.
	Do struct{ Edits []edit.Edit }
	// DoLine is Do for an edit written as in a document.
	DoLine struct{ Line string }
	// Undo takes the last step back.
	Undo struct{}
	// Redo makes the last undone step again.
	Redo struct{}
	// TypedInto says that a field's text changed and is not finished.
	TypedInto struct {
		Field Field
		Text  string
	}
	// Entered says that a field's text is finished.
	Entered struct {
		Field Field
		Text  string
	}
	// OpenTyping opens the typing strip on a figure of the picture.
	OpenTyping struct{ Field Field }
	// PressKey puts a key of the strip into the field of that key, where its caret stands.
	// The browser does it, and then tells what the field says as if it had been typed.
	PressKey struct{ Key, Into string }
	// UseField says that a field of the panel has the focus; without one, that none has.
	UseField struct{ Field Field }
	// StepField changes a field by steps of its unit: ±1 small, ±10 large.
	StepField struct {
		Field Field
		By    int
	}
	// NewJob starts a plan with one wall.
	NewJob struct{ Width, Height string }
)

// Events of choosing.
type (
	// Choose chooses a module; with Add it joins those chosen, or leaves them.
	Choose struct {
		Module string
		Add    bool
	}
	// Point chooses a thing inside a module or on the wall.
	Point struct{ At Thing }
	// ShowArrangement changes the arrangement in view.
	ShowArrangement struct{ ID string }
	// ShowWall changes the wall in view.
	ShowWall struct{ ID string }
	// Lead goes to a verdict's worst finding.
	Lead struct{ Verdict int }
	// Try shows what a remedy or a place would do, without doing it; Line empty ends it.
	Try struct{ Line string }
)

// Events of the hand and the keys.
type (
	// Pointer is a pointer event on the picture.
	Pointer struct{ hand.Event }
	// Key is a key pressed while the picture has the focus, or with a modifier anywhere.
	Key struct {
		Name                string
		Control, Shift, Alt bool
		InField             bool
	}
	// Zoom zooms about the middle of the picture.
	Zoom struct{ By float64 }
	// Pan looks further along, by so many parts of the picture to the right and up.
	Pan struct{ X, Y float64 }
	// Fit shows the whole wall.
	Fit struct{}
)

// Events of files and of keeping.
type (
	// Opened brings a text: a plan, a link or a code.
	Opened struct{ Name, Text string }
	// Open asks for the example or kept job of that name.
	Open struct{ Example, Kept string }
	// Kept says that a job is stored, or why not.
	Kept struct {
		Revision int
		Now, Err string
	}
	// Persisted is the browser's answer to whether it keeps what is stored until somebody
	// deletes it.
	Persisted struct{ Lasts bool }
	// Listed brings the list of kept jobs.
	Listed struct{ Jobs []Listing }
	// Read brings a kept job.
	Read struct {
		ID     string
		Record string
		Err    string
	}
	// HandOn asks for a file or a link of the plan: "plan", "build", "parts", "picture",
	// "link"; By is "download", "copy", "share".
	HandOn struct{ What, By string }
	// Done says how a file or copy ended.
	Done struct{ What, Err string }
	// Forget removes a kept job.
	Forget struct{ ID string }
)

func (Started) event()         {}
func (Resized) event()         {}
func (Clock) event()           {}
func (Go) event()              {}
func (Home) event()            {}
func (Show) event()            {}
func (Set) event()             {}
func (Sheet) event()           {}
func (Dismiss) event()         {}
func (Reckon) event()          {}
func (Stage) event()           {}
func (Do) event()              {}
func (DoLine) event()          {}
func (Undo) event()            {}
func (Redo) event()            {}
func (TypedInto) event()       {}
func (Entered) event()         {}
func (OpenTyping) event()      {}
func (PressKey) event()        {}
func (UseField) event()        {}
func (StepField) event()       {}
func (NewJob) event()          {}
func (Choose) event()          {}
func (Point) event()           {}
func (ShowArrangement) event() {}
func (ShowWall) event()        {}
func (Lead) event()            {}
func (Try) event()             {}
func (Pointer) event()         {}
func (Key) event()             {}
func (Zoom) event()            {}
func (Fit) event()             {}
func (Pan) event()             {}
func (Opened) event()          {}
func (Open) event()            {}
func (Kept) event()            {}
func (Persisted) event()       {}
func (Listed) event()          {}
func (Read) event()            {}
func (HandOn) event()          {}
func (Done) event()            {}
func (Forget) event()          {}
