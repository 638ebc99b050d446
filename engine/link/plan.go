// Package link carries a document in the fragment of a URL, and back.
//
// A plan is laid out in columns ([column]): the same member of all things of a kind
// stands together, lengths in whole steps of the plan's unit, ids as what the counters
// would have given anyway, a shop profile as its difference from the default. What the
// columns do not know travels as JSON text beside them. Deflate (RFC 1951) takes out what
// repeats, and base64url (RFC 4648) makes letters of it, behind a head with length and
// checksum ([envelope]).
//
// A link opens only if the canonical text (RFC 8785) of what was rebuilt has the checksum
// that the sender wrote; everything else "arrived incomplete", and never opens as another
// design. Links of old versions open for ever.
package link

import (
	"bytes"
	"hash/crc32"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/words"
)

// Versions of the format.
const (
	versionText    = '0' // the canonical text
	versionColumns = '1' // columns of planShape
)

// mostBytes bounds what a link may unfold to: deflate can grow a thousandfold.
const mostBytes = 1 << 20

// Warn and Most are the lengths of a whole link above which a maker is warned, and above
// which only a file will do. Messengers cut what is longer.
const (
	Warn = 2_000
	Most = 4_000
)

// Options say what goes into a link.
type Options struct {
	Names bool // the title block, and the shop's name; left out otherwise
}

// Public returns p without what names people: the title block, and the shop's name.
func Public(p plan.Plan) plan.Plan {
	p.Job = plan.Job{}
	p.Shop.Name = ""
	return p
}

// EncodePlan returns the code of a plan, for behind the "#" of a link.
func EncodePlan(p plan.Plan, o Options) (string, error) {
	if !o.Names {
		p = Public(p)
	}
	text, err := plan.Encode(p)
	if err != nil {
		return "", err
	}
	if len(text) > mostBytes || len(p.Modules) > mostModules {
		return "", &Error{Key: TooLarge}
	}
	version, payload := best(p, text)
	code, ok := seal(envelope{KindPlan, version, crc32.ChecksumIEEE(text), payload})
	if !ok {
		return "", &Error{Key: TooLarge}
	}
	return code, nil
}

// best returns the shorter of the forms that give back the text of p.
func best(p plan.Plan, text []byte) (version byte, payload []byte) {
	version, payload = versionText, deflated(text)
	if p.Newer() || p.Units.Step <= 0 {
		return version, payload
	}
	n, err := document.Parse(text)
	if err != nil {
		return version, payload
	}
	packed := pack(planShape(), n, p.Units.Step)
	back, err := canonical(packed)
	if short := deflated(packed); err == nil && bytes.Equal(back, text) && len(short) < len(payload) {
		return versionColumns, short
	}
	return version, payload
}

// canonical returns the canonical text of a plan in columns.
func canonical(packed []byte) ([]byte, error) {
	n, err := unpack(planShape(), packed)
	if err != nil {
		return nil, err
	}
	text, err := n.Canonical()
	if err != nil {
		return nil, incomplete()
	}
	return text, nil
}

// DecodePlan opens a plan from a link or a bare code. The error is an [*Error], unless a
// whole link holds what is no plan.
func DecodePlan(link string) (plan.Plan, error) {
	e, ok := unseal(Code(link))
	switch {
	case !ok:
		return plan.Plan{}, incomplete()
	case e.kind != KindPlan:
		return plan.Plan{}, &Error{Key: OtherKind}
	case e.version != versionText && e.version != versionColumns:
		return plan.Plan{}, &Error{NewerVersion, []words.Arg{words.Name("version", string(rune(e.version)))}}
	}
	text, err := e.text()
	if err != nil {
		return plan.Plan{}, err
	}
	if crc32.ChecksumIEEE(text) != e.sum {
		return plan.Plan{}, incomplete()
	}
	if len(text) > mostBytes {
		return plan.Plan{}, &Error{Key: TooLarge}
	}
	p, err := plan.Decode(text)
	if err == nil && len(p.Modules) > mostModules {
		return plan.Plan{}, &Error{Key: TooLarge}
	}
	return p, err
}

// text returns the canonical text that an envelope holds, before its checksum is asked.
func (e envelope) text() ([]byte, error) {
	raw, err := inflated(e.payload)
	if err != nil || e.version == versionText {
		return raw, err
	}
	return canonical(raw)
}

// dictionary holds what the texts of plans are likely to say, for deflate to point at. It
// belongs to the format and never changes.
const dictionary = `{"set":{"in":{"kind":"plate-lining-plate-upright-rod-structure-plate-back-12-1-2in-3-8in` +
	`"name":"Left Right Upper Lower Middle Long Short Wall Shelf Shelf Box U Z L hexagon ` +
	`"arrangements":[],"modules":[],"walls":[],"counters":{},"schema":"ledgewright/plan/1","units":{"step":0.5,"system":"mm"}`
