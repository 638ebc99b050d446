package panel

import "ledgewright/wasm/app"

// sideChoice chooses the side that the panel and the jobs stand at: that of the hand that is
// free, while the other holds the tablet.
func sideChoice(s *app.State) Node {
	one := func(side, key string) Node {
		return el("label", "", class("choice"), at("for", "f-side-"+side),
			el("input", "side-"+side, at("id", "f-side-"+side), attr("type=radio"), attr("name=side"), at("value", side), flag("checked", sideOf(s) == side),
				on("change", app.Set{Name: "hand", Value: side})),
			el("span", "", text(say(s, key))))
	}
	return el("section", "holding", at("aria-label", say(s, "page.side")),
		el("fieldset", "side", class("either"), el("legend", "", text(say(s, "page.side"))),
			one("right", "page.side-right"), one("left", "page.side-left")))
}
