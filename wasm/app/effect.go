package app

// An Effect is something for the browser to do. Effects are plain data.
type Effect interface{ effect() }

// The effects.
type (
	// Keep stores a job's record under its id, if the stored revision is Before.
	Keep struct {
		ID, Title        string
		Revision, Before int
		Record           string
		Summary          string // for the list of jobs
		Blank            bool   // nothing is in it yet: never the only state that stays
	}
	// ListKept asks for the list of kept jobs.
	ListKept struct{}
	// ReadKept asks for a kept job.
	ReadKept struct{ ID string }
	// ForgetKept removes a kept job.
	ForgetKept struct{ ID string }
	// KeepSettings stores the settings.
	KeepSettings struct{ Settings Settings }
	// Save hands a file to the browser: "download", "copy" or "share".
	Save struct{ By, What, Name, Type, Text string }
	// PickFile opens the browser's file chooser.
	PickFile struct{}
	// Say speaks a sentence in the polite region; Urgent only for a risk of losing work.
	Say struct {
		Text   string
		Urgent bool
	}
	// Focus moves the focus to the control of that key.
	Focus struct{ Key string }
	// Uncover scrolls the control of that key to where nothing covers it.
	Uncover struct{ Key string }
	// Again asks for a Reckon event when the page is idle.
	Again struct{}
	// After asks for the Event in so many milliseconds; a later After of the same Name
	// takes its place.
	After struct {
		Name  string
		Ms    int
		Event Event
	}
	// Address replaces the fragment of the address.
	Address struct{ Fragment string }
)

func (Keep) effect()         {}
func (ListKept) effect()     {}
func (ReadKept) effect()     {}
func (ForgetKept) effect()   {}
func (KeepSettings) effect() {}
func (Save) effect()         {}
func (PickFile) effect()     {}
func (Say) effect()          {}
func (Focus) effect()        {}
func (Uncover) effect()      {}
func (Again) effect()        {}
func (After) effect()        {}
func (Address) effect()      {}
