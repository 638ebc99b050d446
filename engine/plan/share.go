package plan

// Shares reports whether two modules are the same and share all their storage, which tells
// it without reading a board: an edit shares what it did not touch. Modules that are equal
// and share nothing are not told.
func (m *Module) Shares(o *Module) bool {
	return m.ID == o.ID && m.Name == o.Name && m.Depth == o.Depth && m.Wood == o.Wood &&
		m.Closed == o.Closed && m.GrainWrap == o.GrainWrap && m.Hung == o.Hung &&
		shared(m.Boards, o.Boards) && shared(m.Corners, o.Corners) &&
		shared(m.Dividers, o.Dividers) && shared(m.Lights, o.Lights) &&
		shared(m.Brackets, o.Brackets) && shared(m.Extra, o.Extra)
}
