package drawing_test

import (
	"encoding/binary"
	"math"
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/assets"
	"ledgewright/engine"
	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
	"ledgewright/engine/view"
	"ledgewright/testdata/jobs"
)

// pack and unpack are the wire with fresh storage.
func pack(d drawing.Drawing) []byte { return new(drawing.Packer).Append(nil, &d) }

func unpack(b []byte) (drawing.Drawing, error) { return new(drawing.Unpacker).Read(b) }

// walls draws all walls of a plan.
func walls(p plan.Plan, evening bool) (out []drawing.Drawing) {
	b := engine.Derive(p, nil)
	for _, r := range b.Arrangements {
		w, _ := p.Wall(r.Wall)
		out = append(out, view.Wall(w, r, b.Modules, view.Options{Style: b.Style(), Shallow: true, Evening: evening, ShowStuds: true, ShowBands: true, ShowSizes: true, ShowMarks: true}))
	}
	return out
}

func TestEveryExampleComesBackFromTheWire(t *testing.T) {
	u := new(drawing.Unpacker) // one for all: nothing of an earlier drawing may show in a later one
	k := new(drawing.Packer)
	n := 0
	for _, name := range assets.Names() {
		p, err := assets.Plan(name)
		require.NoError(t, err)
		for _, evening := range []bool{false, true} {
			for _, d := range walls(p, evening) {
				got, err := u.Read(k.Append(nil, &d))
				require.NoError(t, err)
				require.Equal(t, d, got, name)
				n++
			}
		}
	}
	require.Greater(t, n, 20)
}

// A member that is added to an item and not to the wire would be lost in one of the two
// pictures only. So every member is set, by reflection, and must come back.
func TestEveryMemberComesBackFromTheWire(t *testing.T) {
	line := drawing.Line{}
	fill(reflect.ValueOf(&line).Elem())
	for kind := drawing.PathKind; kind <= drawing.GlowKind; kind++ {
		it := drawing.Item{ID: "id", Group: "group", Layer: "layer", Tone: "tone", Fade: 0.5, Soft: 2, Kind: kind}
		if kind == drawing.PathKind || kind == drawing.WoodKind {
			it.Line, it.Path = line, []drawing.Step{drawing.Move(1, 2), drawing.LineTo(3, 4), drawing.Curve(5, 6, 7, 8, 9, 10), drawing.Close()}
		}
		switch kind {
		case drawing.WoodKind:
			fill(reflect.ValueOf(&it.Wood).Elem())
		case drawing.TextKind:
			fill(reflect.ValueOf(&it.Text).Elem())
		case drawing.GlowKind:
			fill(reflect.ValueOf(&it.Glow).Elem())
		}
		d := drawing.Drawing{}
		fill(reflect.ValueOf(&d).Elem())
		d.Items = []drawing.Item{it, it}
		got, err := unpack(pack(d))
		require.NoError(t, err)
		require.Equal(t, d, got)
	}
	require.Equal(t, 12, reflect.TypeFor[drawing.Item]().NumField(), "a new part of an item: give it to the wire and to this test")
}

// fill sets every member of a value to something that is not nothing.
func fill(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			fill(v.Field(i))
		}
	case reflect.Slice:
		if v.Type().Elem().Kind() == reflect.Float64 {
			v.Set(reflect.ValueOf([]float64{1.5, 2.5}))
		}
	case reflect.String:
		v.SetString("näme")
	case reflect.Float64:
		v.SetFloat(math.Pi)
	case reflect.Uint64:
		v.SetUint(1<<63 + 5)
	case reflect.Uint8:
		v.SetUint(1)
	case reflect.Bool:
		v.SetBool(true)
	}
}

// Bare, a drawing is what it is without its ids and texts.
func TestABareDrawing(t *testing.T) {
	for _, d := range walls(jobs.S(), true) {
		got, err := unpack((&drawing.Packer{Bare: true}).Append(nil, &d))
		require.NoError(t, err)
		var want []drawing.Item
		for _, it := range d.Items {
			if it.ID = ""; it.Kind != drawing.TextKind {
				want = append(want, it)
			}
		}
		d.Items = want
		require.Equal(t, d, got)
	}
}

// Sums are the same for the same item, wherever it stands, and others for others, also
// where only a name is another.
func TestSumsTellItemsApart(t *testing.T) {
	sums := func(items ...drawing.Item) []uint64 {
		u := new(drawing.Unpacker)
		_, err := u.Read(pack(drawing.Drawing{Items: items}))
		require.NoError(t, err)
		require.Len(t, u.Sums(), len(items))
		return append([]uint64(nil), u.Sums()...)
	}
	a := everything().Items
	first, turned := sums(a[0], a[4], a[0]), sums(a[0], a[0], a[4])
	require.Equal(t, first[1], turned[2])
	require.NotEqual(t, first[0], first[1])
	require.Equal(t, first[2], turned[1], "announced by an item before it, as the first is not")
	moved, other := a[4], a[4]
	moved.Path = append([]drawing.Step(nil), moved.Path...)
	moved.Path[2].P.X += 1e-9
	require.NotEqual(t, sums(a[4]), sums(moved))
	other.Line.Tone = "warn"
	require.NotEqual(t, sums(a[4]), sums(other))
	seen := map[uint64]drawing.Item{}
	d := walls(jobs.M(1), true)[0]
	for i, s := range sums(d.Items...) {
		if before, ok := seen[s]; ok {
			require.Equal(t, before, d.Items[i])
		}
		seen[s] = d.Items[i]
	}
	require.Greater(t, len(seen), 1000)
}

func TestWireNeedsNoMemoryOnceWarm(t *testing.T) {
	d := walls(jobs.M(1), true)[0]
	k, u := new(drawing.Packer), new(drawing.Unpacker)
	buf := k.Append(nil, &d)
	_, err := u.Read(buf)
	require.NoError(t, err)
	require.Zero(t, testing.AllocsPerRun(20, func() { buf = k.Append(buf[:0], &d) }), "packing")
	require.Zero(t, testing.AllocsPerRun(20, func() { _, _ = u.Read(buf) }), "unpacking")
}

func TestWhatIsNotFiniteIsNought(t *testing.T) {
	d := everything()
	d.Box.MinX, d.Pixel = math.NaN(), math.Inf(1)
	d.Items[0].Path[0].P.X = math.Inf(-1)
	got, err := unpack(pack(d))
	require.NoError(t, err)
	require.Zero(t, got.Box.MinX)
	require.Zero(t, got.Pixel)
	require.Zero(t, got.Items[0].Path[0].P.X)
}

func TestBrokenWireIsRefused(t *testing.T) {
	whole := pack(everything())
	for n := range whole {
		_, err := unpack(whole[:n])
		require.Error(t, err, "cut to %d bytes", n)
		short := append([]byte(nil), whole[:n]...)
		if n >= 8 { // with a head that agrees
			binary.LittleEndian.PutUint32(short[4:], uint32(n-8))
			_, err = unpack(short)
			require.Error(t, err, "cut to %d bytes, and told so", n)
		}
	}
	for name, c := range map[string]struct {
		change func(b []byte) []byte
		why    string
	}{
		"another version": {func(b []byte) []byte { b[3]++; return b }, "another version"},
		"another file":    {func(b []byte) []byte { b[0] = 'X'; return b }, "not a drawing"},
		"one byte more":   {func(b []byte) []byte { return append(b, 0) }, "cut off, or longer"},
	} {
		_, err := unpack(c.change(append([]byte(nil), whole...)))
		require.ErrorContains(t, err, c.why, name)
		var at *drawing.WireError
		require.ErrorAs(t, err, &at)
	}
}

// A count in the head must not make room for what the bytes cannot hold.
func TestWireDoesNotBelieveItsCounts(t *testing.T) {
	b := pack(drawing.Drawing{})
	body := append([]byte(nil), b[:len(b)-2]...)
	body = binary.AppendUvarint(body, 199_999)
	body = binary.AppendUvarint(body, 999_999)
	binary.LittleEndian.PutUint32(body[4:], uint32(len(body)-8))
	require.Less(t, testing.AllocsPerRun(1, func() {
		_, err := unpack(body)
		require.ErrorContains(t, err, "announces more")
	}), 200.0)
}

// What is accepted is written back byte for byte: one drawing, one encoding.
func FuzzWire(f *testing.F) {
	f.Add(pack(everything()))
	f.Add(pack(drawing.Drawing{}))
	f.Add(pack(walls(jobs.One(), true)[0]))
	f.Add([]byte("LWD\x01"))
	f.Fuzz(func(t *testing.T, b []byte) {
		d, err := unpack(b)
		if err != nil {
			return
		}
		require.Equal(t, b, pack(d))
	})
}

func TestPathsComeBackFromTheWire(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-1e6, 1e6)
		d := drawing.Drawing{Title: rapid.String().Draw(t, "title")}
		for range rapid.IntRange(0, 5).Draw(t, "items") {
			it := drawing.Item{Kind: drawing.PathKind, Tone: drawing.Tone(rapid.SampledFrom([]string{"", "ink", "wall"}).Draw(t, "tone"))}
			for range rapid.IntRange(0, 6).Draw(t, "steps") {
				it.Path = append(it.Path, drawing.LineTo(x.Draw(t, "x")+0, x.Draw(t, "y")+0))
			}
			d.Items = append(d.Items, it)
		}
		got, err := unpack(pack(d))
		require.NoError(t, err)
		require.Equal(t, d, got)
	})
}

func BenchmarkWire(b *testing.B) {
	d := walls(jobs.M(1), true)[0]
	k, u := new(drawing.Packer), new(drawing.Unpacker)
	var buf, copied []byte
	b.Run("pack", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			buf = k.Append(buf[:0], &d)
		}
		b.ReportMetric(float64(len(buf)), "bytes")
	})
	b.Run("copy", func(b *testing.B) {
		copied = make([]byte, len(buf))
		for b.Loop() {
			copy(copied, buf)
		}
	})
	b.Run("unpack", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := u.Read(copied); err != nil {
				b.Fatal(err)
			}
		}
		b.ReportMetric(float64(len(d.Items)), "items")
	})
}
