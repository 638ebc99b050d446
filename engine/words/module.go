package words

// moduleWords are the words of package module.
func moduleWords() []Entry {
	return []Entry{
		{"finding.module-not-worked-out", "{module} cannot be worked out."},
		{"finding.board-too-short", "{module}: {board} is {value} long; its joints alone take {limit}."},
		{"finding.chain-does-not-close", "{module}: the last board misses the first by {value}; {limit} can be taken up."},
		{"finding.gap-taken-up", "{module}: a gap of {value} is taken up in corner {corner}; up to {limit} is."},
		{"finding.closing-boards-parallel", "{module}: {board} and {other} lie within {limit} of parallel, so their lengths cannot close the chain."},
		{"finding.boards-overlap", "{module}: {board} runs into {other}."},
		{"finding.divider-misses", "{module}: {divider} leaves {board} square and does not meet {other}."},
		{"finding.divider-off-face", "{module}: {divider} at {value} stands over the end of {board}; the nearest place is {limit}."},
		{"finding.housing-not-square", "{module}: {divider} meets its board at {value}; a housing takes {limit}. It is butted."},
		{"finding.arris-in-joint", "{module}, {board}: {arris} is glued in a joint and stays sharp."},
		{"finding.arris-too-large", "{module}, {board}: {value} off {arris} is too much; at most {limit}."},
		{"finding.mass-not-checked", "{module}: the density of {value} is not known; its mass is not checked."},

		{"remedy.see-the-check", "Put right what the check of the plan names."},
		{"remedy.longer-board", "Make board {number} {length} long."},
		{"remedy.move-the-closing", "Change the lengths that are typed, so that the board to close gets longer."},
		{"remedy.use-thinner-boards", "Use thinner boards."},
		{"remedy.close-by-another", "Let {board} close the chain, and type the length of {typed}."},
		{"remedy.type-all-lengths", "Type all lengths."},
		{"remedy.length-to-close", "Make {board} {length} long."},
		{"remedy.change-lengths", "Change the lengths of the boards between them."},
		{"remedy.other-end-board", "Let the divider end at another board."},
		{"remedy.remove-divider", "Take {divider} away."},
		{"remedy.divider-to", "Move {divider} to {at}."},
		{"remedy.divider-butt", "Butt {divider} there."},
		{"remedy.leave-sharp", "Leave that arris sharp."},
		{"remedy.smaller-edge", "Take {size} off it."},
		{"remedy.choose-wood", "Choose a wood of the table."},
	}
}
