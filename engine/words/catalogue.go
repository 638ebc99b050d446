// Package words holds everything that a user reads, as a catalogue of short texts
// with typed places to fill in, so that a message is data until it is shown.
//
// An entry is a key and a text. A text may hold places in braces:
//
//	{name}             the argument of that name, printed by its type: a length in the
//	                   plan's unit and step with its unit, a small length finer than the
//	                   step, an angle with °, a mass, an area, a count, a plain number, a
//	                   name, or another entry's words
//	{name|one|many}    the word that goes with a count: "one" for exactly 1, else "many"
//
// Keys begin with the kind of text: "finding.", "remedy.", "verdict.", "end." and so
// on. Findings and remedies are sentences and end with a full stop; a verdict has at
// most 60 characters and none.
package words

import (
	"slices"
	"strings"
	"sync"

	"ledgewright/engine/rank"
)

// An Entry is one text of the catalogue.
type Entry struct {
	Key  string
	Text string
}

// Catalogue returns every entry, room by room in the order of the house plan.
func Catalogue() []Entry {
	return slices.Concat(
		planWords(),
		boardWords(),
		jointWords(),
		mountWords(),
		lightWords(),
		moduleWords(),
		movementWords(),
		wallWords(),
		editWords(),
		holdWords(),
		partWords(),
		viewWords(),
		linkWords(),
		engineWords(),
		pageWords(),
		frameWords(),
		helpWords(),
		arrangeWords(),
		surveyWords(),
		editorWords(),
		browserWords(),
		makeWords(),
		hangWords(),
		agreeWords(),
		roundWords(),
		stageWords(),
	)
}

// Keys returns all keys, sorted.
func Keys() []string {
	all := Catalogue()
	keys := make([]string, len(all))
	for i, e := range all {
		keys[i] = e.Key
	}
	rank.Up(keys)
	return keys
}

// Has reports whether the catalogue has an entry under key.
func Has(key string) bool {
	_, ok := find(key)
	return ok
}

// Placeholders returns the names of the places in the text under key, each once, in
// the order in which they first stand.
func Placeholders(key string) []string {
	text, _ := find(key)
	var names []string
	for _, p := range split(text) {
		if p.name != "" && !slices.Contains(names, p.name) {
			names = append(names, p.name)
		}
	}
	return names
}

// find returns the text under key.
func find(key string) (string, bool) {
	text, ok := index()[key]
	return text, ok
}

// index is the catalogue by key, made on first need and never changed.
var index = sync.OnceValue(func() map[string]string {
	texts := map[string]string{}
	for _, e := range Catalogue() {
		texts[e.Key] = e.Text
	}
	return texts
})

// A piece is plain text, or a place to fill in when name is not empty.
type piece struct {
	text      string
	name      string
	one, many string // words that go with a count
	plural    bool
}

// split cuts a text at its places. A brace without its partner is plain text.
func split(text string) []piece {
	var out []piece
	for text != "" {
		open := strings.IndexByte(text, '{')
		size := strings.IndexByte(text[max(open, 0):], '}')
		if open < 0 || size < 0 {
			return append(out, piece{text: text})
		}
		if open > 0 {
			out = append(out, piece{text: text[:open]})
		}
		out = append(out, place(text[open+1:open+size]))
		text = text[open+size+1:]
	}
	return out
}

// place reads what stands between braces.
func place(s string) piece {
	name, forms, plural := strings.Cut(s, "|")
	one, many, _ := strings.Cut(forms, "|")
	return piece{name: name, one: one, many: many, plural: plural}
}
