package words

import "slices"

// editorWords are the words in which a module is changed.
func editorWords() []Entry {
	return slices.Concat(editorChain(), editorCorners(), editorInside(), editorBrackets())
}

func editorChain() []Entry {
	return []Entry{
		{"editor.none", "No module is chosen"},
		{"editor.none-why", "Choose one to change its boards, or begin a form of your own with one board."},
		{"editor.new", "Begin with one board"},
		{"editor.new-name", "Form {n}"},
		{"editor.findings", "{n} {n|finding|findings}"},

		{"editor.module", "What it is made of"},
		{"editor.module-wood", "Wood"},
		{"editor.module-depth", "Module depth, {unit}"},
		{"editor.module-thickness", "Thickness of all boards, {unit}"},
		{"editor.differs", "differs"},
		{"editor.module-closed", "Closed: the last board meets the first"},
		{"editor.module-grain-wrap", "Grain runs round the corners"},
		{"editor.module-hung", "Hangs turned by, °"},
		{"editor.hung-how", "0 as drawn, to the left from there: it says which side of each board is below."},

		{"editor.boards", "Boards"},
		{"editor.board-n", "Board {n}"},
		{"editor.board-head", "Board {n}{name}: {length} × {thickness}"},
		{"editor.board-head-closing", "Board {n}{name}: to close, {length} × {thickness}"},
		{"editor.board-head-open", "Board {n}{name}: no length, {thickness} thick"},
		{"editor.board-length", "Board {n} length, {unit}"},
		{"editor.board-thickness", "Board {n} thickness, {unit}"},
		{"editor.board-name", "Board {n} name"},
		{"editor.to-close", "to close"},
		{"editor.comes-to", "Comes to {value}."},
		{"editor.add-board", "Add a board at the end"},
		{"editor.add-before", "Add a board before board {n}"},
		{"editor.add-after", "Add a board after board {n}"},
		{"editor.remove-board", "Remove board {n}"},
		{"editor.fewest", "{limit} {limit|board is|boards are} the least that this module can have."},

		{"editor.edges-head", "{of}, edges: {n} cut"},
		{"editor.edge-cut", "{of}: {arris}"},
		{"editor.edge-size", "{of}: {arris}, size, {unit}"},
		{"editor.cut-none", "sharp"},
		{"editor.cut-chamfer", "chamfer"},
		{"editor.cut-round", "round"},
	}
}

func editorCorners() []Entry {
	return []Entry{
		{"editor.corners", "Corners"},
		{"editor.corners-none", "One board has no corners."},
		{"editor.corner-head", "Corner {n} to board {to}: {by} {turn}, {joint}"},
		{"editor.turns-left", "to the left"},
		{"editor.turns-right", "to the right"},
		{"editor.corner-turn", "Corner {n} turn, °"},
		{"editor.turn-how", "To the left, as the boards are walked; a minus to the right."},
		{"editor.quarter-left", "Quarter left at corner {n}"},
		{"editor.quarter-right", "Quarter right at corner {n}"},
		{"editor.corner-joint", "Corner {n} joint"},
		{"editor.corner-reinforcement-kind", "Corner {n} reinforced by"},
		{"editor.reinforcement-none", "nothing"},
		{"editor.reinforcement-spline", "spline"},
		{"editor.reinforcement-tenon", "loose tenons"},
		{"editor.reinforcement-dowel", "dowels"},
		{"editor.reinforcement-key", "keys"},
		{"editor.reinforcement-screw", "screws"},
		{"editor.corner-reinforcement-thickness", "Corner {n}, thickness or diameter of each, {unit}"},
		{"editor.corner-reinforcement-width", "Corner {n}, width across the joint, {unit}"},
		{"editor.corner-reinforcement-count", "Corner {n}, how many"},
		{"editor.by-shop", "as the shop does"},
	}
}

func editorInside() []Entry {
	return []Entry{
		{"editor.dividers", "Dividers"},
		{"editor.divider-n", "Divider {n}"},
		{"editor.divider-head", "{name}: board {from} to {to}, at {at}"},
		{"editor.divider-from", "{name} from"},
		{"editor.divider-to", "{name} to"},
		{"editor.divider-at", "{name} at, along its first board, {unit}"},
		{"editor.divider-thickness", "{name} thickness, {unit}"},
		{"editor.divider-start", "{name}, joint at the start"},
		{"editor.divider-end", "{name}, joint at the end"},
		{"editor.divider-housed", "housed"},
		{"editor.divider-butt", "butt"},
		{"editor.divider-housing-depth", "{name} housing depth, {unit}"},
		{"editor.divider-name", "{name}, name"},
		{"editor.add-divider", "Add a divider"},
		{"editor.remove-divider", "Remove {name}"},
		{"editor.none-facing", "No two boards face each other."},

		{"editor.lights", "Lights"},
		{"editor.light-head", "Light {n}: board {first} to {last}"},
		{"editor.light-head-one", "Light {n}: board {first}"},
		{"editor.light-first", "Light {n} from"},
		{"editor.light-last", "Light {n} to"},
		{"editor.light-face", "Light {n} in"},
		{"editor.light-from-front", "Light {n} from the front edge, {unit}"},
		{"editor.centred", "centred"},
		{"editor.light-width", "Light {n} groove width, {unit}"},
		{"editor.light-depth", "Light {n} groove depth, {unit}"},
		{"editor.light-start-stop", "Light {n} stops before the start by, {unit}"},
		{"editor.light-end-stop", "Light {n} stops before the end by, {unit}"},
		{"editor.through", "through"},
		{"editor.light-strip", "Light {n} strip"},
		{"editor.strip", "{volts} V, {watts} W a metre, {width} wide"},
		{"editor.light-power-source", "Light {n} fed by"},
		{"editor.driver", "driver {volts} V, {watts} W"},
		{"editor.battery", "battery {volts} V, {hours} Wh"},
		{"editor.light-power-exit", "Light {n}, the lead leaves at"},
		{"editor.exit-start", "the start"},
		{"editor.exit-end", "the end"},
		{"editor.light-power-lead", "Light {n} lead, {unit}"},
		{"editor.add-light", "Add a light"},
		{"editor.remove-light", "Remove light {n}"},
	}
}

func editorBrackets() []Entry {
	return []Entry{
		{"editor.brackets", "Brackets"},
		{"editor.brackets-none", "Nothing holds this module yet."},
		{"editor.place-again", "Place again: {rule}"},
		{"editor.place-by", "Rule to place again by"},
		{"editor.place-with", "Kind to place again"},
		{"editor.choose", "choose"},
		{"editor.rule-studs", "on the studs within reach"},
		{"editor.rule-overhang", "by the overhang"},
		{"editor.rule-fixed", "so far from each end"},
		{"editor.add-bracket", "Add a bracket"},
		{"editor.bracket-head", "Bracket {n}: {kind}, {on} at {at}"},
		{"editor.bracket-kind", "Bracket {n} kind"},
		{"editor.bracket-fitting", "{name}, to suit the depth"},
		{"editor.bracket-bare", "{name}"},
		{"editor.bracket-rod", "{name}, rod {rod}"},
		{"editor.bracket-bar", "{name}, rods {rod} every {pitch}"},
		{"editor.bracket-pitch", "{name}, screws every {pitch}"},
		{"editor.variant-threaded", "threaded"},
		{"editor.variant-wide", "wide plate"},
		{"editor.variant-adjusted", "round and slotted holes"},
		{"editor.variant-slotted", "slotted holes only"},
		{"editor.variant-open", "without a lock"},
		{"editor.variant-lag", "lag rod"},
		{"editor.variant-keyhole", "keyhole"},
		{"editor.variant-keyhole-large", "large keyhole"},
		{"editor.variant-peg", "peg"},
		{"editor.bracket-board", "Bracket {n} on"},
		{"editor.bracket-divider", "Bracket {n} on"},
		{"editor.put-on", "Put bracket {n} on {name}"},
		{"editor.bracket-at", "Bracket {n} at, along the board, {unit}"},
		{"editor.bracket-edge", "Bracket {n} in"},
		{"editor.edge-back", "the back edge"},
		{"editor.edge-front", "the front edge"},
		{"editor.bracket-length", "Bracket {n} length, {unit}"},
		{"editor.own-length", "its own"},
		{"editor.remove-bracket", "Remove bracket {n}"},
	}
}
