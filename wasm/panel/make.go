package panel

import (
	"slices"
	"strconv"
	"strings"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
	engpart "ledgewright/engine/part"
	"ledgewright/engine/unit"
	"ledgewright/engine/wood"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// makeJob returns the sections of the panel for the shop: figures and cuts of the part
// at hand, the corners of a module, hardware and sums; at the bench one part at a time.
// The drawing and the part list take the place of the wall.
func makeJob(s *app.State) []Node {
	if len(s.Build.Parts.Parts) == 0 {
		return []Node{empty("make-none", term(s, "make.none"), term(s, "make.none-why"),
			button("make-to-arrange", term(s, "make.to-arrange"), app.Go{Job: app.Arrange}, class("btn main")))}
	}
	if s.On[app.Bench] {
		return benchPart(s)
	}
	return makeFigures(s)
}

// shopping reports whether boards are shown in the place of the wall.
func shopping(s *app.State) bool {
	return s.Job == app.Make && !s.On[app.Bench] && len(s.Build.Parts.Parts) > 0
}

// makeTable returns what wants room: the part list and the drawing of the part at hand.
func makeTable(s *app.State) []Node {
	return []Node{partList(s), partDrawn(s)}
}

// makeFigures returns what a narrow panel can hold: figures and cuts of the part at hand,
// the corners, hardware and sums.
func makeFigures(s *app.State) []Node {
	out := []Node{partAt(s)}
	if m, ok := moduleInHand(s); ok {
		out = append(out, cornersOf(s, m))
	}
	return append(out, hardwareList(s), sums(s))
}

// partInHand is the index of the part that is looked at: the one that was chosen, or
// the first of the module that was, or the first.
func partInHand(s *app.State) int {
	all := s.Build.Parts.Parts
	if s.At.Kind == "part" && s.At.Index >= 1 && s.At.Index <= len(all) {
		return s.At.Index - 1
	}
	id := lastOf(s.Chosen)
	for i, p := range all {
		if m, ok := moduleOfBoard(s, p.Boards[0]); ok && m.ID == id {
			return i
		}
	}
	return 0
}

// moduleInHand is the module whose corners are shown: the one that is chosen, or that of
// the part at hand.
func moduleInHand(s *app.State) (module.Result, bool) {
	if s.At.Kind != "part" {
		for _, m := range s.Build.Modules {
			if m.ID == lastOf(s.Chosen) && len(m.Boards) > 0 {
				return m, true
			}
		}
	}
	return moduleOfBoard(s, s.Build.Parts.Parts[partInHand(s)].Boards[0])
}

// moduleOfBoard returns the module that a board belongs to.
func moduleOfBoard(s *app.State, id string) (module.Result, bool) {
	for _, m := range s.Build.Modules {
		if _, ok := boardOf(m, id); ok {
			return m, true
		}
	}
	return module.Result{}, false
}

func boardOf(m module.Result, id string) (board.Board, bool) {
	for _, b := range m.Boards {
		if b.ID == id {
			return b, true
		}
	}
	return board.Board{}, false
}

// moduleLabel is what the maker calls a module.
func moduleLabel(m module.Result) string {
	if m.Name != "" {
		return m.Name
	}
	return m.ID
}

// perUnit returns the words of a key in the plan's unit: those that end in -mm or -in.
func perUnit(s *app.State, key string, args ...words.Arg) string {
	if s.Plan.Units.System == unit.Inches {
		return say(s, key+"-in", args...)
	}
	return say(s, key+"-mm", args...)
}

func woodName(id string) string {
	if w, ok := wood.Find(id); ok {
		return w.Name
	}
	return id
}

// partList is the table of parts. Where all are of one wood it is said once; where no edge
// is treated no column says so.
func partList(s *app.State) Node {
	all := s.Build.Parts.Parts
	woods := woodsOf(all)
	columns := []column{
		{title: "make.col-number", area: "no"}, {title: "make.col-part", area: "part", words: true},
		{title: "make.col-quantity", area: "qty", right: true}, {title: "make.col-size", area: "size"},
		{title: "make.col-wood", area: "wood", words: true, none: len(woods) == 1}, {title: "make.col-ends", area: "ends", words: true},
		{title: "make.col-edges", area: "edges", words: true,
			none: !slices.ContainsFunc(all, func(p engpart.Part) bool { return len(p.Edges) > 0 })},
		{title: "make.col-cuts", area: "cuts", words: true},
	}
	here, rows := partInHand(s), make([]row, len(all))
	for i, p := range all {
		rows[i] = row{partKey(p), partCells(s, p, i == here)}
	}
	t := table(s, "parts", perUnit(s, "make.parts"), columns, rows)
	return el("section", "part-list", class("sheet"), at("aria-label", term(s, "make.parts")), markedRow(t, partKey(all[here])),
		note("grain", say(s, "make.grain", words.Name("wood", capital(strings.Join(woods, ", "))))))
}

func partKey(p engpart.Part) string { return "part-" + numeral(p.Number) }

func woodsOf(all []engpart.Part) (names []string) {
	for _, p := range all {
		if name := woodName(p.Wood); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

func partCells(s *app.State, p engpart.Part, chosen bool) []part {
	pick := pickPin("pick-"+partKey(p), numeral(p.Number),
		say(s, "make.pick", words.Count("n", p.Number), words.Name("name", p.Name)),
		app.Point{At: app.Thing{Kind: "part", Index: p.Number}}, chosen)
	return []part{
		pick, text(capital(p.Name)), text(numeral(p.Quantity)), fractions(partSize(s, p)),
		text(woodName(p.Wood)), text(endsOf(s, p)), text(edgesOf(s, p)), el("span", "", said(cutsOf(s, p))),
	}
}

// pickPin is the number of a row, which chooses it.
func pickPin(key, number, name string, e app.Event, chosen bool) Node {
	return el("button", key, attr("type=button"), class("pick"), at("aria-label", name), state("aria-pressed", chosen), onClick(e),
		el("span", "", class("pin"), text(number)))
}

// markedRow gives the row of a table that is chosen its look; its button says so in words.
func markedRow(t Node, key string) Node {
	body := t.Kids[0].Kids[2]
	for i := range body.Kids {
		if body.Kids[i].Key == key {
			class("on").join(body.Kids[i])
		}
	}
	return t
}

func partSize(s *app.State, p engpart.Part) string {
	style := s.Plan.Style()
	return say(s, "make.size", words.Name("t", style.Length(p.Thickness)), words.Name("w", style.Length(p.Width)), words.Name("l", style.Length(p.Overall)))
}

func endsOf(s *app.State, p engpart.Part) string {
	if p.Start == p.End {
		return capital(say(s, "make.ends-both", words.Word("end", p.Start)))
	}
	return capital(say(s, "make.ends", words.Word("start", p.Start), words.Word("end", p.End)))
}

// edgesOf lists the arrises that are treated, as the drawing calls them.
func edgesOf(s *app.State, p engpart.Part) string {
	names := make([]string, len(p.Edges))
	for i, a := range p.Edges {
		names[i] = term(s, "view.arris."+a)
	}
	return capitalised(strings.Join(names, ", "))
}

// capitalised begins a text with a capital, if there is one.
func capitalised(s string) string {
	if s == "" {
		return ""
	}
	return capital(s)
}

// cutsOf are the notes of a part; a mirror twin is told apart first.
func cutsOf(s *app.State, p engpart.Part) string {
	var all []string
	if p.MirrorOf > 0 {
		all = append(all, strings.TrimSuffix(twin(s, p), "."))
	}
	for _, n := range p.Notes {
		all = append(all, n.Say(s.Plan.Style()))
	}
	return capitalised(strings.Join(all, "; "))
}

func twin(s *app.State, p engpart.Part) string {
	if len(p.Differs) == 0 {
		return say(s, "make.twin-plain", words.Count("n", p.MirrorOf))
	}
	where := make([]string, len(p.Differs))
	for i, k := range p.Differs {
		where[i] = term(s, k)
	}
	return say(s, "make.twin", words.Count("n", p.MirrorOf), words.Name("where", strings.Join(where, ", ")))
}

// hardwareList is the table of what is bought.
func hardwareList(s *app.State) Node {
	items := s.Build.Parts.Hardware
	if len(items) == 0 {
		return section("hardware", term(s, "make.hardware"), note("no-hardware", term(s, "make.no-hardware")))
	}
	columns := []column{
		{title: "make.col-hardware", area: "item", words: true}, {title: "make.col-goods", area: "goods"},
		{title: "make.col-quantity", area: "many", right: true}, {title: "make.col-cut-to", area: "cut-to", right: true},
	}
	rows := make([]row, len(items))
	for i, it := range items {
		var length part
		if it.Length > 0 {
			length = fractions(s.Plan.Style().WithUnit(it.Length))
		}
		rows[i] = row{key: "item-" + numeral(i+1), cells: []part{said(capital(it.Name())), fractions(it.Size), text(numeral(it.Quantity)), length}}
	}
	return el("section", "hardware", table(s, "hardware-table", term(s, "make.hardware"), columns, rows))
}

// sums are wood and glue of the whole job.
func sums(s *app.State) Node {
	l, style := s.Build.Parts, s.Plan.Style()
	return section("sums", term(s, "make.sums"), pairs("sums-of",
		pair{term(s, "make.boards"), numeral(l.Boards)},
		pair{term(s, "make.volume"), volume(s, l.Volume)},
		pair{term(s, "make.mass"), style.Mass(l.Mass)},
		pair{term(s, "make.glue"), style.Area(l.Glue)}))
}

// boardFoot is a board 12 in square and 1 in thick: 0.002 359 737 216 m³, from the inch.
const boardFoot = 144 * 0.0254 * 0.0254 * 0.0254

// volume writes an amount of wood: litres, or board feet in an inch plan.
func volume(s *app.State, v unit.Volume) string {
	if s.Plan.Units.System == unit.Inches {
		return say(s, "make.board-feet", words.Name("n", strconv.FormatFloat(float64(v)/boardFoot, 'f', 1, 64)))
	}
	return say(s, "make.litres", words.Name("n", strconv.FormatFloat(1000*float64(v), 'f', 1, 64)))
}
