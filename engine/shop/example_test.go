package shop_test

import (
	"fmt"
	"strings"

	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// The table of defaults, as a maker would read the part about gaps.
func ExampleDefaults() {
	for _, r := range shop.Defaults() {
		if strings.HasPrefix(r.Path, "gaps.") {
			fmt.Printf("%-14s %-6s %-8s %s (%s)\n", r.Path, r.Value(unit.Metric), r.Value(unit.Inches), r.Reason, r.Basis)
		}
	}
	// Output:
	// gaps.touching  3 mm   1/8 in   modules hung one by one never meet without a gap (common practice)
	// gaps.apart     20 mm  13/16 in a smaller gap looks like a mistake (common practice)
	// gaps.frame     5 mm   3/16 in  side walls and frames are not plumb (common practice)
	// gaps.ceiling   50 mm  2 in     room for the drill and for a hand (common practice)
	// gaps.inFront   20 mm  13/16 in a module slides straight out over the whole rod, and a little more (common practice)
	// gaps.socket    150 mm 6 in     room for a plug and for the cable beside it (our assumption)
}

// A profile is changed field by field, and refuses what no shop has.
func ExampleSet() {
	p := shop.Default(unit.Metric)
	p, err := shop.Set(p, "machines.saw.maxTilt", "47")
	fmt.Println(p.Machines.Saw.MaxTilt, err)
	_, err = shop.Set(p, "covers.pocket", "0")
	fmt.Println(err)
	// Output:
	// 47° <nil>
	// shop profile, covers.pocket: found 0 mm; allowed is 0.5 mm to 50 mm
}
