package document

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/unit"
)

type finish string

type place struct{ X, MinY unit.Length }

// A job has one field of each kind that documents are made of.
type job struct {
	Schema string      `json:"schema"`
	Name   string      `json:"name,omitempty"`
	Width  unit.Length `json:"width"`
	Boards []piece     `json:"boards"`
	Near   []place     `json:"near,omitempty"`
	Lining lining      `json:"lining,omitempty"`
	Count  int         `json:"count,omitempty"`
	Minor  int64       `json:"minor,omitempty"`
	Small  uint8       `json:"small,omitempty"`
	Drop   float64     `json:"drop,omitempty"`
	Closed bool        `json:"closed,omitempty"`
	Hidden string      `json:"-"`
	Extra  Extra       `json:"-"`
	shown  bool
}

type piece struct {
	Length Opt[unit.Length] `json:"length,omitempty"`
	Turn   unit.Angle       `json:"turn"`
	Finish finish           `json:"finish,omitempty"`
	Ends   [2]unit.Length   `json:"ends,omitempty"`
}

type lining struct {
	Kind  string   `json:"kind,omitempty"`
	Thick Opt[int] `json:"thick,omitempty"`
	Extra Extra    `json:"-"`
}

const pretty = `{
  "schema": "ledgewright/job/1",
  "name": "Ash over the \"stairs\"",
  "width": 292.1,
  "boards": [
    {"length": 520, "turn": 90, "finish": "oil"},
    {"turn": -22.5, "finish": "an oil that is named so that it fills a whole line", "ends": [1, 2]},
    {
      "turn": 0.000001,
      "finish": "an oil named so that its line would be one character too long now"
    }
  ],
  "near": [{"x": 1, "minY": -2.5}],
  "count": 3,
  "later": {"a": [null, 1.5]}
}
`

func sample() job {
	return job{
		Schema: "ledgewright/job/1",
		Name:   `Ash over the "stairs"`,
		Width:  23 * unit.Inch / 2,
		Boards: []piece{
			{Length: Some(520 * unit.Millimetre), Turn: unit.QuarterTurn, Finish: "oil"},
			{
				Turn: -22*unit.Degree - unit.Degree/2, Finish: "an oil that is named so that it fills a whole line",
				Ends: [2]unit.Length{unit.Millimetre, 2 * unit.Millimetre},
			},
			{Turn: unit.MicroDegree, Finish: "an oil named so that its line would be one character too long now"},
		},
		Near:  []place{{unit.Millimetre, -5 * unit.Millimetre / 2}},
		Count: 3,
		Extra: Extra{{"later", `{"a":[null,1.5]}`}},
	}
}

func TestWrittenForms(t *testing.T) {
	text, err := Pretty(sample())
	require.NoError(t, err)
	require.Equal(t, pretty, string(text))
	for _, line := range strings.Split(pretty, "\n") {
		require.LessOrEqual(t, len(line), lineWidth)
	}

	text, err = Encode(sample())
	require.NoError(t, err)
	require.Equal(t, `{"boards":[{"finish":"oil","length":520,"turn":90},`+
		`{"ends":[1,2],"finish":"an oil that is named so that it fills a whole line","turn":-22.5},`+
		`{"finish":"an oil named so that its line would be one character too long now","turn":0.000001}],`+
		`"count":3,"later":{"a":[null,1.5]},"name":"Ash over the \"stairs\"","near":[{"minY":-2.5,"x":1}],`+
		`"schema":"ledgewright/job/1","width":292.1}`, string(text))
}

func TestReading(t *testing.T) {
	var got job
	require.NoError(t, Decode([]byte(pretty), &got))
	require.Equal(t, sample(), got)
}

func TestWhatSaysNothingIsLeftOut(t *testing.T) {
	j := job{Schema: "s", Near: []place{}, Lining: lining{Extra: Extra{}}, Drop: math.Copysign(0, -1)}
	text, err := Encode(j)
	require.NoError(t, err)
	require.Equal(t, `{"boards":[],"schema":"s","width":0}`, string(text))

	var got job
	require.NoError(t, Decode([]byte(`{"schema": "s", "width": 0, "boards": [], "near": [], "lining": {}, "drop": -0.0}`), &got))
	require.Equal(t, job{Schema: "s"}, got)
}

// refused lists texts with the whole sentence that they earn.
var refused = []struct{ text, want string }{
	{``, `line 1, column 1: found the end of the text; allowed is a JSON value`},
	{`nil`, `line 1, column 1: found "n"; allowed is a JSON value`},
	{"\uFEFF{}", `line 1, column 1: found a byte order mark; allowed is text in UTF-8 without one`},
	{"{\"schema\": \"s\"}\n{}", `line 2, column 1: found "{"; allowed is nothing after the end of the document`},
	{"{\n \"schema\": 5}", `line 2, column 12, at schema: found the number 5; allowed is a text in quotation marks`},
	{`{"schema": null}`, `line 1, column 12, at schema: found null; allowed is a text in quotation marks`},
	{`{"schema": "s", "width": 1}`, `line 1, column 1, at boards: found no member "boards"; allowed is an object with all its members`},
	{"{\"schema\": \"é\", \"width\":\r\n \"24\"}", `line 2, column 2, at width: found the text "24"; allowed is a length in millimetres, such as 292.1`},
	{`{"schema": "é", "width": "24"}`, `line 1, column 26, at width: found the text "24"; allowed is a length in millimetres, such as 292.1`},
	{`{"width": 0.0000001}`, `line 1, column 11, at width: found the number 0.0000001; allowed is a length in millimetres, such as 292.1, with at most 6 decimals`},
	{`{"width": 1e9}`, `line 1, column 11, at width: found the number 1e9; allowed is a length in millimetres, such as 292.1, below 10⁹ in size`},
	{`{"boards": [{"turn": 1}, {"turn": true}]}`, `line 1, column 35, at boards[1].turn: found true; allowed is an angle in degrees, such as 22.5`},
	{`{"boards": [{"turn": 1, "ends": [1]}]}`, `line 1, column 33, at boards[0].ends: found an array of 1; allowed is exactly 2`},
	{`{"boards": [{"turn": 1, "trun": 2}]}`, `line 1, column 25, at boards[0].trun: found the member "trun"; allowed is only length, turn, finish, ends`},
	{`{"boards": {}}`, `line 1, column 12, at boards: found an object; allowed is an array`},
	{`{"near": [[]]}`, `line 1, column 11, at near[0]: found an array; allowed is an object`},
	{`{"closed": "yes"}`, `line 1, column 12, at closed: found the text "yes"; allowed is true or false`},
	{`{"count": 1.5}`, `line 1, column 11, at count: found the number 1.5; allowed is a whole number`},
	{`{"count": 9007199254740992}`, `line 1, column 11, at count: found the number 9007199254740992; allowed is a whole number`},
	{`{"small": 256}`, `line 1, column 11, at small: found the number 256; allowed is a whole number from 0 up`},
	{`{"small": -1}`, `line 1, column 11, at small: found the number -1; allowed is a whole number from 0 up`},
	{`{"drop": 1e309}`, `line 1, column 10, at drop: found the number 1e309; allowed is a finite number`},
	{`{"lining": {"thick": "x"}}`, `line 1, column 22, at lining.thick: found the text "x"; allowed is a whole number`},
	{`{"a": 1, "b": {"x y": 1, "x y": 2}}`, `line 1, column 26, at b["x y"]: found a second member "x y"; allowed is each name once in an object`},
	{`{"a": 1, "\u0061": 2}`, `line 1, column 10, at a: found a second member "a"; allowed is each name once in an object`},
	{`{"a": 1,}`, `line 1, column 9: found "}"; allowed is the name of a member, in quotation marks`},
	{`{"a" 1}`, `line 1, column 6: found "1"; allowed is ":" after the name "a"`},
	{`{"a": [1 2]}`, `line 1, column 10, at a: found "2"; allowed is "," or "]"`},
	{`[1,]`, `line 1, column 4, at [1]: found "]"; allowed is a JSON value`},
	{`[1`, `line 1, column 3: found the end of the text; allowed is "," or "]"`},
	{`{"a": 01}`, `line 1, column 8, at a: found a number with a leading zero; allowed is a number without one`},
	{`{"a": .5}`, `line 1, column 7, at a: found "."; allowed is a JSON value`},
	{`{"a": -}`, `line 1, column 8, at a: found "}"; allowed is a digit`},
	{`{"a": 1.}`, `line 1, column 9, at a: found "}"; allowed is a digit`},
	{`{"a": 1e}`, `line 1, column 9, at a: found "}"; allowed is a digit`},
	{`{"a": NaN}`, `line 1, column 7, at a: found "N"; allowed is a JSON value`},
	{`{"a": "b`, `line 1, column 9, at a: found the end of the text; allowed is a quotation mark at the end of a text`},
	{"{\"a\": \"b\n\"}", `line 1, column 9, at a: found a control character inside a text; allowed is an escape such as \n`},
	{"{\"a\": \"b\xff\"}", `line 1, column 9, at a: found a byte that is no UTF-8; allowed is text in UTF-8`},
	{"{\"a\": \"b\xed\xa0\x80\"}", `line 1, column 9, at a: found a byte that is no UTF-8; allowed is text in UTF-8`},
	{"{\"a\": \"b\uFFFF\"}", `line 1, column 9, at a: found U+FFFF; allowed is what Unicode has made a character`},
	{`{"a": "\ufdd0"}`, `line 1, column 8, at a: found U+FDD0; allowed is what Unicode has made a character`},
	{`{"a": "b\ud83d"}`, `line 1, column 9, at a: found half of a surrogate pair; allowed is both halves, such as \ud83d\ude00`},
	{`{"a": "\ude00\ud83d"}`, `line 1, column 8, at a: found half of a surrogate pair; allowed is both halves, such as \ud83d\ude00`},
	{`{"a": "\x"}`, `line 1, column 9, at a: found "x" after \; allowed is one of " \ / b f n r t u`},
	{`{"a": "\u12g4"}`, `line 1, column 10, at a: found "12g4"; allowed is four hexadecimal digits after \u`},
	{`{"a": "\u+123"}`, `line 1, column 10, at a: found "+123"; allowed is four hexadecimal digits after \u`},
	{`{"later": {"id": 12345678901234567890}, "schema": "", "width": 0, "boards": []}`, `line 1, column 18, at later.id: found the number 12345678901234567890; allowed is a number that a 64-bit float keeps, as most programs read it`},
}

func TestRefused(t *testing.T) {
	for _, c := range refused {
		var j job
		err := Decode([]byte(c.text), &j)
		require.Error(t, err, c.text)
		require.Equal(t, c.want, err.Error(), c.text)
		var e *Error
		require.ErrorAs(t, err, &e)
		require.NotEmpty(t, e.Reason)
	}
}

func TestLimits(t *testing.T) {
	small := Limits{Bytes: 60, Depth: 3, Runes: 4, Items: 3, Values: 7}
	for text, want := range map[string]string{
		strings.Repeat(" ", 60) + "1": "found a text of 61 bytes; allowed is at most 60 bytes",
		`[[[[1]]]]`:                   "line 1, column 4, at [0][0][0]: found \"[\"; allowed is at most 3 arrays and objects inside each other",
		`{"a": "éééé5"}`:              "line 1, column 7, at a: found a text of more than 4 characters; allowed is at most that many",
		`{"abcde": 1}`:                "line 1, column 2: found a text of more than 4 characters; allowed is at most that many",
		`[1, 2, 3, 4]`:                "line 1, column 10: found more than 3; allowed is at most that many in one array or object",
		`[[1,2,3],[4,5,6]]`:           "line 1, column 13, at [1][1]: found more values; allowed is at most 7 values in one document",
	} {
		_, err := small.Parse([]byte(text))
		require.EqualError(t, err, want)
	}
	_, err := small.Parse([]byte(`[[1,2,3],{"a":"éééé"}]`))
	require.NoError(t, err)

	_, err = Parse([]byte(strings.Repeat("[", 32) + strings.Repeat("]", 32)))
	require.NoError(t, err)
	_, err = Parse([]byte(strings.Repeat("[", 33) + strings.Repeat("]", 33)))
	require.ErrorContains(t, err, "at most 32 arrays and objects")
	_, err = Parse([]byte(`"` + strings.Repeat("é", 501) + `"`))
	require.ErrorContains(t, err, "more than 500 characters")
	_, err = Parse([]byte("1" + strings.Repeat("0", 400)))
	require.ErrorContains(t, err, "a number that is too long")
	_, err = Parse([]byte("[" + strings.Repeat("0,", 10_000) + "0]"))
	require.ErrorContains(t, err, "found more than 10000")
	_, err = Parse([]byte("[" + strings.Repeat("[0,0,0],", 9_999) + "[" + strings.Repeat("[0,0,0,0,0,0,0,0,0],", 9_999) + "0]]"))
	require.NoError(t, err)
}

func TestWhatHasNoFormIsNotWritten(t *testing.T) {
	good := sample()
	for want, spoil := range map[string]func(*job){
		"document: name is no text of Unicode characters":                                           func(j *job) { j.Name = "\xff" },
		"document: boards[1].finish is no text of Unicode characters":                               func(j *job) { j.Boards[1].Finish = "\uFFFE" },
		"document: width is out of range for a document":                                            func(j *job) { j.Width = unit.Limit },
		"document: boards[0].turn is out of range for a document":                                   func(j *job) { j.Boards[0].Turn = math.MinInt64 },
		"document: minor is out of range for a document":                                            func(j *job) { j.Minor = 1 << 53 },
		"document: drop is no finite number":                                                        func(j *job) { j.Drop = math.NaN() },
		"document: width is no name of an unknown member, or out of order":                          func(j *job) { j.Extra = Extra{{"width", "1"}} },
		"document: a is no name of an unknown member, or out of order":                              func(j *job) { j.Extra = Extra{{"b", "1"}, {"a", "1"}} },
		`document: b line 1, column 2: found "x"; allowed is nothing after the end of the document`: func(j *job) { j.Extra = Extra{{"b", "1x"}} },
	} {
		j := good
		j.Boards = append([]piece(nil), good.Boards...)
		spoil(&j)
		_, err := Encode(j)
		require.EqualError(t, err, want)
	}
	for _, v := range []any{map[string]int{}, nil, (*job)(nil), func() {}, Opt[int]{}} {
		_, err := Encode(v)
		require.Error(t, err)
	}
	require.Error(t, Decode([]byte("{}"), job{}), "not a pointer")
	var m struct{ A map[string]int }
	require.EqualError(t, Decode([]byte(`{"a": {}}`), &m), "document: map[string]int has no form")
}

// What a reader with wider limits kept unread is written again whole.
func TestWideLimitsKeepTheirRoundTrip(t *testing.T) {
	text := `{"boards":[],"later":[` + strings.Repeat("0,", 20_000) + `"` + strings.Repeat("x", 600) + `"],"schema":"","width":0}`
	var j job
	require.Error(t, Decode([]byte(text), &j))
	require.NoError(t, Limits{Items: 30_000, Runes: 600}.Decode([]byte(text), &j))
	again, err := Encode(j)
	require.NoError(t, err)
	require.Equal(t, text, string(again))
}

// A colour has a form of its own.
type colour struct{ r, g, b uint8 }

func (c colour) MarshalDocument() (Node, error) {
	return ArrayNode(WholeNode(int64(c.r)), WholeNode(int64(c.g)), WholeNode(int64(c.b))), nil
}

func (c *colour) UnmarshalDocument(n Node) error {
	if len(n.Kids) != 3 {
		return errors.New("red, green and blue")
	}
	var all [3]uint8
	err := DecodeNode(nil, n, &all)
	c.r, c.g, c.b = all[0], all[1], all[2]
	return err
}

func TestTypesWithTheirOwnForm(t *testing.T) {
	type tin struct {
		Paint Opt[colour] `json:"paint"`
		Lid   colour      `json:"lid,omitempty"`
	}
	in := tin{Paint: Some(colour{1, 2, 3})}
	text, err := Encode(in)
	require.NoError(t, err)
	require.Equal(t, `{"paint":[1,2,3]}`, string(text))
	var out tin
	require.NoError(t, Decode(text, &out))
	require.Equal(t, in, out)
	require.EqualError(t, Decode([]byte(`{"paint":[1,2]}`), &out),
		`line 1, column 10, at paint: found an array; allowed is red, green and blue`)
	require.EqualError(t, Decode([]byte(`{"paint":[1,2,300]}`), &out),
		`line 1, column 15, at paint[2]: found the number 300; allowed is a whole number from 0 up`)
}

func TestNodes(t *testing.T) {
	text := []byte(`{"do": "add", "width": 292.1}`)
	n, err := Parse(text)
	require.NoError(t, err)
	do, ok := n.Get("do")
	require.True(t, ok)
	require.Equal(t, "add", do.Text)
	_, ok = n.Get("undo")
	require.False(t, ok)
	var rest struct {
		Width unit.Length `json:"width"`
	}
	require.NoError(t, DecodeNode(text, n.Without("do"), &rest))
	require.Equal(t, 23*unit.Inch/2, rest.Width)
	require.EqualError(t, DecodeNode(text, n, &rest), `line 1, column 2, at do: found the member "do"; allowed is only width`)

	made, err := ObjectNode(TextNode("add").With("do"), LengthNode(rest.Width).With("width"),
		AngleNode(unit.Degree/2).With("turn"), BoolNode(true).With("flip")).Canonical()
	require.NoError(t, err)
	require.Equal(t, `{"do":"add","flip":true,"turn":0.5,"width":292.1}`, string(made))
}

// jobs draws values that documents can hold, in the form in which they are read.
func jobs() *rapid.Generator[job] {
	text := rapid.StringOfN(rapid.Rune(), 0, 20, -1).Filter(characters)
	length := rapid.Map(rapid.Int64Range(int64(-unit.Limit)+1, int64(unit.Limit)-1), func(n int64) unit.Length { return unit.Length(n) })
	pieces := rapid.Custom(func(t *rapid.T) piece {
		p := piece{Turn: unit.Angle(length.Draw(t, "turn")), Finish: finish(text.Draw(t, "finish"))}
		if rapid.Bool().Draw(t, "known") {
			p.Length = Some(length.Draw(t, "length"))
		}
		if rapid.Bool().Draw(t, "ends") {
			p.Ends = [2]unit.Length{length.Draw(t, "start"), length.Draw(t, "end")}
		}
		return p
	})
	return rapid.Custom(func(t *rapid.T) job {
		j := job{
			Schema: text.Draw(t, "schema"), Name: text.Draw(t, "name"), Width: length.Draw(t, "width"),
			Boards: rapid.SliceOfN(pieces, 0, 4).Draw(t, "boards"),
			Minor:  rapid.Int64Range(-1<<53+1, 1<<53-1).Draw(t, "minor"),
			Small:  rapid.Uint8().Draw(t, "small"), Drop: rapid.Float64().Draw(t, "drop") + 0,
			Closed: rapid.Bool().Draw(t, "closed"),
		}
		if len(j.Boards) == 0 {
			j.Boards = nil
		}
		if rapid.Bool().Draw(t, "extra") {
			key := "x" + text.Draw(t, "key")
			j.Lining.Extra = Extra{{key, `[1,{"a":"b"}]`}}
		}
		return j
	})
}

func TestWhatIsWrittenReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := jobs().Draw(t, "job")
		text, err := Encode(j)
		require.NoError(t, err)
		var got job
		require.NoError(t, Decode(text, &got))
		require.Equal(t, j, got)
		again, err := Canonical(text)
		require.NoError(t, err)
		require.Equal(t, string(text), string(again), "what is encoded is canonical")

		text, err = Pretty(j)
		require.NoError(t, err)
		var other job
		require.NoError(t, Decode(text, &other))
		require.Equal(t, j, other)
		again2, err := Canonical(text)
		require.NoError(t, err)
		require.Equal(t, string(again), string(again2), "pretty and canonical say the same")
	})
}

// Any text that is read means to the standard library's reader what its canonical text
// means.
func FuzzDecode(f *testing.F) {
	f.Add([]byte(pretty))
	for _, c := range refused {
		f.Add([]byte(c.text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		n, err := Parse(text)
		if err != nil {
			e, ok := err.(*Error)
			require.True(t, ok)
			require.NotEmpty(t, e.Found)
			return
		}
		require.True(t, json.Valid(text), "what is read is JSON")
		canonical, err := n.Canonical()
		if err != nil {
			return // a number that no float keeps
		}
		var was, is any
		require.NoError(t, json.Unmarshal(text, &was))
		require.NoError(t, json.Unmarshal(canonical, &is))
		require.Equal(t, was, is)

		tidy, err := n.Pretty()
		require.NoError(t, err)
		for _, form := range [][]byte{canonical, tidy} {
			again, err := Limits{Bytes: 1 << 24}.Parse(form)
			require.NoError(t, err)
			back, err := again.Canonical()
			require.NoError(t, err)
			require.Equal(t, string(canonical), string(back))
		}
		var j job
		if Decode(text, &j) != nil {
			return
		}
		first, err := Encode(j)
		require.NoError(t, err)
		var k job
		require.NoError(t, Decode(first, &k))
		require.Equal(t, j, k)
	})
}

func BenchmarkDecode(b *testing.B) {
	text, err := Encode(sample())
	require.NoError(b, err)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		var j job
		if Decode(text, &j) != nil {
			b.Fatal("refused")
		}
	}
}

func BenchmarkEncode(b *testing.B) {
	j := sample()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Encode(j); err != nil {
			b.Fatal(err)
		}
	}
}

// Many members of one object are sorted, not compared each with each.
func BenchmarkMembers(b *testing.B) {
	var text strings.Builder
	for i := range 10_000 {
		text.WriteString(`,"` + strings.Repeat("k", i%7) + string(appendFloat(nil, float64(i))) + `":0`)
	}
	doc := []byte("{" + text.String()[1:] + "}")
	b.SetBytes(int64(len(doc)))
	for b.Loop() {
		if _, err := Parse(doc); err != nil {
			b.Fatal(err)
		}
	}
}

func TestAMemberThatIsANodeIsWrittenAsItsValue(t *testing.T) {
	type kept struct {
		Plan Node `json:"plan"`
	}
	const text = `{"plan":{"boards":[1,2.5],"name":"é"}}`
	var k kept
	require.NoError(t, Decode([]byte(text), &k))
	again, err := Encode(k)
	require.NoError(t, err)
	require.Equal(t, text, string(again))
	inside, err := k.Plan.Canonical()
	require.NoError(t, err)
	require.Equal(t, `{"boards":[1,2.5],"name":"é"}`, string(inside))
}
