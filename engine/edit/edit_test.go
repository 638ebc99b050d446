package edit

import (
	"testing"

	"github.com/stretchr/testify/require"

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

// fails applies an edit that must be refused, with words that say so.
func fails(t testing.TB, p plan.Plan, s, say string) {
	t.Helper()
	e, err := Decode(line(s))
	if err == nil {
		var next plan.Plan
		next, _, err = Apply(p, e)
		require.Equal(t, text(t, p), text(t, next), "a refused edit gives the plan back")
	}
	require.ErrorContains(t, err, say, s)
	require.NotContains(t, err.Error(), "?]", s)
}

func TestRefusalsSayWhereWhatAndWhatHelps(t *testing.T) {
	p := applied(t, bench(t),
		`{"do":"add-light","module":"m1","first":1,"last":2,"face":"A","width":12,"depth":8,"strip":"strip-24-24"}`)
	for s, say := range map[string]string{
		`{"do":"turn","arrangement":"a1","module":"m9","by":90}`:                    "turn: arrangement a1: there is no module m9; the nearest is m1",
		`{"do":"remove-wall","wall":"w1"}`:                                          "remove-wall: wall w1: First (a1) stands on this wall; remove it or give it another wall first",
		`{"do":"set-board","module":"m1","board":4,"length":300}`:                   "set-board: module m1: there is no board 4; the numbers are 1 to 3",
		`{"do":"set-board","module":"m1","board":1,"lenght":300}`:                   "set-board: module m1, board 1: lenght cannot be changed by this edit; the nearest is length",
		`{"do":"set-module","module":"m1","boards":[]}`:                             "boards cannot be changed by this edit",
		`{"do":"remove-board","module":"m3","board":1}`:                             "it has 1 board and needs 1; remove the module",
		`{"do":"remove-stud","wall":"w1","stud":1}`:                                 "there is no stud typed one by one 1, and none at all",
		`{"do":"remove-obstacle","wall":"w2","obstacle":"o1"}`:                      "wall w2: there is no obstacle o1",
		`{"do":"set-shop","path":"covers.bore","value":-1}`:                         "covers.bore: found -1 mm; allowed is",
		`{"do":"set-units","system":"cm"}`:                                          `system is "cm"; allowed is mm, in`,
		`{"do":"set-module","module":"m3","closed":true}`:                           "1 board does not close; it takes 3",
		`{"do":"set-corner","module":"m1","corner":1,"joint":"dovetail"}`:           `joint is "dovetail"; allowed is mitre,`,
		`{"do":"move","arrangement":"a1","module":"m1","x":900000000,"dx":1}`:       "x and dx are both given; give one of them",
		`{"do":"place","arrangement":"a1","module":"m1","dx":3}`:                    "dx cannot be changed by this edit",
		`{"do":"set-arrangement","arrangement":"a1","corner":"a1"}`:                 "an arrangement cannot be its own neighbour",
		`{"do":"add-divider","module":"m2","from":1,"to":1,"at":100}`:               "it would start and end at board 1",
		`{"do":"set-light","light":"l2","last":3,"first":4}`:                        "there is no board 4",
		`{"do":"set-light","light":"l2","last":1,"first":2}`:                        "which only a closed module allows",
		`{"do":"set-edge","module":"m1","board":1,"arris":"front-c","cut":"round"}`: `arris is "front-c"`,
		`{"do":"align","arrangement":"a1","modules":["m1"],"to":"left"}`:            "1 module is too few for this; name 2 or more",
		`{"do":"place-brackets","module":"m1","kind":"plate-bakc"}`:                 "there is no kind of bracket plate-bakc; the nearest is plate-back",
		`{"do":"add-board","module":"m1","length":300}`:                             "the turn would be 0°",
		`{"do":"set-wall","wall":"w1","width":null}`:                                "width cannot be taken away; give it a value",
		`{"do":"set-wall","wall":"w1","lining":{"kid":"none"}}`:                     "wall w1, lining: kid cannot be changed by this edit; the nearest is kind",
		`{"do":"add-obstacle","wall":"w1","kind":"pipe","x":1,"y":1,"width":1}`:     "wall w1, new obstacle: height is missing; name it",
		`{"do":"mirror-module","module":"m1","arrangement":"a7"}`:                   "there is no arrangement a7",
		`{"do":"set-shop","value":3}`:                                               "there is no field",
		`{"do":"move","arrangement":"a1","modules":["m1","m2"],"x":10}`:             "2 modules cannot all go to one place",
		`{"do":"move","arrangement":"a1","dx":10}`:                                  "module is missing",
		`{"do":"order-module","module":"m1","at":9}`:                                "there is no place in the list 9; the numbers are 1 to 3",
	} {
		fails(t, p, s, say)
	}
}

func TestNewerPlansAreNotChanged(t *testing.T) {
	p := bench(t)
	p.Schema = "ledgewright/plan/2"
	fails(t, p, `{"do":"flip","arrangement":"a1","module":"m1"}`, "written by a newer version")
}

func TestWhatAnEditDoesNotTouchIsShared(t *testing.T) {
	p := bench(t)
	q := applied(t, p, `{"do":"set-board","module":"m1","board":2,"length":640}`)
	require.NotSame(t, &p.Modules[0].Boards[0], &q.Modules[0].Boards[0])
	require.Same(t, &p.Modules[0].Corners[0], &q.Modules[0].Corners[0])
	require.Same(t, &p.Modules[1].Boards[0], &q.Modules[1].Boards[0])
	require.Same(t, &p.Arrangements[0].Poses[0], &q.Arrangements[0].Poses[0])
	require.Same(t, &p.Walls[0], &q.Walls[0])
	q = applied(t, p, `{"do":"move","arrangement":"a1","module":"m1","dx":16}`)
	require.Same(t, &p.Modules[0], &q.Modules[0])
	require.Same(t, &p.Arrangements[1].Poses[0], &q.Arrangements[1].Poses[0])
}

func TestIdsAreNeverGivenTwice(t *testing.T) {
	p := applied(t, bench(t),
		`{"do":"remove-module","module":"m3"}`,
		`{"do":"duplicate-module","module":"m1"}`)
	require.Equal(t, "m4", p.Modules[2].ID)
	p.Counters = plan.Counters{} // a plan written by hand without its counters
	p = applied(t, p, `{"do":"duplicate-module","module":"m1"}`, `{"do":"add-line","arrangement":"a1","height":900}`)
	require.Equal(t, "m3", p.Modules[3].ID, "m1 and m2 are taken")
	require.Equal(t, "h1", p.Arrangements[0].Lines[0].ID, "o1 is another kind of thing")
	for _, f := range plan.Check(p) {
		require.NotEqual(t, "same-id", f.Kind.Key)
	}
}
