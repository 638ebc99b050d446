//go:build browser

package main

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/testdata/visitor"
)

var anew = flag.Bool("update", false, "write the accessibility trees anew, to be read and judged")

// What somebody hears of Survey, of Arrange, and of Arrange with a module chosen: three
// texts, read from top to bottom as a maker would who does not see the page, and judged.
//
// What is good in them. Landmarks come in the order of the work: banner, wall, verdicts,
// panel, jobs; each has a name. Headings go from the job (1) to the panel (2) to its
// sections (3), and a section with a list says how many there are. Each control has a name
// of its own, with its unit; values and states are said: pressed, ticked, open, the job in
// hand. What cannot be done says why (to remove a wall with modules). A folded thing says
// its state before it is opened: "Corner 1 to board 2: 90° to the left, mitre".
//
// What was bad, and is mended. A bare "26" stood among the figures of the wall: notes of the
// picture, which cannot be typed, are hidden, as the list has them with their names. An
// arrangement that nobody had named was called "a1". A module in the list was only its
// name to somebody who tabs: its place, state and size now describe it. Two sockets had
// figures of one name; they are now numbered as in the panel. "Place again by" and "Place again with"
// did not say what is chosen.
//
// What is left. A table that scrolls is heard as region, table and caption of one name. A
// hint below a field is heard twice, as it describes the field. "No module is chosen" is
// text between two regions, with no heading.
func TestWhatIsHeardOfSurveyAndArrange(t *testing.T) {
	t.Parallel()
	b := house.Visit(t, visitor.Tablet, "").Go("")
	b.Tap("button", "Study")
	b.Says("Kept here") // so that it is heard the same each time
	frozen(t, "arrange", b.Heard())
	b.Tap("button", "Box")
	b.See("button", "Duplicate")
	frozen(t, "arrange-chosen", b.Heard())
	b.Tap("button", "Box")
	b.Job("Survey")
	frozen(t, "survey", b.Heard())
}

var clock = regexp.MustCompile(`\b\d\d:\d\d\b`)

// frozen compares what is heard with what was read and judged, or writes it anew.
func frozen(t *testing.T, name, heard string) {
	t.Helper()
	heard = clock.ReplaceAllString(heard, "hh:mm")
	judged(t, name, heard)
	path := filepath.Join("testdata", "heard-"+name+".txt")
	if *anew {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(path, []byte(heard), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, string(want), heard, "heard of "+name)
}

// controls are the roles of what is used.
var controls = []string{"button", "textbox", "combobox", "checkbox", "radio", "DisclosureTriangle", "slider"}

// judged holds what is judged the same way of every page: headings that go down by one
// level at a time, and controls that each have a name of their own.
func judged(t *testing.T, name, heard string) {
	t.Helper()
	level, names := 0, map[string]bool{}
	for _, line := range strings.Split(strings.TrimSpace(heard), "\n") {
		line = strings.TrimSpace(line)
		role, rest, _ := strings.Cut(line, " ")
		switch {
		case role == "heading":
			_, after, _ := strings.Cut(rest, "[level ")
			require.NotEmpty(t, after, line)
			now := int(after[0] - '0')
			require.LessOrEqual(t, now, level+1, "%s: after a heading of level %d: %s", name, level, line)
			level = now
		case slices.Contains(controls, role):
			called, _, ok := strings.Cut(rest, "”")
			require.True(t, ok && called != "“", "%s: without a name: %s", name, line)
			require.False(t, names[role+called], "%s: twice: %s", name, line)
			names[role+called] = true
		}
	}
	require.Greater(t, len(names), 20)
}
