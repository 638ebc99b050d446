package words

// boardWords are the words of package board.
func boardWords() []Entry {
	return []Entry{}
}
