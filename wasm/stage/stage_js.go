package main

import (
	"fmt"
	"syscall/js"
	"unsafe"

	"github.com/hajimehoshi/ebiten/v2"

	"ledgewright/engine/drawing"
	"ledgewright/wasm/stage/mesh"
)

// A stage holds the present drawing and how it is seen. Update works out the triangles
// where something has changed; Draw only draws.
type stage struct {
	shader  *ebiten.Shader
	options ebiten.DrawTrianglesShaderOptions
	under   layer // what stays
	over    layer // what is in the hand
	drawing drawing.Drawing
	sums    []uint64 // of its items
	themes  [2]*mesh.Inks
	mesh    mesh.Mesh
	view    view
	size    [2]float64 // of the screen, in its pixels
	stale   bool
	counts  counts
}

// A layer is a drawing as it came from the page.
type layer struct {
	unpack  drawing.Unpacker
	bytes   []byte
	drawing drawing.Drawing
	sums    []uint64 // of its items
}

// A view is how the page wants the drawing to be seen.
type view struct {
	scale, x, y float64
	evening     bool
}

// counts is what was done so far.
type counts struct{ drawings, bytes, builds, draws, calls int }

func newStage(shader *ebiten.Shader) *stage {
	return &stage{shader: shader, view: view{scale: 1}, themes: [2]*mesh.Inks{mesh.NewInks(drawing.Day), mesh.NewInks(drawing.Evening)}}
}

// serve puts the stage's functions on its window.
func (s *stage) serve(window js.Value) {
	window.Set("stageDrawing", js.FuncOf(func(_ js.Value, args []js.Value) any {
		s.over.empty()
		return s.take(&s.under, args[0], args[1].Int())
	}))
	window.Set("stageOver", js.FuncOf(func(_ js.Value, args []js.Value) any {
		return s.take(&s.over, args[0], args[1].Int())
	}))
	window.Set("stageView", js.FuncOf(func(_ js.Value, args []js.Value) any {
		s.view = view{args[0].Float(), args[1].Float(), args[2].Float(), args[3].Bool()}
		s.stale = true
		return nil
	}))
	window.Set("stageCounts", js.FuncOf(func(js.Value, []js.Value) any {
		return map[string]any{
			"drawings": s.counts.drawings, "bytes": s.counts.bytes, "builds": s.counts.builds, "draws": s.counts.draws,
			"calls": s.counts.calls, "vertices": len(s.mesh.Vertices), "triangles": len(s.mesh.Indices) / 3,
		}
	}))
}

// take reads a drawing into a layer. One that cannot be read leaves nothing to be seen
// there, and its reason is given back.
func (s *stage) take(l *layer, buffer js.Value, length int) string {
	err := l.read(buffer, length)
	s.join(l == &s.under)
	if err != nil {
		return err.Error()
	}
	s.counts.drawings++
	s.counts.bytes += length
	return ""
}

// join lays one layer over the other. Of the lower, which is the larger, items are only
// copied when it is new.
func (s *stage) join(anew bool) {
	items, n := s.drawing.Items, len(s.under.drawing.Items)
	if anew {
		items, s.sums = append(items[:0], s.under.drawing.Items...), append(s.sums[:0], s.under.sums...)
	}
	s.drawing, s.stale = s.under.drawing, true
	s.drawing.Items, s.sums = append(items[:n], s.over.drawing.Items...), append(s.sums[:n], s.over.sums...)
}

// read reads a drawing. The buffer is of another document, and is seen through an array
// of this one: the Go distribution copies from no other.
func (l *layer) read(buffer js.Value, length int) (err error) {
	if cap(l.bytes) < length {
		l.bytes = make([]byte, length+length/4)
	}
	b := l.bytes[:length]
	if n := js.CopyBytesToGo(b, js.Global().Get("Uint8Array").New(buffer, 0, length)); n != length {
		l.empty()
		return fmt.Errorf("%d bytes of %d", n, length)
	}
	if l.drawing, err = l.unpack.Read(b); err != nil {
		l.empty() // what was there shared its memory
		return err
	}
	l.sums = l.unpack.Sums()
	return nil
}

func (l *layer) empty() { l.drawing, l.sums = drawing.Drawing{}, nil }

// Update works out the triangles if the drawing, the view or the screen is another.
func (s *stage) Update() error {
	if s.stale {
		s.stale = false
		ratio := ebiten.Monitor().DeviceScaleFactor()
		inks := s.themes[0]
		if s.view.evening {
			inks = s.themes[1]
		}
		s.mesh.Build(&s.drawing, s.sums, mesh.NewCamera(s.view.scale, s.view.x, s.view.y, ratio, s.size[0], s.size[1]), inks)
		s.counts.builds++
	}
	return nil
}

// Draw paints the triangles, all in one call.
func (s *stage) Draw(screen *ebiten.Image) {
	s.counts.draws++
	if len(s.mesh.Indices) == 0 {
		return
	}
	s.counts.calls++
	screen.DrawTrianglesShader32(vertices(s.mesh.Vertices), s.mesh.Indices, s.shader, &s.options)
}

// The two kinds of vertex have the same members in the same order: the conversion
// compiles only if they do.
var _ = ebiten.Vertex(mesh.Vertex{})

// vertices is a list of vertices as Ebitengine's, without a copy.
func vertices(v []mesh.Vertex) []ebiten.Vertex {
	return unsafe.Slice((*ebiten.Vertex)(unsafe.Pointer(unsafe.SliceData(v))), len(v))
}

// Layout is never called where there is LayoutF.
func (s *stage) Layout(width, height int) (int, int) { return width, height }

// LayoutF makes a pixel of the picture one of the screen.
func (s *stage) LayoutF(width, height float64) (float64, float64) {
	ratio := ebiten.Monitor().DeviceScaleFactor()
	size := [2]float64{width * ratio, height * ratio}
	if size != s.size {
		s.size, s.stale = size, true
	}
	return size[0], size[1]
}
