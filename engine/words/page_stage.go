package words

// stageWords are the words of how the picture is painted.
func stageWords() []Entry {
	return []Entry{
		{"stage.painted", "The picture is painted"},
		{"stage.any", "as the page finds best"},
		{"stage.stage", "by the graphics processor"},
		{"stage.svg", "plainly"},
		{"stage.is-painted", "The graphics processor paints it now."},
		{"stage.is-plain", "It is plain now: {why}."},
		{"stage.why-coming", "what the graphics processor needs is being fetched and tried"},
		{"stage.why-address", "the address of this page asks for it"},
		{"stage.why-chosen", "you have chosen it"},
		{"stage.why-none", "this browser offers no graphics processor"},
		{"stage.why-software", "there is only software to do the work of a graphics processor"},
		{"stage.why-saving", "this browser has been told to fetch little"},
		{"stage.why-slow", "the graphics processor was too slow when it was tried"},
		{"stage.why-lost", "the graphics processor was taken away from the page twice within ten minutes"},
		{"stage.why-printing", "it is being printed"},
		{"stage.why-ended", "what paints by the graphics processor has stopped"},
		{"stage.same", "Both show the same; what the graphics processor paints has more of the wood and of the light."},
	}
}
