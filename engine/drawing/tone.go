package drawing

// A Theme is a set of colours for one kind of light, or for paper.
type Theme uint8

// The themes.
const (
	Day Theme = iota
	Evening
	Paper // white ground, black lines; wood as a tint
)

// ThemeCount is the number of themes.
const ThemeCount = 3

// A tone's colours in the three themes, sRGB "#rrggbb". Where two stand, the fill runs
// from the first at the upper right to the second at the lower left.
type tone struct {
	name                Tone
	day, evening, paper string
	day2, evening2      string
}

// tones is the look's table. Paper has black, white and three greys.
func tones() []tone {
	return []tone{
		{name: "wall", day: "#f4f2ed", evening: "#3b3631", paper: "#ffffff", day2: "#e7e3da", evening2: "#302c29"},
		{name: "ceiling", day: "#f1eee8", evening: "#312d2a", paper: "#ffffff"},
		{name: "side", day: "#e0dbd0", evening: "#2a2724", paper: "#ffffff"},
		{name: "floor", day: "#d6c9b3", evening: "#241f1a", paper: "#ffffff"},
		{name: "skirting", day: "#f3f0e8", evening: "#37332f", paper: "#ffffff"},
		{name: "paper", day: "#f6f2e9", evening: "#211f1d", paper: "#ffffff"},
		{name: "leaf", day: "#fdfbf6", evening: "#2d2a27", paper: "#ffffff"},
		{name: "plaster", day: "#edeae3", evening: "#37332f", paper: "#ffffff"},
		{name: "ink", day: "#292826", evening: "#f1ebdf", paper: "#000000"},
		{name: "ink-2", day: "#5a554c", evening: "#c0b7a7", paper: "#333333"},
		{name: "line", day: "#847c6d", evening: "#948b7b", paper: "#666666"},
		{name: "hair", day: "#cdc5b5", evening: "#47423b", paper: "#999999"},
		{name: "wall-ink", day: "#292826", evening: "#a59b8b", paper: "#000000"},
		{name: "pencil", day: "#6d665b", evening: "#8f8676", paper: "#666666"},
		{name: "edge", day: "#4a3216", evening: "#d3b286", paper: "#000000"},
		{name: "arris", day: "#7a5c36", evening: "#a98a60", paper: "#333333"},
		{name: "chalk", day: "#1e4d9b", evening: "#a9c7f7", paper: "#000000"},
		{name: "chalk-2", day: "#dfe6f2", evening: "#28344a", paper: "#ffffff"},
		{name: "on-chalk", day: "#fdfbf6", evening: "#14202f", paper: "#ffffff"},
		{name: "warn", day: "#9a3110", evening: "#ffb08c", paper: "#000000"},
		{name: "ok", day: "#3a5f33", evening: "#b4d4a2", paper: "#000000"},
		{name: "ask", day: "#5a554c", evening: "#c0b7a7", paper: "#333333"},
		{name: "stud", day: "#cba97a", evening: "#65523c", paper: "#cccccc"},
		{name: "shade", day: "#3d3020", evening: "#000000", paper: "#999999"},
		{name: "glass", day: "#dfe7ea", evening: "#1c2733", paper: "#ffffff"},
		{name: "frame", day: "#f6f3ec", evening: "#3d3833", paper: "#ffffff"},
		{name: "shine", day: "#ffffff", evening: "#3b4a5c", paper: "#cccccc"},
		{name: "metal", day: "#f1ede4", evening: "#34302c", paper: "#ffffff"},
		{name: "cloth", day: "#f0ece3", evening: "#2c2926", paper: "#ffffff"},
		{name: "picture", day: "#e4ddcf", evening: "#2f2b28", paper: "#ffffff"},
		{name: "strip", day: "#fff3d6", evening: "#fff1d2", paper: "#ffffff"},
		{name: "groove", day: "#6b4a22", evening: "#2a1d0e", paper: "#cccccc"},
		{name: "loose", day: "#f3e6cc", evening: "#e2cfa8", paper: "#ffffff"},
		{name: "white", day: "#ffffff", evening: "#ffffff", paper: "#ffffff"},
	}
}

// A palette is the table of one theme, ready to look up.
type palette struct {
	theme Theme
	of    map[Tone][2]string
}

func newPalette(theme Theme) palette {
	all := tones()
	p := palette{theme: theme, of: make(map[Tone][2]string, len(all))}
	for _, t := range all {
		switch theme {
		case Evening:
			p.of[t.name] = [2]string{t.evening, t.evening2}
		case Paper:
			p.of[t.name] = [2]string{t.paper, ""}
		default:
			p.of[t.name] = [2]string{t.day, t.day2}
		}
	}
	return p
}

// colour returns the colour of a tone; a tone that is not in the table is black, so
// that the mistake is seen.
func (p palette) colour(t Tone) string {
	if c, ok := p.of[t]; ok {
		return c[0]
	}
	return "#000000"
}

// Tones lists the names of the table, in its order.
func Tones() []Tone {
	var names []Tone
	for _, t := range tones() {
		names = append(names, t.name)
	}
	return names
}

// Colour returns the colour of a tone in a theme, sRGB "#rrggbb", and whether the
// table has it.
func Colour(t Tone, theme Theme) (string, bool) {
	c, ok := newPalette(theme).of[t]
	return c[0], ok
}
