package link

import (
	"bytes"
	"compress/flate"
	"io"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The standard library's compress/flate is what deflate is held to here, both ways.

func standardDeflated(t require.TestingT, raw []byte, level int) []byte {
	var out bytes.Buffer
	w, err := flate.NewWriterDict(&out, level, []byte(dictionary))
	require.NoError(t, err)
	_, err = w.Write(raw)
	require.NoError(t, err)
	require.NoError(t, w.Close())
	return out.Bytes()
}

func standardInflated(payload []byte) ([]byte, error) {
	src := bytes.NewReader(payload)
	raw, err := io.ReadAll(io.LimitReader(flate.NewReaderDict(src, []byte(dictionary)), mostBytes+1))
	if err == nil && (src.Len() > 0 || len(raw) > mostBytes) {
		err = io.ErrUnexpectedEOF
	}
	return raw, err
}

// repeating draws bytes that repeat themselves at all distances.
func repeating(t *rapid.T) []byte {
	var out []byte
	for _, size := range rapid.SliceOfN(rapid.IntRange(0, 700), 0, 30).Draw(t, "sizes") {
		r := rand.New(rand.NewPCG(uint64(size), 1))
		switch from := r.IntN(len(out) + 1); {
		case size%3 == 0 && from < len(out):
			out = append(out, out[from:min(from+size, len(out))]...)
		case size%3 == 1:
			out = append(out, bytes.Repeat([]byte{byte(size)}, size)...)
		default:
			for range size {
				out = append(out, byte(r.IntN(1+size%256)))
			}
		}
	}
	return out
}

func TestDeflateAndTheStandardLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		raw := repeating(t)
		back, err := standardInflated(deflated(raw))
		require.NoError(t, err)
		require.True(t, bytes.Equal(raw, back), "what was deflated here")
		for _, level := range []int{flate.NoCompression, flate.BestSpeed, flate.BestCompression, flate.HuffmanOnly} {
			back, err = inflated(standardDeflated(t, raw, level))
			require.NoError(t, err)
			require.True(t, bytes.Equal(raw, back), "what was deflated at level %d", level)
		}
	})
}

// TestDeflateIsAsShort: of texts as links carry them, no more than a hundredth above the
// standard library's best.
func TestDeflateIsAsShort(t *testing.T) {
	for name, raw := range map[string]string{
		"nothing": "", "a letter": "a", "the dictionary": dictionary, "numbers": strings.Repeat("0123456789", 50),
		"a kind": strings.Repeat(`{"board":1,"kind":"rod-structure"},{"board":2,"kind":"plate-back"}`, 20),
	} {
		require.LessOrEqual(t, len(deflated([]byte(raw))), len(standardDeflated(t, []byte(raw), flate.BestCompression))*101/100+1, name)
	}
}

// TestLongCodes: bytes as frequent as Fibonacci's numbers want codes of more than 15 bits.
func TestLongCodes(t *testing.T) {
	var raw []byte
	r := rand.New(rand.NewPCG(1, 2))
	for a, b, i := 1, 1, 0; i < 22; a, b, i = b, a+b, i+1 {
		for range a {
			raw = append(raw, byte(i))
		}
	}
	r.Shuffle(len(raw), func(i, k int) { raw[i], raw[k] = raw[k], raw[i] })
	back, err := standardInflated(deflated(raw))
	require.NoError(t, err)
	require.True(t, bytes.Equal(raw, back))
}

// FuzzInflate takes the same payloads as the standard library, and reads the same in them.
func FuzzInflate(f *testing.F) {
	for _, seed := range []string{"", "a", "mitre", strings.Repeat("oak ash elm ", 40), dictionary} {
		for _, level := range []int{flate.NoCompression, flate.BestCompression, flate.HuffmanOnly} {
			f.Add(standardDeflated(f, []byte(seed), level))
		}
		f.Add(deflated([]byte(seed)))
	}
	f.Add([]byte{7, 0})
	f.Fuzz(func(t *testing.T, payload []byte) {
		want, wrong := standardInflated(payload)
		got, err := inflated(payload)
		require.Equal(t, wrong == nil, err == nil, "%v, %v", wrong, err)
		if err == nil {
			require.True(t, bytes.Equal(want, got))
		}
	})
}
