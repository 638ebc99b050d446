package plan

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/document"
	"ledgewright/engine/unit"
)

// A module shares with itself; a change of any one of its fields, those that it gets later
// too, is told.
func TestSharesLooksAtEveryField(t *testing.T) {
	m := Module{
		ID: "m1", Name: "Tray", Depth: 200 * unit.Millimetre, Wood: "white-oak", Boards: make([]Board, 2), Corners: make([]Corner, 1),
		Dividers: make([]Divider, 1), Lights: make([]Light, 1), Brackets: make([]Bracket, 2), Extra: make(document.Extra, 1),
	}
	require.True(t, m.Shares(&m))
	of := reflect.TypeFor[Module]()
	for i := range of.NumField() {
		o := m
		other(t, reflect.ValueOf(&o).Elem().Field(i), of.Field(i).Name)
		require.False(t, m.Shares(&o), of.Field(i).Name)
		require.False(t, o.Shares(&m), of.Field(i).Name)
	}
}

// other changes a field; a slice becomes another one with the same in it.
func other(t *testing.T, v reflect.Value, name string) {
	switch v.Kind() {
	case reflect.String:
		v.SetString(v.String() + "x")
	case reflect.Bool:
		v.SetBool(!v.Bool())
	case reflect.Int64:
		v.SetInt(v.Int() + 1)
	case reflect.Slice:
		v.Set(reflect.AppendSlice(reflect.MakeSlice(v.Type(), 0, v.Len()), v))
	default:
		require.Fail(t, "a field of a kind that is not compared here", name)
	}
}
