package main

import (
	"fmt"

	"ledgewright/engine/link"
)

// linked writes a plan as a link, or opens one.
type linked struct {
	File  string  `arg:"" optional:"" help:"Plan, or - for standard input."`
	Open  *string `help:"A link, or the code in it: write its plan." placeholder:"LINK"`
	Names bool    `help:"Put the title block and the shop's name into the link; they stay out otherwise."`
	Page  string  `help:"Page that the link leads to." default:"http://localhost:8080/"`
}

func (c *linked) Run(s *streams) error {
	switch {
	case c.Open != nil && c.File != "":
		return fmt.Errorf("link takes a FILE or --open, not both")
	case c.Open != nil:
		p, err := link.DecodePlan(*c.Open)
		if err != nil {
			return err
		}
		return s.writePlan(p)
	case c.File == "":
		return fmt.Errorf("link needs a FILE, or --open with a link")
	}
	p, err := s.plan(c.File)
	if err != nil {
		return err
	}
	code, err := link.EncodePlan(p, link.Options{Names: c.Names})
	if err != nil {
		return fmt.Errorf("%s: %w", called(c.File), err)
	}
	return s.writeLink(c.Page + "#" + code)
}

// writeLink writes a link, and says on standard error when it is so long that some
// messengers will cut it.
func (s streams) writeLink(l string) error {
	if len(l) > link.Warn {
		fmt.Fprintf(s.err, "ledgewright: note: this link has %d characters; some messengers cut links over %d, so send the file\n", len(l), link.Warn)
	}
	return s.write([]byte(l + "\n"))
}
