package panel

import "ledgewright/wasm/app"

// helpButton stands in the head of every page and shows, in place of the panel, how the
// page works.
func helpButton(s *app.State) Node {
	return iconButton("help", "help", term(s, "help.button"), app.Show{What: app.Help}, class("btn"), state("aria-pressed", s.On[app.Help]))
}

// help is the panel that says how the page works.
func help(s *app.State) Node {
	cols := el("div", "cols-help", class("cols"))
	for _, about := range [...]string{"jobs", "figures", "picture", "round", "verdicts", "undo", "kept", "keys"} {
		section("help-"+about, say(s, "help."+about), el("p", "", said(say(s, "help."+about+"-is")))).join(cols)
	}
	return el("aside", "panel", class("panel"), at("aria-labelledby", "panel-title"), at("data-job", "help"), when(s.Screen == app.AtWork, grab(s)),
		el("header", "", el("h2", "panel-title", at("id", "panel-title"), at("tabindex", "-1"), text(term(s, "help.title")))),
		cols,
		el("div", "", class("row"), button("help-close", term(s, "help.close"), app.Show{What: app.Help})))
}
