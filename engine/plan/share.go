package plan

// Shares reports whether two modules are the same and share all their storage, which tells
// it without reading a board: an edit shares what it did not touch. Modules that are equal
// and share nothing are not told.
func (m *Module) Shares(o *Module) bool {
	return m.ID == o.ID && m.Name == o.Name && m.Depth == o.Depth && m.Wood == o.Wood &&
		m.Closed == o.Closed && m.GrainWrap == o.GrainWrap && m.Hung == o.Hung &&
		Shared(m.Boards, o.Boards) && Shared(m.Corners, o.Corners) &&
		Shared(m.Dividers, o.Dividers) && Shared(m.Lights, o.Lights) &&
		Shared(m.Brackets, o.Brackets) && Shared(m.Extra, o.Extra)
}

// Shared reports whether two slices are one and the same. Slices of plans are never written
// to, so their contents are then equal.
func Shared[T any](a, b []T) bool { return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0]) }
