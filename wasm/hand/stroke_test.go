package hand

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A stroke is a row of events with the gestures that each must earn. In a file each
// event is a line:
//
//	time kind id type x y [button=1] [dx=0 dy=9] [shift] [control] [primary] [loose]  => gesture; gesture
//
// A tick has its time alone. A line that has no arrow must earn nothing. A # begins a
// remark, and a line that has nothing before it is one.
type stroke struct {
	events []Event
	want   [][]string
	lines  []string
}

var kinds = map[string]Kind{"down": Down, "move": Motion, "up": Up, "cancel": Cancel, "wheel": Wheel, "tick": Tick}

var types = map[string]Type{"mouse": Mouse, "touch": Touch, "pen": Pen}

// parseStroke reads a stroke.
func parseStroke(text string) (s stroke, err error) {
	for n, line := range strings.Split(text, "\n") {
		line, _, _ = strings.Cut(line, "#")
		left, right, _ := strings.Cut(line, "=>")
		fields := strings.Fields(left)
		if len(fields) == 0 {
			continue
		}
		e, err := parseEvent(fields)
		if err != nil {
			return s, fmt.Errorf("line %d: %w", n+1, err)
		}
		s.events = append(s.events, e)
		s.want = append(s.want, gesturesOf(right))
		s.lines = append(s.lines, fmt.Sprintf("line %d: %s", n+1, strings.TrimSpace(line)))
	}
	return s, nil
}

// gesturesOf splits what a line must earn.
func gesturesOf(s string) (out []string) {
	for _, g := range strings.Split(s, ";") {
		if g = strings.Join(strings.Fields(g), " "); g != "" {
			out = append(out, g)
		}
	}
	return out
}

func parseEvent(fields []string) (e Event, err error) {
	figure := func(s string) (f float64) {
		f, fault := strconv.ParseFloat(s, 64)
		if fault != nil && err == nil {
			err = fault
		}
		return f
	}
	e.Time = figure(fields[0])
	if len(fields) == 2 && fields[1] == "tick" {
		e.Kind = Tick
		return e, err
	}
	if len(fields) < 6 {
		return e, fmt.Errorf("an event has six figures and words, not %d", len(fields))
	}
	var known, typed bool
	e.Kind, known = kinds[fields[1]]
	e.Type, typed = types[fields[3]]
	if !known || !typed {
		return e, fmt.Errorf("%s %s is no event", fields[1], fields[3])
	}
	e.ID, e.X, e.Y = int(figure(fields[2])), figure(fields[4]), figure(fields[5])
	for _, word := range fields[6:] {
		name, value, _ := strings.Cut(word, "=")
		switch name {
		case "button":
			e.Button = int(figure(value))
		case "dx":
			e.DX = figure(value)
		case "dy":
			e.DY = figure(value)
		case "shift":
			e.Shift = true
		case "control":
			e.Control = true
		case "primary":
			e.Primary = true
		case "loose":
			e.Loose = true
		default:
			return e, fmt.Errorf("%s is no word of an event", word)
		}
	}
	return e, err
}

// said writes a gesture as strokes do: kind and place; where it began, after "from"; pan
// and zoom; and shift. Figures have at most three decimals.
func said(g Gesture) string {
	n := func(f float64) string {
		return strconv.FormatFloat(float64(int64(f*1000+0.5*sign(f)))/1000, 'f', -1, 64)
	}
	at := n(g.X) + " " + n(g.Y)
	from := " from " + n(g.FromX) + " " + n(g.FromY)
	out := ""
	switch g.Kind {
	case Tap:
		out = "tap " + at
	case LongPress:
		out = "long-press " + at
	case DragStart:
		out = "drag-start " + at + from
	case Drag:
		out = "drag " + at
	case Drop:
		out = "drop " + at
	case DragCancel:
		out = "drag-cancel"
	case PanZoom:
		out = "pan-zoom " + at + " by " + n(g.DX) + " " + n(g.DY) + " times " + n(g.Scale)
	case Hover:
		out = "hover " + at
	}
	if g.Shift {
		out += " shift"
	}
	return out
}

func sign(f float64) float64 {
	if f < 0 {
		return -1
	}
	return 1
}

// strokes returns the recorded strokes by name.
func strokes(t testing.TB) map[string]string {
	files, err := filepath.Glob("testdata/*.stroke")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 25)
	out := map[string]string{}
	for _, f := range files {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		out[strings.TrimSuffix(filepath.Base(f), ".stroke")] = string(text)
	}
	return out
}

func TestRecordedStrokes(t *testing.T) {
	for name, text := range strokes(t) {
		t.Run(name, func(t *testing.T) {
			s, err := parseStroke(text)
			require.NoError(t, err)
			require.NotEmpty(t, s.events)
			var h Hand
			for i, e := range s.events {
				var gestures []Gesture
				h, gestures = h.Step(e)
				var got []string
				for _, g := range gestures {
					got = append(got, said(g))
				}
				require.Equal(t, s.want[i], got, s.lines[i])
			}
		})
	}
}

func TestStrokesAreReadStrictly(t *testing.T) {
	for _, bad := range []string{"0 down 1 touch 5", "0 press 1 touch 5 5", "0 down 1 glove 5 5", "x down 1 touch 5 5", "0 down 1 touch 5 5 soft"} {
		_, err := parseStroke(bad)
		require.Error(t, err, bad)
	}
}
