package words

// jointWords are the words of package joint.
func jointWords() []Entry {
	return []Entry{
		{"joint.mitre", "mitre"},
		{"joint.butt-first", "butt joint, first board through"},
		{"joint.butt-second", "butt joint, second board through"},
		{"joint.rebate-first", "rebate in the first board"},
		{"joint.rebate-second", "rebate in the second board"},

		{"piece.spline", "spline"},
		{"piece.tenon", "loose tenon"},
		{"piece.dowel", "dowel"},
		{"piece.key", "key"},
		{"piece.screw", "screw"},
		{"piece.plug", "plug"},

		{"claim.none", "nothing is claimed of this joint"},
		{"claim.mitre", "plain glued mitre: our figure, not a standard"},
		{"claim.mitre-reinforced", "mitre with splines or tenons glued on most of its width: our figure, not a standard"},

		{"finding.tilt-over-saw", "{module}: an end of {board} tilts the blade {value} from square; the saw goes to {limit}."},
		{"finding.rebate-not-square", "{module}, corner {corner}: a rebate takes a square corner; this one stands at {value}, not {limit}."},
		{"finding.joint-unknown", "{module}, corner {corner}: there is no joint named {value}."},
		{"finding.piece-does-not-suit", "{module}, corner {corner}: a {what} does not suit this joint: {joint}."},
		{"finding.piece-no-room", "{module}, corner {corner}: there is {value} of depth for a {what} within the cover; it needs {limit}."},
		{"finding.piece-too-wide", "{module}, corner {corner}: a {what} {value} wide would show outside; at most {limit} fits within the cover."},
		{"finding.spline-long", "{module}, corner {corner}: a spline runs {value}; plywood in one length over {limit} holds the boards fast while they move."},
		{"finding.pieces-left-out", "{module}, corner {corner}: grooves and bores leave place for {value} of {limit} {limit|piece|pieces} ({what})."},

		{"remedy.make-it-a-mitre", "Make the corner a mitre."},
		{"remedy.make-it-a-butt", "Make the corner a butt joint."},
		{"remedy.tall-fence", "Stand the board on end against a tall fence: the blade then tilts {rest}."},
		{"remedy.open-the-corner", "Open the corner, or make the two boards equally thick."},
		{"remedy.other-piece", "Reinforce the corner in another way, or not at all."},
		{"remedy.screw-it", "Screw and plug the corner."},
		{"remedy.thinner-piece", "Choose a thinner one."},
		{"remedy.narrower-piece", "Make it {most} wide or less."},
		{"remedy.make-way", "Move the groove or the bracket away from the corner."},
		{"remedy.shorter-pieces", "Leave it, if those that fit are enough."},
		{"remedy.spline-solid", "Cut splines from solid wood, the grain across the joint."},
		{"remedy.spline-in-lengths", "Or from plywood in lengths of {most} at most, {gap} apart."},
		{"remedy.use-thicker-boards", "Use thicker boards."},
	}
}
