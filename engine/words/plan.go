package words

import "slices"

// planWords are the words of package plan.
func planWords() []Entry {
	return slices.Concat(wherePlan(), sizesOfPlan(), planFindings(), moduleChecks(), wallChecks(), planRemedies())
}

// wherePlan says where in a plan something is, at the head of a sentence.
func wherePlan() []Entry {
	return []Entry{
		{"where.plan", "The plan"},
		{"where.wall", "{where-wall}"},
		{"where.obstacle", "{where-wall}, {where-id}"},
		{"where.stud", "{where-wall}, stud {where-number}"},
		{"where.plumb", "{where-wall}, plumb reading {where-number}"},
		{"where.flat", "{where-wall}, straightedge reading {where-number}"},
		{"where.module", "{where-module}"},
		{"where.board", "{where-module}, board {where-number}"},
		{"where.corner", "{where-module}, corner {where-number}"},
		{"where.divider", "{where-module}, divider {where-id}"},
		{"where.light", "{where-module}, light {where-id}"},
		{"where.bracket", "{where-module}, bracket {where-id}"},
		{"where.arrangement", "{where-arrangement}"},
		{"where.pose", "{where-module} in {where-arrangement}"},
		{"where.line", "{where-arrangement}, line {where-id}"},
	}
}

// sizesOfPlan names the members of a plan.
func sizesOfPlan() []Entry {
	return []Entry{
		{"size.system", "the system of units"},
		{"size.step", "the smallest step"},
		{"size.wall", "the counter of walls"},
		{"size.module", "the counter of modules"},
		{"size.arrangement", "the counter of arrangements"},
		{"size.part", "the counter of parts"},
		{"size.width", "the width"},
		{"size.height", "the height"},
		{"size.floor-rise", "the rise of the floor"},
		{"size.ceiling-rise", "the rise of the ceiling"},
		{"size.built-year", "the year of building"},
		{"size.build", "what the wall is made of"},
		{"size.material", "the material"},
		{"size.state", "how well it is known"},
		{"size.kind", "the kind"},
		{"size.thickness", "the thickness"},
		{"size.depth", "the depth"},
		{"size.spacing", "the spacing"},
		{"size.first", "the place of the first stud"},
		{"size.x", "the distance from the wall's left end"},
		{"size.y", "the height above the floor"},
		{"size.over", "the length of the level or straightedge"},
		{"size.lean", "the lean"},
		{"size.gap", "the gap"},
		{"size.length", "the length"},
		{"size.size", "the size of the cut"},
		{"size.arris", "the arris"},
		{"size.cut", "the cut"},
		{"size.joint", "the joint"},
		{"size.count", "the count"},
		{"size.start", "the joint at the start"},
		{"size.end", "the joint at the end"},
		{"size.housing-depth", "the depth of the housing"},
		{"size.face", "the face"},
		{"size.from-front", "the distance from the front edge"},
		{"size.start-stop", "the stop at the start"},
		{"size.end-stop", "the stop at the end"},
		{"size.strip", "the strip"},
		{"size.source", "the source"},
		{"size.exit", "the end where the lead leaves"},
		{"size.lead", "the lead"},
		{"size.bracket", "the bracket"},
		{"size.edge", "the edge"},
		{"size.at", "the place along the board"},
		{"size.turn", "the turn"},
		{"size.hung", "the turn at which it hangs"},
		{"size.level", "the level line"},
		{"size.plumb", "the plumb line"},
	}
}

// planFindings are of the whole document.
func planFindings() []Entry {
	return []Entry{
		{"finding.bad-id", "{where}: \"{id}\" is no id; here an id is the letter {letter} and a number."},
		{"finding.same-id", "{where}: the id {id} is already that of {first}."},
		{"finding.counter-low", "{where}: {what} stands at {value}, but {limit} is in use."},
		{"finding.shop-value", "Shop profile: {path} is {found}; allowed is {allowed}."},
		{"finding.unknown-word", "{where}: {what} is \"{found}\"; known are {known}."},
		{"finding.unknown-fact", "{where}: {what} is \"{found}\"; known are {known}."},
		{"finding.unknown-wood", "{where}: the wood \"{found}\" is not in the table of woods."},
		{"finding.unknown-hardware", "{where}: {what} \"{found}\" is not in the table of hardware."},
		{"finding.too-small", "{where}: {what} is {value}; at least {limit} is possible."},
		{"finding.too-large", "{where}: {what} is {value}; at most {limit} is possible."},
		{"finding.bad-date", "The date of the job, \"{date}\", is no day."},
		{"finding.same-name", "{where}: another one is called {name}."},
	}
}

// moduleChecks are of modules as they are typed.
func moduleChecks() []Entry {
	return []Entry{
		{"finding.no-boards", "{where} has no board."},
		{"finding.corner-count", "{where} has {value} {value|corner|corners}; its {boards} {boards|board meets|boards meet} at {limit}."},
		{"finding.no-turn", "{where} does not turn."},
		{"finding.sharp-turn", "{where} turns {value}; at most {limit} either way can be made."},
		{"finding.turns-do-not-close", "{where}: the corners turn {value} in all; to close they turn {limit}."},
		{"finding.closed-of-few", "{where} is closed with {value} {value|board|boards}; it takes at least {limit}."},
		{"finding.no-length", "{where} has no length, and the module is not closed."},
		{"finding.closing-count", "{where}: {value} {value|board has|boards have} no length; to close, {limit} are computed or none."},
		{"finding.same-arris", "{where}: the arris {arris} is cut twice."},
		{"finding.no-such-board", "{where} names board {value}; the module has {limit}."},
		{"finding.no-such-divider", "{where} names divider {divider}, which the module does not have."},
		{"finding.divider-to-itself", "{where} goes from board {n} to the same board."},
		{"finding.off-board", "{where} is at {value} along board {n}, which is {limit} long."},
		{"finding.run-past-open-end", "{where} runs from board {n} to board {to}, past the open end of the module."},
		{"finding.bracket-on-nothing", "{where} is on no board."},
		{"finding.bracket-on-two", "{where} is on board {n} and on divider {divider}; it can be on one."},
	}
}

// wallChecks are of walls and arrangements as they are typed.
func wallChecks() []Entry {
	return []Entry{
		{"finding.stud-state-missing", "{where}: how well the studs are known is not said, so none counts."},
		{"finding.studs-crowded", "{where} is {value} from another stud; so wide, they are at least {limit} apart."},
		{"finding.outside-wall", "{where} is at {value}, outside the wall, which ends at {limit}."},
		{"finding.no-such-wall", "{where}: there is no wall {wall}."},
		{"finding.no-such-module", "{where}: there is no module {module}."},
		{"finding.no-such-neighbour", "{where}: {neighbour} is no arrangement on another wall."},
		{"finding.placed-twice", "{where}: it is placed twice; there is one of it."},
	}
}

// planRemedies help against all of these.
func planRemedies() []Entry {
	return []Entry{
		{"remedy.give-id", "Give it an id of the letter {letter} and a number that is free."},
		{"remedy.give-other-id", "Give one of the two another id."},
		{"remedy.raise-counter", "Set the counter to {limit} or more."},
		{"remedy.set-shop", "Set {path} to what is allowed: {allowed}."},
		{"remedy.set-shop-default", "Set {path} back to {value}."},
		{"remedy.use-known-word", "Use one of these: {known}."},
		{"remedy.take-known-wood", "Take {wood}, or another wood of the table."},
		{"remedy.take-listed", "Choose {what} from the table."},
		{"remedy.take-shops-bracket", "Take the bracket that the shop uses: {kind}."},
		{"remedy.make-it-smaller", "{where}: make {what} {limit} or less."},
		{"remedy.make-it-larger", "{where}: make {what} {limit} or more."},
		{"remedy.write-date", "Write the date as year, month and day, such as 2031-04-30."},
		{"remedy.rename", "Give one of them another name, so that sheets and labels can be told apart."},
		{"remedy.add-board", "Add a board to {where}."},
		{"remedy.match-corners", "Make it {limit} {limit|corner|corners}."},
		{"remedy.make-one-board", "Make the two boards one, or turn the corner."},
		{"remedy.turn-less", "Turn it by {limit} or less."},
		{"remedy.turn-last", "Turn the last corner by {turn}."},
		{"remedy.change-turns", "Change the turns of the corners."},
		{"remedy.open-module", "Leave the module open."},
		{"remedy.close-module", "Close the module {where} and leave two boards to close."},
		{"remedy.type-length", "Type its length."},
		{"remedy.leave-two-open", "Leave two boards without a length, or type them all."},
		{"remedy.keep-one-cut", "Keep one of the two cuts."},
		{"remedy.name-a-board", "Name a board from 1 to {limit}."},
		{"remedy.name-other-board", "Let it end at another board."},
		{"remedy.name-a-divider", "Name a divider of this module."},
		{"remedy.name-one", "Name the board or the divider, not both."},
		{"remedy.move-along", "Move it to {to}."},
		{"remedy.take-away", "Take it away: {where}."},
		{"remedy.turn-run-round", "Start the run at the lower number."},
		{"remedy.find-edges-of-all", "Find both edges of the studs of {wall} and say so."},
		{"remedy.measure-studs", "Measure the two studs again."},
		{"remedy.measure-again", "Measure it again, or the wall."},
		{"remedy.add-wall", "Add the wall."},
		{"remedy.use-wall", "Put the arrangement on {wall}."},
		{"remedy.name-neighbour", "Name an arrangement on the wall round the corner, or none."},
		{"remedy.take-off", "Take one off the wall: {where}."},
	}
}
