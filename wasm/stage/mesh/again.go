package mesh

// While a module is dragged, one drawing after the other differs in that module alone. So
// a mesh keeps what it made of each item. For the same camera and colours the items before
// the first that is another stay where they are, and where one comes again after it the
// triangles are copied.

// A made is what was made of an item: where in the lists its triangles are.
type made struct {
	sum                 uint64
	vertex, index       int
	vertexEnd, indexEnd int
}

// memory is the last picture, from the first item on that is another now.
type memory struct {
	vertices          []Vertex
	indices           []uint32
	items             []made
	vertexAt, indexAt int // where they were in the lists
	next              int // where the next item is looked for
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

// begin starts a picture and returns how many items stay as they are. Where the camera or
// the colours are not the same none does.
func (m *Mesh) begin(sums []uint64, same bool) (stay int) {
	k := &m.last
	k.vertices, k.indices, k.items, k.next = k.vertices[:0], k.indices[:0], k.items[:0], 0
	vertex, index := 0, 0
	if same {
		for stay < min(len(sums), len(m.items)) && m.items[stay].sum == sums[stay] {
			vertex, index = m.items[stay].vertexEnd, m.items[stay].indexEnd
			stay++
		}
		k.vertices, k.indices = append(k.vertices, m.Vertices[vertex:]...), append(k.indices, m.Indices[index:]...)
		k.items = append(k.items, m.items[stay:]...)
	}
	k.vertexAt, k.indexAt = vertex, index
	m.Vertices, m.Indices, m.items = m.Vertices[:vertex], m.Indices[:index], m.items[:stay]
	return stay
}

// again copies an item's triangles from the last picture, if they are there.
func (m *Mesh) again(sum uint64) bool {
	k := &m.last
	was, ok := k.find(sum)
	if !ok {
		return false
	}
	shift := uint32(len(m.Vertices)) - uint32(was.vertex)
	m.Vertices = append(m.Vertices, k.vertices[was.vertex-k.vertexAt:was.vertexEnd-k.vertexAt]...)
	for _, i := range k.indices[was.index-k.indexAt : was.indexEnd-k.indexAt] {
		m.Indices = append(m.Indices, i+shift)
	}
	return true
}

// keep notes what was made of an item, from so many vertices and indices on.
func (m *Mesh) keep(sum uint64, vertex, index int) {
	m.items = append(m.items, made{sum, vertex, index, len(m.Vertices), len(m.Indices)})
}
