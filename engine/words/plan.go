package words

// planWords are the words of package plan.
func planWords() []Entry {
	return []Entry{}
}
