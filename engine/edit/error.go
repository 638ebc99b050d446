package edit

import (
	"errors"
	"strings"

	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// An Error says why an edit was not done: where, what was found, what is allowed, and
// what would help, in words under "refusal.<key>".
type Error struct {
	Do    string // name of the edit
	Where string // "module m1, board 2"
	Key   string
	Args  []words.Arg
}

// Error returns the words with lengths printed exactly.
func (e *Error) Error() string { return e.Say(unit.Style{Step: unit.Nanometre}) }

// Say returns the words with lengths printed in a style.
func (e *Error) Say(style unit.Style) string {
	var parts []string
	for _, s := range []string{e.Do, e.Where} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	return strings.Join(append(parts, words.Text("refusal."+e.Key, e.Args, style)), ": ")
}

// refuse is an Error without the name of its edit, which Apply adds.
func refuse(key, where string, args ...words.Arg) *Error {
	return &Error{Where: where, Key: key, Args: args}
}

// named returns err with the name of the edit.
func named(do string, err error) error {
	var e *Error
	if !errors.As(err, &e) {
		return &Error{Do: do, Key: "unreadable", Args: []words.Arg{words.Name("why", err.Error())}}
	}
	out := *e
	out.Do = do
	return &out
}

// noSuch says that a thing is not there, and which is the nearest that is.
func noSuch(what, where, id string, have []string) *Error {
	args := []words.Arg{words.Word("what", "thing."+what), words.Name("id", id)}
	if len(have) == 0 {
		return refuse("none-there", where, args...)
	}
	return refuse("no-such", where, append(args, words.Name("nearest", nearest(id, have)))...)
}

// nearest returns the word of have that takes the fewest changed letters to become s;
// the first of them when several do.
func nearest(s string, have []string) string {
	best, least := "", 1<<30
	for _, h := range have {
		if d := distance(s, h); d < least {
			best, least = h, d
		}
	}
	return best
}

// distance counts the letters to add, drop or change between a and b (Levenshtein's
// distance, row by row). Beyond 100 letters only the lengths are compared.
func distance(a, b string) int {
	if len(a) > 100 || len(b) > 100 {
		return 100 + max(len(a), len(b))
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		corner := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := corner
			if a[i] != b[j] {
				change++
			}
			corner = row[j+1]
			row[j+1] = min(change, row[j]+1, corner+1)
		}
	}
	return row[len(b)]
}
