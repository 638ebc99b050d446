package edit

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

const mm = unit.Millimetre

// bench is a plan to try edits on: two walls, a U with all that a module can have, a box,
// a plain shelf, and two arrangements.
func bench(t testing.TB) plan.Plan {
	p := plan.New(unit.Metric)
	return applied(t, p,
		`{"do":"add-wall","name":"Long wall","width":3600,"height":2500,"build":"studs","lining":{"kind":"plasterboard","thickness":12.5}}`,
		`{"do":"add-wall","width":2400,"height":2500}`,
		`{"do":"set-studs","wall":"w1","material":"wood","width":38,"depth":89,"first":200,"spacing":400,"state":"edges-found"}`,
		`{"do":"add-obstacle","wall":"w1","kind":"socket","x":900,"y":300,"width":86,"height":86,"depth":10}`,
		`{"do":"add-module","name":"Low U","shape":"U","width":600,"height":260,"depth":200,"thickness":26,"wood":"white-oak"}`,
		`{"do":"add-module","name":"Box","shape":"box","width":400,"height":400,"depth":200,"thickness":26,"wood":"white-oak"}`,
		`{"do":"add-module","name":"Long","shape":"shelf","width":900,"depth":200,"thickness":26,"wood":"white-oak"}`,
		`{"do":"add-arrangement","wall":"w1","name":"First"}`,
		`{"do":"place","arrangement":"a1","module":"m1","x":700,"y":1300,"turn":270}`,
		`{"do":"place","arrangement":"a1","module":"m2","x":1500,"y":1400}`,
		`{"do":"place","arrangement":"a1","module":"m3","x":2600,"y":1300}`,
		`{"do":"duplicate-arrangement","arrangement":"a1","name":"Second"}`,
	)
}

// line gives an edit its schema.
func line(s string) []byte { return []byte(`{"schema":"` + Schema + `",` + s[1:]) }

// applied applies edits that must be accepted.
func applied(t testing.TB, p plan.Plan, edits ...string) plan.Plan {
	t.Helper()
	for _, s := range edits {
		e, err := Decode(line(s))
		require.NoError(t, err, s)
		next, name, err := Apply(p, e)
		require.NoError(t, err, s)
		require.NotContains(t, words.Text(name.Key, name.Args, p.Style()), "?", s)
		p = next
	}
	return p
}

func text(t testing.TB, p plan.Plan) string {
	t.Helper()
	b, err := plan.Encode(p)
	require.NoError(t, err)
	return string(b)
}

var _ = document.Some[int]
