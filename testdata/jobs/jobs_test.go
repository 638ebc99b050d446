package jobs

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

func all() map[string]plan.Plan {
	return map[string]plan.Plan{"One": One(), "S": S(), "M1": M(1), "M3": M(3), "L": L()}
}

func requireInOrder(t *testing.T, name string, p plan.Plan) {
	t.Helper()
	for _, f := range plan.Check(p) {
		require.Less(t, f.Kind.Severity, finding.Unknown, "%s: %s at %s: %v", name, f.Kind.Key, f.Place.Path, f.Args)
	}
	text, err := plan.Encode(p)
	require.NoError(t, err)
	back, err := plan.Decode(text)
	require.NoError(t, err, name)
	require.Equal(t, p, back, name)
}

func TestJobsAreInOrderAndTheSameEveryTime(t *testing.T) {
	again := all()
	for name, p := range all() {
		requireInOrder(t, name, p)
		require.Equal(t, again[name], p)
	}
	require.Len(t, One().Modules, 1)
	require.Len(t, S().Modules, 12)
	require.Len(t, M(3).Modules, 48)
	require.Len(t, M(3).Arrangements, 3)
	require.Len(t, L().Modules, 200)
	require.Len(t, L().Walls, 3)
	require.Equal(t, M(1).Modules, M(3).Modules, "the arrangements are of the same modules")
}

// Every bracket of every job meets a stud of its wall in every arrangement.
func TestRodsOfJobsMeetStuds(t *testing.T) {
	for name, p := range all() {
		for _, a := range p.Arrangements {
			w, ok := p.Wall(a.Wall)
			require.True(t, ok)
			for _, o := range a.Poses {
				m, ok := p.Module(o.Module)
				require.True(t, ok)
				for _, b := range m.Brackets {
					x := at(lengthened(m), o, b.Board, b.At).x
					pitch, first := w.Studs.Spacing.Value.MM(), w.Studs.First.Value.MM()
					n := float64(int((x-first)/pitch + 0.5))
					require.InDelta(t, first+n*pitch, x, 0.01, "%s, %s, %s, %s", name, a.ID, m.ID, b.ID)
				}
			}
		}
	}
}

type xy struct{ x, y float64 }

// at returns the place on the wall of the point u on face A of a board.
func at(m plan.Module, o plan.Pose, board int, u unit.Length) xy {
	l := lay(m)
	minX, minY, maxX, maxY := l.box(0)
	x, y := l.boards[board-1].point(u.MM(), 0)
	sin, cos := o.Turn.SinCos()
	x, y = x-(minX+maxX)/2, y-(minY+maxY)/2
	return xy{o.X.MM() + x*cos - y*sin, o.Y.MM() + x*sin + y*cos}
}

// Modules stay 20 mm apart from each other and inside their wall.
func TestModulesOfJobsDoNotOverlap(t *testing.T) {
	type rect struct{ x0, y0, x1, y1 float64 }
	for name, p := range all() {
		for _, a := range p.Arrangements {
			w, _ := p.Wall(a.Wall)
			var all []rect
			for _, o := range a.Poses {
				m, _ := p.Module(o.Module)
				l := lay(lengthened(m))
				minX, minY, maxX, maxY := l.box(0)
				sin, cos := o.Turn.SinCos()
				cx, cy := (minX+maxX)/2, (minY+maxY)/2
				x0, y0, x1, y1 := l.box(o.Turn)
				dx, dy := o.X.MM()-cx*cos+cy*sin, o.Y.MM()-cx*sin-cy*cos
				r := rect{x0 + dx, y0 + dy, x1 + dx, y1 + dy}
				require.True(t, r.x0 > 0 && r.x1 < w.Width.MM()-1000 && r.y0 > 400 && r.y1 < 2650, "%s %s %s: %v", name, a.ID, m.ID, r)
				for _, q := range all {
					require.True(t, r.x0 >= q.x1+19.99 || q.x0 >= r.x1+19.99 || r.y0 >= q.y1+19.99 || q.y0 >= r.y1+19.99, "%s %s %s", name, a.ID, m.ID)
				}
				all = append(all, r)
			}
		}
	}
}
