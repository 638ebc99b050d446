package app

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/wasm/hand"
)

const turnLong = `{"schema":"ledgewright/edit/1","do":"turn","arrangement":"a1","module":"m1","by":90}`

// What a button has done is said, with the way back beside it; what is refused has none.
func TestAButtonsEditCanBeUndoneFromItsToast(t *testing.T) {
	s, effects := play(aShelf(t), DoLine{turnLong})
	require.Contains(t, s.Toast.Text, "turn Long")
	require.True(t, s.Toast.Undo)
	require.Contains(t, effects, Effect(Say{Text: s.Toast.Text}))
	back, _ := play(s, Undo{})
	require.Contains(t, back.Toast.Text, "turn Long")
	require.False(t, back.Toast.Undo)

	refused, _ := play(aShelf(t), DoLine{`{"schema":"ledgewright/edit/1","do":"remove-module","module":"m9"}`})
	require.NotEmpty(t, refused.Toast.Text)
	require.False(t, refused.Toast.Undo)
}

// A toast that goes by itself leaves the typing strip open.
func TestAToastGoesAlone(t *testing.T) {
	s, effects := play(aShelf(t), DoLine{turnLong})
	s, _ = play(s, OpenTyping{Field: Field{Key: "k", Value: "800"}})
	over := 0
	for _, e := range effects {
		if after, ok := e.(After); ok && after.Name == "toast" {
			over++
			s, _ = play(s, after.Event)
		}
	}
	require.Equal(t, 1, over)
	require.Empty(t, s.Toast.Text)
	require.True(t, s.Typing.Open)
}

// What is tried takes nothing from the picture that is in the hand or being typed.
func TestTryingGivesWayToTheHand(t *testing.T) {
	s, _ := play(aShelf(t), Try{turnLong})
	require.True(t, s.Preview.Shown)
	s, _ = play(s, Try{})
	require.False(t, s.Preview.Shown)
	field := Field{Key: "k", Kind: AngleField, Line: `{"schema":"ledgewright/edit/1","do":"turn","arrangement":"a1","module":"m1","to":"$"}`, Value: "0"}
	s, _ = play(s, OpenTyping{Field: field}, TypedInto{Field: field, Text: "45"})
	require.True(t, s.Preview.Shown)
	typed := s.Preview.Plan
	s, _ = play(s, Try{})
	require.True(t, s.Preview.Shown)
	s, _ = play(s, Try{turnLong})
	require.Equal(t, typed, s.Preview.Plan)
}

// The picture rests some time after the last change, and never while something is in the
// hand.
func TestRestComesAfterTheLastChange(t *testing.T) {
	s := aShelf(t)
	require.False(t, s.Rests)
	s, _ = play(s, restNow{})
	require.True(t, s.Rests)
	s, effects := play(s, DoLine{turnLong})
	require.False(t, s.Rests)
	require.Contains(t, effects, Effect(After{Name: "grain", Ms: restAfter, Event: restNow{}}))
	s.Drag = Drag{Active: true, Modules: []string{"m1"}}
	s, effects = play(s, restNow{})
	require.False(t, s.Rests)
	require.Contains(t, effects, Effect(After{Name: "grain", Ms: restAfter, Event: restNow{}}))
	s.Drag, s.Hand = Drag{}, hand.Hand{}
	s, _ = play(s, restNow{})
	require.True(t, s.Rests)
}
