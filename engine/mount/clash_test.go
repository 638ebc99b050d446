package mount

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/board"
	"ledgewright/engine/hardware"
	"ledgewright/engine/unit"
)

// clashes returns what the board has to say about its cuts, without what this room
// says itself.
func clashes(b board.Board, i Input) []string {
	out := []string{}
	for _, f := range board.Clash(b, i.Shop.Covers) {
		if !board.SpokenFor(f.Kind, b.Features[f.Place.Feature-1]) {
			out = append(out, f.Kind.Key)
		}
	}
	return out
}

// bored is the board with what Fit cuts in it.
func bored(i Input) board.Board {
	b := i.Board
	b.Features = append(b.Features[:len(b.Features):len(b.Features)], Fit(i).Features...)
	return b
}

// groove is a groove along the whole board: in face A, its near side so far from the
// back edge.
func groove(b board.Board, from, across, depth unit.Length) board.Feature {
	return board.Feature{Kind: board.Groove, Cause: board.Cause{What: "light", ID: "l9"}, Enter: board.FaceA,
		Mouth: board.Point{U: b.Length / 2, V: from + across/2}, Along: b.Length, Across: across, Depth: depth,
		Through: true, After: board.OnBlank}
}

// Every kind cuts a board of 44 mm so that nothing clashes; and a groove of 44/2 near
// the back edge meets what it cuts: the bore, or the plate's pocket. Of rails and cleats
// it is the strip that is asked.
func TestClashOfEachKind(t *testing.T) {
	for _, k := range hardware.Brackets() {
		i := on(k.ID)
		i.Board.Length, i.Board.Thickness = 900*mm, 44*mm
		i.Board.Features = plain(900*mm, 200*mm, 44*mm).Features
		o := Fit(i)
		b, far := bored(i), 14*mm
		if len(o.Extra) > 0 {
			b, far = o.Extra[len(o.Extra)-1], 10*mm
			require.Empty(t, o.Features, k.ID)
			require.Empty(t, clashes(o.Extra[0], i), k.ID)
		}
		require.NotEmpty(t, b.Features, k.ID)
		require.Empty(t, clashes(b, i), k.ID)
		cut := groove(b, 2*mm, far-2*mm, b.Thickness/2)
		if k.Family == hardware.Cleat {
			cut.Depth = 35 * mm // its screws stand lower
		}
		b.Features = append(b.Features, cut)
		require.Contains(t, clashes(b, i), "cuts-meet", k.ID)
	}
}

// Two brackets of a kind on one board clash where their cuts do, and not a cover apart.
func TestTwoBracketsClash(t *testing.T) {
	for _, k := range hardware.Brackets() {
		if k.Seat != hardware.InPocket || k.Pitch > 0 {
			continue
		}
		i := on(k.ID)
		i.Board.Thickness, i.At = 44*mm, 200*mm
		first := bored(i)
		second := i
		second.Board, second.Bracket = first, "b6"
		wide := k.Plate.AlongU + 2*i.Shop.Covers.Plate
		second.At = i.At + wide + i.Shop.Covers.Pocket
		require.Empty(t, clashes(bored(second), i), k.ID)
		second.At -= 2 * unit.Micrometre
		require.Contains(t, clashes(bored(second), i), "cuts-too-near", k.ID)
		second.At = i.At + wide - mm
		require.Contains(t, clashes(bored(second), i), "cuts-meet", k.ID)
	}
}

// In 22 mm stock a 12 mm bore at mid-thickness, with 3 mm of cover, leaves room for a
// groove 2 mm deep: 22/2 − 12/2 − 3. A deeper one goes before the rod's tip.
func TestGrooveOverARod(t *testing.T) {
	i := on("rod-structure-12")
	i.Board.Thickness, i.Shop.Rods.SlackSingle = 22*mm, 0
	b := bored(i)
	with := func(from, depth unit.Length) []string {
		c := b
		c.Features = append(b.Features[:len(b.Features):len(b.Features)], groove(b, from, 12*mm, depth))
		return clashes(c, i)
	}
	require.Empty(t, with(100*mm, 2*mm))
	require.Equal(t, []string{"cuts-too-near"}, with(100*mm, 2*mm+2*unit.Micrometre))
	require.Equal(t, []string{"cuts-meet"}, with(100*mm, 7*mm))
	tip := Fit(i).Features[0].Depth
	require.Empty(t, with(tip+3*mm, 7*mm), "in front of the tip")
	require.Equal(t, []string{"cuts-too-near"}, with(tip+3*mm-2*unit.Micrometre, 7*mm))
}

// What this room says about wood above a bore and before a heel, the board says of the
// same cuts; and what the board leaves to this room to say, it says.
func TestBoardAndMountAgree(t *testing.T) {
	agree := map[string]string{"bore-thin": "too-little-wood", "bore-near-heel": "bore-at-heel", "pocket-near-end": "pocket-at-heel"}
	for _, k := range hardware.Brackets() {
		rapid.Check(t, func(t *rapid.T) {
			i := on(k.ID)
			thick := rapid.SampledFrom([]unit.Length{16 * mm, 18 * mm, 24 * mm, 26 * mm, 32 * mm, 44 * mm}).Draw(t, "thick")
			i.Board.Width = rapid.SampledFrom([]unit.Length{12 * mm, 15 * mm, 30 * mm, 90 * mm, 200 * mm}).Draw(t, "width")
			i.At = unit.Length(rapid.IntRange(0, 900).Draw(t, "at")) * mm
			m := rapid.SampledFrom([]board.Board{mitred(900*mm, 0, thick), plain(900*mm, 0, thick)}).Draw(t, "ends")
			i.Board.Length, i.Board.Thickness, i.Board.Features = m.Length, thick, m.Features
			said := map[string]bool{}
			for _, key := range keys(Fit(i)) {
				said[key] = true
			}
			b := bored(i)
			found := map[string]bool{}
			for _, f := range board.Clash(b, i.Shop.Covers) {
				found[f.Kind.Key] = true
				if f.Value.Length >= max(i.Shop.Covers.Bore, k.Rod/2) && f.Kind.Key == "too-little-wood" {
					continue // the board knows the bore only, and takes half of that for half the rod
				}
				if board.SpokenFor(f.Kind, b.Features[f.Place.Feature-1]) {
					require.NotEmpty(t, said, "%s: the board says %s", k.ID, f.Kind.Key)
				}
			}
			for ours, theirs := range agree {
				if said[ours] && m.Features[0].AtA > 0 {
					require.True(t, found[theirs] || found["cut-breaks-out"], "%s: %s, found %v", k.ID, ours, found)
				}
			}
		})
	}
}
