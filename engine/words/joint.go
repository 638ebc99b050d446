package words

// jointWords are the words of package joint.
func jointWords() []Entry {
	return []Entry{}
}
