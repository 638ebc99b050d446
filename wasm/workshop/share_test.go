//go:build browser

package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/testdata/visitor"
)

// The same modules in a second arrangement, beside the first.
func TestSecondArrangementOfTheSameModules(t *testing.T) {
	t.Parallel()
	b := aShelf(t)
	b.Tap("button", "Duplicate this one")
	k := b.Keeps("two arrangements", func(k visitor.Kept) bool { return len(k.Plan.Arrangements) == 2 })
	require.Len(t, k.Plan.Modules, 1)
	b.Tap("button", "Arrangement 2")
	b.Wait("the second in view", func() bool {
		all := b.All("button", "Arrangement 2")
		return len(all) > 0 && all[0].State("pressed") == "true"
	})
	b.Tap("button", "Shelf")
	b.Tap("button", "Move up 10 mm")
	k = b.Keeps("a move in the second", func(k visitor.Kept) bool {
		return k.Plan.Arrangements[1].Poses[0].Y-k.Plan.Arrangements[0].Poses[0].Y == 10*unit.Millimetre
	})
	b.Tap("button", "First arrangement")
	b.See("button", "…1463")
	b.Tap("button", "Add an empty arrangement")
	k = b.Keeps("three arrangements", func(k visitor.Kept) bool { return len(k.Plan.Arrangements) == 3 })
	require.Empty(t, k.Plan.Arrangements[2].Poses)
	require.Equal(t, derived(t, k), build(b))
}

// copied is a page's clipboard that can be read by a test.
const copied = `window.copied = ''
Object.defineProperty(navigator, 'clipboard', {configurable: true, value: {writeText: s => { window.copied = s; return Promise.resolve() }}})`

// A link copied here and opened by somebody else is the same plan; the address bar then
// holds nothing of it.
func TestLinkOpensElsewhereAsTheSamePlan(t *testing.T) {
	t.Parallel()
	b := house.Visit(t, visitor.Tablet, copied).Go("")
	b.Tap("button", "Study")
	b.See("heading", "Arrange")
	mine := build(b)
	b.Tap("button", "Copy link")
	b.Says("Link ready to be sent")
	link := b.Text("window.copied")
	require.Contains(t, link, house.URL+"#")

	other := house.Visit(t, visitor.Phone, "")
	other.Go(link[len(house.URL):])
	other.See("region", "Verdicts")
	other.See("heading", "Survey")
	require.Equal(t, "", other.Text("location.hash"))
	require.Equal(t, withoutNames(t, mine), withoutNames(t, build(other)))

	// The same by hand: pasted, with or without the address before it.
	third := house.Visit(t, visitor.Tablet, "").Go("")
	third.Write("Paste a link or a code", link)
	third.Tap("button", "Open it")
	third.See("heading", "Survey")
	require.Equal(t, withoutNames(t, mine), withoutNames(t, build(third)))

	// A link that arrived cut says so, and opens nothing.
	cut := house.Visit(t, visitor.Tablet, "")
	cut.Go(link[len(house.URL) : len(link)-9])
	cut.See("heading", "Start with the wall")
	cut.Says("incomplete")
}

// withoutNames is a build without what never goes into a link: the fields of the title
// block, and names.
func withoutNames(t *testing.T, build string) string {
	t.Helper()
	var v map[string]any
	require.NoError(t, json.Unmarshal([]byte(build), &v))
	require.NotEmpty(t, v["modules"])
	delete(v, "job")
	text, err := json.MarshalIndent(v, "", " ")
	require.NoError(t, err)
	return string(text)
}

// A plan saved as a file, changed by the command line and opened again.
func TestPlanGoesToTheCommandLineAndBack(t *testing.T) {
	t.Parallel()
	b := aShelf(t)
	dir := t.TempDir()
	file, changed, edits := filepath.Join(dir, "plan.json"), filepath.Join(dir, "changed.json"), filepath.Join(dir, "edits.jsonl")
	require.NoError(t, os.WriteFile(file, savedPlan(b), 0o600))
	require.NoError(t, os.WriteFile(edits, []byte(
		`{"schema":"ledgewright/edit/1","do":"set-module","module":"m1","name":"Books","wood":"european-ash"}`+"\n"+
			`{"schema":"ledgewright/edit/1","do":"set-board","module":"m1","board":1,"length":900}`+"\n"), 0o600))
	c := exec.Command("go", "run", "./cmd/ledgewright", "edit", file, edits)
	c.Dir, c.Stderr = house.Root, os.Stderr
	out, err := c.Output()
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(changed, out, 0o600))

	b.Tap("button", "All jobs")
	open(b, changed)
	k := b.Keeps("what was changed", func(k visitor.Kept) bool {
		return len(k.Plan.Modules) == 1 && k.Plan.Modules[0].Name == "Books"
	})
	require.Equal(t, 900*unit.Millimetre, k.Plan.Modules[0].Boards[0].Length.Value)
	want, err := plan.Decode(out)
	require.NoError(t, err)
	text, err := engine.Encode(engine.Derive(want, nil))
	require.NoError(t, err)
	require.Equal(t, string(text), build(b))
	require.Equal(t, string(out), string(savedPlan(b)), "opened and saved again it is the same file, byte for byte")
}

// open chooses a file in the browser's own dialog.
func open(b *visitor.Tab, path string) {
	b.T.Helper()
	b.Upload("Open a plan from a file", path)
}

// A link leaves one entry in the browser's history, whatever is done with the plan: Back
// goes to where the link stood.
func TestBackLeavesThePage(t *testing.T) {
	t.Parallel()
	b := house.Visit(t, visitor.Tablet, copied).Go("")
	b.Tap("button", "Porch")
	b.Job("Agree")
	b.Tap("button", "Copy link")
	b.Says("Link ready to be sent")
	link := b.Text("window.copied")

	other := house.Visit(t, visitor.Tablet, "")
	was := other.History()
	other.Go(link[len(house.URL):])
	other.See("heading", "Survey")
	other.Fill("On the other side", "hall")
	other.Keeps("a change", func(k visitor.Kept) bool { return k.Plan.Walls[0].FarSide == "hall" })
	for _, job := range []string{"Arrange", "Make", "Agree"} {
		other.Job(job)
	}
	now := other.History()
	require.Len(t, now, len(was)+1, "one page more: %v", now)
	require.Equal(t, house.URL, now[len(now)-1], "with nothing of the plan in it")
	other.Run("setTimeout(() => history.back())")
	other.Wait("the page before", func() bool { return other.Address() == was[len(was)-1] })
}
