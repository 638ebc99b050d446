package slim_test

import (
	"bytes"
	"encoding/binary"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/site/slim"
)

// deep is the program of testdata/deep.
func deep(t testing.TB) []byte {
	file := filepath.Join(t.TempDir(), "deep.wasm")
	c := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", file, "./testdata/deep")
	c.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	out, err := c.CombinedOutput()
	require.NoError(t, err, "%s", out)
	wasm, err := os.ReadFile(file)
	require.NoError(t, err)
	return wasm
}

func goEnv(t testing.TB, name string) string {
	out, err := exec.Command("go", "env", name).Output()
	require.NoError(t, err)
	return strings.TrimSpace(string(out))
}

// run runs a program under Node, with the Go distribution's own script, collecting
// garbage as often as it can.
func run(t testing.TB, wasm []byte) (said, trace string) {
	file := filepath.Join(t.TempDir(), "run.wasm")
	require.NoError(t, os.WriteFile(file, wasm, 0o700))
	c := exec.Command(filepath.Join(goEnv(t, "GOROOT"), "lib/wasm/go_js_wasm_exec"), file)
	c.Env = []string{"PATH=" + os.Getenv("PATH"), "HOME=" + os.Getenv("HOME"), "GOGC=10"}
	var out, fault bytes.Buffer
	c.Stdout, c.Stderr = &out, &fault
	require.Error(t, c.Run(), "it fails in the end")
	return out.String(), fault.String()
}

func TestProgramDoesTheSame(t *testing.T) {
	wasm := deep(t)
	small, err := slim.Program(wasm, goEnv(t, "GOVERSION"))
	require.NoError(t, err)
	said, trace := run(t, wasm)
	saidSmall, traceSmall := run(t, small)
	require.Contains(t, said, "a wall went on after: assignment to entry in nil map")
	require.Contains(t, said, "not here: <nil>\nthen here: a broken string")
	require.Equal(t, said, saidSmall)
	require.Contains(t, trace, "testdata/deep/main.go:")
	require.Contains(t, traceSmall, "nil pointer dereference")
	require.Contains(t, traceSmall, "main.main()", "functions keep their names")
	require.NotContains(t, traceSmall, "main.go")
}

func TestUnknownVersion(t *testing.T) {
	wasm := deep(t)
	small, err := slim.Program(wasm, "go1.99")
	require.ErrorIs(t, err, slim.ErrUnknown)
	said, trace := run(t, small)
	saidBefore, traceBefore := run(t, wasm)
	require.Equal(t, saidBefore, said)
	require.Equal(t, traceBefore, trace, "the tables are as they were, lines and all")
}

// TestBrokenTables breaks a word of the tables' head or of a function at a time: either
// the tables are left alone, or what was broken was not read.
func TestBrokenTables(t *testing.T) {
	wasm := deep(t)
	at := bytes.Index(wasm, []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8})
	require.Positive(t, at)
	require.Positive(t, binary.LittleEndian.Uint16(wasm[at+8:]), "how many functions")
	broken := bytes.Clone(wasm)
	broken[at+8]++
	_, err := slim.Program(broken, goEnv(t, "GOVERSION"))
	require.ErrorIs(t, err, slim.ErrUnknown, "another number of functions")
	broken = bytes.Clone(wasm)
	broken[at] = 0xf0
	_, err = slim.Program(broken, goEnv(t, "GOVERSION"))
	require.ErrorIs(t, err, slim.ErrUnknown, "another version of the tables")
}

func TestNotAProgram(t *testing.T) {
	for name, wasm := range map[string]string{
		"nothing": "", "text": "<!doctype html>", "another version": "\x00asm\x02\x00\x00\x00",
		"no data": "\x00asm\x01\x00\x00\x00", "cut off": "\x00asm\x01\x00\x00\x00\x0b\x05\x01",
		"a segment of no place": "\x00asm\x01\x00\x00\x00\x0b\x03\x01\x01\x00",
		"far away":              "\x00asm\x01\x00\x00\x00\x0b\x0a\x01\x00\x41\xff\xff\xff\xff\x07\x0b\x01",
	} {
		out, err := slim.Program([]byte(wasm), "go1.26")
		require.Error(t, err, name)
		require.Nil(t, out, name)
	}
}

// FuzzProgram gives it anything: it may refuse, and what it returns it can read again.
func FuzzProgram(f *testing.F) {
	f.Add([]byte("\x00asm\x01\x00\x00\x00\x0b\x08\x01\x00\x41\x80\x08\x0b\x01\xff"))
	f.Add([]byte("\x00asm\x01\x00\x00\x00\x00\x02\x01a\x0b\x0e\x02\x00\x41\x01\x0b\x01a\x00\x41\x0a\x0b\x01b"))
	f.Add([]byte("\x00asm\x01\x00\x00\x00"))
	f.Fuzz(func(t *testing.T, wasm []byte) {
		small, _ := slim.Program(wasm, "go1.26")
		if small == nil {
			return
		}
		again, err := slim.Program(small, "go1.26")
		require.ErrorIs(t, err, slim.ErrUnknown)
		require.Equal(t, small, again)
	})
}
