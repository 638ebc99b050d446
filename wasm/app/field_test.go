package app

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/edit"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// A field that comes to have the focus must be seen above the strip of its keys.
func TestTheFieldInUseIsUncovered(t *testing.T) {
	s := aShelf(t)
	f := Field{Key: "wall-width", Kind: LengthField}
	s, effects := play(s, UseField{f})
	require.Equal(t, f, s.Using)
	require.Equal(t, []Effect{Uncover{"wall-width"}}, effects)
	s, _ = play(s, UseField{})
	s, effects = play(s, UseField{})
	require.Empty(t, effects)
	s, _ = play(s, UseField{f}, Go{Job: Make})
	require.Empty(t, s.Using.Key, "another job, other fields")
}

// A gap to the right end of a wall 3 000 wide, typed, is a place of the pivot: of a box
// 400 wide its middle stands 200 short of the gap.
func TestFieldMeasuredFromElsewhere(t *testing.T) {
	const mm = unit.Millimetre
	s := State{Plan: plan.New(unit.Metric)}
	line := `{"schema":"ledgewright/edit/1","do":"move","arrangement":"a1","module":"m1","x":"$"}`
	for _, c := range []struct {
		offset unit.Length
		sign   int
		text   string
		want   unit.Length
	}{
		{0, 0, "120", 120 * mm},
		{200 * mm, 0, "120", 320 * mm},
		{200 * mm, 1, "12 cm", 320 * mm},
		{2800 * mm, -1, "120", 2680 * mm},
		{2800 * mm, -1, "-20", 2820 * mm},
	} {
		edits, echo := s.read(Field{Key: "gap", Kind: LengthField, Line: line, Offset: c.offset, Sign: c.sign}, c.text)
		require.False(t, echo.Bad, echo.Says)
		require.Equal(t, c.want, edits[0].(edit.Move).X.Value, c.text)
	}
}

// A U whose uprights grow together is one figure and two edits.
func TestFieldOfSeveralEdits(t *testing.T) {
	s := State{Plan: plan.New(unit.Metric)}
	head := `{"schema":"ledgewright/edit/1","do":"set-board","module":"m1","board":`
	edits, echo := s.read(Field{Kind: LengthField, Line: head + `1,"length":"$"}` + "\n" + head + `3,"length":"$"}`}, "26 cm")
	require.False(t, echo.Bad, echo.Says)
	require.Len(t, edits, 2)
	require.Equal(t, 1, edits[0].(edit.SetBoard).Board)
	require.Equal(t, 3, edits[1].(edit.SetBoard).Board)
}
