package shop

import (
	"slices"
	"strings"
	"sync"

	"ledgewright/engine/document"
	"ledgewright/engine/unit"
)

// Short names, for the table only.
const (
	mm  = unit.Millimetre
	in  = unit.Inch
	deg = unit.Degree
)

// A Basis says what a default rests on.
type Basis string

// The bases.
const (
	Practice Basis = "common practice"
	Cited    Basis = "cited"
	Assumed  Basis = "our assumption"
)

// A Row is one default: where it stands in a [Profile], what it is, its limits, and
// why. The values have the type of the field: unit.Length, unit.Angle, int, float64,
// string, bool, unit.System, []unit.Length, or document.Opt[unit.Length].
type Row struct {
	Path   string // names of the members, joined by points: "covers.pocket"
	Metric any    // in a profile that is metric
	Inches any    // in a profile in inches
	Least  any    // least value allowed; nil: none. Of a list: of each entry
	Most   any    // greatest value allowed
	Choice []string
	Basis  Basis
	Reason string
	Source string // of a cited value: author or publisher, title, year or address

	at func(*Profile) any // pointer to the field
}

// Value returns the default in the given system as it is read: "3 mm", "13/16 in".
func (r Row) Value(system unit.System) string {
	v, style := r.Metric, unit.Style{System: unit.Metric, Step: mm / 10}
	if system == unit.Inches {
		v, style = r.Inches, unit.Style{System: unit.Inches, Step: in / 64}
	}
	switch v := v.(type) {
	case unit.Length:
		return style.WithUnit(v)
	case []unit.Length:
		texts := make([]string, len(v))
		for i, l := range v {
			texts[i] = style.WithUnit(l)
		}
		return strings.Join(texts, ", ")
	}
	return show(v)
}

// Default returns the profile that a new plan starts with. An unknown system counts
// as metric.
func Default(system unit.System) Profile {
	p := Profile{Schema: Schema}
	for _, r := range rows() {
		v := r.Metric
		if system == unit.Inches {
			v = r.Inches
		}
		put(r.at(&p), v)
	}
	return p
}

// Defaults returns the table of all defaults, in the order of the profile's fields.
func Defaults() []Row { return slices.Clone(rows()) }

// rows is the table, made on first need and never changed.
var rows = sync.OnceValue(func() []Row {
	return slices.Concat(tapeRows(), coverRows(), rodRows(), bracketRows(), jointRows(),
		grooveRows(), gapRows(), stockRows(), machineRows(), moistureRows())
})

// find returns the row of a path.
func find(path string) (Row, bool) {
	i := slices.IndexFunc(rows(), func(r Row) bool { return r.Path == path })
	if i < 0 {
		return Row{}, false
	}
	return rows()[i], true
}

// put stores v in the field that at points to. The test of the table holds that the
// types agree.
func put(at, v any) {
	switch at := at.(type) {
	case *unit.Length:
		*at = v.(unit.Length)
	case *unit.Angle:
		*at = v.(unit.Angle)
	case *int:
		*at = v.(int)
	case *float64:
		*at = v.(float64)
	case *string:
		*at = v.(string)
	case *bool:
		*at = v.(bool)
	case *unit.System:
		*at = v.(unit.System)
	case *[]unit.Length:
		*at = slices.Clone(v.([]unit.Length))
	case *document.Opt[unit.Length]:
		*at = v.(document.Opt[unit.Length])
	}
}

// get returns the value that at points to.
func get(at any) any {
	switch at := at.(type) {
	case *unit.Length:
		return *at
	case *unit.Angle:
		return *at
	case *int:
		return *at
	case *float64:
		return *at
	case *string:
		return *at
	case *bool:
		return *at
	case *unit.System:
		return *at
	case *[]unit.Length:
		return *at
	case *document.Opt[unit.Length]:
		return *at
	}
	return nil
}
