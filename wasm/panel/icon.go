package panel

// An iconShape is the paths of an icon, in a box of 24, or of 26 where it is large.
type iconShape struct {
	name  string
	large bool
	paths [3]string // as many as it has, and then none
}

// icons returns an icon by its name; an unknown one is empty.
func icons(name string) iconShape {
	for _, of := range [...]iconShape{
		{name: "survey", large: true, paths: [3]string{"M4 23V4h19", "M4 9h3.5M4 14h5M4 19h3.5M9 4v3.5M14 4v5M19 4v3.5"}},
		{name: "arrange", large: true, paths: [3]string{"M3 20h9v-7h11", "M3 4v6h8", "M16 4h7v5h-7z"}},
		{name: "make", large: true, paths: [3]string{"M2 17L8 8h17l-5 9z", "M9 14.5c4-.6 6 .4 10-.4M11.5 11.3c3-.4 5 .2 8-.2"}},
		{name: "hang", large: true, paths: [3]string{"M7 13a6 6 0 1012 0a6 6 0 10-12 0", "M13 2v22M2 13h22"}},
		{name: "agree", large: true, paths: [3]string{"M3 21h20", "M4 16c3.5-8 7-11 7.5-8s-4 9-2 9 4.5-7 6.5-6-1.5 5.5.5 5.5 3.5-2 5.5-3.5"}},
		{name: "undo", paths: [3]string{"M5 10h9a5 5 0 010 10h-4", "M9 5.5L4.5 10 9 14.5"}},
		{name: "redo", paths: [3]string{"M19 10h-9a5 5 0 000 10h4", "M15 5.5L19.5 10 15 14.5"}},
		{name: "minus", paths: [3]string{"M5 12h14"}},
		{name: "plus", paths: [3]string{"M5 12h14M12 5v14"}},
		{name: "fit", paths: [3]string{"M4 9V4.5h5M20 9V4.5h-5M4 15v4.5h5M20 15v4.5h-5"}},
		{name: "chalk-line", paths: [3]string{"M3 8.5l4 3.5-4 3.5M21 8.5L17 12l4 3.5M8 12h2M12 12h1M15 12h1"}},
		{name: "evening", paths: [3]string{"M3.5 7h17M12 11v7M7.5 11l-2.5 6M16.5 11l2.5 6"}},
		{name: "studs", paths: [3]string{"M6 3v18M9 3v18M15 3v18M18 3v18"}},
		{name: "bands", paths: [3]string{"M4 4h16v16H4zM4 12L12 4M4 20L20 4M12 20l8-8"}},
		{name: "bench", paths: [3]string{"M7 3h10v18H7z", "M10 17.5h4M9 8h6v5H9z"}},
		{name: "help", paths: [3]string{"M8.5 9a3.5 3.5 0 116 2.5C13 13 12 13.5 12 15.5M12 19v.3"}},
		{name: "left", paths: [3]string{"M19 12H5M10.5 6.5L5 12l5.5 5.5"}},
		{name: "right", paths: [3]string{"M5 12h14M13.5 6.5L19 12l-5.5 5.5"}},
		{name: "up", paths: [3]string{"M12 19V5M6.5 10.5L12 5l5.5 5.5"}},
		{name: "alone", paths: [3]string{"M8 9h8v7H8z", "M3 7V3h4M17 3h4v4M21 17v4h-4M7 21H3v-4"}},
		{name: "round", paths: [3]string{"M4 8l8-4 8 4v8l-8 4-8-4z", "M4 8l8 4 8-4M12 12v8"}},
		{name: "down", paths: [3]string{"M12 5v14M6.5 13.5L12 19l5.5-5.5"}},
	} {
		if of.name == name {
			return of
		}
	}
	return iconShape{}
}
