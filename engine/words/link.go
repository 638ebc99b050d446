package words

// linkWords are the words of package link.
func linkWords() []Entry {
	return []Entry{}
}
