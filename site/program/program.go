// Package program compiles a js/wasm program as it is released: small first. The site,
// its tests and what weighs it all compile here, so that they speak of the same program.
package program

import (
	"fmt"
	"os"
	"os/exec"
	"strings"

	"ledgewright/site/slim"
)

// Compile writes the program of a package to a file. It runs in a directory of the
// repository and needs nothing but Go.
func Compile(pkg, file string) error {
	args := []string{"build", "-trimpath", "-ldflags=-s -w", "-o", file}
	if !strings.HasSuffix(pkg, "/stage") { // of that every frame is waited for
		args = append(args, cold()...)
	}
	c := exec.Command("go", append(args, pkg)...)
	c.Env, c.Stderr = append(os.Environ(), "GOOS=js", "GOARCH=wasm"), os.Stderr
	if err := c.Run(); err != nil {
		return fmt.Errorf("building %s: %w", pkg, err)
	}
	version, err := exec.Command("go", "env", "GOVERSION").Output()
	if err != nil {
		return err
	}
	wasm, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	small, err := slim.Program(wasm, strings.TrimSpace(string(version)))
	if small == nil {
		return err
	}
	if err != nil { // it works, but is larger: the weighing decides
		fmt.Fprintf(os.Stderr, "%s: %v\n", pkg, err)
	}
	return os.WriteFile(file, small, 0o755)
}

// cold are flags for the packages that are not waited for: nothing is inlined in them,
// which makes their code smaller by a tenth. The engine's geometry stays as fast as it is.
func cold() (flags []string) {
	for _, p := range strings.Fields(coldPackages) {
		flags = append(flags, "-gcflags="+p+"=-l")
	}
	return flags
}

const coldPackages = `
	ledgewright/wasm/...
	ledgewright/engine/document ledgewright/engine/drawing ledgewright/engine/edit ledgewright/engine/hardware
	ledgewright/engine/link ledgewright/engine/movement ledgewright/engine/plan ledgewright/engine/shop
	ledgewright/engine/words ledgewright/engine/wood
	encoding/... errors hash/... internal/reflectlite internal/strconv reflect sort strconv
	strings syscall/js unicode/...
`
