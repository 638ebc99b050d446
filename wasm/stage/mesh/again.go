package mesh

// While a module is dragged, one drawing after the other differs in that module alone. So
// a mesh keeps what it made of each item, and where the same item comes again for the same
// camera and colours it copies the triangles.

// A made is what was made of an item: where in the lists its triangles are.
type made struct {
	sum                 uint64
	vertex, index       int
	vertexEnd, indexEnd int
}

// memory is the last picture.
type memory struct {
	vertices []Vertex
	indices  []uint32
	items    []made
	next     int // where the next item is looked for
}

// lookahead is how far on an item is looked for that is not the next: more than a module
// has faces.
const lookahead = 48

// find returns what was made of an item with that sum. Items mostly come in the order of
// the last time.
func (k *memory) find(sum uint64) (made, bool) {
	for i := k.next; i < min(k.next+lookahead, len(k.items)); i++ {
		if k.items[i].sum == sum {
			k.next = i + 1
			return k.items[i], true
		}
	}
	return made{}, false
}

// begin starts a picture, and keeps the last one if it can be of use.
func (m *Mesh) begin(same bool) {
	k := &m.last
	m.Vertices, k.vertices = k.vertices[:0], m.Vertices
	m.Indices, k.indices = k.indices[:0], m.Indices
	m.items, k.items = k.items[:0], m.items
	k.next = 0
	if !same {
		k.items = k.items[:0]
	}
}

// again copies an item's triangles from the last picture, if they are there.
func (m *Mesh) again(sum uint64) bool {
	was, ok := m.last.find(sum)
	if !ok {
		return false
	}
	shift := uint32(len(m.Vertices)) - uint32(was.vertex)
	m.Vertices = append(m.Vertices, m.last.vertices[was.vertex:was.vertexEnd]...)
	for _, i := range m.last.indices[was.index:was.indexEnd] {
		m.Indices = append(m.Indices, i+shift)
	}
	return true
}

// keep notes what was made of an item, from so many vertices and indices on.
func (m *Mesh) keep(sum uint64, vertex, index int) {
	m.items = append(m.items, made{sum, vertex, index, len(m.Vertices), len(m.Indices)})
}
