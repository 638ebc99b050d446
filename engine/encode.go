package engine

import (
	"errors"
	"strconv"

	"ledgewright/engine/document"
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/part"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
)

// limits of a build that is read back: it is larger than the plan it came from.
var limits = document.Limits{Bytes: 256 << 20, Items: 1 << 20, Values: 64 << 20}

// A Document is a Build as it stands in a document: findings and verdicts in words.
type Document struct {
	Schema       string          `json:"schema"`
	Job          plan.Job        `json:"job"`
	Units        plan.Units      `json:"units"`
	Verdicts     []verdictDoc    `json:"verdicts"`
	Modules      []module.Result `json:"modules"`
	Arrangements []wall.Result   `json:"arrangements"`
	Parts        part.List       `json:"parts"`
	Holds        []Holding       `json:"holds"`
	Findings     []findingDoc    `json:"findings"`
}

type verdictDoc struct {
	Verdict  string   `json:"verdict"`
	Severity string   `json:"severity"`
	Key      string   `json:"key"`
	Args     []argDoc `json:"args,omitempty"`
	Text     string   `json:"text"`
}

type findingDoc struct {
	Kind     string        `json:"kind"`
	Verdict  string        `json:"verdict"`
	Severity string        `json:"severity"`
	Place    finding.Place `json:"place"`
	Value    valueDoc      `json:"value,omitempty"`
	Limit    valueDoc      `json:"limit,omitempty"`
	Args     []argDoc      `json:"args,omitempty"`
	Text     string        `json:"text"`
	Remedies []remedyDoc   `json:"remedies,omitempty"`
}

type remedyDoc struct {
	Key  string   `json:"key"`
	Args []argDoc `json:"args,omitempty"`
	Text string   `json:"text"`
	Do   string   `json:"do,omitempty"`   // an edit: its name …
	With []argDoc `json:"with,omitempty"` // … and its arguments
}

type argDoc struct {
	Name  string   `json:"name"`
	Value valueDoc `json:"value"`
}

// A valueDoc is a words.Value with one member, named after its type.
type valueDoc struct {
	Length document.Opt[unit.Length] `json:"length,omitempty"`
	Fine   document.Opt[unit.Length] `json:"fine,omitempty"` // a length too small for the plan's step
	Angle  document.Opt[unit.Angle]  `json:"angle,omitempty"`
	Mass   document.Opt[float64]     `json:"mass,omitempty"`
	Area   document.Opt[float64]     `json:"area,omitempty"`
	Count  document.Opt[int]         `json:"count,omitempty"`
	Number document.Opt[float64]     `json:"number,omitempty"`
	Name   document.Opt[string]      `json:"name,omitempty"`
	Word   document.Opt[string]      `json:"word,omitempty"`
}

// Encode writes a build as its document, indented.
func Encode(b Build) ([]byte, error) { return document.Pretty(toFile(b)) }

// Decode reads a build's document. What the build was worked out from is not in it,
// so it lends nothing to a later Derive.
func Decode(text []byte) (Build, error) {
	var f Document
	if err := limits.Decode(text, &f); err != nil {
		return Build{}, err
	}
	if f.Schema != Schema {
		return Build{}, errors.New("schema: found " + strconv.Quote(f.Schema) + ", want " + strconv.Quote(Schema))
	}
	return fromFile(f)
}

func toFile(b Build) Document {
	f := Document{
		Schema: b.Schema, Job: b.Job, Units: b.Units, Modules: b.Modules,
		Arrangements: b.Arrangements, Parts: b.Parts, Holds: b.Holds,
	}
	style := b.Style()
	for _, v := range b.Verdicts {
		f.Verdicts = append(f.Verdicts, verdictDoc{
			Verdict: verdictNames[v.Of], Severity: severityNames[v.Severity],
			Key: v.Key, Args: toArgs(v.Args), Text: words.Text(v.Key, v.Args, style),
		})
	}
	for _, d := range b.Findings {
		f.Findings = append(f.Findings, toFinding(d, style))
	}
	return f
}

func toFinding(d finding.Finding, style unit.Style) findingDoc {
	out := findingDoc{
		Kind: d.Kind.Key, Verdict: verdictNames[d.Kind.Verdict], Severity: severityNames[d.Kind.Severity],
		Place: d.Place, Value: toValue(d.Value), Limit: toValue(d.Limit),
		Args: toArgs(d.Args), Text: Say(d, style),
	}
	for _, r := range d.Remedies {
		out.Remedies = append(out.Remedies, remedyDoc{
			Key: r.Key, Args: toArgs(r.Args), Text: SayRemedy(r, style), Do: r.Edit.Do, With: toArgs(r.Edit.Args),
		})
	}
	return out
}

func fromFile(f Document) (Build, error) {
	b := Build{
		Schema: f.Schema, Job: f.Job, Units: f.Units, Modules: f.Modules,
		Arrangements: f.Arrangements, Parts: f.Parts, Holds: f.Holds,
	}
	if len(f.Verdicts) != len(b.Verdicts) {
		return Build{}, errors.New("verdicts: found " + strconv.Itoa(len(f.Verdicts)) + ", want " + strconv.Itoa(len(b.Verdicts)))
	}
	for i, v := range f.Verdicts {
		b.Verdicts[i] = Verdict{
			Of: finding.Verdict(indexOf(verdictNames, v.Verdict)), Severity: finding.Severity(indexOf(severityNames, v.Severity)),
			Key: v.Key, Args: fromArgs(v.Args),
		}
	}
	for _, d := range f.Findings {
		b.Findings = append(b.Findings, fromFinding(d))
	}
	return b, nil
}

func fromFinding(d findingDoc) finding.Finding {
	out := finding.Finding{
		Kind: finding.Kind{
			Key: d.Kind, Verdict: finding.Verdict(indexOf(verdictNames, d.Verdict)),
			Severity: finding.Severity(indexOf(severityNames, d.Severity)),
		},
		Place: d.Place, Value: fromValue(d.Value), Limit: fromValue(d.Limit), Args: fromArgs(d.Args),
	}
	for _, r := range d.Remedies {
		out.Remedies = append(out.Remedies, finding.Remedy{
			Key: r.Key, Args: fromArgs(r.Args), Edit: finding.Edit{Do: r.Do, Args: fromArgs(r.With)},
		})
	}
	return out
}

var (
	verdictNames  = []string{"", "fits", "holds", "takes"}
	severityNames = []string{"none", "note", "unknown", "mend", "stop"}
)

func indexOf(names []string, s string) int {
	for i, n := range names {
		if n == s {
			return i
		}
	}
	return 0
}

func toArgs(args []words.Arg) []argDoc {
	var out []argDoc
	for _, a := range args {
		out = append(out, argDoc{a.Name, toValue(a.Value)})
	}
	return out
}

func fromArgs(args []argDoc) []words.Arg {
	var out []words.Arg
	for _, a := range args {
		out = append(out, words.Arg{Name: a.Name, Value: fromValue(a.Value)})
	}
	return out
}

func toValue(v words.Value) (d valueDoc) {
	switch v.Is {
	case words.IsLength:
		d.Length = document.Some(v.Length)
	case words.IsFine:
		d.Fine = document.Some(v.Length)
	case words.IsAngle:
		d.Angle = document.Some(v.Angle)
	case words.IsMass:
		d.Mass = document.Some(v.Number)
	case words.IsArea:
		d.Area = document.Some(v.Number)
	case words.IsCount:
		d.Count = document.Some(int(v.Number))
	case words.IsNumber:
		d.Number = document.Some(v.Number)
	case words.IsName:
		d.Name = document.Some(v.Text)
	case words.IsWord:
		d.Word = document.Some(v.Text)
	}
	return d
}

func fromValue(d valueDoc) words.Value {
	switch {
	case d.Length.Known:
		return words.LengthOf(d.Length.Value)
	case d.Fine.Known:
		return words.FineOf(d.Fine.Value)
	case d.Angle.Known:
		return words.AngleOf(d.Angle.Value)
	case d.Mass.Known:
		return words.Value{Is: words.IsMass, Number: d.Mass.Value}
	case d.Area.Known:
		return words.Value{Is: words.IsArea, Number: d.Area.Value}
	case d.Count.Known:
		return words.CountOf(d.Count.Value)
	case d.Number.Known:
		return words.Value{Is: words.IsNumber, Number: d.Number.Value}
	case d.Name.Known:
		return words.Value{Is: words.IsName, Text: d.Name.Value}
	case d.Word.Known:
		return words.Value{Is: words.IsWord, Text: d.Word.Value}
	}
	return words.Value{}
}
