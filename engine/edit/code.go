package edit

import (
	"slices"
	"strings"

	"ledgewright/engine/document"
	"ledgewright/engine/finding"
	"ledgewright/engine/words"
)

// A kind is one kind of edit: its name, and how its arguments are read.
type kind struct {
	do   string
	read func(text []byte, arguments document.Node) (Edit, error)
}

func of[T Edit]() kind {
	var none T
	return kind{none.Do(), func(text []byte, n document.Node) (Edit, error) {
		var e T
		err := document.DecodeNode(text, n, &e)
		return e, err
	}}
}

// kinds lists every kind, in the order of a plan.
func kinds() []kind {
	return []kind{
		of[SetJob](), of[SetUnits](), of[SetShop](),
		of[AddWall](), of[SetWall](), of[RemoveWall](),
		of[SetStuds](), of[AddStud](), of[SetStud](), of[RemoveStud](),
		of[AddObstacle](), of[SetObstacle](), of[RemoveObstacle](),
		of[AddPlumb](), of[SetPlumb](), of[RemovePlumb](),
		of[AddFlat](), of[SetFlat](), of[RemoveFlat](),
		of[AddModule](), of[SetModule](), of[RemoveModule](),
		of[DuplicateModule](), of[MirrorModule](), of[OrderModule](),
		of[AddBoard](), of[SetBoard](), of[RemoveBoard](), of[SetCorner](),
		of[AddDivider](), of[SetDivider](), of[RemoveDivider](), of[SetEdge](),
		of[AddLight](), of[SetLight](), of[RemoveLight](),
		of[PlaceBrackets](), of[AddBracket](), of[SetBracket](), of[RemoveBracket](),
		of[AddArrangement](), of[SetArrangement](), of[RemoveArrangement](), of[DuplicateArrangement](),
		of[Place](), of[Move](), of[Turn](), of[Flip](), of[TakeOff](), of[Align](), of[Spread](),
		of[AddLine](), of[SetLine](), of[RemoveLine](), of[SetDatum](),
	}
}

// Names returns the names of all edits, in the order of a plan.
func Names() []string {
	var names []string
	for _, k := range kinds() {
		names = append(names, k.do)
	}
	return names
}

// limits of one edit. A whole module or shop profile is the longest argument.
var limits = document.Limits{Bytes: 1 << 18}

// Decode reads one edit. The error says line, column and path, or is an [*Error] that
// names the nearest edit.
func Decode(line []byte) (Edit, error) {
	n, err := limits.Parse(line)
	if err != nil {
		return nil, err
	}
	var head struct {
		Schema string         `json:"schema"`
		Do     string         `json:"do"`
		Rest   document.Extra `json:"-"`
	}
	if err := document.DecodeNode(line, n, &head); err != nil {
		return nil, err
	}
	if head.Schema != Schema {
		return nil, notOneOf("", "schema", head.Schema, Schema)
	}
	for _, k := range kinds() {
		if k.do == head.Do {
			return k.read(line, n.Without("schema").Without("do"))
		}
	}
	return nil, noSuch("edit", "", head.Do, Names())
}

// Encode writes an edit as one line of canonical JSON, without a newline. It returns nil
// for an edit that no document can hold, such as one with a length of a million
// kilometres.
func Encode(e Edit) []byte {
	n, err := document.Tree(e)
	if err != nil {
		return nil
	}
	n.Kids = append(n.Kids, document.TextNode(Schema).With("schema"), document.TextNode(e.Do()).With("do"))
	text, err := n.Canonical()
	if err != nil {
		return nil
	}
	return text
}

// From reads the edit of a remedy. An argument with a point in its name, such as
// "power.source", is a member of a member.
func From(r finding.Edit) (Edit, error) {
	members := []document.Node{document.TextNode(Schema).With("schema"), document.TextNode(r.Do).With("do")}
	for _, a := range r.Args {
		n, err := nodeOf(a.Value)
		if err != nil {
			return nil, named(r.Do, refuse("no-argument", "", words.Name("member", a.Name)))
		}
		members = nested(members, a.Name, n)
	}
	text, err := document.ObjectNode(members...).Canonical()
	if err != nil {
		return nil, named(r.Do, err)
	}
	return Decode(text)
}

// nested adds n to members under its name, within the object that its name begins with.
func nested(members []document.Node, name string, n document.Node) []document.Node {
	outer, inner, ok := strings.Cut(name, ".")
	if !ok {
		return append(members, n.With(name))
	}
	i := slices.IndexFunc(members, func(m document.Node) bool { return m.Key == outer })
	if i < 0 {
		i = len(members)
		members = append(members, document.ObjectNode().With(outer))
	}
	members[i].Kids = nested(members[i].Kids, inner, n)
	return members
}

// nodeOf returns a value of a message as a value of a document.
func nodeOf(v words.Value) (document.Node, error) {
	switch v.Is {
	case words.IsLength:
		return document.LengthNode(v.Length), nil
	case words.IsAngle:
		return document.AngleNode(v.Angle), nil
	case words.IsCount:
		return document.WholeNode(int64(v.Number)), nil
	case words.IsName, words.IsWord:
		return document.TextNode(v.Text), nil
	case words.None:
		return document.Node{}, nil
	}
	return document.Tree(v.Number)
}
