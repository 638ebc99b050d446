package words

// linkWords are the words of package link.
func linkWords() []Entry {
	return []Entry{
		{"link.incomplete", "this link arrived incomplete: some of it was cut off or changed on the way; ask for it again, or for the design as a file"},
		{"link.newer-version", "this link was made by a newer version (format {version}); open it with that version, or ask for the design as a file"},
		{"link.other-kind", "this link holds no plan; open it on the page that it was made for"},
		{"link.too-large", "this design is too large for a link; send it as a file"},
	}
}
