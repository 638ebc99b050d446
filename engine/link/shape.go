package link

// A field is the shape of one value of a document, as columns hold it. Whatever a
// document has beyond its shape — members that this version does not know, values of
// another type — travels as JSON text beside the columns.
type field struct {
	key     string
	form    form
	usual   bool     // an object nearly always has this member
	words   []string // forms word: texts that need not travel
	letter  string   // forms id and ref: what the id begins with
	members []*field // form object
	item    *field   // form list
	most    int      // form list: most items
	column  int      // number of its first column
}

// A form is a way to hold a value in a column.
type form byte

const (
	object  form = iota // two columns: which members it has, and the text of the others
	list                // the count
	length              // millionths of a millimetre
	angle               // millionths of a degree
	whole               // a whole number
	flag                // 0 or 1
	word                // 0 for a new text, else 1 + its number among those of the column
	id                  // the number in an id, from the one that the counter would give next
	ref                 // the number in an id, from the one after the reference before
	profile             // a shop profile: see profile.go
)

// columns returns how many columns a field has of its own.
func (f *field) columns() int {
	switch f.form {
	case object, profile:
		return 2
	}
	return 1
}

// numbered gives each field its columns, in the order of the shape, and returns them all
// as a list of the fields to which they belong.
func numbered(f *field) (all []*field) {
	var walk func(*field)
	walk = func(f *field) {
		f.column = len(all)
		for range f.columns() {
			all = append(all, f)
		}
		for _, m := range f.members {
			walk(m)
		}
		if f.item != nil {
			walk(f.item)
		}
	}
	walk(f)
	return all
}

func (f *field) always() *field { f.usual = true; return f }

func objectOf(key string, members ...*field) *field {
	return &field{key: key, form: object, members: members}
}

func listOf(key string, item *field) *field {
	return &field{key: key, form: list, item: item, most: 10_000}
}

func lengthOf(key string) *field { return &field{key: key, form: length} }
func angleOf(key string) *field  { return &field{key: key, form: angle} }
func wholeOf(key string) *field  { return &field{key: key, form: whole} }
func flagOf(key string) *field   { return &field{key: key, form: flag} }

func wordOf(key string, known ...string) *field {
	return &field{key: key, form: word, words: known}
}

func idOf(letter string) *field       { return &field{key: "id", form: id, letter: letter, usual: true} }
func refOf(key, letter string) *field { return &field{key: key, form: ref, letter: letter} }

// mostModules bounds the modules of a plan in a link.
const mostModules = 500

// planShape is the shape of a plan in version 1 of the format. It stands for ever: a
// member that plans get later travels as text, or comes with another version.
func planShape() *field {
	modules := listOf("modules", moduleShape()).always()
	modules.most = mostModules
	return objectOf("",
		wordOf("schema", "ledgewright/plan/1").always(),
		objectOf("job", wordOf("number"), wordOf("title"), wordOf("maker"), wordOf("client"), wordOf("date"), wordOf("note")).always(),
		objectOf("units", wordOf("system", "mm", "in").always(), lengthOf("step").always()).always(),
		&field{key: "shop", form: profile, usual: true},
		objectOf("counters", wholeOf("wall").always(), wholeOf("module").always(), wholeOf("arrangement").always(), wholeOf("part").always()).always(),
		listOf("walls", wallShape()).always(),
		modules,
		listOf("arrangements", arrangementShape()).always(),
	)
}

func wallShape() *field {
	return objectOf("", idOf("w"), wordOf("name"), lengthOf("width").always(), lengthOf("height").always(),
		lengthOf("floorRise"), lengthOf("ceilingRise"),
		wordOf("build", "studs", "lath-and-plaster", "board-on-dabs", "brick", "hollow-block", "aerated-block", "concrete").always(),
		objectOf("lining", wordOf("kind", "plasterboard", "plaster", "tile-over-plasterboard", "tile-over-plaster", "none").always(),
			lengthOf("thickness").always()).always(),
		objectOf("studs", wordOf("material", "wood", "metal").always(), lengthOf("width").always(), lengthOf("depth").always(),
			lengthOf("first").always(), lengthOf("spacing").always(), stateOf().always(),
			listOf("each", objectOf("", lengthOf("x").always(), lengthOf("width"), stateOf().always()))),
		listOf("obstacles", objectOf("", idOf("o"),
			wordOf("kind", "socket", "switch", "pipe", "radiator", "window", "door", "picture", "furniture", "other").always(), wordOf("name"),
			lengthOf("x").always(), lengthOf("y").always(), lengthOf("width").always(), lengthOf("height").always(), lengthOf("depth").always())),
		wordOf("cableRule"),
		listOf("plumb", objectOf("", lengthOf("x").always(), lengthOf("over").always(), lengthOf("lean").always())),
		listOf("flat", objectOf("", lengthOf("x").always(), lengthOf("y").always(), lengthOf("over").always(), lengthOf("gap").always(), flagOf("upright"))),
		wordOf("farSide"), wholeOf("builtYear"),
	)
}

func stateOf() *field { return wordOf("state", "edges-found", "one-point", "guess") }

func moduleShape() *field {
	return objectOf("", idOf("m"), wordOf("name"), lengthOf("depth").always(), woodOf().always(), flagOf("closed"),
		listOf("boards", objectOf("", wordOf("name"), lengthOf("length").always(), lengthOf("thickness").always(), edgesOf())).always(),
		listOf("corners", objectOf("", angleOf("turn").always(),
			wordOf("joint", "mitre", "butt-first", "butt-second", "rebate-first", "rebate-second").always(),
			objectOf("reinforcement", wordOf("kind", "spline", "tenon", "dowel", "key", "screw").always(),
				lengthOf("thickness"), lengthOf("width"), wholeOf("count")).always())),
		listOf("dividers", objectOf("", idOf("d"), wordOf("name"), wholeOf("from").always(), wholeOf("to").always(), lengthOf("at").always(),
			lengthOf("thickness").always(), fitOf("start"), fitOf("end"), lengthOf("housingDepth"), edgesOf())),
		listOf("lights", lightShape()),
		listOf("brackets", objectOf("", idOf("b"), wordOf("kind", bracketKinds()...).always(), wholeOf("board").always(), refOf("divider", "d"),
			lengthOf("at").always(), wordOf("edge", "back", "front"), lengthOf("length"))),
		flagOf("grainWrap"), angleOf("hung"),
	)
}

func fitOf(key string) *field { return wordOf(key, "housed", "butt").always() }

func edgesOf() *field {
	return listOf("edges", objectOf("",
		wordOf("arris", "front-a", "front-b", "back-a", "back-b", "start-a", "start-b", "end-a", "end-b").always(),
		wordOf("cut", "chamfer", "round").always(), lengthOf("size").always()))
}

func lightShape() *field {
	return objectOf("", idOf("l"), wholeOf("first").always(), wholeOf("last").always(), wordOf("face", "A", "B", "back").always(),
		lengthOf("fromFront"), lengthOf("width").always(), lengthOf("depth").always(), lengthOf("startStop"), lengthOf("endStop"),
		wordOf("strip", stripKinds()...).always(),
		objectOf("power", wordOf("source", sourceKinds()...).always(), wordOf("exit", "start", "end").always(), lengthOf("lead")).always())
}

func arrangementShape() *field {
	return objectOf("", idOf("a"), wordOf("name"), refOf("wall", "w").always(),
		listOf("poses", objectOf("", refOf("module", "m").always(), lengthOf("x").always(), lengthOf("y").always(), angleOf("turn"), flagOf("flip"))).always(),
		listOf("lines", objectOf("", idOf("h"), lengthOf("height").always())),
		objectOf("datum", lengthOf("level"), lengthOf("plumb")),
		refOf("corner", "a"))
}

// Ids that need not travel. Others do, once in a link.

func woodOf() *field {
	return wordOf("wood", "white-oak", "red-oak", "white-ash", "black-walnut", "sugar-maple", "black-cherry", "american-beech", "yellow-poplar")
}

func bracketKinds() []string {
	return []string{"plate-back-10", "plate-back-12", "plate-back-14", "plate-back-16", "rod-structure-10", "rod-structure-12",
		"rod-structure-14", "rod-structure-16", "plate-upright-12", "plate-lining-12", "bar-12-400", "hook-keyhole", "cleat-400", "rail-400",
		"plate-back-3-8in", "plate-back-1-2in", "plate-back-5-8in", "rod-structure-1-2in"}
}

func stripKinds() []string {
	return []string{"strip-24-5", "strip-24-10", "strip-24-15", "strip-12-5", "strip-12-10"}
}

func sourceKinds() []string {
	return []string{"driver-24-15", "driver-24-30", "driver-24-60", "driver-12-15", "driver-12-30", "battery-12-3ah"}
}
