package main

import (
	"ledgewright/engine"
	"ledgewright/engine/document"
	"ledgewright/engine/part"
	"ledgewright/engine/unit"
)

// parts writes the part list of a plan.
type parts struct {
	File      string `arg:"" help:"Plan, or - for standard input."`
	CSV       bool   `name:"csv" help:"Write the wooden parts for a spreadsheet." xor:"form"`
	Semicolon bool   `help:"The same for a spreadsheet whose decimal sign is the comma." xor:"form"`
	Text      bool   `help:"Write a table to read, hardware included." xor:"form"`
}

func (c *parts) Run(s *streams) error {
	p, err := s.plan(c.File)
	if err != nil {
		return err
	}
	b := engine.Derive(p, nil)
	switch {
	case c.CSV, c.Semicolon:
		return s.conclude(b, part.CSV(b.Parts, p.Units.System, c.Semicolon), nil)
	case c.Text:
		bench := unit.Style{System: p.Units.System, Step: p.Shop.Tape.Bench}
		return s.conclude(b, []byte(part.Text(b.Parts, bench)), nil)
	}
	text, err := document.Pretty(b.Parts)
	return s.conclude(b, text, err)
}
