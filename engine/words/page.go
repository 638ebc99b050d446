package words

// pageWords are the words of the page's state machine; the panels have their own.
func pageWords() []Entry {
	return []Entry{
		{"page.did", "Done: {what}"},
		{"page.undone", "Undone: {what}"},
		{"page.redone", "Done again: {what}"},
		{"page.between", "From {least} to {most}"},
		{"page.whole", "{text} is not a whole number"},
		{"page.first-wall", "Wall"},
		{"page.first-arrangement", "First arrangement"},
		{"page.side", "Panel and jobs stand"},
		{"page.side-right", "at the right"},
		{"page.side-left", "at the left"},
		{"page.untitled", "Untitled job"},
		{"page.summary", "{modules} {modules|module|modules}, {boards} {boards|board|boards}"},
		{"page.not-kept", "This job could not be kept in the browser: {why}. Save a copy of the plan now"},
		{"page.not-handed-on", "That did not work: {why}"},
		{"page.handed-on-plan", "Plan saved"},
		{"page.handed-on-build", "Build saved for other tools"},
		{"page.handed-on-parts", "Part list saved"},
		{"page.handed-on-picture", "Picture saved"},
		{"page.handed-on-link", "Link ready to be sent"},
	}
}
