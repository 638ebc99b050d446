package panel

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine"
	"ledgewright/engine/board"
	"ledgewright/engine/unit"
	"ledgewright/wasm/app"
)

func TestMakeIsSound(t *testing.T) {
	eachDesk(t, app.Make, func(t *testing.T, s app.State) { requireSound(t, makeJob(&s)) })
}

func TestMakeWithoutModulesLeadsToArrange(t *testing.T) {
	s, _ := app.Step(app.State{}, app.Started{Now: "14:02"})
	for _, e := range []app.Event{app.NewJob{Width: "2400", Height: "2400"}, app.Go{Job: app.Make}} {
		s, _ = app.Step(s, e)
	}
	requireSound(t, makeJob(&s))
	s, _ = click(t, s, makeJob(&s), "make-to-arrange")
	require.Equal(t, app.Arrange, s.Job)
}

// The figures of the table, typed again, are those of the boards themselves: all boards
// of the job stand in it, each once.
func TestPartListIsTheBoards(t *testing.T) {
	for _, name := range assets.Names() {
		s := desk(t, name, app.Go{Job: app.Make})
		b := engine.Derive(s.Plan, nil)
		left := map[string]int{}
		for _, m := range b.Modules {
			for _, o := range m.Boards {
				left[sizeKey(s, o.Thickness, o.Width, o.Length)]++
			}
		}
		for _, r := range rowsOf([]Node{atKey(t, makeTable(&s), "parts")})[1:] {
			n, err := strconv.Atoi(r[2])
			require.NoError(t, err)
			sizes := strings.Split(r[3], " × ")
			require.Len(t, sizes, 3)
			left[strings.Join(sizes, "|")] -= n
		}
		for size, n := range left {
			require.Zero(t, n, "%s: boards of %s", name, size)
		}
	}
}

func sizeKey(s app.State, t, w, l unit.Length) string {
	style := s.Plan.Style()
	return style.Length(min(t, w)) + "|" + style.Length(max(t, w)) + "|" + style.Length(l)
}

func TestTwinsAreToldApart(t *testing.T) {
	twins := 0
	for _, name := range assets.Names() {
		s := desk(t, name, app.Go{Job: app.Make})
		rows := rowsOf([]Node{atKey(t, makeTable(&s), "parts")})[1:]
		for i, p := range s.Build.Parts.Parts {
			cuts := rows[i][len(rows[i])-1]
			if p.MirrorOf == 0 {
				require.NotContains(t, cuts, "twin")
				continue
			}
			twins++
			require.Contains(t, cuts, "Mirror twin of part "+strconv.Itoa(p.MirrorOf))
			at, _ := app.Step(s, app.Point{At: app.Thing{Kind: "part", Index: p.Number}})
			require.Contains(t, reads(atKey(t, makeJob(&at), "twin")), "not the same piece")
		}
	}
	require.Positive(t, twins, "no example has mirror twins")
}

func TestChoosingAPartShowsItsBoard(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Make})
	n := len(s.Build.Parts.Parts)
	require.Greater(t, n, 2)
	for i, p := range s.Build.Parts.Parts {
		next, _ := click(t, s, makeTable(&s), "pick-part-"+strconv.Itoa(i+1))
		nodes := slices.Concat(makeTable(&next), makeJob(&next))
		name, _ := deskAttr(atKey(t, nodes, "drawing"), "aria-label")
		require.Contains(t, name, boardName(&s, p.Boards[0]))
		for _, id := range p.Boards {
			require.Contains(t, reads(atKey(t, nodes, "for")), boardName(&s, id))
			require.NotContains(t, reads(nodes...), id, "no id of the plan is shown")
		}
		on := 0
		eachNode(nodes, func(n Node) {
			if pressed, _ := deskAttr(n, "aria-pressed"); pressed == "true" {
				on++
			}
		})
		require.Equal(t, 1, on)
	}
}

func TestChoosingAModuleShowsItsParts(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Make})
	for _, m := range s.Build.Modules {
		next, _ := app.Step(s, app.Choose{Module: m.ID})
		name, _ := deskAttr(atKey(t, makeTable(&next), "drawing"), "aria-label")
		require.Contains(t, name, " of "+moduleLabel(m))
		require.Contains(t, reads(atKey(t, makeJob(&next), "corners")), moduleLabel(m))
	}
}

// A square mitre of two boards t thick has the blade at 45°, the long point t ahead, and a
// surface t·√2 long; a spline 4 thick that begins 6 from the heel lies from 6 to 10.
func TestASquareMitreIsSetOutFromItsHeel(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Make}, app.Choose{Module: "m1"})
	require.Equal(t, 6*unit.Millimetre, s.Plan.Shop.Joints.SplineHeel)
	corner := atKey(t, makeJob(&s), "corner-1")
	says := reads(corner)
	require.Contains(t, says, "Blade from square, both boards45°")
	require.Contains(t, says, "both boards26 mm")
	require.Contains(t, says, "1 spline: 4 mm thick, 26 mm wide, 170 mm long")
	rows := rowsOf([]Node{atKey(t, corner.Kids, "cuts")})
	require.Len(t, rows, 3)
	for _, r := range rows[1:] {
		require.Contains(t, r[2], "6 to 10 from the heel")
		require.Equal(t, "15 to 185 from the back edge", r[3])
	}
	m := s.Build.Modules[0]
	h := heelOf(m.Boards[0], board.End)
	require.InDelta(t, 26*math.Sqrt2, h.size.MM(), 1e-5)
	require.Equal(t, board.FaceA, h.face)
}

// Every place in a table of cuts lies on the board.
func TestPlacesOfCutsLieOnTheBoard(t *testing.T) {
	for _, name := range assets.Names() {
		s := desk(t, name)
		for _, m := range s.Build.Modules {
			for _, b := range m.Boards {
				for _, f := range b.Features {
					if f.Kind == board.EndCut || f.Kind == board.Chamfer || f.Kind == board.RoundOver {
						continue
					}
					along, across := placesOf(&s, b, f)
					for _, says := range []string{along, across} {
						requireWithin(t, s, says, max(b.Length, b.Width))
					}
				}
			}
		}
	}
}

func requireWithin(t *testing.T, s app.State, says string, most unit.Length) {
	t.Helper()
	if strings.HasPrefix(says, "the whole") {
		return
	}
	figures, _, ok := strings.Cut(says, " from ")
	require.True(t, ok, says)
	for _, f := range strings.Split(figures, " to ") {
		l, err := unit.ParseLength(f, s.Plan.Units.System)
		require.NoError(t, err, says)
		require.GreaterOrEqual(t, l, unit.Length(0), says)
		require.LessOrEqual(t, l, most+s.Plan.Style().Step, says)
	}
}

func TestEveryCutStandsInTheTable(t *testing.T) {
	for _, name := range []string{"study", "landing", "larder", "laundry", "kitchen"} {
		s := desk(t, name, app.Go{Job: app.Make})
		for i, p := range s.Build.Parts.Parts {
			at, _ := app.Step(s, app.Point{At: app.Thing{Kind: "part", Index: i + 1}})
			m, _ := moduleOfBoard(&at, p.Boards[0])
			b, _ := boardOf(m, p.Boards[0])
			want := 0
			for _, f := range b.Features {
				if !slices.Contains([]board.Kind{board.EndCut, board.Chamfer, board.RoundOver}, f.Kind) {
					want++
				}
			}
			nodes := makeJob(&at)
			if want == 0 {
				require.False(t, hasKey(nodes, "cut-table"))
				continue
			}
			require.Len(t, rowsOf([]Node{atKey(t, nodes, "cut-table")}), want+1)
		}
	}
}

// An inch is 25.4 mm, so a board foot is 2.359737216 litres (NIST SP 811, appendix B.8).
func TestVolumesInBothSystems(t *testing.T) {
	s := app.State{}
	require.Equal(t, "2.4 litres", volume(&s, 0.002359737216))
	s.Plan.Units.System = unit.Inches
	require.Equal(t, "1.0 board feet", volume(&s, 0.002359737216))
	require.InDelta(t, 0.002359737216, boardFoot, 1e-15)
}

func TestTheBenchTurnsThroughAllParts(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Make}, app.Show{What: app.Bench})
	seen := map[string]bool{}
	n := len(s.Build.Parts.Parts)
	for range n {
		nodes := makeJob(&s)
		seen[reads(atKey(t, nodes, "at-bench").Kids[0])] = true
		require.False(t, hasKey(nodes, "parts"), "one thing at a time")
		s, _ = click(t, s, nodes, "next")
	}
	require.Len(t, seen, n)
	require.Equal(t, 0, partInHand(&s), "after the last comes the first")
	s, _ = click(t, s, makeJob(&s), "before")
	require.Equal(t, n-1, partInHand(&s))
	s, _ = click(t, s, makeJob(&s), "all")
	require.False(t, s.On[app.Bench])
	require.Equal(t, n-1, partInHand(&s), "the part stays at hand")
}

func TestDrawingsHaveOneNameAndNoIDOfTheirOwn(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Make})
	pictures := 0
	eachNode(slices.Concat(makeTable(&s), makeJob(&s)), func(n Node) {
		if n.Tag != "svg" {
			return
		}
		if role, _ := deskAttr(n, "role"); role == "img" {
			pictures++
			name, _ := deskAttr(n, "aria-label")
			require.NotEmpty(t, name)
			_, xmlns := deskAttr(n, "xmlns")
			require.False(t, xmlns)
		}
	})
	require.Greater(t, pictures, 1)
}

// In the shop the boards stand where the wall stands elsewhere, so that the wide table has
// room; the panel keeps the figures. Where nothing is made, and at the bench, they do not.
func TestBoardsTakeTheWallsPlace(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Make})
	page := Page(&s)
	main, _ := nodeIn(page, "wall")
	side, _ := nodeIn(page, "panel")
	require.True(t, hasKey(main.Kids, "parts"))
	require.True(t, hasKey(main.Kids, "drawing"))
	require.False(t, hasKey(main.Kids, "picture"))
	require.True(t, hasKey(main.Kids, "tool-bench"), "the way to the bench stays")
	require.False(t, hasKey(main.Kids, "zoom-in"), "nothing is there to zoom")
	require.False(t, hasKey(side.Kids, "parts"))
	for _, key := range []string{"part-sizes", "cuts", "corners", "hardware", "sums"} {
		require.True(t, hasKey(side.Kids, key), key)
	}
	held, _ := nodeIn(page, "hand")
	_, measured := deskAttr(held, "data-hand")
	require.True(t, measured, "the browser knows the size of the picture by it")

	bench, _ := app.Step(s, app.Show{What: app.Bench})
	page = Page(&bench)
	require.False(t, hasKey([]Node{page}, "parts"))
	none := desk(t, "study", app.Go{Job: app.Make})
	none.Build.Parts.Parts = nil
	page = Page(&none)
	require.True(t, hasKey([]Node{page}, "picture"))
}

// Laid out by areas, a table is still one: every cell keeps its role, and where a cell
// stands as a pair it brings the title of its column.
func TestTablesLaidOutAreTables(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Make})
	of := map[string]string{"table": "table", "thead": "rowgroup", "tbody": "rowgroup", "tr": "row", "th": "columnheader", "td": "cell"}
	tables, pairs := 0, 0
	eachNode([]Node{Page(&s)}, func(n Node) {
		if names, _ := deskAttr(n, "class"); names != "scroll laid" {
			return
		}
		tables++
		var titles []string
		eachNode(n.Kids, func(k Node) {
			if want, ok := of[k.Tag]; ok {
				role, _ := deskAttr(k, "role")
				require.Equal(t, want, role, k.Tag)
			}
			if k.Tag == "th" {
				titles = append(titles, reads(k))
			}
			if title, ok := deskAttr(k, "data-title"); ok {
				pairs++
				require.Contains(t, titles, title)
			}
		})
	})
	require.GreaterOrEqual(t, tables, 3)
	require.Positive(t, pairs)
}
