package edit

import (
	"slices"

	"ledgewright/engine/document"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// mostTurn bounds the turn of a corner either way.
const mostTurn = 150 * unit.Degree

// fewestClosed is the least number of boards that close.
const fewestClosed = 3

// AddBoard adds a board to a module's chain. It joins the board before it by a new
// corner of the given turn, and the corner that stood there goes on to the board after
// it; a board before the first joins that one. What stands on boards further along moves
// with them.
type AddBoard struct {
	Module        string                           `json:"module"`
	At            int                              `json:"at,omitempty"` // number that the board gets; missing: after the last
	Turn          unit.Angle                       `json:"turn,omitempty"`
	Joint         string                           `json:"joint,omitempty"`         // missing: a mitre
	Reinforcement document.Opt[plan.Reinforcement] `json:"reinforcement,omitempty"` // missing: that of the neighbouring corner
	With          document.Extra                   `json:"-"`                       // of the board; thickness is that of its neighbour when missing
}

// Do returns "add-board".
func (AddBoard) Do() string { return "add-board" }

func (e AddBoard) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onModule(p, e, e.Module, func(m plan.Module) (plan.Module, error) {
		n := len(m.Boards)
		at := e.At
		if at == 0 {
			at = n + 1
		}
		i, err := number(at, n+1, "board", where("module", m.ID))
		if err != nil {
			return m, err
		}
		var b plan.Board
		if n > 0 {
			b.Thickness = m.Boards[max(i-1, 0)].Thickness
		}
		b, err = fresh(b, e.With, where("module", m.ID)+", new board")
		if err != nil {
			return m, err
		}
		m.Boards = inserted(m.Boards, i, b)
		m = renumbered(m, func(old int) int {
			if old >= at {
				return old + 1
			}
			return old
		})
		if n == 0 {
			return m, nil
		}
		return e.cornered(m, max(i-1, 0))
	})
}

// cornered returns m with the new board's corner as the one with index i.
func (e AddBoard) cornered(m plan.Module, i int) (plan.Module, error) {
	c := plan.Corner{Turn: e.Turn, Joint: e.Joint}
	if c.Joint == "" {
		c.Joint = plan.Mitre
	}
	switch {
	case e.Reinforcement.Known:
		c.Reinforcement = e.Reinforcement.Value
	case len(m.Corners) > 0:
		c.Reinforcement = m.Corners[max(i-1, 0)].Reinforcement
	}
	if i > len(m.Corners) {
		return m, refuse("corners-wrong", where("module", m.ID), words.Count("value", len(m.Corners)), words.Count("limit", len(m.Boards)-2))
	}
	m.Corners = inserted(m.Corners, i, c)
	return m, checkCorner(c, whereN(m, "corner", i+1))
}

func checkCorner(c plan.Corner, where string) error {
	joints := []string{plan.Mitre, plan.ButtFirst, plan.ButtSecond, plan.RebateFirst, plan.RebateSecond}
	kinds := []string{"", "spline", "tenon", "dowel", "key", "screw"}
	switch {
	case c.Turn == 0 || c.Turn.Abs() > mostTurn:
		return refuse("turn", where, words.Angle("value", c.Turn), words.Angle("limit", mostTurn))
	case !slices.Contains(joints, c.Joint):
		return notOneOf(where, "joint", c.Joint, joints...)
	case !slices.Contains(kinds, c.Reinforcement.Kind):
		return notOneOf(where, "kind", c.Reinforcement.Kind, kinds[1:]...)
	}
	return nil
}

// renumbered returns m with the numbers of boards in dividers, lights and brackets
// passed through to.
func renumbered(m plan.Module, to func(int) int) plan.Module {
	m.Dividers = slices.Clone(m.Dividers)
	for i := range m.Dividers {
		d := &m.Dividers[i]
		d.From, d.To = to(d.From), to(d.To)
	}
	m.Lights = slices.Clone(m.Lights)
	for i := range m.Lights {
		l := &m.Lights[i]
		l.First, l.Last = to(l.First), to(l.Last)
	}
	m.Brackets = slices.Clone(m.Brackets)
	for i := range m.Brackets {
		if b := &m.Brackets[i]; b.Divider == "" {
			b.Board = to(b.Board)
		}
	}
	return m
}

// SetBoard changes a board of the chain: name, length (null: to close), thickness.
type SetBoard struct {
	Module string         `json:"module"`
	Board  int            `json:"board"`
	With   document.Extra `json:"-"`
}

// Do returns "set-board".
func (SetBoard) Do() string { return "set-board" }

func (e SetBoard) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onModule(p, e, e.Module, func(m plan.Module) (plan.Module, error) {
		i, err := number(e.Board, len(m.Boards), "board", where("module", m.ID))
		if err != nil {
			return m, err
		}
		b, err := patch(m.Boards[i], e.With, whereN(m, "board", e.Board))
		m.Boards = with(m.Boards, i, b)
		return m, err
	})
}

// RemoveBoard takes a board out of the chain. The corner after it goes with it (before
// it, for the last board of an open chain), and so does everything that stands on it:
// dividers that meet it, brackets, and its part of a light. What stands on boards further
// along moves with them.
type RemoveBoard struct {
	Module string                   `json:"module"`
	Board  int                      `json:"board"`
	Turn   document.Opt[unit.Angle] `json:"turn,omitempty"` // of the corner that now joins its neighbours
}

// Do returns "remove-board".
func (RemoveBoard) Do() string { return "remove-board" }

func (e RemoveBoard) apply(p plan.Plan) (plan.Plan, Name, error) {
	i, err := findModule(p, e.Module)
	if err != nil {
		return p, Name{}, err
	}
	was := p.Modules[i]
	m, err := e.removed(was)
	if err != nil {
		return p, Name{}, err
	}
	p.Modules = with(p.Modules, i, m)
	gone := len(was.Dividers) + len(was.Lights) + len(was.Brackets) - len(m.Dividers) - len(m.Lights) - len(m.Brackets)
	if gone > 0 {
		return p, doing(e, "bearing", ofModule(m), words.Count("n", e.Board), words.Count("gone", gone)), nil
	}
	return p, did(e, ofModule(m), words.Count("n", e.Board)), nil
}

func (e RemoveBoard) removed(m plan.Module) (plan.Module, error) {
	i, err := number(e.Board, len(m.Boards), "board", where("module", m.ID))
	if err != nil {
		return m, err
	}
	fewest := 1
	if m.Closed {
		fewest = fewestClosed
	}
	n := len(m.Boards)
	if n-1 < fewest {
		return m, refuse("last-board", where("module", m.ID), words.Count("value", n), words.Count("limit", fewest))
	}
	gone := i
	if !m.Closed && i == n-1 {
		gone = i - 1
	}
	if gone >= len(m.Corners) {
		return m, refuse("corners-wrong", where("module", m.ID), words.Count("value", len(m.Corners)), words.Count("limit", n-1))
	}
	m = cleared(m, e.Board)
	m.Boards = without(m.Boards, i)
	m.Corners = without(m.Corners, gone)
	if !e.Turn.Known {
		return m, nil
	}
	return e.turned(m, i)
}

// turned sets the turn of the corner that joins the neighbours of the board that stood
// at index i.
func (e RemoveBoard) turned(m plan.Module, i int) (plan.Module, error) {
	joins := i - 1
	if m.Closed {
		joins = (i - 1 + len(m.Corners)) % len(m.Corners)
	}
	if joins < 0 || joins >= len(m.Corners) {
		return m, refuse("no-corner-left", where("module", m.ID), words.Count("n", e.Board))
	}
	c := m.Corners[joins]
	c.Turn = e.Turn.Value
	m.Corners = with(m.Corners, joins, c)
	return m, checkCorner(c, whereN(m, "corner", joins+1))
}

// cleared returns m without what stands on the board with number k, and with the numbers
// that follow from its going.
func cleared(m plan.Module, k int) plan.Module {
	n := len(m.Boards)
	m.Dividers = kept(m.Dividers, func(d plan.Divider) bool { return d.From != k && d.To != k })
	m.Lights = kept(shortened(m.Lights, k, n), func(l plan.Light) bool { return l.First != 0 })
	m.Brackets = kept(m.Brackets, func(b plan.Bracket) bool {
		if b.Divider == "" {
			return b.Board != k
		}
		return slices.ContainsFunc(m.Dividers, func(d plan.Divider) bool { return d.ID == b.Divider })
	})
	return renumbered(m, func(old int) int {
		if old > k {
			return old - 1
		}
		return old
	})
}

// shortened returns the lights with their runs ended beside the board k of n; a run of
// that board alone gets the first board 0.
func shortened(lights []plan.Light, k, n int) []plan.Light {
	lights = slices.Clone(lights)
	for i := range lights {
		l := &lights[i]
		switch {
		case l.First == k && l.Last == k:
			l.First = 0
		case l.First == k:
			l.First = k%n + 1
		case l.Last == k:
			l.Last = (k-2+n)%n + 1
		}
	}
	return lights
}

// kept returns the items for which keep holds, in storage of their own; nil for none.
func kept[T any](s []T, keep func(T) bool) []T {
	var out []T
	for _, v := range s {
		if keep(v) {
			out = append(out, v)
		}
	}
	return out
}

// SetCorner changes a corner: turn, joint, reinforcement. Another kind of reinforcement
// drops the sizes of the old one that are not named.
type SetCorner struct {
	Module string         `json:"module"`
	Corner int            `json:"corner"` // number of the board before it
	With   document.Extra `json:"-"`
}

// Do returns "set-corner".
func (SetCorner) Do() string { return "set-corner" }

func (e SetCorner) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onModule(p, e, e.Module, func(m plan.Module) (plan.Module, error) {
		at := whereN(m, "corner", e.Corner)
		i, err := number(e.Corner, len(m.Corners), "corner", where("module", m.ID))
		if err != nil {
			return m, err
		}
		c, err := patch(m.Corners[i], e.With, at)
		if err == nil && c.Reinforcement.Kind != m.Corners[i].Reinforcement.Kind {
			bare := m.Corners[i]
			bare.Reinforcement = plan.Reinforcement{Extra: bare.Reinforcement.Extra}
			c, err = patch(bare, e.With, at)
		}
		if err == nil {
			err = checkCorner(c, at)
		}
		m.Corners = with(m.Corners, i, c)
		return m, err
	})
}

// closed returns m with its chain closed.
func closed(m plan.Module) (plan.Module, error) {
	n := len(m.Boards)
	if n < fewestClosed || len(m.Corners) != n-1 {
		return m, refuse("too-few-to-close", where("module", m.ID), words.Count("value", n), words.Count("limit", fewestClosed))
	}
	var sum unit.Angle
	for _, c := range m.Corners {
		sum += c.Turn
	}
	full := unit.FullTurn
	if sum < 0 {
		full = -full
	}
	c := m.Corners[n-2]
	c.Turn = full - sum
	if err := checkCorner(c, whereN(m, "corner", n)); err != nil {
		return m, refuse("turns-do-not-close", where("module", m.ID), words.Angle("value", sum), words.Angle("limit", full))
	}
	m.Closed = true
	m.Corners = inserted(m.Corners, n-1, c)
	m.Boards = slices.Clone(m.Boards)
	for i := n - 2; i < n; i++ {
		m.Boards[i].Length = document.Opt[unit.Length]{}
	}
	return m, nil
}

// opened returns m with its chain open between the last board and the first.
func opened(m plan.Module, s shop.Profile) (plan.Module, error) {
	worked := module.Derive(m, s)
	if len(worked.Boards) < len(m.Boards) || len(m.Corners) != len(m.Boards) {
		return m, refuse("not-worked-out", where("module", m.ID))
	}
	m.Boards = slices.Clone(m.Boards)
	for i := range m.Boards {
		if b := &m.Boards[i]; !b.Length.Known {
			b.Length = document.Some(worked.Boards[i].Length)
		}
	}
	m.Closed = false
	m.Corners = without(m.Corners, len(m.Corners)-1)
	n := len(m.Boards)
	for _, l := range m.Lights {
		if l.First > l.Last {
			return m, refuse("light-round-the-end", where("light", l.ID), words.Count("n", n))
		}
	}
	return m, nil
}
