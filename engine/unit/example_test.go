package unit_test

import (
	"fmt"

	"ledgewright/engine/unit"
)

func ExampleParseLength() {
	for _, s := range []string{`7' 3-1/2"`, "60 cm", "1200 - 18", "1,200"} {
		l, err := unit.ParseLength(s, unit.Metric)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(l)
	}
	// Output:
	// 2222.5 mm
	// 600 mm
	// 1182 mm
	// 1,200 could be 1.200 or 1200; type 1.200 or 1200
}

func ExampleStyle() {
	l := 51*unit.Inch + unit.Inch/2
	tape := unit.Style{System: unit.Inches, Step: unit.Inch / 16}
	fmt.Println(tape.Length(l))
	fmt.Println(tape.WithUnit(l))
	fmt.Println(tape.Site(l))
	rounded, applied := tape.Rounded(l + unit.Millimetre)
	fmt.Println(tape.Length(rounded), applied)
	// Output:
	// 51 1/2
	// 51 1/2 in
	// 4'-3 1/2"
	// 51 9/16 0.5875 mm
}
