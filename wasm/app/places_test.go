package app

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/unit"
)

func TestPlacesHoldForOneRevision(t *testing.T) {
	s, _ := play(aShelf(t), Choose{Module: "m1"})
	_, ok := s.Suggested("m1")
	require.False(t, ok, "nobody asked")
	s, _ = play(s, Suggest{Module: "m1"})
	poses, ok := s.Suggested("m1")
	require.True(t, ok)
	require.LessOrEqual(t, len(poses), mostPlaces)
	for _, p := range poses {
		require.Greater(t, p.X, 400*unit.Millimetre, "an 800 shelf stays on the wall")
	}
	s, _ = play(s, Key{Name: "ArrowRight"})
	_, ok = s.Suggested("m1")
	require.False(t, ok, "the module has moved")
}

func TestWhatIsMadeIsChosen(t *testing.T) {
	s := aShelf(t)
	require.Equal(t, []string{"m1"}, s.Chosen)
	s, _ = play(s, Choose{}, DoLine{`{"schema":"ledgewright/edit/1","do":"duplicate-module","module":"m1"}`})
	require.Equal(t, []string{"m2"}, s.Chosen)
	s, _ = play(s, Undo{})
	require.Empty(t, s.Chosen)
}
