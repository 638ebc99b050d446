// Stage is the pane of glass of the maker's page: it paints drawings with the graphics
// processor, in a document of its own (site/workshop/stage.html). It knows no plan, hears
// no pointer and has no words. The page hands it a drawing and a view and asks for a
// frame; in between it does nothing.
//
// On its window stand, for the page:
//
//	stageDrawing(buffer, length)     a drawing on the wire; what is wrong with it, or ""
//	stageOver(buffer, length)        likewise one that lies over it, until either comes again
//	stageView(scale, x, y, evening)  pixels of the page for a millimetre, where (0, 0) is, the theme
//	stageFrame()                     draws, before it returns (of the loader)
//	stageCounts()                    what was done so far, for tests
package main

import (
	_ "embed"
	"syscall/js"

	"github.com/hajimehoshi/ebiten/v2"
)

//go:embed paint.kage
var paint []byte

func main() {
	shader, err := ebiten.NewShader(paint)
	if err != nil {
		panic(err) // the file is part of the program
	}
	s := newStage(shader)
	s.serve(js.Global())
	ebiten.SetTPS(ebiten.SyncWithFPS)
	err = ebiten.RunGameWithOptions(s, &ebiten.RunGameOptions{InitUnfocused: true, ScreenTransparent: true})
	if err != nil {
		panic(err) // the page hears of it by the end of the program
	}
}
