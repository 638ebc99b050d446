package app

import (
	"strconv"
	"strings"

	"ledgewright/engine/document"
	"ledgewright/engine/edit"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// hole stands in a field's line where the value goes, quotes included.
const hole = `"$"`

// read returns the edits that a field's text asks for, and what was understood.
func (s *State) read(f Field, text string) ([]edit.Edit, Echo) {
	value, says, err := s.value(f, strings.TrimSpace(text))
	if err != nil {
		return nil, Echo{Text: text, Says: s.why(err), Bad: true}
	}
	var edits []edit.Edit
	for _, line := range strings.Split(f.Line, "\n") {
		e, err := edit.Decode([]byte(strings.ReplaceAll(line, hole, value)))
		if err != nil {
			return nil, Echo{Text: text, Says: s.why(err), Bad: true}
		}
		edits = append(edits, e)
	}
	return edits, Echo{Text: text, Says: says}
}

// value returns the JSON value of a field's text, and what was understood in words.
func (s *State) value(f Field, text string) (value, says string, err error) {
	style := s.Plan.Style()
	if text == "" && f.Optional {
		return "null", "", nil
	}
	switch f.Kind {
	case LengthField:
		l, err := unit.ParseLength(text, s.Plan.Units.System)
		if err != nil {
			return "", "", err
		}
		if f.Least < f.Most && (l < f.Least || l > f.Most) {
			return "", "", sentence(words.Text("page.between", []words.Arg{words.Length("least", f.Least), words.Length("most", f.Most)}, style))
		}
		return document.LengthNode(f.measured(l)).Text, style.WithUnit(l), nil
	case AngleField:
		a, err := unit.ParseAngle(text)
		return document.AngleNode(a).Text, style.Angle(a), err
	case CountField:
		n, err := strconv.Atoi(text)
		if err != nil {
			return "", "", sentence(words.Text("page.whole", []words.Arg{words.Name("text", text)}, style))
		}
		return strconv.Itoa(n), strconv.Itoa(n), nil
	case TickField:
		return strconv.FormatBool(text == "true"), "", nil
	}
	quoted, err := document.Encode(text)
	return string(quoted), "", err
}

// measured returns the length for the edit from the one that was typed.
func (f Field) measured(typed unit.Length) unit.Length {
	if f.Sign < 0 {
		return f.Offset - typed
	}
	return f.Offset + typed
}

// A sentence is an error that is already in words.
type sentence string

func (s sentence) Error() string { return string(s) }

// typedInto keeps what was typed so far and says what was understood.
func typedInto(s State, f Field, text string) (State, []Effect) {
	_, echo := s.read(f, text)
	return echoed(s, f, echo), nil
}

// echoed has a field say something, in the panel or in the picture's strip.
func echoed(s State, f Field, echo Echo) State {
	if s.Typing.Open && s.Typing.Field.Key == f.Key {
		s.Typing.Echo = echo
		return consequences(s)
	}
	fields := map[string]Echo{}
	for k, v := range s.Fields {
		fields[k] = v
	}
	fields[f.Key] = echo
	s.Fields = fields
	return s
}

// consequences shows, while a figure is typed, what it would cause.
func consequences(s State) State {
	s.Typing.Causes = ""
	s.Preview = Preview{}
	if s.Typing.Echo.Bad {
		return s
	}
	edits, _ := s.read(s.Typing.Field, s.Typing.Echo.Text)
	return preview(s, edits...)
}

// entered makes the edit of a field, or leaves the field with what is wrong: with the
// text, or with what the text would do to the plan.
func entered(s State, f Field, text string) (State, []Effect) {
	edits, echo := s.read(f, text)
	same := strings.TrimSpace(text) == f.Value
	if !echo.Bad && !same {
		if _, _, _, err := applyAll(s, edits); err != nil {
			echo = Echo{Text: text, Says: s.why(err), Bad: true}
		}
	}
	if echo.Bad {
		return echoed(s, f, echo), []Effect{Say{Text: echo.Says}}
	}
	figure := s.Typing
	s.Typing, s.Fields = Typing{}, without(s.Fields, f.Key)
	if same {
		s.Preview = Preview{}
		return s, backTo(figure)
	}
	s, effects := commit(s, edits...)
	return s, append(effects, backTo(figure)...)
}

// backTo moves the focus from the typing strip, which is gone, to the figure on which it
// was opened.
func backTo(was Typing) []Effect {
	if !was.Open {
		return nil
	}
	return []Effect{Focus{Key: was.Field.Key}}
}

// use says which field of the panel has the focus. The strip of keys that stands below it
// then must not cover it.
func use(s State, f Field) (State, []Effect) {
	came := f.Key != "" && f.Key != s.Using.Key
	s.Using = f
	if came {
		return s, []Effect{Uncover{f.Key}}
	}
	return s, nil
}

// step changes a field by so many of its steps.
func step(s State, f Field, by int) (State, []Effect) {
	text := f.Value
	if echo, ok := s.Fields[f.Key]; ok {
		text = echo.Text
	}
	if s.Typing.Open && s.Typing.Field.Key == f.Key {
		text = s.Typing.Echo.Text
	}
	switch f.Kind {
	case LengthField:
		if l, err := unit.ParseLength(text, s.Plan.Units.System); err == nil {
			return typedInto(s, f, s.Plan.Style().Length(l+unit.Length(by)*s.nudge()))
		}
	case AngleField:
		if a, err := unit.ParseAngle(text); err == nil {
			return typedInto(s, f, (a + unit.Angle(by)*unit.Degree).String())
		}
	case CountField:
		if n, err := strconv.Atoi(text); err == nil {
			return typedInto(s, f, strconv.Itoa(n+by))
		}
	}
	return s, nil
}

// nudge is the small step of the arrow keys: 1 mm, or 1/16 in.
func (s *State) nudge() unit.Length {
	if s.Plan.Units.System == unit.Inches {
		return unit.Inch / 16
	}
	return unit.Millimetre
}

func without(m map[string]Echo, key string) map[string]Echo {
	if _, ok := m[key]; !ok {
		return m
	}
	out := map[string]Echo{}
	for k, v := range m {
		if k != key {
			out[k] = v
		}
	}
	return out
}
