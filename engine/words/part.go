package words

// partWords are the words of package part.
func partWords() []Entry {
	return []Entry{}
}
