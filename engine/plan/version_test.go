package plan

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/document"
)

// There is no older version yet. The steps of this test stand for the first two: one
// renames a member, the next splits one.
func TestMigrationsRunInOrderFromTheVersionOfTheDocument(t *testing.T) {
	rename := func(n document.Node) (document.Node, error) {
		old, _ := n.Get("planks")
		n = n.Without("planks")
		n.Kids = append(n.Kids, old.With("boards"))
		return n, nil
	}
	number := func(n document.Node) (document.Node, error) {
		n.Kids = append(n.Kids, document.WholeNode(int64(len(n.Kids))).With("members"))
		return n, nil
	}
	steps := []migration{rename, number}
	cases := []struct {
		of         int
		text, want string
	}{
		{1, `{"schema":"ledgewright/plan/1","planks":[7]}`, `{"boards":[7],"members":2,"schema":"ledgewright/plan/3"}`},
		{2, `{"schema":"ledgewright/plan/2","planks":[7]}`, `{"members":2,"planks":[7],"schema":"ledgewright/plan/3"}`},
		{3, `{"schema":"ledgewright/plan/3","planks":[7]}`, `{"planks":[7],"schema":"ledgewright/plan/3"}`},
		{4, `{"schema":"ledgewright/plan/4","planks":[7]}`, `{"planks":[7],"schema":"ledgewright/plan/4"}`},
	}
	for _, c := range cases {
		n, err := document.Parse([]byte(c.text))
		require.NoError(t, err)
		got, err := migrate(n, c.of, steps)
		require.NoError(t, err)
		text, err := got.Canonical()
		require.NoError(t, err)
		require.Equal(t, c.want, string(text))
	}
	broken := func(document.Node) (document.Node, error) { return document.Node{}, errors.New("no planks") }
	_, err := migrate(document.Node{}, 1, []migration{broken})
	require.ErrorContains(t, err, "no planks")
}

// Every version before the present one has its migration.
func TestEveryOlderVersionHasItsMigration(t *testing.T) {
	require.Len(t, migrations(), version-1)
	require.Equal(t, Schema, format+"1")
}

func TestDates(t *testing.T) {
	for _, s := range []string{"2031-04-30", "2028-02-29", "1999-12-31"} {
		require.True(t, isDate(s), s)
	}
	for _, s := range []string{"2031-04-31", "2031-13-01", "2031-00-01", "2031-1-1", "30.04.2031", "2031-02-30", "2031/04/30", "abcd-04-30", ""} {
		require.False(t, isDate(s), s)
	}
}
