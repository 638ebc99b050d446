package wall

import (
	"cmp"
	"slices"

	"ledgewright/engine/finding"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// hung is what Share compares of a placed module.
type hung struct {
	label   string
	depth   unit.Length
	out     unit.Length // as in body
	carries bool
	fixings int
}

// Share looks at the arrangements of a plan together. One set of bores has to serve all
// of them: a module that carries in one and not in another has a finding there. Holes
// that several arrangements of a wall use are named in each. Modules that meet in the
// corner between two walls must leave each other room. What is to be said of a wall is
// said once. The results that are given are not changed.
func Share(results []Result) []Result {
	out := slices.Clone(results)
	for i := range out {
		out[i].Findings = slices.Clip(out[i].Findings)
	}
	shareHoles(out)
	onceAWall(out)
	for i := range out {
		serve(out, i)
		if k := arrangementOf(out, out[i].corner); k >= 0 && k != i {
			turnCorner(&out[i], &out[k])
		}
	}
	for i := range out {
		if len(out[i].Findings) > len(results[i].Findings) {
			out[i].Findings = finding.WorstFirst(out[i].Findings)
		}
	}
	return out
}

func arrangementOf(results []Result, id string) int {
	if id == "" {
		return -1
	}
	return slices.IndexFunc(results, func(r Result) bool { return r.Arrangement == id })
}

// A spot is a hole among those of one wall.
type spot struct{ result, point int }

// shareHoles fills Shared. Holes are one when they are at the same place and of the same
// drill.
func shareHoles(results []Result) {
	var done []string
	for i := range results {
		wall := results[i].Wall
		if slices.Contains(done, wall) {
			continue
		}
		done = append(done, wall)
		spots := spotsOf(results, wall)
		at := func(s spot) *Point { return &results[s.result].Points[s.point] }
		rank.By(spots, func(a, b spot) int { return cmp.Compare(at(a).X, at(b).X) })
		for a := range spots {
			for b := a + 1; b < len(spots) && at(spots[b]).X-at(spots[a]).X <= unit.Touch; b++ {
				meetHoles(results, spots[a], spots[b])
			}
		}
	}
}

// spotsOf returns the holes of all arrangements of a wall, if there are several, and gives
// each of those points of its own.
func spotsOf(results []Result, wall string) (spots []spot) {
	n := 0
	for i := range results {
		if results[i].Wall == wall {
			n++
		}
	}
	if n < 2 {
		return nil
	}
	for i := range results {
		if results[i].Wall != wall {
			continue
		}
		results[i].Points = slices.Clone(results[i].Points)
		for k := range results[i].Points {
			if results[i].Points[k].What == Hole {
				spots = append(spots, spot{i, k})
			}
		}
	}
	return spots
}

// meetHoles names two holes of different arrangements in each other, if they are one.
func meetHoles(results []Result, a, b spot) {
	p, q := &results[a.result].Points[a.point], &results[b.result].Points[b.point]
	if a.result == b.result || p.Drill != q.Drill || (p.Y-q.Y).Abs() > unit.Touch {
		return
	}
	p.Shared = named(p.Shared, results[b.result].Arrangement)
	q.Shared = named(q.Shared, results[a.result].Arrangement)
}

// named returns names, which is the caller's or nobody's, with one more in order.
func named(names []string, name string) []string {
	i, ok := slices.BinarySearch(names, name)
	if ok {
		return names
	}
	return slices.Insert(names, i, name)
}

// CountHoles returns how many holes all arrangements of a wall make together, and how many
// of them serve more than one. The results must come from [Share].
func CountHoles(results []Result, wall string) (all, shared int) {
	for i := range results {
		if results[i].Wall != wall {
			continue
		}
		for k := range results[i].Points {
			p := &results[i].Points[k]
			if p.What != Hole || madeBefore(results[:i], wall, p.Shared) {
				continue
			}
			all++
			if len(p.Shared) > 0 {
				shared++
			}
		}
	}
	return all, shared
}

// madeBefore reports whether an earlier arrangement of the wall uses a hole already.
func madeBefore(earlier []Result, wall string, sharedBy []string) bool {
	return slices.ContainsFunc(earlier, func(r Result) bool { return r.Wall == wall && slices.Contains(sharedBy, r.Arrangement) })
}

// onceAWall drops the findings about a wall from all arrangements but its first that has
// a module.
func onceAWall(results []Result) {
	var said []string
	for i := range results {
		r := &results[i]
		has := func(f finding.Finding) bool { return f.Place.Arrangement == "" }
		if !slices.ContainsFunc(r.Findings, has) {
			continue
		}
		if slices.Contains(said, r.Wall) {
			r.Findings = slices.DeleteFunc(slices.Clone(r.Findings), has)
		}
		said = append(said, r.Wall)
	}
}

// serve says which modules of an arrangement carry in another one only.
func serve(results []Result, i int) {
	r := &results[i]
	for k := range r.hung {
		if r.hung[k].carries || r.hung[k].fixings == 0 {
			continue
		}
		other := carriesIn(results, r.Placed[k].Module)
		if other == "" {
			continue
		}
		name := words.Name("module", r.hung[k].label)
		r.Findings = append(r.Findings, finding.Finding{
			Kind: boresServeOne, Place: finding.Place{Wall: r.Wall, Arrangement: r.Arrangement, Module: r.Placed[k].Module},
			Args: []words.Arg{name, words.Name("other", other), words.Name("arrangement", r.Arrangement)},
			Remedies: []finding.Remedy{{
				Key: "add-bracket-for-pose", Args: []words.Arg{name},
				Edit: finding.Edit{Do: "place-brackets", Args: []words.Arg{words.Name("module", r.Placed[k].Module), words.Name("arrangement", r.Arrangement)}},
			}, {Key: "turn-back", Args: []words.Arg{name}}},
		})
	}
}

// carriesIn returns the first arrangement in which a module carries.
func carriesIn(results []Result, moduleID string) string {
	for i := range results {
		for k := range results[i].hung {
			if results[i].hung[k].carries && results[i].Placed[k].Module == moduleID {
				return results[i].Arrangement
			}
		}
	}
	return ""
}

// turnCorner compares the modules at the right end of one wall with those at the left end
// of the next. The walls are taken to stand square to each other, with the room between
// them.
//
// Seen from above, a module of the left wall covers the distances a from the corner along
// its wall, up to its depth; one of the right wall covers the distances b along its own.
func turnCorner(left, right *Result) {
	for i := range left.Placed {
		for k := range right.Placed {
			p, q := &left.Placed[i], &right.Placed[k]
			if len(p.Outlines) == 0 || len(q.Outlines) == 0 || !overlap(p.Box.MinY, p.Box.MaxY, q.Box.MinY, q.Box.MaxY) {
				continue
			}
			a, b := left.width-p.Box.MaxX, q.Box.MinX
			f, ok := cornerPair(a, b, &left.hung[i], &right.hung[k])
			if !ok {
				continue
			}
			f.Place = finding.Place{Wall: right.Wall, Arrangement: right.Arrangement, Module: q.Module}
			right.Findings = append(right.Findings, f)
		}
	}
}

// cornerPair judges two modules that stand a and b from the corner. A module that slides
// out over its rods must go on before the one that stands in its way. Two that do not
// overlap never stand in each other's way: for that each would have to begin nearer to
// the corner than the other is deep.
func cornerPair(a, b unit.Length, l, r *hung) (finding.Finding, bool) {
	left, right := words.Name("module", l.label), words.Name("module", r.label)
	switch {
	case short(a, r.depth) && short(b, l.depth):
		return finding.Finding{
			Kind: cornerOverlap, Value: words.LengthOf(min(r.depth-a, l.depth-b)), Limit: words.LengthOf(0),
			Args:     []words.Arg{right, words.Name("other", l.label)},
			Remedies: []finding.Remedy{{Key: "move-from-corner", Args: []words.Arg{right, words.Length("by", l.depth-b)}}},
		}, true
	case l.out > 0 && short(a, r.depth) && short(b, l.depth+l.out):
		return cornerFirst(left, words.Name("other", r.label), l.out), true
	case r.out > 0 && short(b, l.depth) && short(a, r.depth+r.out):
		return cornerFirst(right, words.Name("other", l.label), r.out), true
	}
	return finding.Finding{}, false
}

// cornerFirst says that a module goes on before another does.
func cornerFirst(first, other words.Arg, out unit.Length) finding.Finding {
	args := []words.Arg{first, other}
	return finding.Finding{Kind: cornerOrder, Args: args, Limit: words.LengthOf(out),
		Remedies: []finding.Remedy{{Key: "hang-in-order", Args: args}}}
}
