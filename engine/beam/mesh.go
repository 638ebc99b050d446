package beam

import "math"

// The four planes of a member in the order of the freedoms 0, 1, 2 and 3.
const (
	pull = iota
	bendY
	bendZ
	twist
)

// A shape is a member made ready: its axis and its planes.
type shape struct {
	axes   axes
	start  Vec
	length float64
	planes [4]plane
}

// A piece is a member between two places, short enough for the series of its bed. Its ends
// hang on nodes of the mesh: those of the frame, then the inner ones.
type piece struct {
	member   int
	ends     [2]int
	arms     [2]Vec
	from, to float64 // where it lies on the member
	springs  [12]Spring
	tie      int // the node its bed moves with, or -1
	tieArms  [2]Vec
	stiff    [12][12]float64 // of the member in its own axes, before the springs
	turner   turner
	planes   [4]pieceOfPlane
	releases []release
}

// A pieceOfPlane is what loads along a piece need of a plane.
type pieceOfPlane struct {
	inverse  two
	transfer transfer
}

// A mesh is a frame cut into pieces.
type mesh struct {
	frame  *Frame
	shapes []shape
	pieces []piece
	first  []int // the first piece of each member, and the number of pieces
	places []Vec // of the nodes, then of the inner nodes
}

// meshOf cuts the members of a frame that has been checked.
func meshOf(f *Frame) (*mesh, error) {
	m := &mesh{
		frame: f, first: make([]int, 1, len(f.Members)+1),
		shapes: make([]shape, 0, len(f.Members)), pieces: make([]piece, 0, f.roomForPieces()),
	}
	for i := range f.Nodes {
		m.places = append(m.places, f.Nodes[i].At)
	}
	for i := range f.Members {
		s, err := f.shape(i)
		if err != nil {
			return nil, err
		}
		m.shapes = append(m.shapes, s)
		if err := m.cut(i); err != nil {
			return nil, err
		}
		m.first = append(m.first, len(m.pieces))
	}
	return m, nil
}

// roomForPieces guesses how many pieces there will be: one a member, and some more of one
// that lies in a bed. They are large, so that room for nothing is dear.
func (f *Frame) roomForPieces() (n int) {
	for i := range f.Members {
		n++
		if !f.Members[i].Bed.none() {
			n += 4
		}
	}
	return n
}

// shape makes member i ready.
func (f *Frame) shape(i int) (shape, error) {
	b := &f.Members[i]
	start := f.Nodes[b.Start.Node].At.add(b.Start.Arm)
	along := f.Nodes[b.Finish.Node].At.add(b.Finish.Arm).sub(start)
	length := along.length()
	if length == 0 {
		return shape{}, &MemberError{Member: i, Name: b.Name, What: NoLength}
	}
	r, ok := axesOf(along, b.Up)
	if !ok {
		return shape{}, &MemberError{Member: i, Name: b.Name, What: NoUp}
	}
	return shape{r, start, length, b.planes()}, nil
}

// planes returns the four systems of equations of the member.
func (b *Member) planes() [4]plane {
	s, e, g := &b.Section, b.Material.E, b.Material.G
	return [4]plane{
		pull:  {flexShear: 1 / float64(e*s.A), bed: b.Bed.X},
		bendY: {flexShear: shear(g, s.Ay), flexBend: 1 / float64(e*s.Iz), bed: b.Bed.Y},
		bendZ: {flexShear: shear(g, s.Az), flexBend: 1 / float64(e*s.Iy), bed: b.Bed.Z},
		twist: {flexShear: 1 / float64(g*s.J), bed: b.Bed.Twist},
	}
}

// shear returns 1/GA, which is 0 for a section without shear deformation.
func shear(g, area float64) float64 {
	if area == 0 {
		return 0
	}
	return 1 / float64(g*area)
}

// cut adds the pieces of member i.
func (m *mesh) cut(i int) error {
	b, s := &m.frame.Members[i], &m.shapes[i]
	count := 1
	if !b.Bed.none() {
		reach := math.Inf(1)
		for _, p := range s.planes {
			reach = min(reach, p.reach())
		}
		count = int(math.Ceil(s.length / reach))
	}
	if count > mostPieces {
		return &MemberError{Member: i, Name: b.Name, What: BedTooStiff}
	}
	for k := range count {
		p := m.piece(i, k, count)
		if err := p.ready(s, b.Name); err != nil {
			return err
		}
		m.pieces = append(m.pieces, p)
	}
	return nil
}

// piece returns piece k of count of member i between its nodes, the last of them new
// unless it is the member's own.
func (m *mesh) piece(i, k, count int) piece {
	b, s := &m.frame.Members[i], &m.shapes[i]
	p := piece{member: i, tie: -1, to: s.length, ends: [2]int{len(m.places) - 1, len(m.places)}}
	p.from = s.length * float64(k) / float64(count)
	if k == 0 {
		p.ends[0], p.arms[0] = b.Start.Node, b.Start.Arm
		copy(p.springs[:6], b.Start.Springs[:])
	}
	if k == count-1 {
		p.ends[1], p.arms[1] = b.Finish.Node, b.Finish.Arm
		copy(p.springs[6:], b.Finish.Springs[:])
	} else {
		p.to = s.length * float64(k+1) / float64(count)
		m.places = append(m.places, s.at(p.to))
	}
	m.tie(&p)
	p.turner = m.turner(&p)
	return p
}

// mostPieces bounds the work for one member.
const mostPieces = 200

// at returns the place x along the member.
func (s *shape) at(x float64) Vec { return s.start.add(s.axes[0].scale(x)) }

// tie notes what the bed of the piece moves with.
func (m *mesh) tie(p *piece) {
	b, s := &m.frame.Members[p.member], &m.shapes[p.member]
	if b.Bed.none() || !b.Bed.OnNode {
		return
	}
	p.tie = b.Bed.Node
	origin := m.frame.Nodes[p.tie].At
	p.tieArms = [2]Vec{s.at(p.from).sub(origin), s.at(p.to).sub(origin)}
}

// slots are the freedoms of a piece that a plane moves, in the order of [stiff], and the
// sign of its turns: in the plane of x and z a positive turn about y lowers z.
var slots = [4]struct {
	of    [4]int
	turns float64
}{
	pull:  {[4]int{0, -1, 6, -1}, 0},
	bendY: {[4]int{1, 5, 7, 11}, 1},
	bendZ: {[4]int{2, 4, 8, 10}, -1},
	twist: {[4]int{3, -1, 9, -1}, 0},
}

// sign returns the sign of place i of a plane's stiffness.
func sign(plane, i int) float64 {
	if i%2 == 1 {
		return slots[plane].turns
	}
	return 1
}

// ready fills the stiffness of the piece and lets its springs give.
func (p *piece) ready(s *shape, name string) error {
	for n := range s.planes {
		k, inverse, transfer := s.planes[n].stiffness(p.to - p.from)
		p.planes[n] = pieceOfPlane{inverse, transfer}
		for i, row := range slots[n].of {
			for j, column := range slots[n].of {
				if row >= 0 && column >= 0 {
					p.stiff[row][column] = k[i][j] * sign(n, i) * sign(n, j)
				}
			}
		}
	}
	return p.release(name)
}
