package plan

import (
	"errors"
	"strconv"
	"strings"

	"ledgewright/engine/document"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// Limits of a plan. A job of 200 modules takes 130 kB of canonical text, 200 kB as
// people read it, and 2 000 modules ten times that, so the limit leaves room for long
// names and for members that this version does not know.
const (
	MostBytes   = 8 << 20
	MostModules = 2_000
	MostBoards  = 10_000 // of all modules together
)

// format is the family of documents that a plan belongs to; its version follows.
const format = "ledgewright/plan/"

// version is the newest version that this package writes.
const version = 1

// New returns a plan without walls or modules, in the given system, with the default
// shop.
func New(system unit.System) Plan {
	s := shop.Default(system)
	return Plan{Schema: Schema, Units: Units{System: s.System, Step: s.Tape.Bench}, Shop: s}
}

// Decode reads a plan. Unknown members are kept. Members of the shop's profile that
// are left out have their defaults. A plan of an older version is brought up to this
// one; a newer one opens as far as it can be understood, and [Plan.Newer] says so.
//
// The error is a *document.Error, which says where, what was found and what is
// allowed, alone or behind a sentence about a newer version. What can be read may
// still be wrong: see [Check].
func Decode(text []byte) (Plan, error) {
	n, err := document.Limits{Bytes: MostBytes, Values: 1_000_000}.Parse(text)
	if err != nil {
		return Plan{}, err
	}
	of, err := versionOf(text, n)
	if err != nil {
		return Plan{}, err
	}
	p, err := decode(text, n, of)
	if err != nil && of > version {
		err = &newerError{of, err}
	}
	return p, err
}

// A newerError is what is wrong with a plan of a version above this one.
type newerError struct {
	of  int
	err error
}

func (e *newerError) Error() string {
	return "this plan was written by a newer version (" + format + strconv.Itoa(e.of) + ") and cannot be understood: " + e.err.Error()
}

func (e *newerError) Unwrap() error { return e.err }

// decode reads the plan n, which is of the given version.
func decode(text []byte, n document.Node, of int) (Plan, error) {
	n, err := migrate(n, of, migrations())
	if err != nil {
		return Plan{}, err
	}
	if err := tooMany(n); err != nil {
		return Plan{}, err
	}
	n, err = withShop(n)
	if err != nil {
		return Plan{}, err
	}
	var p Plan
	if err := document.DecodeNode(text, n, &p); err != nil {
		return Plan{}, err
	}
	for _, f := range shop.Check(p.Shop) {
		return Plan{}, &document.Error{Path: "shop." + f.Path, Reason: "range", Found: f.Found(), Allowed: f.Allowed()}
	}
	return p, nil
}

// Encode returns the canonical text of p. Two equal plans have one text.
func Encode(p Plan) ([]byte, error) { return document.Encode(p) }

// Pretty returns the text of p for people.
func Pretty(p Plan) ([]byte, error) { return document.Pretty(p) }

// Newer reports whether p was written by a newer version. It can then be looked at,
// but not changed.
func (p Plan) Newer() bool {
	of, ok := parseVersion(p.Schema)
	return ok && of > version
}

// A schemaName is the name of a plan's format with its version.
type schemaName string

// UnmarshalDocument reads the name and refuses what is no plan.
func (s *schemaName) UnmarshalDocument(n document.Node) error {
	if _, ok := parseVersion(n.Text); n.Kind != document.String || !ok {
		return errors.New(strconv.Quote(Schema))
	}
	*s = schemaName(n.Text)
	return nil
}

// parseVersion returns the number at the end of the name of a plan's format.
func parseVersion(name string) (int, bool) {
	digits, ok := strings.CutPrefix(name, format)
	if !ok || len(digits) == 0 || len(digits) > 6 || digits[0] == '0' {
		return 0, false
	}
	of, err := strconv.ParseUint(digits, 10, 32)
	return int(of), err == nil
}

// versionOf returns the version of the document n.
func versionOf(text []byte, n document.Node) (int, error) {
	var head struct {
		Schema schemaName `json:"schema"`
	}
	only := n
	if n.Kind == document.Object {
		only.Kids = nil
		if s, ok := n.Get("schema"); ok {
			only.Kids = []document.Node{s}
		}
	}
	if err := document.DecodeNode(text, only, &head); err != nil {
		return 0, err
	}
	of, _ := parseVersion(string(head.Schema))
	return of, nil
}

// tooMany refuses more modules and boards than a plan may have, before they are read.
func tooMany(n document.Node) error {
	modules, _ := n.Get("modules")
	if len(modules.Kids) > MostModules {
		return countError(len(modules.Kids), "modules", MostModules)
	}
	boards := 0
	for _, m := range modules.Kids {
		b, _ := m.Get("boards")
		boards += len(b.Kids)
	}
	if boards > MostBoards {
		return countError(boards, "boards", MostBoards)
	}
	return nil
}

func countError(found int, what string, most int) error {
	return &document.Error{Path: "modules", Reason: "count", Found: strconv.Itoa(found) + " " + what,
		Allowed: "at most " + strconv.Itoa(most)}
}

// withShop returns the plan n with what its shop's profile leaves out.
func withShop(n document.Node) (document.Node, error) {
	if n.Kind != document.Object {
		return n, nil
	}
	units, _ := n.Get("units")
	system, _ := units.Get("system")
	profile, ok := n.Get("shop")
	if !ok {
		profile = document.ObjectNode(document.TextNode(shop.Schema).With("schema")).With("shop")
	}
	whole, err := shop.Complete(profile, unit.System(system.Text))
	if err != nil {
		return n, err
	}
	n = n.Without("shop")
	n.Kids = append(n.Kids, whole.With("shop"))
	return n, nil
}
