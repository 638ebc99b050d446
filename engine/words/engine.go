package words

// engineWords are the words of package engine: verdicts, and what no single room can say.
func engineWords() []Entry {
	return []Entry{}
}
