package shop

import (
	"slices"
	"strconv"
	"strings"

	"ledgewright/engine/document"
	"ledgewright/engine/unit"
)

// A Fault is a value of a profile that no workshop has. Its Path, Least, Most and
// Choice are those of its [Row]; Default is what the profile's system starts with.
type Fault struct {
	Path    string
	Value   any
	Least   any
	Most    any
	Choice  []string
	Default any
}

// Error says what was found and what is allowed.
func (f Fault) Error() string {
	return "shop profile, " + f.Path + ": found " + f.Found() + "; allowed is " + f.Allowed()
}

// Found says what stands there.
func (f Fault) Found() string { return show(f.Value) }

// Allowed says what may stand there.
func (f Fault) Allowed() string {
	switch {
	case f.Choice != nil:
		return "one of " + strings.Join(named(f.Choice), ", ")
	case f.Least != nil:
		return show(f.Least) + " to " + show(f.Most)
	}
	return "nothing else"
}

// named returns words with quotes for the one that has no letters.
func named(words []string) []string {
	i := slices.Index(words, "")
	if i < 0 {
		return words
	}
	words = slices.Clone(words)
	words[i] = `""`
	return words
}

// Check returns the faults of a profile in the order of its fields: each value
// against the limits of its row, and the driest wood in use against the dampest.
func Check(p Profile) []Fault {
	var faults []Fault
	for _, r := range rows() {
		v := get(r.at(&p))
		if !r.allows(v) {
			faults = append(faults, r.fault(v, p.System))
		}
	}
	if p.Moisture.UseLow > p.Moisture.UseHigh {
		r, _ := find("moisture.useLow")
		f := r.fault(p.Moisture.UseLow, p.System)
		f.Most = p.Moisture.UseHigh
		faults = append(faults, f)
	}
	return faults
}

// fault returns the fault that v stands at the row's place.
func (r Row) fault(v any, system unit.System) Fault {
	f := Fault{Path: r.Path, Value: v, Least: r.Least, Most: r.Most, Choice: r.Choice, Default: r.Metric}
	if system == unit.Inches {
		f.Default = r.Inches
	}
	return f
}

// allows reports whether v may stand at the row's place.
func (r Row) allows(v any) bool {
	switch v := v.(type) {
	case unit.Length:
		return within(v, r.Least, r.Most)
	case unit.Angle:
		return within(v, r.Least, r.Most)
	case int:
		return within(v, r.Least, r.Most)
	case float64:
		return within(v, r.Least, r.Most)
	case document.Opt[unit.Length]:
		return !v.Known || within(v.Value, r.Least, r.Most)
	case []unit.Length:
		return !slices.ContainsFunc(v, func(l unit.Length) bool { return !within(l, r.Least, r.Most) })
	case unit.System:
		return slices.Contains(r.Choice, string(v))
	case string:
		return r.Choice == nil || slices.Contains(r.Choice, v)
	}
	return true
}

// within reports whether v lies in [least, most]; what is no number does not.
func within[T unit.Length | unit.Angle | int | float64](v T, least, most any) bool {
	return v >= least.(T) && v <= most.(T)
}

// show prints the value of a row exactly.
func show(v any) string {
	switch v := v.(type) {
	case unit.Length:
		return v.String()
	case unit.Angle:
		return v.String()
	case int:
		return strconv.Itoa(v)
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	case bool:
		return strconv.FormatBool(v)
	case unit.System:
		return strconv.Quote(string(v))
	case string:
		return strconv.Quote(v)
	case document.Opt[unit.Length]:
		if !v.Known {
			return "left open"
		}
		return v.Value.String()
	case []unit.Length:
		return list(v)
	}
	return "?"
}

func list(lengths []unit.Length) string {
	texts := make([]string, len(lengths))
	for i, l := range lengths {
		texts[i] = l.Decimal()
	}
	return strings.Join(texts, ", ") + " mm"
}
