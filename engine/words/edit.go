package words

// editWords are the words of package edit.
func editWords() []Entry {
	return []Entry{}
}
