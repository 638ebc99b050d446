package words

// lightWords are the words of package light.
func lightWords() []Entry {
	return []Entry{}
}
