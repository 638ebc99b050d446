package words

// viewWords are the words of package view.
func viewWords() []Entry {
	return []Entry{
		{"view.level", "level line, {at} above the floor"},
		{"view.plumb", "plumb line, {at} from the left end"},
	}
}
