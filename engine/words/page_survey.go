package words

import "slices"

// surveyWords are the words of the panel in which a wall is taken down.
func surveyWords() []Entry {
	return slices.Concat(formWords(), surveyWall(), surveyStuds(), surveyObstacles(), surveyReadings(), surveyToDo())
}

// formWords are words that fields have in common.
func formWords() []Entry {
	return []Entry{
		{"form.mm", "mm"},
		{"form.in", "in"},
		{"form.not-measured", "not measured"},
		{"form.not-known", "not known"},
		{"form.no-name", "no name"},
	}
}

func surveyWall() []Entry {
	return []Entry{
		{"survey.none", "No wall yet"},
		{"survey.none-why", "Two figures make one; everything else may come later."},
		{"survey.walls", "Walls"},
		{"survey.add-wall", "Add a wall"},
		{"survey.wall-new", "Wall {n}"},
		{"survey.no-more-walls", "This plan cannot be changed here."},
		{"survey.remove-wall", "Remove {wall}"},
		{"survey.wall-in-use", "{n} {n|module hangs|modules hang} on this wall. Take {n|it|them} off first."},
		{"survey.wall-name", "Name of the wall"},

		{"survey.size", "Size"},
		{"survey.wall-width", "Wall width, {unit}"},
		{"survey.wall-height", "Height at the left end, {unit}"},
		{"survey.wall-floor-rise", "Floor out of level, {unit}"},
		{"survey.wall-floor-rise-way", "Floor is higher"},
		{"survey.wall-floor-rise-more", "at the right end"},
		{"survey.wall-floor-rise-less", "at the left end"},
		{"survey.wall-ceiling-rise", "Ceiling out of level, {unit}"},
		{"survey.wall-ceiling-rise-way", "Ceiling is higher"},
		{"survey.wall-ceiling-rise-more", "at the right end"},
		{"survey.wall-ceiling-rise-less", "at the left end"},
		{"survey.rise-how", "From one end of the wall to the other: how much higher at the right end; 0 for level, a minus if lower."},

		{"survey.made", "What it is made of"},
		{"survey.wall-build", "Made of"},
		{"survey.build-studs", "board on studs"},
		{"survey.build-lath-and-plaster", "lath and plaster on studs"},
		{"survey.build-board-on-dabs", "board on dabs over masonry"},
		{"survey.build-brick", "brick"},
		{"survey.build-hollow-block", "hollow block"},
		{"survey.build-aerated-block", "aerated block"},
		{"survey.build-concrete", "concrete"},
		{"survey.wall-lining-kind", "Lining"},
		{"survey.lining-plasterboard", "plasterboard"},
		{"survey.lining-plaster", "plaster"},
		{"survey.lining-tile-over-plasterboard", "tile over plasterboard"},
		{"survey.lining-tile-over-plaster", "tile over plaster"},
		{"survey.lining-none", "none"},
		{"survey.wall-lining-thickness", "Lining thickness, {unit}"},
		{"survey.wall-built-year", "Year built"},
		{"survey.wall-far-side", "On the other side"},
		{"survey.caution-old-title", "Warning: old walls"},
		{"survey.caution-old", "Asbestos is possible in UK buildings from before 2000, lead paint in US homes from before 1978. Do not drill, sand or scrape until tested."},

		{"survey.cables", "Cables and pipes"},
		{"survey.wall-cable-rule", "Where cables are expected"},
		{"survey.rule-uk", "UK practice; other countries differ"},
		{"survey.rule-none-chosen", "none chosen"},
		{"survey.bands", "Bands are drawn from {n} {n|socket or switch|sockets and switches}, and {limit} below the ceiling and at both ends. A hole in a band needs a tick of its own."},
		{"survey.bands-none", "No bands are drawn, and no hole is checked for cables, until a rule is chosen."},
		{"survey.caution-cables-title", "Warning: cables and pipes"},
		{"survey.caution-cables", "Expect cables and pipes straight up, down and sideways of every socket and switch, within {limit} of ceiling and corners. Detect, isolate, drill shallow."},
		{"survey.caution-where", "That is UK practice. Other countries differ, and older walls may follow none."},
	}
}

func surveyStuds() []Entry {
	return []Entry{
		{"survey.studs", "Studs"},
		{"survey.studs-count", "Only a stud with both edges found counts as wood to screw into."},
		{"survey.studs-masonry", "In a wall of this kind studs do not count."},
		{"survey.studs-material", "Stud material"},
		{"survey.material-wood", "wood"},
		{"survey.material-metal", "metal"},
		{"survey.studs-width", "Stud width, {unit}"},
		{"survey.studs-depth", "Stud depth, {unit}"},
		{"survey.studs-first", "First stud at, {unit}"},
		{"survey.studs-spacing", "Stud spacing, {unit}"},
		{"survey.studs-state", "Studs by spacing are"},
		{"survey.state-edges-found", "edges found"},
		{"survey.state-one-point", "one point"},
		{"survey.state-guess", "guess"},
		{"survey.stud-new", "Add a stud at, {unit}"},
		{"survey.stud-new-how", "Type where its centre is from the left end. It is added as a guess."},
		{"survey.stud-table", "Studs from the left end, {unit}"},
		{"survey.column-at", "At"},
		{"survey.column-by", "Known by"},
		{"survey.column-state", "State"},
		{"survey.column-do", "Change"},
		{"survey.by-spacing", "spacing"},
		{"survey.by-itself", "itself"},
		{"survey.change", "Change"},
		{"survey.change-stud", "Change stud {n}"},
		{"survey.take-down-stud", "Change the stud at {at} by itself"},
		{"survey.stud-head", "Stud {n} at {at}"},
		{"survey.stud-x", "Stud {n} at, {unit}"},
		{"survey.stud-width", "Stud {n} width, {unit}"},
		{"survey.width-of-all", "as all studs"},
		{"survey.stud-state", "Stud {n} is"},
		{"survey.remove-stud", "Remove stud {n}"},
	}
}

func surveyObstacles() []Entry {
	return []Entry{
		{"survey.obstacles", "On the wall"},
		{"survey.obstacles-none", "Nothing is taken down. Sockets and switches first: cables run from them."},
		{"survey.add-socket", "Add a socket"},
		{"survey.add-switch", "Add a switch"},
		{"survey.add-pipe", "Add a pipe"},
		{"survey.add-radiator", "Add a radiator"},
		{"survey.add-window", "Add a window"},
		{"survey.add-door", "Add a door"},
		{"survey.add-picture", "Add a picture"},
		{"survey.add-furniture", "Add furniture"},
		{"survey.add-other", "Add something else"},
		{"survey.kind-socket", "Socket"},
		{"survey.kind-switch", "Switch"},
		{"survey.kind-pipe", "Pipe"},
		{"survey.kind-radiator", "Radiator"},
		{"survey.kind-window", "Window"},
		{"survey.kind-door", "Door"},
		{"survey.kind-picture", "Picture"},
		{"survey.kind-furniture", "Furniture"},
		{"survey.kind-other", "Other"},
		{"survey.obstacle-head", "{name}: {x} from the left end, {y} up"},
		{"survey.obstacle-kind", "{name}, kind"},
		{"survey.obstacle-name", "{name}, name"},
		{"survey.obstacle-x", "{name}, left edge at, {unit}"},
		{"survey.obstacle-y", "{name}, above the floor, {unit}"},
		{"survey.obstacle-width", "{name}, width, {unit}"},
		{"survey.obstacle-height", "{name}, height, {unit}"},
		{"survey.obstacle-depth", "{name}, depth out of the wall, {unit}"},
		{"survey.taken-as-deep", "not known: taken as deep"},
		{"survey.remove-obstacle", "Remove {name}"},
	}
}

func surveyReadings() []Entry {
	return []Entry{
		{"survey.plumb", "Out of plumb"},
		{"survey.plumb-how", "Hold a level upright at {n} places; type the gap at its open end, and which way the top leans."},
		{"survey.add-plumb", "Add a plumb reading"},
		{"survey.plumb-head", "Reading {n} at {x}: {says}"},
		{"survey.leans-in", "top leans into the room by {lean}"},
		{"survey.leans-away", "top leans away by {lean}"},
		{"survey.leans-not", "plumb"},
		{"survey.plumb-x", "Plumb reading {n} at, {unit}"},
		{"survey.plumb-over", "Plumb reading {n} over a height of, {unit}"},
		{"survey.plumb-lean", "Plumb reading {n} leans by, {unit}"},
		{"survey.plumb-lean-way", "Plumb reading {n}, the top leans"},
		{"survey.plumb-lean-more", "into the room"},
		{"survey.plumb-lean-less", "away from the room"},
		{"survey.remove-plumb", "Remove plumb reading {n}"},

		{"survey.flat", "Out of flat"},
		{"survey.flat-how", "Lay a straightedge on the wall where shelves will hang; type the gap under it, or under its ends."},
		{"survey.add-flat", "Add a straightedge reading"},
		{"survey.flat-head", "Reading {n} at {x}, {y} up: {says}"},
		{"survey.gap-hump", "a hump of {gap}"},
		{"survey.gap-hollow", "a hollow of {gap}"},
		{"survey.gap-flat", "flat"},
		{"survey.flat-x", "Straightedge {n} from, {unit}"},
		{"survey.flat-y", "Straightedge {n} above the floor, {unit}"},
		{"survey.flat-over", "Straightedge {n} length, {unit}"},
		{"survey.flat-gap", "Straightedge {n} gap, {unit}"},
		{"survey.flat-gap-way", "Straightedge {n} shows"},
		{"survey.flat-gap-more", "a hump"},
		{"survey.flat-gap-less", "a hollow"},
		{"survey.flat-upright", "Straightedge {n} held upright"},
		{"survey.remove-flat", "Remove straightedge reading {n}"},
	}
}

func surveyToDo() []Entry {
	return []Entry{
		{"survey.todo", "Still to find out"},
		{"survey.todo-none", "Nothing more is asked of this wall."},
		{"survey.known", "{n} {n|fact|facts} known"},
		{"survey.done", "done"},
		{"survey.do", "Do"},
		{"survey.do-what", "Do: {what}"},
		{"survey.todo-build", "What the wall is made of"},
		{"survey.todo-lining", "Lining: what, and how thick"},
		{"survey.todo-studs", "Where the studs are"},
		{"survey.todo-stud-material", "Wood or metal studs"},
		{"survey.todo-stud-width", "How wide the studs are"},
		{"survey.todo-edges", "Both edges of every stud"},
		{"survey.todo-edges-of", "Both edges of {n} {n|stud|studs}, the first at {at}: needle or thin drill"},
		{"survey.todo-floor", "Floor: how far out of level"},
		{"survey.todo-ceiling", "Ceiling: how far out of level"},
		{"survey.todo-cables", "Where cables are expected"},
		{"survey.todo-depth", "How far things stand out"},
		{"survey.todo-depth-of", "How far {n} {n|thing stands|things stand} out of the wall"},
		{"survey.todo-plumb", "Plumb: {n} of {limit} places held"},
		{"survey.todo-far-side", "What is on the other side"},
		{"survey.todo-year", "Year built: asbestos, lead paint"},
	}
}
