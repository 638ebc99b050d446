package words

// wallWords are the words of package wall.
func wallWords() []Entry {
	return []Entry{}
}
