package panel

import "slices"

// pairArea is the area of a cell that stands, where there is little room, as a pair of the
// column's title and its value.
const pairArea = "pair"

// laid names the areas of a table's cells, column by column. Where its box is too narrow
// for columns side by side, page.css lays every row out by these areas, so that nothing is
// cut off. What the parts of a table are is then said by roles: a browser may forget that
// of elements that are laid out otherwise.
func laid(t Node, areas ...string) Node {
	t.Attrs = slices.Clone(t.Attrs)
	t.Attrs[0].Value = "scroll laid"
	whole := t.Kids[0]
	attr("role=table").join(whole)
	titles := whole.Kids[1].Kids[0].Kids
	for _, group := range whole.Kids[1:] {
		for i := range group.Kids {
			attr("role=row").join(group.Kids[i])
			for k := range group.Kids[i].Kids {
				laidCell(group.Kids[i].Kids[k], areas[k], titles[k].Kids[0].Text)
			}
		}
	}
	for i := range whole.Kids[1:] {
		attr("role=rowgroup").join(whole.Kids[1+i])
	}
	return t
}

func laidCell(n Node, area, title string) {
	role := "cell"
	if n.Tag == "th" {
		role = "columnheader"
	}
	names := "a-" + area
	if len(n.Attrs) > 0 && n.Attrs[len(n.Attrs)-1].Name == "class" {
		n.Attrs[len(n.Attrs)-1].Value += " " + names
	} else {
		class(names).join(n)
	}
	at("role", role).join(n)
	if area == pairArea && n.Tag == "td" {
		at("data-title", title).join(n)
		n.Kids = []Node{el("span", "", kids(n.Kids))}
	}
}
