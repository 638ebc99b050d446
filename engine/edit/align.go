package edit

import (
	"cmp"
	"slices"

	"ledgewright/engine/document"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
)

// Align moves modules of an arrangement so that the boxes of their outlines share a line
// with the first that is named: "left", "right", "top", "bottom", "centre" (upright
// centre lines) or "middle" (level ones).
type Align struct {
	Arrangement string   `json:"arrangement"`
	Modules     []string `json:"modules"`
	To          string   `json:"to"`
}

// Do returns "align".
func (Align) Do() string { return "align" }

func (e Align) apply(p plan.Plan) (plan.Plan, Name, error) {
	at := where("arrangement", e.Arrangement)
	lines := []string{"left", "right", "top", "bottom", "centre", "middle"}
	if !slices.Contains(lines, e.To) {
		return p, Name{}, notOneOf(at, "to", e.To, lines...)
	}
	boxes, err := boxes(p, e.Arrangement, e.Modules, 2)
	if err != nil {
		return p, Name{}, err
	}
	p, err = changePoses(p, e.Arrangement, e.Modules, func(i int, o plan.Pose) plan.Pose {
		by := lineOf(boxes[0], e.To) - lineOf(boxes[i], e.To)
		switch e.To {
		case "left", "right", "centre":
			o.X += by
		default:
			o.Y += by
		}
		return o
	})
	return p, group(p, e, e.Modules), err
}

// lineOf returns the place of one line of a box.
func lineOf(b module.Box, line string) unit.Length {
	switch line {
	case "left":
		return b.MinX
	case "right":
		return b.MaxX
	case "top":
		return b.MaxY
	case "bottom":
		return b.MinY
	case "centre":
		return b.MinX + (b.MaxX-b.MinX)/2
	}
	return b.MinY + (b.MaxY-b.MinY)/2
}

// boxes returns the boxes of modules in an arrangement; there must be at least so many.
func boxes(p plan.Plan, arrangement string, ids []string, least int) ([]module.Box, error) {
	at := where("arrangement", arrangement)
	if _, err := oneOrMore("", ids, at); err != nil {
		return nil, err
	}
	if len(ids) < least {
		return nil, refuse("too-few-modules", at, words.Count("value", len(ids)), words.Count("limit", least))
	}
	i, err := findArrangement(p, arrangement)
	if err != nil {
		return nil, err
	}
	out := make([]module.Box, len(ids))
	for k, id := range ids {
		j, err := findPose(p.Arrangements[i], id)
		if err != nil {
			return nil, err
		}
		n, err := findModule(p, id)
		if err != nil {
			return nil, err
		}
		worked := module.Derive(p.Modules[n], p.Shop)
		if len(worked.Outlines) == 0 {
			return nil, refuse("not-worked-out", where("module", id))
		}
		out[k] = wall.Place(worked, p.Arrangements[i].Poses[j]).Box
	}
	return out, nil
}

// Spread moves modules of an arrangement apart or together along x or y, in the order in
// which they stand, so that the gaps between their boxes are equal: the given gap, counted
// from the first, or with the outer two kept where they are. A total that does not divide
// leaves gaps that differ by a nanometre.
type Spread struct {
	Arrangement string                    `json:"arrangement"`
	Modules     []string                  `json:"modules"`
	Along       string                    `json:"along"` // "x" or "y"
	Gap         document.Opt[unit.Length] `json:"gap,omitempty"`
}

// Do returns "spread".
func (Spread) Do() string { return "spread" }

func (e Spread) apply(p plan.Plan) (plan.Plan, Name, error) {
	if e.Along != "x" && e.Along != "y" {
		return p, Name{}, notOneOf(where("arrangement", e.Arrangement), "along", e.Along, "x", "y")
	}
	least := 3
	if e.Gap.Known {
		least = 2
	}
	boxes, err := boxes(p, e.Arrangement, e.Modules, least)
	if err != nil {
		return p, Name{}, err
	}
	by := e.moves(boxes)
	p, err = changePoses(p, e.Arrangement, e.Modules, func(i int, o plan.Pose) plan.Pose {
		if e.Along == "x" {
			o.X += by[i]
		} else {
			o.Y += by[i]
		}
		return o
	})
	return p, group(p, e, e.Modules), err
}

// moves returns how far each module goes.
func (e Spread) moves(boxes []module.Box) []unit.Length {
	from, to := "left", "right"
	if e.Along == "y" {
		from, to = "bottom", "top"
	}
	order := make([]int, len(boxes))
	var wood unit.Length
	for i, b := range boxes {
		order[i] = i
		wood += lineOf(b, to) - lineOf(b, from)
	}
	rank.By(order, func(i, k int) int { return cmp.Compare(lineOf(boxes[i], from), lineOf(boxes[k], from)) })
	first, last := boxes[order[0]], boxes[order[len(order)-1]]
	gaps := int64(len(boxes) - 1)
	free := lineOf(last, to) - lineOf(first, from) - wood
	by := make([]unit.Length, len(boxes))
	at := lineOf(first, from)
	for k, i := range order {
		gone := free.MulDiv(int64(k), gaps)
		if e.Gap.Known {
			gone = e.Gap.Value * unit.Length(k)
		}
		by[i] = at + gone - lineOf(boxes[i], from)
		at += lineOf(boxes[i], to) - lineOf(boxes[i], from)
	}
	return by
}
