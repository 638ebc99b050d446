// Package beam solves linear elastic frames of straight beams in space.
//
// A member obeys, in its own axes x (along), y and z, with the displacements u, v, w, the
// rotations φ, θy, θz and the forces N, Vy, Vz, T, My, Mz on the side that looks along +x,
//
//	N  = EA u′          N′  = ku (u − ub) − qx
//	T  = GJ φ′          T′  = kφ (φ − φb) − mx
//	Vy = GAy (v′ − θz)  Vy′ = kv (v − vb) − qy
//	Mz = EIz θz′        Mz′ = −Vy − mz
//	Vz = GAz (w′ + θy)  Vz′ = kw (w − wb) − qz
//	My = EIy θy′        My′ = Vz − my
//
// the beam of Timoshenko (S. Timoshenko, Phil. Mag. 41, 1921, p. 744) on the bed of Winkler
// (M. Hetényi, Beams on Elastic Foundation, 1946), whose bed may be the ground or the rigid
// section of another member. Each member is integrated exactly: the equations are linear
// with constant coefficients, so the state at x is exp(A x) times the state at 0, and the
// series of the exponential ends by itself where there is no bed. Between nodes nothing is
// interpolated.
//
// Left out: large displacements, buckling, warping of the section, and anything one-sided.
// Units are the caller's, as long as they agree; the engine uses N and mm.
package beam

// A Vec is a vector in the axes of the frame.
type Vec [3]float64

// A Wrench is a force and a moment.
type Wrench struct{ Force, Moment Vec }

// A Motion is a displacement and a small rotation.
type Motion struct{ Shift, Turn Vec }

// A Section is what a member's cross-section is to a beam. All figures of a section but
// the shear areas must be greater than 0.
type Section struct {
	A      float64 // area
	Iy, Iz float64 // second moments about y and z
	J      float64 // torsion constant
	Ay, Az float64 // areas in shear along y and z; 0: no shear deformation
}

// A Material is an isotropic elastic material, or one whose shear modulus stands for all
// planes.
type Material struct{ E, G float64 }

// A Spring is how an end of a member hangs on its node in one freedom. Its zero value is
// rigid.
type Spring struct {
	Free      bool
	Stiffness float64 // where it is greater than 0: elastic
}

// An End is one end of a member.
type End struct {
	Node int
	// Arm leads from the node to the end of the member's axis, rigidly.
	Arm Vec
	// Springs are the freedoms of the member at this end: shift along x, y, z of the
	// member, turn about x, y, z.
	Springs [6]Spring
}

// A Bed resists the displacements of a member along it: stiffness in force per length and
// displacement, and for Twist in moment per length and angle.
type Bed struct {
	X, Y, Z, Twist float64
	// OnNode says that the bed is no ground but moves rigidly with node Node.
	OnNode bool
	Node   int
}

// none says that there is no bed.
func (b Bed) none() bool { return b.X == 0 && b.Y == 0 && b.Z == 0 && b.Twist == 0 }

// A Member is a straight beam between two nodes.
type Member struct {
	Name     string // for errors
	Start    End
	Finish   End
	Section  Section
	Material Material
	// Up fixes the axis y: y lies in the plane of x and Up, on Up's side.
	Up  Vec
	Bed Bed
}

// A Hold is how a node is held by the ground in one freedom. Its zero value is free.
type Hold struct {
	Rigid     bool
	Stiffness float64
}

// A Node is a point of the frame, held by the ground or not, in the axes of the frame:
// shift along x, y, z, turn about x, y, z.
type Node struct {
	Name string // for errors
	At   Vec
	Hold [6]Hold
}

// A Frame is nodes and the members between them.
type Frame struct {
	Nodes   []Node
	Members []Member
}

// A NodeLoad is a load on a node.
type NodeLoad struct {
	Node int
	Wrench
}

// A Point is a load at one place of a member, in the axes of the frame. Its line of action
// passes through the axis of the member, displaced by Off.
type Point struct {
	Member int
	At     float64 // distance from the start of the member's axis
	Off    Vec
	Wrench
}

// A Line is a load along a member from From to To, per length, that changes evenly from
// Start to Finish, in the axes of the frame. It acts along the axis displaced by Off.
type Line struct {
	Member        int
	From, To      float64
	Start, Finish Vec
	Off           Vec
}

// A Case is loads that act together.
type Case struct {
	Nodes  []NodeLoad
	Points []Point
	Lines  []Line
}
