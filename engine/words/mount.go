package words

// mountWords are the words of package mount.
func mountWords() []Entry {
	return []Entry{
		{"bracket.plate-back", "plate in the back edge"},
		{"bracket.rod-structure", "rod set in the wall"},
		{"bracket.plate-upright", "plate in the back of an upright"},
		{"bracket.plate-lining", "plate let into the lining"},
		{"bracket.bar", "bar with rods"},
		{"bracket.hook", "hook at the back of an upright"},
		{"bracket.cleat", "pair of cleats"},
		{"bracket.rail", "back rail"},

		{"lock.grub-screw", "a grub screw from below"},
		{"lock.undercut", "its own undercut"},
		{"lock.screwed", "screws through the rail"},

		{"place.studs", "on studs"},
		{"place.one-stud", "one on a stud, the other opposite"},
		{"place.no-stud", "by overhang: no stud in reach"},
		{"place.overhang", "by overhang"},
		{"place.fixed", "at the shop's fixed distance"},
		{"place.no-room", "in the middle: the board is too short for two"},

		{"finding.bracket-unknown", "{bracket} on {board}: there is no bracket {value}."},
		{"finding.bracket-off-board", "{bracket} stands at {value}; {board} is {limit} long."},
		{"finding.bracket-too-early", "{bracket} on {board} would start at {value}; there is room from {limit}."},
		{"finding.bracket-too-long", "{bracket} on {board} would reach to {value}; there is room to {limit}."},
		{"finding.bracket-attitude", "{bracket} does not work in {board} as the module stands; it must be turned to carry."},
		{"finding.bracket-too-short", "{bracket} on {board} is {value} long and has one fixing; two need {limit}."},
		{"finding.bracket-unlocked", "{bracket}: nothing stops {board} sliding off its rod."},
		{"finding.bracket-slotted", "{bracket} on {board} has slotted holes only; they hold by friction until a round one is screwed."},
		{"finding.bracket-root", "{bracket} on {board}: how its rod is fastened to the plate is not known, so the rod is not checked."},
		{"finding.plate-proud", "{bracket}: its plate is {value} high; {board} hides {limit}."},
		{"finding.bore-thin", "{bracket}: its bore leaves {value} above and below in {board}; it needs {limit}."},
		{"finding.bore-deep", "{bracket}: its bore leaves {value} before the front edge of {board}; it needs {limit}."},
		{"finding.rod-near-end", "{bracket}: its rod is {value} from the end of {board}; it needs {limit}."},
		{"finding.bore-near-heel", "{bracket}: its bore is {value} from the inside of a mitre of {board}; it needs {limit}."},
		{"finding.pocket-near-end", "{bracket}: its pocket is {value} from the end of {board}, or from the inside of its mitre; it needs {limit}."},

		{"remedy.bracket-kind", "Make {bracket} a {kind}."},
		{"remedy.bracket-at", "Move {bracket} to {at}."},
		{"remedy.bracket-length", "Make {bracket} {length} long."},
		{"remedy.turn-module", "Hang the module a quarter turn round."},
		{"remedy.lock-by-resin", "Bed the rods in a bead of silicone or resin when the module is home."},
		{"remedy.round-hole", "Drill one round hole through the plate and screw it after adjusting."},
		{"remedy.measure-root", "Measure the thinnest place of the rod at the plate, and use a kind that states it."},
		{"remedy.module-thicker", "Make the boards of {module} {thickness} thick."},
		{"remedy.board-thicker", "Make {board} {thickness} thick."},
		{"remedy.module-deeper", "Make {board} {depth} deep."},
		{"remedy.board-longer", "Make {board} {more} longer."},
	}
}
