package mount

import (
	"strings"

	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/hardware"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// remedy is something that the maker does.
func remedy(key string, args ...words.Arg) finding.Remedy {
	return finding.Remedy{Key: key, Args: args}
}

// module returns the id of the module, which a board's id begins with.
func (j *job) module() string {
	if j.Module != "" {
		return j.Module
	}
	id, _, ok := strings.Cut(j.Board.ID, ".")
	if !ok {
		return ""
	}
	return id
}

// change is a remedy that changes this bracket.
func (j *job) change(key string, arg words.Arg) finding.Remedy {
	return finding.Remedy{Key: key, Args: []words.Arg{words.Name("bracket", j.Bracket), arg}, Edit: finding.Edit{
		Do: "set-bracket", Args: []words.Arg{words.Name("bracket", j.Bracket), arg},
	}}
}

func (j *job) useKind(id string) finding.Remedy {
	return j.change("bracket-kind", words.Name("kind", id))
}
func (j *job) moveTo(at unit.Length) finding.Remedy {
	return j.change("bracket-at", words.Length("at", at))
}
func (j *job) cutTo(l unit.Length) finding.Remedy {
	return j.change("bracket-length", words.Length("length", l))
}

// use is no remedy, or one: the kind id.
func (j *job) use(id string) []finding.Remedy {
	if id == "" {
		return nil
	}
	return []finding.Remedy{j.useKind(id)}
}

// otherFamilies offers the size of each family for this board.
func (j *job) otherFamilies(families ...hardware.Family) (out []finding.Remedy) {
	for _, f := range families {
		out = append(out, j.useKind(hardware.Sized(string(f), j.Board.Width, j.Shop.System)))
	}
	return out
}

// like returns the first kind of the same family that serves, or "".
func (j *job) like(serves func(*hardware.BracketKind) bool) string {
	for _, k := range hardware.Of(j.kind.Family) {
		if serves(&k) {
			return k.ID
		}
	}
	return ""
}

// largest returns the kind of the same family with the thickest rod among those that
// serve and are locked and whole at the root, or "".
func (j *job) largest(serves func(*hardware.BracketKind) bool) (id string) {
	var rod unit.Length
	for _, k := range hardware.Of(j.kind.Family) {
		firm := k.Lock != hardware.Open && k.Root == k.Rod && k.Pitch == j.kind.Pitch &&
			inches(k.ID) == inches(j.kind.ID)
		if firm && k.Rod > rod && serves(&k) {
			id, rod = k.ID, k.Rod
		}
	}
	return id
}

// inches reports whether a kind is sized in inches.
func inches(id string) bool { return strings.HasSuffix(id, "in") }

// thinner returns the largest kind of the same family whose plate fits, or "".
func (j *job) thinner(limit unit.Length) string {
	return j.largest(func(k *hardware.BracketKind) bool { return k.Plate.AlongW <= limit })
}

// thinnerRod returns the largest kind of the same family whose bore leaves enough wood,
// or "".
func (j *job) thinnerRod() string {
	slack := j.bore() - j.kind.Rod
	return j.largest(func(k *hardware.BracketKind) bool {
		cover := max(j.Shop.Covers.Bore, (k.Rod+1)/2)
		return (j.Board.Thickness-k.Rod-slack)/2 >= cover
	})
}

// thicker asks for boards of at least t: the next thickness that the shop works in.
func (j *job) thicker(t unit.Length) finding.Remedy {
	best := up(t, unit.Millimetre)
	if j.Shop.System == unit.Inches {
		best = up(t, unit.Inch/8)
	}
	for _, s := range j.Shop.Stock.Thicknesses {
		if s >= t {
			best = s
			break
		}
	}
	arg := words.Length("thickness", best)
	switch {
	case j.Board.Role == board.Divider:
		return finding.Remedy{Key: "board-thicker", Args: []words.Arg{words.Name("board", j.Board.ID), arg},
			Edit: finding.Edit{Do: "set-divider", Args: []words.Arg{words.Name("divider", j.divider()), arg}}}
	case j.module() == "":
		return remedy("board-thicker", words.Name("board", j.Board.ID), arg)
	}
	return finding.Remedy{Key: "module-thicker", Args: []words.Arg{words.Name("module", j.module()), arg},
		Edit: finding.Edit{Do: "set-module", Args: []words.Arg{words.Name("module", j.module()), arg}}}
}

// divider returns the id of the divider that the board is.
func (j *job) divider() string {
	if _, id, ok := strings.Cut(j.Board.ID, "."); ok {
		return id
	}
	return j.Board.ID
}

// deeper asks for a module that leaves enough wood before the bottom of what is so deep
// now. A deeper board asks for a longer rod too, so the depth is sought step by step.
func (j *job) deeper(depth unit.Length) finding.Remedy {
	probe := *j
	for range 400 {
		probe.Board.Width += j.step()
		if j.kind.Rod > 0 {
			depth = probe.reach() + j.Shop.Rods.Deeper
		}
		if probe.Board.Width-depth >= j.Shop.Covers.Front {
			break
		}
	}
	arg := words.Length("depth", probe.Board.Width)
	r := finding.Remedy{Key: "module-deeper", Args: []words.Arg{words.Name("board", j.Board.ID), arg}}
	if m := j.module(); m != "" {
		r.Edit = finding.Edit{Do: "set-module", Args: []words.Arg{words.Name("module", m), arg}}
	}
	return r
}

// moveIn moves the bracket to the nearest place in its room, or asks for a longer board
// where there is none.
func (j *job) moveIn() finding.Remedy {
	from, to := j.room()
	if from > to {
		return remedy("board-longer", words.Name("board", j.Board.ID), words.Length("more", from-to))
	}
	return j.moveTo(min(max(j.At, from), to))
}
