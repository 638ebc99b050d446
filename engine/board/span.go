package board

import (
	"cmp"

	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
)

// A Span is a stretch of v.
type Span struct{ From, To unit.Length }

// Taken returns the stretches of v in which a cut like f, which no cut of the same
// cause minds, would come nearer than clear to what is cut already. Only the section of
// f counts: it is asked where along v it may stand.
func (b *Board) Taken(f Feature, clear unit.Length) []Span {
	start, end := b.Ends()
	k := b.body(&f, start, end)
	if k.form == nothing {
		return nil
	}
	var spans []Span
	for i := range b.Features {
		g := &b.Features[i]
		if g.Kind == Chamfer || g.Kind == RoundOver || g.Cause == f.Cause {
			continue
		}
		o := b.body(g, start, end)
		if o.form == nothing || flatDistance(&k, &o) >= clear.MM() {
			continue
		}
		spans = append(spans, Span{unit.Nearest(o.v0) - clear, unit.Nearest(o.v1) + clear})
	}
	return spans
}

// Merge returns the union of stretches, sorted.
func Merge(spans []Span) (out []Span) {
	rank.By(spans, func(a, b Span) int { return cmp.Compare(a.From, b.From) })
	for _, s := range spans {
		if n := len(out); n > 0 && s.From <= out[n-1].To {
			out[n-1].To = max(out[n-1].To, s.To)
			continue
		}
		out = append(out, s)
	}
	return out
}
