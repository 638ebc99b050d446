package document_test

import (
	"fmt"

	"ledgewright/engine/document"
	"ledgewright/engine/unit"
)

type shelf struct {
	Name   string                    `json:"name,omitempty"`
	Length unit.Length               `json:"length"`
	Stop   document.Opt[unit.Length] `json:"stop,omitempty"`
	Extra  document.Extra            `json:"-"`
}

func Example() {
	var s shelf
	err := document.Decode([]byte(`{"length": 292.10, "later": [1, 2]}`), &s)
	fmt.Println(s.Length, s.Stop.Known, err)

	s.Name = "Over the desk"
	canonical, _ := document.Encode(s)
	fmt.Println(string(canonical))
	pretty, _ := document.Pretty(s)
	fmt.Print(string(pretty))

	fmt.Println(document.Decode([]byte(`{"length": "11 1/2"}`), &s))
	// Output:
	// 292.1 mm false <nil>
	// {"later":[1,2],"length":292.1,"name":"Over the desk"}
	// {"name": "Over the desk", "length": 292.1, "later": [1, 2]}
	// line 1, column 12, at length: found the text "11 1/2"; allowed is a length in millimetres, such as 292.1
}
