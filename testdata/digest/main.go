// Digest prints one line for each example, job and random plan: its name and digests
// of the build, of the link, and of the pictures of its walls as SVG with grain. Run natively and as js/wasm, the two
// outputs must be the same: same plan, same answer, on every machine.
//
// Usage, from the top of the repository:
//
//	go run ./testdata/digest [number of random plans]
package main

import (
	"fmt"
	"hash/fnv"
	"os"
	"strconv"
	"strings"

	"ledgewright/assets"
	"ledgewright/engine"
	"ledgewright/engine/drawing"
	"ledgewright/engine/link"
	"ledgewright/engine/plan"
	"ledgewright/engine/view"
	"ledgewright/testdata/jobs"
)

func main() {
	n := uint64(300)
	if len(os.Args) > 1 {
		if v, err := strconv.ParseUint(os.Args[1], 10, 32); err == nil {
			n = v
		}
	}
	for _, name := range assets.Names() {
		p, err := assets.Plan(name)
		if err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		line(name, p)
	}
	line("job-S", jobs.S())
	line("job-M", jobs.M(3))
	line("job-L", jobs.L())
	for seed := range n {
		line("random-"+strconv.FormatUint(seed, 10), jobs.RandomPlan(seed))
	}
}

func line(name string, p plan.Plan) {
	b := engine.Derive(p, nil)
	text, err := engine.Encode(b)
	code, err2 := link.EncodePlan(p, link.Options{Names: true})
	fmt.Println(name, digest(string(text), err), digest(code, err2), digest(pictures(p, b), nil))
}

// pictures are the pictures of all arrangements, one after the other.
func pictures(p plan.Plan, b engine.Build) string {
	var s strings.Builder
	for _, r := range b.Arrangements {
		w, _ := p.Wall(r.Wall)
		d := view.Wall(w, r, b.Modules, view.Options{Style: b.Style(), Shallow: true})
		s.WriteString(drawing.SVG(d, drawing.SVGOptions{Grain: 12, Woods: view.Woods()}))
	}
	return s.String()
}

// digest is FNV-1a, 64 bits; an error is digested as its text.
func digest(s string, err error) string {
	if err != nil {
		s = err.Error()
	}
	h := fnv.New64a()
	h.Write([]byte(s))
	return strconv.FormatUint(h.Sum64(), 16)
}
