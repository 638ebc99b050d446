package words

// roundWords are the words of the picture in the round.
func roundWords() []Entry {
	return []Entry{
		{"round.show", "In the round"},
		{"round.tools", "Tools of the view in the round"},
		{"round.alone", "Only {module}"},

		{"round.picture", "In the round: {what}. {seen}. {apart}. Arrow keys turn it, with Shift they move it; plus and minus zoom, 0 shows all"},
		{"round.modules", "{n} {n|module|modules}"},

		{"round.sides", "Look from"},
		{"round.front", "Front"},
		{"round.left", "Left"},
		{"round.right", "Right"},
		{"round.above", "Above"},
		{"round.below", "Below"},
		{"round.back", "Back"},

		{"round.fit", "Show all"},
		{"round.turn-left", "Turn left"},
		{"round.turn-right", "Turn right"},
		{"round.turn-up", "Turn up"},
		{"round.turn-down", "Turn down"},

		{"round.pull", "Pull apart"},
		{"round.together", "Together"},
		{"round.apart", "{n} % apart"},
		{"round.apart-wholly", "Wholly apart"},

		{"round.seen-front", "Seen from the front"},
		{"round.seen-front-left", "Seen from the front left"},
		{"round.seen-left", "Seen from the left"},
		{"round.seen-back-left", "Seen from the back left"},
		{"round.seen-back", "Seen from the back"},
		{"round.seen-back-right", "Seen from the back right"},
		{"round.seen-right", "Seen from the right"},
		{"round.seen-front-right", "Seen from the front right"},
		{"round.seen-above", "Seen from above"},
		{"round.seen-below", "Seen from below"},
		{"round.seen-higher", "{seen}, {n} above"},
		{"round.seen-lower", "{seen}, {n} below"},
	}
}
