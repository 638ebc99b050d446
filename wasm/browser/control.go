package browser

import (
	"slices"

	"ledgewright/wasm/panel"
)

// A sort is what a control holds beside its attributes.
type sort uint8

const (
	plain sort = iota
	textControl
	tickControl // checkbox
	radioControl
	choiceControl // select
	option
	fileControl
	dialog
)

func sortOf(n panel.Node) sort {
	switch n.Tag {
	case "textarea":
		return textControl
	case "select":
		return choiceControl
	case "option":
		return option
	case "dialog":
		return dialog
	case "input":
		switch kind, _ := attr(n.Attrs, "type"); kind {
		case "checkbox":
			return tickControl
		case "radio":
			return radioControl
		case "file":
			return fileControl
		case "submit", "button", "reset", "image":
			return plain
		}
		return textControl
	}
	return plain
}

// holds reports whether an attribute is what the control holds, and is set as such.
func (s sort) holds(name string) bool {
	switch s {
	case textControl, choiceControl, fileControl:
		return name == "value"
	case tickControl, radioControl:
		return name == "checked"
	case option:
		return name == "selected"
	case dialog:
		return name == "open"
	}
	return false
}

// isControl reports whether a person can put something into it.
func (s sort) isControl() bool { return s != plain && s != option && s != dialog }

// said is what a person did to a control since the page last set it.
type said uint8

const (
	untouched said = iota
	typing         // something was typed that is not finished
	settled        // it is finished: the page has the word again
)

// sync brings what a control holds to what the page says; was is the node as it was,
// empty for a new one.
func (t *Tree) sync(o *node, was panel.Node) {
	fresh := was.Tag == ""
	switch o.sort {
	case textControl:
		if !fresh && !tells(was) && !tells(o.is) {
			o.said = untouched // the page leaves what is typed there to the form
			return
		}
		t.syncText(o, content(was), content(o.is), fresh)
	case tickControl, radioControl:
		_, before := attr(was.Attrs, "checked")
		_, now := attr(o.is.Attrs, "checked")
		if before != now || o.said == settled {
			o.el.SetChecked(now)
		}
		o.said = untouched
	case choiceControl:
		if now := chosen(o.is); now > 0 && fresh || !fresh && (now != chosen(was) || o.said == settled || !sameOptions(was.Kids, o.is.Kids)) {
			o.el.Select(now)
		}
		o.said = untouched
	case dialog:
		t.syncDialog(o, isOpen(was), isOpen(o.is))
	}
}

// syncText sets the text of a control, but not over what is being typed in it: then
// only where the page followed the typing and now means something else, as when an arrow key
// changed the figure.
func (t *Tree) syncText(o *node, was, now string, fresh bool) {
	switch {
	case fresh:
		if now != "" {
			o.el.SetValue(now)
		}
	case o.said == untouched:
		if was != now {
			o.el.SetValue(now)
		}
	case o.said == settled || o != t.active:
		if o.el.Value() != now {
			o.el.SetValue(now)
		}
		o.said = untouched
	case was != now && o.el.Value() == was:
		o.el.SetValue(now)
	}
}

// syncDialog opens and closes. A dialog opens over the page, so it must stand in it.
func (t *Tree) syncDialog(o *node, was, now bool) {
	switch {
	case now && (!was || o.said == settled):
		t.later = append(t.later, o.el.ShowModal)
	case was && !now && o.said != settled:
		o.el.Close()
	}
	o.said = untouched
}

// tells reports whether the page says what a text control is to hold, if only nothing.
func tells(n panel.Node) bool {
	_, ok := attr(n.Attrs, "value")
	return ok || n.Tag == "textarea" && n.Kids != nil
}

// content returns the text that a text control is to hold.
func content(n panel.Node) string {
	if value, ok := attr(n.Attrs, "value"); ok || n.Tag != "textarea" {
		return value
	}
	text := ""
	for _, k := range n.Kids {
		text += k.Text
	}
	return text
}

func isOpen(n panel.Node) bool {
	_, open := attr(n.Attrs, "open")
	return open
}

// chosen returns the number of the option that is selected; the first where none says
// so, as in a browser.
func chosen(n panel.Node) int {
	i, found := 0, -1
	eachOption(n.Kids, func(o panel.Node) {
		if _, on := attr(o.Attrs, "selected"); on && found < 0 {
			found = i
		}
		i++
	})
	return max(found, 0)
}

func eachOption(kids []panel.Node, do func(panel.Node)) {
	for _, k := range kids {
		if k.Tag == "option" {
			do(k)
		} else {
			eachOption(k.Kids, do)
		}
	}
}

// sameOptions reports whether two lists of options are alike, so that the browser has
// not chosen another of itself.
func sameOptions(was, now []panel.Node) bool {
	return slices.EqualFunc(was, now, func(a, b panel.Node) bool {
		return a.Tag == b.Tag && a.Key == b.Key && sameOptions(a.Kids, b.Kids)
	})
}
