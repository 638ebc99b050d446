package main

import (
	"bytes"
	"errors"
	"fmt"

	"ledgewright/engine"
	"ledgewright/engine/document"
	edits "ledgewright/engine/edit"
	"ledgewright/engine/plan"
	"ledgewright/engine/words"
)

// derive writes the build of a plan.
type derive struct {
	File string `arg:"" help:"Plan, or - for standard input."`
}

func (c *derive) Run(s *streams) error {
	b, err := s.build(c.File)
	if err != nil {
		return err
	}
	text, err := engine.Encode(b)
	return s.conclude(b, text, err)
}

// check writes the verdicts and findings of a plan.
type check struct {
	File string `arg:"" help:"Plan, or - for standard input."`
	Text bool   `help:"Write sentences instead of JSON."`
}

func (c *check) Run(s *streams) error {
	b, err := s.build(c.File)
	if err != nil {
		return err
	}
	if c.Text {
		return s.conclude(b, report(b), nil)
	}
	text, err := judgement(b)
	return s.conclude(b, text, err)
}

// judgement is the part of the build's document that says what is wrong.
func judgement(b engine.Build) ([]byte, error) {
	text, err := engine.Encode(b)
	if err != nil {
		return nil, err
	}
	whole, err := document.Limits{Bytes: len(text), Values: len(text), Items: len(text)}.Parse(text)
	if err != nil {
		return nil, err
	}
	verdicts, _ := whole.Get("verdicts")
	findings, _ := whole.Get("findings")
	return document.ObjectNode(verdicts, findings).Pretty()
}

// build reads a plan and works it out.
func (s streams) build(path string) (engine.Build, error) {
	p, err := s.plan(path)
	if err != nil {
		return engine.Build{}, err
	}
	return engine.Derive(p, nil), nil
}

// conclude writes a result and says whether findings of the build stop the job.
func (s streams) conclude(b engine.Build, text []byte, err error) error {
	if err != nil {
		return err
	}
	if err := s.write(text); err != nil {
		return err
	}
	if b.Stops() {
		return errStops
	}
	return nil
}

// edit applies edits to a plan.
type edit struct {
	File  string `arg:"" help:"Plan, or - for standard input."`
	Edits string `arg:"" help:"Edits, one JSON object a line, or - for standard input."`
}

func (c *edit) Run(s *streams) error {
	if c.File == "-" && c.Edits == "-" {
		return fmt.Errorf("plan and edits cannot both come from standard input")
	}
	p, err := s.plan(c.File)
	if err != nil {
		return err
	}
	text, err := s.read(c.Edits)
	if err != nil {
		return err
	}
	for i, line := range bytes.Split(text, []byte("\n")) {
		if line = bytes.TrimSpace(line); len(line) == 0 {
			continue
		}
		if p, err = s.apply(p, line); err != nil {
			return onLine(called(c.Edits), i, err)
		}
	}
	return s.writePlan(p)
}

// onLine says in which line of a file, from 0, an error is.
func onLine(path string, i int, err error) error {
	var d *document.Error
	if errors.As(err, &d) && d.Line > 0 {
		d.Line += i // the line was read as a document of its own
		return fmt.Errorf("%s: %w", path, err)
	}
	return fmt.Errorf("%s: line %d: %w", path, i+1, err)
}

// apply applies one line of edits and says on standard error what it did.
func (s streams) apply(p plan.Plan, line []byte) (plan.Plan, error) {
	e, err := edits.Decode(line)
	if err != nil {
		return p, err
	}
	next, name, err := edits.Apply(p, e)
	if err != nil {
		return p, err
	}
	fmt.Fprintln(s.err, words.Text(name.Key, name.Args, p.Style()))
	return next, nil
}

func (s streams) writePlan(p plan.Plan) error {
	text, err := plan.Pretty(p)
	if err != nil {
		return err
	}
	return s.write(text)
}
