package hold

// Three rods in a board, or rods in two boards, are more than statics needs: which of them
// carry is decided by two tenths of a millimetre in their bores, and no stiffness tells. So
// each is taken to carry nothing in turn, and what is worst counts.

// A lack is rods that carry nothing, with the name of their bracket or board.
type lack struct {
	name string
	rods []rodID
}

// mayLack lists the rods that may carry nothing: each of three or more in a board, and all
// of a board where rods of another can carry.
func (f *model) mayLack() (out []lack) {
	var rows []lack
	for i := range f.boards {
		row := lack{name: f.boards[i].board.ID}
		for k := range f.rods {
			if f.rods[k].bar == i {
				row.rods = append(row.rods, f.rods[k].id)
			}
		}
		if len(row.rods) > 0 {
			rows = append(rows, row)
		}
		for _, id := range row.rods {
			if len(row.rods) > 2 {
				out = append(out, lack{f.of.Fixings[id.fixing].Bracket, []rodID{id}})
			}
		}
	}
	if len(rows) > 1 {
		out = append(out, rows...)
	}
	return out
}

// standsPinned says whether a module bears its loads with corners that carry no moment.
func (r *Response) standsPinned(site *Site, loads []load) (bool, error) {
	if r.pinned == nil {
		return false, nil
	}
	j, err := r.pinned.judged(site, loads)
	return err == nil && j.worst().Part <= 1+closeness, err
}
