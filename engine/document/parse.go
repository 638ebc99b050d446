package document

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// Parse reads text as one JSON value under the default limits.
func Parse(text []byte) (Node, error) { return Limits{}.Parse(text) }

// Parse reads text as one JSON value (RFC 8259) under the limits l.
func (l Limits) Parse(text []byte) (Node, error) {
	l = l.filled()
	if len(text) > l.Bytes {
		return Node{}, &Error{
			Reason: "too-long", Found: "a text of " + strconv.Itoa(len(text)) + " bytes",
			Allowed: "at most " + strconv.Itoa(l.Bytes) + " bytes",
		}
	}
	p := parser{text: string(text), limits: l}
	n, err := p.document()
	if err != nil {
		return Node{}, locate(err, text)
	}
	return n, nil
}

// A parser reads one text from front to back, each byte a bounded number of times.
type parser struct {
	text   string
	at     int
	depth  int
	values int
	limits Limits
}

// document reads the whole text.
func (p *parser) document() (Node, error) {
	if strings.HasPrefix(p.text, "\uFEFF") {
		return Node{}, p.wrong("byte-order-mark", "a byte order mark", "text in UTF-8 without one")
	}
	n, err := p.value()
	if err != nil {
		return n, err
	}
	p.space()
	if p.at < len(p.text) {
		return n, p.wrong("trailing", p.here(), "nothing after the end of the document")
	}
	return n, nil
}

func (p *parser) wrong(reason, found, allowed string) *Error {
	return &Error{Reason: reason, Found: found, Allowed: allowed, at: p.at, placed: true}
}

// here says what stands at the present place.
func (p *parser) here() string {
	if p.at >= len(p.text) {
		return "the end of the text"
	}
	r, size := utf8.DecodeRuneInString(p.text[p.at:])
	if r == utf8.RuneError && size <= 1 {
		return "a byte that is no UTF-8"
	}
	return quote(string(r))
}

// next returns the byte at the present place, or 0 at the end.
func (p *parser) next() byte {
	if p.at < len(p.text) {
		return p.text[p.at]
	}
	return 0
}

func (p *parser) space() {
	for p.at < len(p.text) {
		switch p.text[p.at] {
		case ' ', '\t', '\n', '\r':
			p.at++
		default:
			return
		}
	}
}

// value reads one value and the space before it.
func (p *parser) value() (Node, error) {
	p.space()
	if p.values++; p.values > p.limits.Values {
		return Node{}, p.wrong("too-many-values", "more values", "at most "+strconv.Itoa(p.limits.Values)+" values in one document")
	}
	n := Node{At: p.at}
	var err error
	switch c := p.next(); {
	case c == '{':
		n.Kind = Object
		n.Kids, err = p.inside('}', p.member)
	case c == '[':
		n.Kind = Array
		n.Kids, err = p.inside(']', p.item)
	case c == '"':
		n.Kind = String
		n.Text, err = p.string()
	case c == '-' || '0' <= c && c <= '9':
		n.Kind = Number
		n.Text, err = p.number()
	default:
		n.Kind, n.Text, err = p.literal()
	}
	return n, err
}

func (p *parser) literal() (Kind, string, error) {
	for _, word := range [...]string{"null", "true", "false"} {
		if strings.HasPrefix(p.text[p.at:], word) {
			p.at += len(word)
			if word == "null" {
				return Null, "", nil
			}
			return Bool, word, nil
		}
	}
	return Null, "", p.wrong("syntax", p.here(), "a JSON value")
}

// inside reads what stands between brackets, up to and with the closing one. The
// function one reads part number i.
func (p *parser) inside(closing byte, one func(i int) (Node, error)) ([]Node, error) {
	if p.depth++; p.depth > p.limits.Depth {
		return nil, p.wrong("too-deep", p.here(), "at most "+strconv.Itoa(p.limits.Depth)+" arrays and objects inside each other")
	}
	p.at++
	p.space()
	if p.next() == closing {
		p.at++
		p.depth--
		return nil, nil
	}
	kids, err := p.parts(closing, one)
	p.depth--
	return kids, err
}

func (p *parser) parts(closing byte, one func(i int) (Node, error)) ([]Node, error) {
	var kids []Node
	for {
		if len(kids) == p.limits.Items {
			return nil, p.wrong("too-many-items", "more than "+strconv.Itoa(p.limits.Items), "at most that many in one array or object")
		}
		n, err := one(len(kids))
		if err != nil {
			return nil, err
		}
		kids = append(kids, n)
		p.space()
		switch p.next() {
		case ',':
			p.at++
		case closing:
			p.at++
			return kids, p.twice(closing, kids)
		default:
			return nil, p.wrong("syntax", p.here(), `"," or `+quote(string(closing)))
		}
	}
}

// item reads one item of an array.
func (p *parser) item(i int) (Node, error) {
	n, err := p.value()
	return n, under(err, item(i))
}

// member reads one member of an object.
func (p *parser) member(int) (Node, error) {
	p.space()
	at := p.at
	if p.next() != '"' {
		return Node{}, p.wrong("syntax", p.here(), "the name of a member, in quotation marks")
	}
	name, err := p.string()
	if err != nil {
		return Node{}, err
	}
	p.space()
	if p.next() != ':' {
		return Node{}, p.wrong("syntax", p.here(), `":" after the name `+quote(name))
	}
	p.at++
	n, err := p.value()
	n.Key, n.name = name, at
	return n, under(err, member(name))
}

// twice refuses an object in which two members have the same name.
func (p *parser) twice(closing byte, members []Node) error {
	if closing != '}' {
		return nil
	}
	order := sorted(members)
	for i := 1; i < len(order); i++ {
		if order[i].Key == order[i-1].Key {
			n := order[i]
			if n.name < order[i-1].name {
				n = order[i-1]
			}
			return &Error{
				Path: member(n.Key), Reason: "duplicate", Found: "a second member " + quote(n.Key),
				Allowed: "each name once in an object", at: n.name, placed: true,
			}
		}
	}
	return nil
}

// longestNumber is more than any number needs: the decimals of the smallest float are
// not worth reading.
const longestNumber = 400

// number reads a number by the grammar of RFC 8259, section 6.
func (p *parser) number() (string, error) {
	start := p.at
	if p.next() == '-' {
		p.at++
	}
	if p.next() == '0' {
		p.at++
		if c := p.next(); '0' <= c && c <= '9' {
			return "", p.wrong("syntax", "a number with a leading zero", "a number without one")
		}
	} else if err := p.digits(); err != nil {
		return "", err
	}
	if p.next() == '.' {
		p.at++
		if err := p.digits(); err != nil {
			return "", err
		}
	}
	if p.next() == 'e' || p.next() == 'E' {
		p.at++
		if p.next() == '+' || p.next() == '-' {
			p.at++
		}
		if err := p.digits(); err != nil {
			return "", err
		}
	}
	if p.at-start > longestNumber {
		p.at = start
		return "", p.wrong("number-too-long", "a number that is too long", "at most "+strconv.Itoa(longestNumber)+" characters")
	}
	return p.text[start:p.at], nil
}

// digits passes at least one digit.
func (p *parser) digits() error {
	start := p.at
	for '0' <= p.next() && p.next() <= '9' {
		p.at++
	}
	if p.at == start {
		return p.wrong("syntax", p.here(), "a digit")
	}
	return nil
}
