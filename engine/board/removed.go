package board

// A Removed is what one feature takes away, before the wood clips it, for those who make
// faces of it: a straight prism between V0 and V1 with its section in the u–w plane, or a
// cylinder. All in millimetres in the board's frame. Chamfers and round-overs are none
// of these; they leave the wood convex.
type Removed struct {
	Feature  int           // index in the board's Features
	Section  [4][2]float64 // corners (u, w) round it; of a cylinder, its section through the axis
	V0, V1   float64
	Radius   float64    // of a cylinder; 0: a prism
	AlongV   bool       // the cylinder's axis runs along v, at From; else from From to To, halfway between V0 and V1
	From, To [2]float64 // (u, w)
}

// Removed lists what the features take away, in their order, end cuts and arrises left
// out.
func (b *Board) Removed() []Removed {
	start, end := b.Ends()
	var out []Removed
	for i := range b.Features {
		k := b.body(&b.Features[i], start, end)
		if k.form != prism && k.form != pin && k.form != leaning || b.Features[i].Arris != "" {
			continue
		}
		r := Removed{Feature: i, V0: k.v0, V1: k.v1, From: [2]float64{k.from.u, k.from.w}, To: [2]float64{k.to.u, k.to.w}}
		for n, q := range k.quad {
			r.Section[n] = [2]float64{q.u, q.w}
		}
		if k.form != prism {
			r.Radius, r.AlongV = k.radius, k.form == pin
		}
		out = append(out, r)
	}
	return out
}
