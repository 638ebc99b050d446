package hold

import (
	"math"

	"ledgewright/engine/board"
	"ledgewright/engine/strength"
	"ledgewright/engine/wall"
)

// A Kind is one thing that is checked.
type Kind string

// What is checked. Those after Hand are asked of a hand on the front edge too.
const (
	RodBends    Kind = "rod-bends"    // at its least section at the wall
	RodBears    Kind = "rod-bears"    // on the wood in its bore
	RodSplits   Kind = "rod-splits"   // the board along its grain, from the bore
	RodInWood   Kind = "rod-in-stud"  // on the stud's wood
	TipTears    Kind = "tip-tears"    // the board across its grain in front of a rod's tip
	GrooveTears Kind = "groove-tears" // the same in front of a groove
	BoardBends  Kind = "board-bends"  // along its grain
	CornerOpens Kind = "corner-opens" // the glue of a mitre
	ScrewDraws  Kind = "screw-draws"  // pull and push of a plate's screw
	LinkDraws   Kind = "link-draws"   // the same of a cleat's, rail's or hook's screw
	HeelCrushes Kind = "heel-crushes" // the lining under a plate's lower edge
)

// A Use is how much of what something bears is used: 1 is all of it.
type Use struct {
	Kind    Kind
	Bracket string
	Board   string
	Corner  int
	Missing string // bracket, or board with its brackets, that carries nothing then; empty: none
	Part    float64
	Value   float64 // in the unit of the kind: MPa, N/mm or N; of screws the sum of parts
	Limit   float64
}

// A Gap is a check that could not be made.
type Gap struct {
	Kind    Kind
	Bracket string
	Board   string
	Corner  int
	Why     Why
}

// A Why says which fact is missing.
type Why string

// The facts.
const (
	RootUnknown    Why = "root-unknown"    // the rod's least section at its plate
	WallUnknown    Why = "wall-unknown"    // what the screw is in
	StudUncertain  Why = "stud-uncertain"  // a stud not found by both edges
	NotInStud      Why = "not-in-stud"     // beside the stud, in a hollow wall
	MasonryUntried Why = "masonry-untried" // no pull at the site
	LiningUnknown  Why = "lining-unknown"
	AllSlotted     Why = "all-slotted" // no round hole carries push
	NoClaim        Why = "no-claim"    // nothing is claimed for the corner
	MetalStud      Why = "metal-stud"
	NearEdge       Why = "near-edge"     // of the stud: too near for the wood to hold
	OneInHollow    Why = "one-in-hollow" // one anchor in a hollow wall resists no turning
)

// A Site is what a wall gives the fixings of a module where it hangs.
type Site struct {
	Lining Lining
	Tests  []CornerTest       // of the shop
	Screws map[string][]Screw // of each bracket, in the order of its fixing's screws
}

// A Screw is one hole for a screw or rod in the wall.
type Screw struct {
	In    string  // a kind of structure of package wall
	State string  // how well a stud is known
	Metal bool    // a metal stud
	Edge  float64 // from its axis to the nearer edge of the stud, mm
	Grip  float64 // how deep it sits in the structure, mm
	// Pull and Push are what a fixing bore in a test, N; 0: no test. In a hollow wall the load
	// at which its anchor gave way; in masonry the load that it bore at the site without
	// moving. Push 0 is taken as Pull.
	Pull, Push float64
}

// StudG is the specific gravity taken for studs and battens: Spruce-Pine-Fir of NDS 2018,
// table 12.3.3A, among the lightest that are sold.
const StudG = 0.42

// ScrewYield is the bending yield strength taken for wood screws, MPa: 90 000 psi, which
// the NDS takes for No 7 to No 9 (2018, table 12.3.1; memory).
const ScrewYield = 90000 * 0.0068947573

// BendingPart is the part of a wood's mean bending strength that is allowed for a lasting
// load: the 5 % value of clear wood (1 − 1.645 × 0.16; ASTM D2555), over 2.3 for hardwood
// (ASTM D245: 10 years and a margin), times 0.9 for permanent load, times a strength ratio
// of 0.62 for small knots and sloping grain. Standards from memory, ratio our assumption.
const BendingPart = 0.737 / 2.3 * 0.9 * 0.62

// A pile is what stands on stretches of a shelf, N/mm² of the part of its depth that it takes,
// at the front.
type pile struct {
	shelf int
	on    []Span
	dense float64
}

// near returns what of a pile stands within a stretch, N per mm of depth.
func (p *pile) near(part Span) (q float64) {
	for _, s := range p.on {
		q += p.dense * max(min(s.To, part.To)-max(s.From, part.From), 0)
	}
	return q
}

// A judge holds an effect against what the parts bear.
type judge struct {
	r     *Response
	site  *Site
	uses  []Use
	gaps  []Gap
	piles []pile
	hand  float64 // on a front edge, N
	lasts strength.DurationNDS
}

func (j *judge) use(u Use) {
	if u.Limit > 0 {
		u.Part = u.Value / u.Limit
	}
	j.uses = append(j.uses, u)
}

// lasting checks an effect of weight and things that stay.
func (j *judge) lasting(e *Effect) {
	for i := range j.r.model.rods {
		q := e.Rods[i]
		q.M = max(q.M, j.r.model.unaided(e, i))
		j.rod(i, q)
	}
	j.boards(e)
	j.mitres(e)
	j.links(e)
}

// unaided returns the moment at the root of rod i without the help of the other rods of its
// board: its own share of what the board weighs, at the distance from the wall at which all
// of it weighs. A board stiff against twisting evens the moments out; how much is a guess,
// and is not counted on. A module that is tied carries moments in other ways, too.
func (f *model) unaided(e *Effect, i int) float64 {
	if f.tied() {
		return 0
	}
	v, m := 0.0, 0.0
	for k := range f.rods {
		if f.rods[k].bar == f.rods[i].bar {
			v += e.Rods[k].V
			m += e.Rods[k].M
		}
	}
	if v <= 0 {
		return 0
	}
	return e.Rods[i].V * m / v
}

// rod checks a rod, its bore, the wood before its tip, and its hold on the wall.
func (j *judge) rod(i int, q RodForce) {
	r := &j.r.model.rods[i]
	d, t := r.of.Diameter.MM(), j.r.model.boards[r.bar].board.Thickness.MM()
	on := Use{Bracket: r.fixing.Bracket, Board: r.fixing.Board}
	j.bends(on, r, q)
	v := math.Sqrt(sq(q.V) + sq(q.H))
	m := math.Sqrt(sq(q.M) + sq(q.T))
	if v > 0 {
		force, contact := j.bearing(r, v, m)
		on.Kind, on.Value, on.Limit = RodBears, force/d, j.r.model.bears(r)
		j.use(on)
		if j.r.model.maySplit(r) {
			on.Kind, on.Value, on.Limit = RodSplits, v*strength.LoadFactorEN, strength.SplitFromBore(contact, t/2, t)
			j.use(on)
		}
	}
	j.tip(i, on)
	j.root(on, r, q)
}

// upright says whether a rod sits in a board that stands: it pushes along the grain there.
func (f *model) upright(r *rod) bool { return math.Abs(f.boards[r.bar].along[1]) > math.Sqrt2/2 }

// bears returns the allowable pressure in the bore of a rod.
func (f *model) bears(r *rod) float64 {
	g, d := f.boards[r.bar].wood.G12, r.of.Diameter.MM()
	if f.upright(r) {
		return strength.BoreBearingAlong(g, d)
	}
	return strength.BoreBearing(g, d)
}

// maySplit says whether a rod can split its board: across the grain it can anywhere, along it
// near an end.
func (f *model) maySplit(r *rod) bool {
	u, length := r.of.At.U, f.boards[r.bar].board.Length
	return !f.upright(r) || min(u, length-u).MM() < strength.EndDistance(r.of.Diameter.MM())
}

// bearing returns the greatest force per mm between a rod and its bore, and over which length
// it may split the board. A board that only lies on its rods bears on their upper sides; one
// that is tied holds them all round, as a stiff pin.
func (j *judge) bearing(r *rod, v, m float64) (force, contact float64) {
	depth := r.of.InBoard.MM() - r.mouth
	if !j.r.model.tied() {
		if force, contact = strength.BoreContact(v, m/v-r.mouth, depth); contact > 0 {
			return force, contact
		}
	}
	return strength.BoreFullDepth(v, math.Abs(m-v*r.mouth), depth), depth / 2
}

// bends checks the rod at its least section. A rod set in the structure bends behind the
// lining, too.
func (j *judge) bends(on Use, r *rod, q RodForce) {
	if r.of.Root == 0 {
		j.gaps = append(j.gaps, Gap{Kind: RodBends, Bracket: on.Bracket, Board: on.Board, Why: RootUnknown})
		return
	}
	lever := 0.0
	if r.of.InWall > 0 {
		if !j.site.Lining.Known {
			j.gaps = append(j.gaps, Gap{Kind: RodBends, Bracket: on.Bracket, Board: on.Board, Why: LiningUnknown})
			return
		}
		lever = j.site.Lining.Thickness
	}
	m, t := q.M+q.V*lever, q.T+q.H*lever
	on.Kind, on.Limit = RodBends, strength.RodBending(strength.PlainSteel)
	if j.lasts == strength.Minutes {
		on.Limit = strength.PlainSteel // it may come up to its yield, and stay straight
	}
	on.Value = math.Sqrt(sq(m)+sq(t)) / strength.RodSection(r.of.Root.MM())
	j.use(on)
}

// tip checks the wood in front of a rod's tip, and in front of grooves near it, under what
// stands on the shelf and its own weight.
func (j *judge) tip(i int, on Use) {
	for _, s := range j.strips(&j.r.model.rods[i]) {
		j.tears(on, s.kind, s.Strip, s.load)
	}
}

// A loadedStrip is a strip in front of a rod and what it carries, N per mm of depth.
type loadedStrip struct {
	strength.Strip
	kind Kind
	load float64
}

// strips lists the strips in front of a rod that have wood.
func (j *judge) strips(r *rod) (out []loadedStrip) {
	f := j.r.model
	b := &f.boards[r.bar]
	k := j.shelfOf(r.bar)
	if k < 0 {
		return nil
	}
	u, depth, t := r.of.At.U.MM(), b.board.Width.MM(), b.board.Thickness.MM()
	part := f.tributary(r)
	q := float64(b.wood.DensityAt(f.moisture)) * t * Gravity * 1e-9 * part.length()
	for n := range j.piles {
		if j.piles[n].shelf == k {
			q += j.piles[n].near(part)
		}
	}
	strip := strength.Strip{Out: depth - r.of.InBoard.MM(), Left: t, Rod: r.of.Diameter.MM(), Room: part.length(),
		Rib: f.ribbed(r.bar, u, strength.RibReach)}
	add := func(kind Kind) {
		if strip.Out > 0 && strip.Left > 0 {
			out = append(out, loadedStrip{strip, kind, q})
		}
	}
	add(TipTears)
	for _, g := range b.grooves {
		if g.span.From <= u && g.span.To >= u && g.back >= r.of.InBoard.MM() {
			strip.Out, strip.Left, strip.Groove = depth-g.back, g.left, true
			add(GrooveTears)
		}
	}
	return out
}

// tears checks a strip under a load of q per mm of depth.
func (j *judge) tears(on Use, kind Kind, s strength.Strip, q float64) {
	on.Kind, on.Value, on.Limit = kind, s.Stress(q*sq(s.Out)/2)*strength.LoadFactorEN, strength.TensionAcross()
	j.use(on)
}

// shelfOf returns which shelf a board is, or −1.
func (j *judge) shelfOf(bar int) int {
	for i := range j.r.Shelves {
		if j.r.Shelves[i].bar == bar {
			return i
		}
	}
	return -1
}

// root checks what holds a rod: the stud's wood round it, or its plate's screws.
func (j *judge) root(on Use, r *rod, q RodForce) {
	if r.of.InWall > 0 {
		j.inStud(on, r, q)
		return
	}
	p := j.r.model.plate(r)
	holes := j.site.Screws[on.Bracket]
	v := math.Sqrt(sq(q.V) + sq(q.H))
	inertia, round := 0.0, 0
	for _, s := range p.screws {
		inertia += sq(p.leverX(s))
		if !s.of.Slotted {
			round++
		}
	}
	if round == 0 {
		j.gaps = append(j.gaps, Gap{Kind: ScrewDraws, Bracket: on.Bracket, Board: on.Board, Why: AllSlotted})
	}
	if q.M > 0 && p.alone(r.fixing, holes) {
		j.gaps = append(j.gaps, Gap{Kind: ScrewDraws, Bracket: on.Bracket, Board: on.Board, Why: OneInHollow})
		return
	}
	pull := 0.0
	for _, s := range p.screws {
		n := index(r.fixing, s.of)
		if n >= len(holes) {
			continue
		}
		t := max(q.M, 0)*p.leverX(s)/inertia + max(q.N, 0)/float64(len(p.screws))
		pull = pull + t
		push := 0.0
		if !s.of.Slotted {
			push = v / float64(round)
		}
		j.screw(on, ScrewDraws, r.fixing, s.of, &holes[n], t, push)
	}
	j.heel(on, r, &p, pull, holes)
}

// index returns the place of a screw in its fixing.
func index(x *board.Fixing, s *board.Screw) int {
	for i := range x.Screws {
		if &x.Screws[i] == s {
			return i
		}
	}
	return len(x.Screws)
}

// screw checks a wood screw pulled and pushed at once: the parts of what each alone bears
// add up (NDS 2018, 12.4.2).
func (j *judge) screw(on Use, kind Kind, x *board.Fixing, s *board.Screw, h *Screw, pull, push float64) {
	if h.tried() {
		on.Kind, on.Limit, on.Value = kind, 1, pull/h.bears(h.Pull)+push/h.bears(h.Push)
		j.use(on)
		return
	}
	if why := j.unfit(h, s); why != "" {
		j.gaps = append(j.gaps, Gap{Kind: kind, Bracket: on.Bracket, Board: on.Board, Why: why})
		return
	}
	on.Kind, on.Limit = kind, 1
	on.Value = pull/(strength.Withdrawal(StudG, s.Diameter.MM())*h.Grip*float64(j.lasts)) + push/(j.push(x, s, h)*float64(j.lasts))
	j.use(on)
}

// push returns what a screw bears aside, with the lining as a gap before the stud unless its
// plate is let in.
func (j *judge) push(x *board.Fixing, s *board.Screw, h *Screw) float64 {
	gap := j.site.Lining.Thickness
	if x.Seat == "lining" {
		gap = 0
	}
	z, _ := strength.Dowel{
		Diameter: s.Root.MM(), Yield: ScrewYield, Side: strength.Bearing{Rigid: true}, Gap: gap,
		Main: strength.Bearing{Length: h.Grip, Strength: strength.BearingAcross(StudG, s.Root.MM())},
	}.Push()
	return z
}

// unfit says why nothing can be said of a screw where it is, or nothing.
func (j *judge) unfit(h *Screw, s *board.Screw) Why {
	switch {
	case !j.site.Lining.Known:
		return LiningUnknown
	case h.In == wall.InUnknown:
		return WallUnknown
	case h.In == wall.InMasonry:
		return MasonryUntried
	case h.In == wall.InLining:
		return NotInStud
	case h.Metal:
		return MetalStud
	case h.State != edgesFound:
		return StudUncertain
	case h.Grip < strength.LeastPenetration(s.Diameter.MM()):
		return NotInStud
	case h.Edge < strength.EdgeDistance(s.Diameter.MM()):
		return NearEdge
	}
	return ""
}

const edgesFound = "edges-found"

// heel checks the lining under the lower edge of a plate. One that stands on the structure
// needs none.
func (j *judge) heel(on Use, r *rod, p *plate, push float64, holes []Screw) {
	if r.fixing.Seat == "lining" || !j.site.Lining.Known || j.site.Lining.Thickness == 0 || len(holes) == 0 {
		return
	}
	on.Kind, on.Limit = HeelCrushes, strength.LiningBacked
	if p.hollow(r.fixing, holes) {
		on.Limit = strength.LiningHollow
	}
	if j.lasts == strength.Minutes {
		on.Limit *= strength.LiningCrushes / strength.LiningBacked
	}
	on.Value = push / (2 * p.half[0] * strength.HeelHeight)
	j.use(on)
}

// inStud checks the wood of a stud round a rod that is set in it: the rod turns in it like a
// stiff pin.
func (j *judge) inStud(on Use, r *rod, q RodForce) {
	h := rodHole(r, j.site)
	why := WallUnknown
	if h != nil {
		why = j.unfitRod(h, r.of.Diameter.MM())
	}
	if why != "" {
		j.gaps = append(j.gaps, Gap{Kind: RodInWood, Bracket: on.Bracket, Board: on.Board, Why: why})
		return
	}
	v := math.Sqrt(sq(q.V) + sq(q.H))
	m := math.Sqrt(sq(q.M)+sq(q.T)) + v*j.site.Lining.Thickness
	d := r.of.Diameter.MM()
	on.Kind, on.Limit = RodInWood, strength.BearingAlong(StudG, d)/4*float64(j.lasts)
	on.Value = strength.BoreFullDepth(v, m, r.of.InWall.MM()) / d
	j.use(on)
}

// rodHole returns the hole in the wall that a rod sits in, nil where there is none.
func rodHole(r *rod, site *Site) (h *Screw) {
	holes := site.Screws[r.fixing.Bracket]
	for i := range r.fixing.Screws {
		s := &r.fixing.Screws[i]
		if s.Rod && r.fixing.At.U+s.DU == r.of.At.U && i < len(holes) {
			h = &holes[i]
		}
	}
	return h
}

// unfitRod is unfit for a rod's own hole.
func (j *judge) unfitRod(h *Screw, d float64) Why {
	switch {
	case !j.site.Lining.Known:
		return LiningUnknown
	case h.In == wall.InUnknown:
		return WallUnknown
	case h.In == wall.InMasonry:
		return MasonryUntried
	case h.In == wall.InLining:
		return NotInStud
	case h.Metal:
		return MetalStud
	case h.State != edgesFound:
		return StudUncertain
	case h.Edge < strength.EdgeDistance(d):
		return NearEdge
	}
	return ""
}

// boards checks bending along the grain at every station and in the middle of every member.
func (j *judge) boards(e *Effect) {
	n := 0
	for i := range j.r.model.boards {
		b := &j.r.model.boards[i]
		limit := float64(b.wood.MOR) / 1e6 * BendingPart
		worst := 0.0
		for k := range b.members {
			m := &e.Members[n]
			n++
			worst = max(worst, stress(m.Start, b.least[k]), stress(m.Middle, b.middles[k]), stress(m.End, b.least[k+1]))
		}
		j.use(Use{Kind: BoardBends, Board: b.board.ID, Value: worst, Limit: limit})
	}
}

// stress returns the bending stress of a moment in a section.
func stress(m float64, s Section) float64 { return math.Abs(m) * s.High / s.Flat }

// mitres checks the moment that opens or closes each corner.
func (j *judge) mitres(e *Effect) {
	for i := range j.r.model.mitres {
		c := &j.r.model.mitres[i]
		force := &e.Members[c.member]
		m := force.Start
		if c.end {
			m = force.End
		}
		if allowed, ok := c.tested(j.site.Tests); ok {
			j.use(Use{Kind: CornerOpens, Board: c.corner.First, Corner: c.corner.Number, Value: math.Abs(m), Limit: allowed})
			continue
		}
		claim := float64(c.corner.Claim) / 1e6
		if claim == 0 {
			j.gaps = append(j.gaps, Gap{Kind: CornerOpens, Board: c.corner.First, Corner: c.corner.Number, Why: NoClaim})
			continue
		}
		j.use(Use{Kind: CornerOpens, Board: c.corner.First, Corner: c.corner.Number,
			Value: strength.MitreStress(math.Abs(m), c.width, c.length), Limit: claim})
	}
}

// links checks the screws of cleats, rails and hooks.
func (j *judge) links(e *Effect) {
	f := j.r.model
	for i := 0; i < len(f.links); {
		first := f.links[i]
		var pull, push float64
		for ; i < len(f.links) && f.links[i].fixing == first.fixing && f.links[i].screw == first.screw; i++ {
			if f.links[i].way[2] != 0 {
				pull = max(e.Links[i], 0)
			} else {
				push = math.Sqrt(sq(push) + sq(e.Links[i]))
			}
		}
		x := &f.of.Fixings[first.fixing]
		if holes := j.site.Screws[x.Bracket]; first.screw < len(holes) {
			j.screw(Use{Bracket: x.Bracket, Board: x.Board}, LinkDraws, x, &x.Screws[first.screw], &holes[first.screw], pull, push)
		}
	}
}
