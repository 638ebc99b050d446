package panel

import (
	"ledgewright/engine/document"
	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// plumbPlaces is at how many places a wall is held plumb; common practice.
const plumbPlaces = 3

// plumbOf is how far the wall is out of plumb, place by place.
func plumbOf(s *app.State, w plan.Wall) Node {
	var list kids
	for i, r := range w.Plumb {
		list.add(plumbFold(s, w, i+1, r))
	}
	x := w.Width * unit.Length(2*(len(w.Plumb)%plumbPlaces)+1) / (2 * plumbPlaces) // one in the middle of each third
	x, _ = s.Plan.Style().Rounded(x)
	add := line("add-plumb", "wall", w.ID, "x", x, "over", min(pick(s, 1800, 72), w.Height), "lean", unit.Length(0))
	return counted("survey-plumb", term(s, "survey.plumb"), len(w.Plumb),
		when(list == nil, unmeasured(s)), list,
		note("plumb-how", say(s, "survey.plumb-how", words.Count("n", plumbPlaces))),
		rowOf(makes("add-plumb", term(s, "survey.add-plumb"), add)))
}

// unmeasured says that there is no reading.
func unmeasured(s *app.State) Node { return label(finding.Unknown, term(s, "form.not-measured")) }

func plumbFold(s *app.State, w plan.Wall, n int, r plan.Plumb) Node {
	key, count := w.ID+".plumb"+numeral(n), words.Count("n", n)
	f := form{s: s, key: key, words: "survey.plumb", args: []words.Arg{count}, do: "set-plumb", of: []any{"wall", w.ID, "plumb", n}}
	return fold(s, key, app.Thing{Kind: "plumb", Owner: w.ID, Index: n},
		say(s, "survey.plumb-head", count, words.Length("x", r.X), words.Word("says", leanWord(r.Lean)), words.Length("lean", r.Lean.Abs())), nothing(),
		two(f.length("x", r.X), f.length("over", r.Over)),
		two(f.signed("lean", document.Some(r.Lean), false)),
		drops(key+".remove", say(s, "survey.remove-plumb", count), line("remove-plumb", "wall", w.ID, "plumb", n)))
}

// leanWord is the direction of a lean in words.
func leanWord(lean unit.Length) string {
	switch {
	case lean > 0:
		return "survey.leans-in"
	case lean < 0:
		return "survey.leans-away"
	}
	return "survey.leans-not"
}

// flatOf is how far the wall is from flat, reading by reading.
func flatOf(s *app.State, w plan.Wall) Node {
	var list kids
	for i, r := range w.Flat {
		list.add(flatFold(s, w, i+1, r))
	}
	over := min(pick(s, 1200, 48), w.Width)
	x, _ := s.Plan.Style().Rounded((w.Width - over) / 2)
	add := line("add-flat", "wall", w.ID, "x", x, "y", min(pick(s, 1500, 60), w.Height), "over", over, "gap", unit.Length(0))
	return counted("survey-flat", term(s, "survey.flat"), len(w.Flat),
		when(list == nil, unmeasured(s)), list,
		note("flat-how", term(s, "survey.flat-how")),
		rowOf(makes("add-flat", term(s, "survey.add-flat"), add)))
}

func flatFold(s *app.State, w plan.Wall, n int, r plan.Flat) Node {
	key, count := w.ID+".flat"+numeral(n), words.Count("n", n)
	f := form{s: s, key: key, words: "survey.flat", args: []words.Arg{count}, do: "set-flat", of: []any{"wall", w.ID, "flat", n}}
	return fold(s, key, app.Thing{Kind: "flat", Owner: w.ID, Index: n},
		say(s, "survey.flat-head", count, words.Length("x", r.X), words.Length("y", r.Y), words.Word("says", gapWord(r.Gap)), words.Length("gap", r.Gap.Abs())), nothing(),
		two(f.length("x", r.X), f.length("y", r.Y)),
		two(f.length("over", r.Over), f.signed("gap", document.Some(r.Gap), false)),
		f.tick("upright", r.Upright),
		drops(key+".remove", say(s, "survey.remove-flat", count), line("remove-flat", "wall", w.ID, "flat", n)))
}

// gapWord is the direction of a gap under the straightedge in words.
func gapWord(gap unit.Length) string {
	switch {
	case gap > 0:
		return "survey.gap-hump"
	case gap < 0:
		return "survey.gap-hollow"
	}
	return "survey.gap-flat"
}
