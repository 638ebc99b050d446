package mesh

import "ledgewright/engine/drawing"

// At is where a camera sees a point.
func (c Camera) At(p drawing.Point) (x, y float64) {
	q := c.at(p)
	return q.x, q.y
}

// Kinds of paint.
const (
	PaintCloud = paintCloud
	PaintDash  = paintDash
	PaintDot   = paintDot
	PaintDisc  = paintDisc
	PaintEnd   = paintEnd
	PaintEdge  = paintEdge
	PaintWood  = paintWood
)
