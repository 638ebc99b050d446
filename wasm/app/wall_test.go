package app

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestANewWallIsInViewAndStaysThere(t *testing.T) {
	s := aShelf(t)
	s, _ = play(s, DoLine{`{"schema":"ledgewright/edit/1","do":"add-wall","width":2000,"height":2400}`})
	require.Equal(t, "w2", s.Wall)
	require.Empty(t, s.Arrangement, "nothing is arranged on it yet")
	s, _ = play(s, DoLine{`{"schema":"ledgewright/edit/1","do":"set-wall","wall":"w2","build":"brick"}`})
	require.Equal(t, "w2", s.Wall, "an edit does not lead elsewhere")
	s, _ = play(s, Undo{}, Undo{})
	require.Equal(t, "w1", s.Wall)
	require.Equal(t, "a1", s.Arrangement)
}

func TestPointingAtAFieldMovesThere(t *testing.T) {
	_, effects := play(aShelf(t), Point{At: Thing{Kind: "field", ID: "w1.built-year"}})
	require.Equal(t, []Effect{Focus{Key: "w1.built-year"}}, effects)
}
