package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"ledgewright/engine"
	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
	"ledgewright/engine/view"
	"ledgewright/site"
)

// draw writes a picture.
type draw struct {
	File string `arg:"" help:"Plan, or - for standard input."`
	What string `help:"wall, wall:ARRANGEMENT, board:ID or corner:MODULE/N." default:"wall"`
}

func (c *draw) Run(s *streams) error {
	p, err := s.plan(c.File)
	if err != nil {
		return err
	}
	b := engine.Derive(p, nil)
	d, theme, err := picture(p, b, c.What)
	if err != nil {
		return fmt.Errorf("%s: %w", called(c.File), err)
	}
	return s.conclude(b, site.SVG(d, theme, -1), nil)
}

// picture draws what is asked for: walls as they are seen, boards and corners as they
// are drawn on paper.
func picture(p plan.Plan, b engine.Build, what string) (drawing.Drawing, drawing.Theme, error) {
	kind, id, _ := strings.Cut(what, ":")
	switch kind {
	case "wall":
		d, err := wallPicture(p, b, id)
		return d, drawing.Day, err
	case "board":
		d, err := boardPicture(b, id)
		return d, drawing.Paper, err
	case "corner":
		d, err := cornerPicture(b, id)
		return d, drawing.Paper, err
	}
	return drawing.Drawing{}, 0, fmt.Errorf("there is no picture %q: ask for wall, wall:ARRANGEMENT, board:ID or corner:MODULE/N", what)
}

// wallPicture draws one arrangement, the first when id is empty.
func wallPicture(p plan.Plan, b engine.Build, id string) (drawing.Drawing, error) {
	if len(b.Arrangements) == 0 {
		return drawing.Drawing{}, fmt.Errorf("no arrangement stands on a wall yet")
	}
	var ids []string
	for _, r := range b.Arrangements {
		if id == "" || id == r.Arrangement {
			return site.Wall(p, b, r, false), nil
		}
		ids = append(ids, r.Arrangement)
	}
	return drawing.Drawing{}, absent("arrangement", id, ids)
}

func boardPicture(b engine.Build, id string) (drawing.Drawing, error) {
	var ids []string
	for _, m := range b.Modules {
		for _, x := range m.Boards {
			if x.ID == id {
				return view.Board(x, view.Options{Style: b.Style()}), nil
			}
			ids = append(ids, x.ID)
		}
	}
	return drawing.Drawing{}, absent("board", id, ids)
}

func cornerPicture(b engine.Build, id string) (drawing.Drawing, error) {
	name, n, _ := strings.Cut(id, "/")
	var ids []string
	for _, m := range b.Modules {
		for _, c := range m.Corners {
			if c.Number == 0 {
				continue
			}
			if m.ID == name && strconv.Itoa(c.Number) == n {
				return view.Corner(m, c.Number, view.Options{Style: b.Style()}), nil
			}
			ids = append(ids, m.ID+"/"+strconv.Itoa(c.Number))
		}
	}
	return drawing.Drawing{}, absent("corner", id, ids)
}

// absent says what is not there, and what is.
func absent(what, id string, there []string) error {
	if len(there) == 0 {
		return fmt.Errorf("there is no %s %s: the plan has none", what, id)
	}
	if most := 12; len(there) > most {
		there = append(slices.Clone(there[:most]), "…")
	}
	return fmt.Errorf("there is no %s %s: there are %s", what, id, strings.Join(there, ", "))
}
