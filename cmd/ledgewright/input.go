package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"ledgewright/engine/plan"
)

// largest is the size of the largest document that is read, one byte more than any
// that is accepted: what is behind it cannot make the answer another one.
const largest = plan.MostBytes + 1

// read returns the content of a file, or of standard input when path is "-".
func (s streams) read(path string) ([]byte, error) {
	if path == "-" {
		return readUpTo(s.in, called(path))
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, fileError(path, err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, fmt.Errorf("%s: this is a directory, not a file", path)
	}
	return readUpTo(f, path)
}

// called is what a file is called in a message.
func called(path string) string {
	if path == "-" {
		return "standard input"
	}
	return path
}

func readUpTo(r io.Reader, name string) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, largest))
	if err != nil {
		return nil, fileError(name, err)
	}
	return text, nil
}

// fileError names the file and leaves out what the system call was called.
func fileError(path string, err error) error {
	var p *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: there is no such file", path)
	case errors.As(err, &p):
		return fmt.Errorf("%s: %w", path, p.Err)
	}
	return fmt.Errorf("%s: %w", path, err)
}

// plan reads a plan. What is wrong with it is said with the file's name in front.
func (s streams) plan(path string) (plan.Plan, error) {
	text, err := s.read(path)
	if err != nil {
		return plan.Plan{}, err
	}
	p, err := plan.Decode(text)
	if err != nil {
		return plan.Plan{}, fmt.Errorf("%s: %w", called(path), err)
	}
	if p.Newer() {
		fmt.Fprintf(s.err, "ledgewright: note: %s was written by a newer version (%s); what this version does not know is left alone\n", called(path), p.Schema)
	}
	return p, nil
}
