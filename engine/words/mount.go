package words

// mountWords are the words of package mount.
func mountWords() []Entry {
	return []Entry{}
}
