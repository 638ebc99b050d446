// Examples writes the plans of the examples that the tool ships.
//
// Usage, from the top of the repository:
//
//	go run ./testdata/examples assets/plans
package main

import (
	"fmt"
	"os"
	"path/filepath"

	"ledgewright/engine/plan"
	"ledgewright/testdata/examples/house"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: examples DIRECTORY")
		os.Exit(2)
	}
	for _, j := range house.Jobs() {
		if err := write(os.Args[1], j); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
}

func write(dir string, j house.Job) error {
	text, err := plan.Pretty(j.Plan)
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dir, j.Name+".json"), text, 0o644)
}
