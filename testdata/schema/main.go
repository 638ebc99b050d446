// Schema writes the JSON Schema (2020-12) of the build from the Go types, with their
// comments as descriptions, so that the schema cannot fall behind the code.
//
// Usage, from the top of the repository:
//
//	go run ./testdata/schema > site/schema/build-1.schema.json
package main

import (
	"encoding/json"
	"fmt"
	"os"

	"ledgewright/testdata/schema/describe"
)

func main() {
	s, err := describe.Build(".")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	e := json.NewEncoder(os.Stdout)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(s); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
