package words

// boardWords are the words of package board.
func boardWords() []Entry {
	return []Entry{
		{"face.A", "face A"},
		{"face.B", "face B"},
		{"face.back", "the back edge"},
		{"face.front", "the front edge"},
		{"face.start", "the start"},
		{"face.end", "the end"},

		{"arris.front-a", "the front arris of face A"},
		{"arris.front-b", "the front arris of face B"},
		{"arris.back-a", "the back arris of face A"},
		{"arris.back-b", "the back arris of face B"},
		{"arris.start-a", "the arris of face A at the start"},
		{"arris.start-b", "the arris of face B at the start"},
		{"arris.end-a", "the arris of face A at the end"},
		{"arris.end-b", "the arris of face B at the end"},

		{"cut.groove", "groove"},
		{"cut.bore", "bore"},
		{"cut.pocket", "pocket"},
		{"cut.slot", "slot"},
		{"cut.housing", "housing"},
		{"cut.rebate", "rebate"},
		{"cut.lead-hole", "lead hole"},
		{"cut.dowel-hole", "hole of the joint"},

		{"finding.cuts-meet", "{module}, {board}: the {cut} runs into the {other}; {limit} of wood belongs between them."},
		{"finding.cuts-too-near", "{module}, {board}: {value} of wood is left between the {cut} and the {other}; the cover is {limit}."},
		{"finding.cut-breaks-out", "{module}, {board}: the {cut} breaks out through {side} by {value}; {limit} of wood belongs there."},
		{"finding.too-little-wood", "{module}, {board}: the {cut} leaves {value} of wood to {side}; the cover is {limit}."},
		{"finding.bore-at-heel", "{module}, {board}: {value} of wood between a bore and the heel of a mitre; the cover is {limit}."},
		{"finding.pocket-at-heel", "{module}, {board}: {value} of wood between a pocket and the heel of a mitre; the cover is {limit}."},

		{"remedy.shallower-groove", "Make the groove {depth} deep."},
		{"remedy.shallower-housing", "Make the housing shallower."},
		{"remedy.move-groove", "Move the groove: in front of the rods' tips it crosses no bore."},
		{"remedy.move-bracket", "Move {bracket} along its board."},
		{"remedy.move-bracket-in", "Move the bracket {by} away from the end."},
		{"remedy.move-divider", "Move {divider}."},
	}
}
