//go:build browser

package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/testdata/visitor"
)

// What is printed in the round is what is seen there, though the stage paints it on the
// screen: the page's own picture is brought up to date before, and the stage takes its place
// again afterwards.
func TestPrintingInTheRound(t *testing.T) {
	t.Parallel()
	b := staged(t, visitor.Tablet, "")
	b.Tap("button", "In the round")
	b.Tap("button", "Left")
	b.Calm()
	require.Equal(t, "true", b.Text(`staged()`))
	paths := `JSON.stringify([...document.querySelectorAll('.world path')].map(p => p.getAttribute('d')))`
	before := b.Text(paths)
	b.Run(`dispatchEvent(new Event('beforeprint'))`)
	printed := b.Text(paths)
	require.NotEqual(t, before, printed)
	require.Equal(t, "true", b.Text(`plain()`))
	b.Run(`dispatchEvent(new Event('afterprint'))`)
	b.Until(`staged()`, "true")
	b.Tap("button", "Right")
	b.Run(`dispatchEvent(new Event('beforeprint'))`)
	require.NotEqual(t, printed, b.Text(paths), "seen from the other side")
}
