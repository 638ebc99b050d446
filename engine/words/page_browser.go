package words

// browserWords are the words of the page about the browser that it runs in. Those of
// "store" follow a colon.
func browserWords() []Entry {
	return []Entry{
		{"browser.stopped", "Ledgewright has stopped"},
		{"browser.stopped-why", "Something went wrong in the program. What was kept in this browser is still there."},
		{"browser.load-again", "Load the page again"},
		{"browser.store-none", "this browser keeps nothing here"},
		{"browser.store-full", "its space is full"},
		{"browser.store-changed", "a newer state of this job was kept from another tab"},
		{"browser.store-gone", "This job is no longer kept in this browser"},
		{"browser.file-unread", "the file could not be read"},
		{"browser.copy-by-hand", "Copy this by hand"},
		{"browser.close", "Close"},
	}
}
