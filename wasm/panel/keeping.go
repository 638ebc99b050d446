package panel

import (
	"ledgewright/engine/finding"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// keepingSection says where the job is kept and for how long, when it last left this
// browser, and what to do about it.
func keepingSection(s *app.State) Node {
	of := parts{note("kept-here", term(s, "page.keep-here")), lasting(s), week(s)}
	if s.Store.Err != "" {
		of = parts{el("p", "kept-why", label(finding.Stop, say(s, "page.kept-why", words.Name("why", s.Store.Err)))),
			note("kept-else", term(s, "page.kept-else"))}
	}
	return section("keeping", term(s, "page.keep-title"), of, lastCopy(s),
		el("div", "", class("row"), button("keep-copy", term(s, "page.keep-copy"), app.HandOn{What: "plan", By: "download"})))
}

// lasting is what the browser has said of how long it keeps what is stored.
func lasting(s *app.State) part {
	switch s.Lasting {
	case app.Lasts:
		return note("lasting", term(s, "page.keep-lasts"))
	case app.MayGo:
		return el("p", "lasting", label(finding.Unknown, term(s, "page.keep-may-go")))
	}
	return parts(nil)
}

// week is the notice, until it is read, of what may become of jobs that nobody opens.
func week(s *app.State) part {
	if s.Settings.Week != "" || s.Lasting == app.Lasts {
		return parts(nil)
	}
	return el("article", "week", class("finding"), at("aria-labelledby", "week-title"),
		sign(finding.Unknown), el("h4", "", at("id", "week-title"), text(term(s, "page.keep-week"))),
		el("p", "", text(term(s, "page.keep-week-is"))),
		el("div", "do", class("do"), button("week-read", term(s, "page.keep-week-read"), app.Set{Name: "week", Value: "read"})))
}

// lastCopy says when the plan last left this browser, and how much has changed since.
func lastCopy(s *app.State) Node {
	at := term(s, "page.no-copy")
	if s.Store.CopyAt != "" {
		at = say(s, "page.copied", words.Name("at", s.When(s.Store.CopyAt)))
	}
	if n := s.Uncopied(); n > 0 {
		at += ". " + say(s, "page.uncopied", words.Count("n", n))
	}
	return note("last-copy", at)
}
