// Ledgewright works out solid-wood wall shelves: from a plan to boards with every
// cut, part list, holes in the wall, pictures, findings and a link.
//
// Results go to standard output, messages to standard error. It ends with 0 when all
// is well, with 1 when findings stop the job, and with 2 when the input cannot be
// used; the message then says where and why.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/alecthomas/kong"
)

// commands is the command line.
type commands struct {
	New    newPlan `cmd:"" help:"Write a plan to begin with: an example, or an empty wall."`
	Derive derive  `cmd:"" help:"Work a plan out: the build, as JSON for other tools."`
	Check  check   `cmd:"" help:"Say whether a plan fits, holds and can be made."`
	Edit   edit    `cmd:"" help:"Apply edits, one JSON object a line, and write the plan that results."`
	Parts  parts   `cmd:"" help:"Write the part list."`
	Draw   draw    `cmd:"" help:"Draw a wall, a board or a corner as SVG."`
	Link   linked  `cmd:"" help:"Write a plan as a link, or open one."`
	Serve  serve   `cmd:"" help:"Show the pages in a browser."`
}

// Exit codes.
const (
	fine     = 0
	stopped  = 1 // findings stop the job
	unusable = 2 // the input, or the output, cannot be used
)

// streams are where a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// errStops is returned by a command that did its work on a plan with findings that
// stop the job.
var errStops = errors.New("findings stop the job")

func main() {
	os.Exit(run(os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr}))
}

// run carries out one command line and returns its exit code.
func run(args []string, s streams) (code int) {
	defer func() {
		if c, ok := recover().(exit); ok {
			code = int(c)
		}
	}()
	var c commands
	parser, err := kong.New(&c,
		kong.Name("ledgewright"),
		kong.Description("Plans solid-wood wall shelves. FILE may be - for standard input."),
		kong.Writers(s.out, s.err),
		kong.Exit(func(code int) { panic(exit(code)) }),
		kong.ConfigureHelp(kong.HelpOptions{Compact: true}),
		kong.Bind(&s),
	)
	if err != nil {
		panic(err) // the table of commands is wrong
	}
	context, err := parser.Parse(args)
	if err == nil {
		err = context.Run()
	} else {
		err = fmt.Errorf("%w (try ledgewright --help)", err)
	}
	return s.report(err)
}

// exit carries an exit code out of the parser, which asks for it after printing help.
type exit int

// report says what went wrong, if anything did, and returns the exit code for it.
func (s streams) report(err error) int {
	switch {
	case err == nil:
		return fine
	case errors.Is(err, errStops):
		return stopped
	}
	fmt.Fprintf(s.err, "ledgewright: %v\n", err)
	return unusable
}

// write writes a result to standard output.
func (s streams) write(result []byte) error {
	if _, err := s.out.Write(result); err != nil {
		return fmt.Errorf("the result could not be written: %w", err)
	}
	return nil
}
