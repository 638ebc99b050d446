package panel

import (
	"ledgewright/engine/finding"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// caution is a warning as ANSI Z535.4 grades them: what could kill or maim. The sign is a
// triangle with an exclamation mark, as ISO 7010 draws a general warning; the word stands
// beside it.
func caution(s *app.State, key, sentence string, more ...part) Node {
	return el("article", key, class("finding is-warn caution"), triangle(),
		el("h4", "", text(term(s, "hang.warning"))), el("p", "says", said(sentence)), parts(more))
}

func triangle() Node {
	return signOf("is-warn", path("fill", "M12 1.5L23.2 21.5H.8z"), path("cut", "M12 8.6v6M12 17.9v.2"))
}

// Ages of a building: asbestos is possible before 2000 (UK), lead paint before 1978 (US
// homes; EPA).
const (
	asbestosUntil = 2000
	leadUntil     = 1978
)

// oldWall is the caution about the age of a wall, or nothing where it is young.
func oldWall(year int, known bool) string {
	switch {
	case !known:
		return "hang.caution-age"
	case year < leadUntil:
		return "hang.caution-old"
	case year < asbestosUntil:
		return "hang.caution-asbestos"
	}
	return ""
}

// childrenCaution stands wherever load is spoken of.
func childrenCaution(s *app.State) Node {
	return caution(s, "caution-children", term(s, "hang.caution-children"))
}

// cautions are what everybody must have read before the first hole.
func (h *hanging) cautions() Node {
	of := parts{caution(h.s, "caution-cables", h.term("hang.caution-cables"), h.bandState())}
	if key := oldWall(h.w.BuiltYear.Value, h.w.BuiltYear.Known); key != "" {
		of = append(of, caution(h.s, "caution-age", h.say(key)))
	}
	return section("cautions", h.term("hang.cautions"), of, childrenCaution(h.s))
}

// bandState says what is known of the holes and the bands in which cables are expected.
func (h *hanging) bandState() Node {
	severity, says := finding.Note, h.term("hang.bands-clear")
	n := 0
	for _, p := range h.r.Points {
		if p.What == wall.Hole && p.Band != "" {
			n++
		}
	}
	switch {
	case h.w.CableRule == "" || h.w.CableRule == wall.NoRule:
		severity, says = finding.Unknown, h.term("hang.bands-none-chosen")
	case n > 0:
		severity, says = finding.Stop, h.say("hang.bands-hit", words.Count("n", n))
	}
	return el("p", "bands", class("small"), label(severity, says))
}
