package panel

import (
	"strings"

	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// paintingChoice chooses what paints the picture, and says what does now, and why.
func paintingChoice(s *app.State) Node {
	one := func(by string) Node {
		return el("label", "", class("choice"), at("for", "f-picture-"+by),
			el("input", "picture-"+by, at("id", "f-picture-"+by), attr("type=radio"), attr("name=picture"), at("value", by), flag("checked", s.Picture() == strings.TrimPrefix(by, "any")),
				on("change", app.Set{Name: "picture", Value: by})),
			el("span", "", text(term(s, "stage."+by))))
	}
	title := term(s, "stage.painted")
	return el("section", "painting", at("aria-label", title),
		el("fieldset", "painted", class("either"), el("legend", "", text(title)), one("any"), one("stage"), one("svg")),
		note("painted-by", paintedBy(s)+term(s, "stage.same")))
}

// paintedBy says what paints the picture now; nothing where that is not known yet.
func paintedBy(s *app.State) string {
	switch why := s.WhyPlain(); {
	case s.Painted.Shown:
		return term(s, "stage.is-painted") + " "
	case why != "":
		return say(s, "stage.is-plain", words.Name("why", term(s, "stage.why-"+why))) + " "
	}
	return ""
}
