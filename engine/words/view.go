package words

// viewWords are the words of package view.
func viewWords() []Entry {
	return []Entry{}
}
