package panel

import "ledgewright/wasm/app"

// A column of a table: the key of its heading's words, whether figures stand at its right
// or words in it may break, and the area of its cells where there is little room.
type column struct {
	title string
	area  string
	right bool
	words bool
	none  bool // nothing would stand in it: it is left out
}

// pairArea is the area of a cell that stands, where there is little room, as a pair of the
// column's title and its value.
const pairArea = "pair"

// A row of a table: a cell for every column.
type row struct {
	key   string
	cells []part
}

// table returns a table that is only read. Where its columns have areas and its box is too
// narrow for them side by side, page.css lays every row out by these areas, so that nothing
// is cut off. What the parts of a table are is then said by roles: a browser may forget
// that of elements that are laid out otherwise.
func table(s *app.State, key, caption string, columns []column, rows []row) Node {
	scroll, role := class("scroll"), func(string) part { return nil }
	if columns[0].area != "" {
		scroll, role = "scroll laid", func(name string) part { return at("role", name) }
	}
	heads, body := el("tr", "", role("row")), el("tbody", "", role("rowgroup"))
	for _, c := range columns {
		if !c.none {
			heads.add(el("th", "", attr("scope=col"), c.class(), text(term(s, c.title)), role("columnheader")))
		}
	}
	for _, r := range rows {
		tr := el("tr", r.key, role("row"))
		for i, cell := range r.cells {
			if c := columns[i]; !c.none {
				tr.add(c.cell(s, cell, role))
			}
		}
		body.add(tr)
	}
	return el("div", key, scroll, attr("tabindex=0"), attr("role=region"), at("aria-label", caption),
		el("table", "", role("table"), el("caption", "", text(caption)), el("thead", "", heads, role("rowgroup")), body))
}

// cell returns a cell of the column.
func (c column) cell(s *app.State, of part, role func(string) part) Node {
	if c.area != pairArea {
		return el("td", "", c.class(), of, role("cell"))
	}
	return el("td", "", c.class(), role("cell"), at("data-title", term(s, c.title)), el("span", "", of))
}

func (c column) class() part {
	names := ""
	switch {
	case c.right:
		names = "r"
	case c.words:
		names = "w"
	}
	switch {
	case c.area == "":
	case names == "":
		names = "a-" + c.area
	default:
		names += " a-" + c.area
	}
	if names == "" {
		return nil
	}
	return class(names)
}
