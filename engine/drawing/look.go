package drawing

// A Look is how a wood is drawn; it has the members of the table of woods, so that
// one converts to the other.
type Look struct {
	Colour   string  // of early wood on a planed and oiled face, "#rrggbb"
	Line     string  // of late wood, the grain lines
	Edge     string  // of edge grain
	End      string  // of end grain
	Ring     float64 // millimetres between rings on the plank's end
	Contrast float64 // strength of the grain lines, 0 none to 1 full
	Pores    float64 // share of open pores drawn as short dashes, 0 none to 1 full
}

// A Species is a wood that a writer can draw.
type Species struct {
	ID   string
	Look Look
}

// plainWood stands in for a wood that the caller's table does not have.
func plainWood() Look {
	return Look{"#d9c7a8", "#8c7450", "#cdb994", "#b8a27c", 3, 0.4, 0}
}

// find returns the look of a wood.
func find(table []Species, id string) Look {
	for i := range table {
		if table[i].ID == id {
			return table[i].Look
		}
	}
	return plainWood()
}

// A rgb is a colour, 0 to 255.
type rgb [3]float64

// parseColour reads "#rrggbb"; anything else is black.
func parseColour(s string) (c rgb) {
	if len(s) != 7 || s[0] != '#' {
		return c
	}
	for i := range c {
		c[i] = float64(hexDigit(s[1+2*i])*16 + hexDigit(s[2+2*i]))
	}
	return c
}

func hexDigit(b byte) int {
	switch {
	case b >= '0' && b <= '9':
		return int(b - '0')
	case b >= 'a' && b <= 'f':
		return int(b-'a') + 10
	case b >= 'A' && b <= 'F':
		return int(b-'A') + 10
	}
	return 0
}

// String writes a colour as "#rrggbb".
func (c rgb) String() string {
	const digits = "0123456789abcdef"
	out := [7]byte{'#'}
	for i, x := range c {
		n := int(min(max(x, 0), 255) + 0.5)
		out[1+2*i], out[2+2*i] = digits[n>>4], digits[n&15]
	}
	return string(out[:])
}

// mixed returns the colour a share k of the way to d.
func (c rgb) mixed(d rgb, k float64) rgb {
	for i := range c {
		c[i] += float64((d[i] - c[i]) * k)
	}
	return c
}

// shaded darkens (k < 0) or lightens (k > 0) wood, towards brown and towards cream,
// so that neither looks grey.
func (c rgb) shaded(k float64) rgb {
	if k < 0 {
		return c.mixed(rgb{0x3a, 0x24, 0x09}, min(-k, 1))
	}
	return c.mixed(rgb{0xff, 0xf6, 0xe2}, min(k, 1))
}

// woodInk returns the fill and the grain line of a face in a theme. In the evening wood
// has only the light of the room left; on paper it is a tint that print can hold.
func woodInk(look Look, w Wood, theme Theme) (fill, line rgb) {
	fill, line = parseColour(look.Colour), parseColour(look.Line)
	switch {
	case w.End:
		fill = parseColour(look.End)
	case w.Edge:
		// a planed edge is lighter to the eye than the table's mean of it
		fill = parseColour(look.Edge).mixed(fill, 0.5)
	}
	fill, line = fill.shaded(w.Shade), line.shaded(w.Shade/2)
	switch theme {
	case Evening:
		return fill.mixed(rgb{0x24, 0x18, 0x0c}, 0.3), line.mixed(rgb{0x14, 0x0c, 0x06}, 0.45)
	case Paper:
		return fill.mixed(rgb{255, 255, 255}, 0.72), line.mixed(rgb{255, 255, 255}, 0.35)
	}
	return fill, line
}
