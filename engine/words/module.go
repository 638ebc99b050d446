package words

// moduleWords are the words of package module.
func moduleWords() []Entry {
	return []Entry{}
}
