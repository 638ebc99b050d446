package words

// partWords are the words of package part.
func partWords() []Entry {
	return []Entry{
		{"part.shelf-board", "shelf board"},
		{"part.upright", "upright"},
		{"part.slanting", "slanting board"},
		{"part.divider", "divider"},
		{"part.rail", "rail"},
		{"part.sum", "{n} {n|board|boards}, {mass} of wood, {glue} of glue. Finished sizes, without allowance; the length runs with the grain."},

		{"end.square", "square"},
		{"end.mitre", "mitre"},
		{"end.butt-bevel", "bevelled butt"},
		{"end.rebate", "rebate"},
		{"end.housed", "housed"},

		{"note.tilt", "{n} {n|end|ends} at {angle} from square"},
		{"note.groove", "{n} {n|groove|grooves} {f1} long, {f2} wide, {f3} deep"},
		{"note.bore", "{n} {n|bore|bores} of {f1}, {f2} deep"},
		{"note.pocket", "{n} {n|pocket|pockets} {f1} by {f2}, {f3} deep"},
		{"note.slot", "{n} {n|slot|slots} {f1} by {f2}, {f3} deep"},
		{"note.housing", "{n} {n|housing|housings} {f1} by {f2}, {f3} deep"},
		{"note.mirror", "mirror twin of {n}, differs in {where}"},

		{"differs.end-cut", "ends"},
		{"differs.groove", "groove"},
		{"differs.bore", "bores"},
		{"differs.pocket", "pockets"},
		{"differs.slot", "slots"},
		{"differs.housing", "housings"},
		{"differs.chamfer", "chamfers"},
		{"differs.round-over", "round-overs"},

		{"grain.length", "along the length"},

		{"item.rod", "rod, cut to length; add the wall's lining"},
		{"item.plate-rod", "rod on its plate, from the board's edge"},
		{"item.screw", "screw"},
		{"item.strip", "light strip, {volts} V, {watts} W a metre; size: cut units"},
		{"item.driver", "driver, {volts} V, {watts} W"},
		{"item.battery", "battery, {volts} V, {watts} W"},
		{"item.channel", "channel for the strip, {width} by {depth}"},
		{"lock.pin", "a pin"},
		{"lock.resin", "resin"},

		{"column.number", "number"},
		{"column.part", "part"},
		{"column.quantity", "quantity"},
		{"column.thickness", "thickness"},
		{"column.width", "width"},
		{"column.length", "length, finished"},
		{"column.inside", "inside length"},
		{"column.wood", "wood"},
		{"column.grain", "grain"},
		{"column.start", "start"},
		{"column.end", "end"},
		{"column.ends", "ends"},
		{"column.edges", "edges treated"},
		{"column.notes", "cuts"},
		{"column.mirror", "mirror twin of"},
		{"column.differs", "twins differ in"},
		{"column.boards", "boards"},
		{"column.size", "thickness x width x length"},
		{"column.size-of", "size"},
		{"column.hardware", "hardware"},
	}
}
