package wood

// A Look is how the wood is drawn. Colours are sRGB, "#rrggbb".
type Look struct {
	Colour   string  // of early wood on a planed and oiled face
	Line     string  // of late wood, the grain lines
	Edge     string  // of edge grain
	End      string  // of end grain
	Ring     float64 // millimetres between rings on the plank's end
	Contrast float64 // strength of the grain lines, 0 none to 1 full
	Pores    float64 // share of open pores drawn as short dashes, 0 none to 1 full
}

// looks holds the looks in the order of [table]. They are our own judgement of
// freshly oiled wood by daylight, not a measurement: no two boards are alike.
func looks() [46]struct {
	id   string
	look Look
} {
	return [...]struct {
		id   string
		look Look
	}{
		{"red-alder", Look{"#d3a57c", "#a5734a", "#c99a71", "#b3865f", 3.0, 0.30, 0.1}},
		{"black-ash", Look{"#c4a67e", "#7d6140", "#b89971", "#a2845d", 2.0, 0.60, 0.8}},
		{"white-ash", Look{"#e5d7bb", "#8f744b", "#d9c9aa", "#c4b08a", 3.0, 0.60, 0.8}},
		{"quaking-aspen", Look{"#e8dcc3", "#bfae8c", "#dfd2b7", "#cdbf9f", 3.0, 0.20, 0.0}},
		{"basswood", Look{"#e9dabb", "#c4b08a", "#dfcfae", "#cdbb97", 3.0, 0.15, 0.0}},
		{"american-beech", Look{"#dcb48d", "#a87f58", "#d0a77f", "#bb926b", 2.5, 0.30, 0.1}},
		{"paper-birch", Look{"#e5cda6", "#b5976a", "#dac197", "#c5ab80", 2.5, 0.25, 0.1}},
		{"sweet-birch", Look{"#cfa479", "#93683f", "#c3986d", "#ac825a", 2.5, 0.35, 0.1}},
		{"yellow-birch", Look{"#ddbd90", "#a98756", "#d1b083", "#bb9a6d", 2.5, 0.30, 0.1}},
		{"butternut", Look{"#bf9a6d", "#80603a", "#b38d61", "#9c784f", 3.5, 0.45, 0.5}},
		{"black-cherry", Look{"#b97a50", "#824b2b", "#ad6f46", "#955d39", 2.5, 0.40, 0.1}},
		{"chestnut", Look{"#c09a6c", "#7a5832", "#b48d60", "#9c774d", 3.5, 0.65, 0.9}},
		{"american-elm", Look{"#bf9c74", "#7c5c39", "#b38f67", "#9c7953", 2.5, 0.60, 0.7}},
		{"hackberry", Look{"#dbc79c", "#98804f", "#cfba8e", "#b9a378", 3.0, 0.50, 0.7}},
		{"pecan", Look{"#c8a077", "#87613b", "#bc936a", "#a57d56", 2.5, 0.45, 0.5}},
		{"shagbark-hickory", Look{"#cfa880", "#8a633c", "#c39b73", "#ab855e", 2.5, 0.50, 0.5}},
		{"black-locust", Look{"#b8954f", "#74592a", "#ac8945", "#95743a", 4.0, 0.60, 0.6}},
		{"bigleaf-maple", Look{"#e0c7a2", "#b0926a", "#d5bb95", "#c0a57f", 3.0, 0.25, 0.0}},
		{"red-maple", Look{"#e2cba7", "#b19571", "#d7bf9a", "#c2a983", 2.5, 0.25, 0.0}},
		{"silver-maple", Look{"#e5d1af", "#b69c78", "#dac5a2", "#c6b08c", 3.0, 0.25, 0.0}},
		{"sugar-maple", Look{"#e8d5b4", "#b99c72", "#ddc9a6", "#c9b38e", 2.0, 0.25, 0.0}},
		{"northern-red-oak", Look{"#d2a67d", "#8a5e37", "#c69a71", "#ae835b", 3.0, 0.65, 0.9}},
		{"white-oak", Look{"#d9be93", "#7f5a2e", "#cba97a", "#b89463", 2.5, 0.60, 0.8}},
		{"sweetgum", Look{"#b98763", "#7c5237", "#ad7c58", "#96694a", 3.0, 0.35, 0.0}},
		{"sycamore", Look{"#d3ad86", "#9b754f", "#c7a17a", "#b08b66", 3.0, 0.35, 0.1}},
		{"black-walnut", Look{"#7f5d43", "#33221a", "#735339", "#5d4230", 3.5, 0.55, 0.4}},
		{"yellow-poplar", Look{"#d5cf9f", "#98945f", "#c9c292", "#b3ac7d", 3.5, 0.30, 0.0}},
		{"eastern-white-pine", Look{"#ecd4a6", "#c79d62", "#e2c899", "#cfb283", 3.5, 0.40, 0.0}},
		{"ponderosa-pine", Look{"#ebcd99", "#bd8a4d", "#e0c18c", "#ccab76", 3.5, 0.50, 0.0}},
		{"sugar-pine", Look{"#ecd6ab", "#c5a06a", "#e1ca9e", "#cdb487", 4.0, 0.35, 0.0}},
		{"loblolly-pine", Look{"#e4bd80", "#a8692f", "#d8b073", "#c2985d", 5.0, 0.75, 0.0}},
		{"longleaf-pine", Look{"#dfb070", "#9c5a27", "#d3a364", "#bc8b51", 2.5, 0.80, 0.0}},
		{"douglas-fir-coast", Look{"#dcac7a", "#a05f34", "#d09f6d", "#b98758", 2.5, 0.75, 0.0}},
		{"western-hemlock", Look{"#dfc29a", "#a9845a", "#d3b58d", "#bd9e77", 2.0, 0.50, 0.0}},
		{"western-larch", Look{"#d2a171", "#90562d", "#c69565", "#ae7d50", 1.5, 0.75, 0.0}},
		{"white-fir", Look{"#e7d4ae", "#b89a6b", "#dcc8a1", "#c8b28a", 3.5, 0.45, 0.0}},
		{"western-redcedar", Look{"#b8825a", "#774a2e", "#ac774f", "#946441", 1.5, 0.60, 0.0}},
		{"redwood-old", Look{"#a9694a", "#6c3a27", "#9d5f41", "#864f36", 1.5, 0.60, 0.0}},
		{"sitka-spruce", Look{"#e7cea4", "#ba9663", "#dcc297", "#c7ac80", 2.0, 0.45, 0.0}},
		{"engelmann-spruce", Look{"#eddcb9", "#c4a77a", "#e2d0ab", "#cebb95", 1.5, 0.40, 0.0}},
		{"baldcypress", Look{"#d3ad77", "#8e6433", "#c7a06b", "#af8956", 2.5, 0.65, 0.0}},
		{"teak", Look{"#b08a55", "#5f4322", "#a47e4a", "#8d6a3d", 3.5, 0.55, 0.5}},
		{"spanish-cedar", Look{"#b5805c", "#774a30", "#a97551", "#926244", 4.0, 0.40, 0.4}},
		{"mahogany", Look{"#a8643f", "#6a3822", "#9c5a37", "#854b2e", 5.0, 0.30, 0.4}},
		{"khaya", Look{"#b0704d", "#703f29", "#a46543", "#8d5538", 6.0, 0.30, 0.4}},
		{"sapele", Look{"#94543a", "#5a2d1f", "#894c33", "#733e2a", 5.0, 0.35, 0.4}},
	}
}
