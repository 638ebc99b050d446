//go:build !js

package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"ledgewright": main})
}

// The scripts are the manual by example: what is typed, what comes out, with which
// exit code. Besides the usual commands of testscript they use those below.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "../../testdata/scripts",
		Cmds: map[string]func(ts *testscript.TestScript, neg bool, args []string){
			"exits": exits, "member": member, "wellformed": wellformed, "rows": rows, "make": makeFile,
			"openlink": openLink, "cutlink": cutLink,
		},
	})
}

// exits CODE COMMAND...: runs a command, which must end with this code.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE COMMAND...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var e *exec.ExitError
		if !errors.As(err, &e) {
			ts.Fatalf("%s: %v", args[1], err)
		}
		got = e.ExitCode()
	}
	if got != want {
		ts.Fatalf("%s ended with %d, want %d", strings.Join(args[1:], " "), got, want)
	}
}

// member FILE PATH WANT: the JSON member at a path such as modules.0.id must be WANT,
// as it is printed; "len" in place of a name is the number of elements.
func member(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) != 3 {
		ts.Fatalf("usage: member FILE PATH WANT")
	}
	d := json.NewDecoder(strings.NewReader(ts.ReadFile(args[0])))
	d.UseNumber()
	var v any
	ts.Check(d.Decode(&v))
	for step := range strings.SplitSeq(args[1], ".") {
		v = child(ts, v, step)
	}
	got, ok := v.(string)
	if !ok {
		text, err := json.Marshal(v)
		ts.Check(err)
		got = string(text)
	}
	if (got == args[2]) == neg {
		ts.Fatalf("%s: %s is %s", args[0], args[1], got)
	}
}

func child(ts *testscript.TestScript, v any, step string) any {
	switch v := v.(type) {
	case map[string]any:
		if step == "len" {
			return len(v)
		}
		return v[step]
	case []any:
		if step == "len" {
			return len(v)
		}
		i, err := strconv.Atoi(step)
		ts.Check(err)
		if i >= len(v) {
			ts.Fatalf("there is no element %d among %d", i, len(v))
		}
		return v[i]
	}
	ts.Fatalf("nothing has a member %q", step)
	return nil
}

// wellformed FILE: the file must be well-formed XML with an svg element at its root.
func wellformed(ts *testscript.TestScript, neg bool, args []string) {
	d := xml.NewDecoder(strings.NewReader(ts.ReadFile(args[0])))
	root := ""
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		ts.Check(err)
		if e, ok := token.(xml.StartElement); ok && root == "" {
			root = e.Name.Local
		}
	}
	if root != "svg" || neg {
		ts.Fatalf("the root is %q", root)
	}
}

// rows FILE N COLUMNS: the file must be RFC 4180 CSV with CR LF, N rows after the
// header, and so many columns in each.
func rows(ts *testscript.TestScript, neg bool, args []string) {
	text := ts.ReadFile(args[0])
	if strings.Count(text, "\r\n") != strings.Count(text, "\n") || !strings.HasSuffix(text, "\r\n") || neg {
		ts.Fatalf("lines do not all end in CR LF")
	}
	all, err := csv.NewReader(strings.NewReader(text)).ReadAll() // refuses rows of another width
	ts.Check(err)
	if strconv.Itoa(len(all)-1) != args[1] || strconv.Itoa(len(all[0])) != args[2] {
		ts.Fatalf("%d rows of %d columns", len(all)-1, len(all[0]))
	}
}

// make KIND FILE: writes a file that is too much for a script.
func makeFile(ts *testscript.TestScript, neg bool, args []string) {
	var b []byte
	switch args[0] {
	case "deep": // 100 000 arrays in each other
		b = append(bytes.Repeat([]byte("["), 100_000), bytes.Repeat([]byte("]"), 100_000)...)
	case "long": // nine MiB of blanks
		b = bytes.Repeat([]byte(" "), 9<<20)
	case "zeros":
		b = make([]byte, 1000)
	case "text": // a string of a million letters
		b = []byte(`{"schema":"` + strings.Repeat("a", 1_000_000) + `"}`)
	case "boards": // more boards than a plan may have, a billion in intent
		b = append([]byte(`{"schema":"ledgewright/plan/1","modules":[{"boards":[`), bytes.Repeat([]byte("{},"), 400_000)...)
		b = append(b, "{}]}]}"...)
	default:
		ts.Fatalf("unknown kind %q", args[0])
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), b, 0o600))
}

// openlink FILE: opens the link that stands in a file.
func openLink(ts *testscript.TestScript, neg bool, args []string) {
	ts.Check(ts.Exec("ledgewright", "link", "--open", strings.TrimSpace(ts.ReadFile(args[0]))))
}

// cutlink FILE N: every link that has lost up to N characters at its end, or has one
// character changed, must be refused.
func cutLink(ts *testscript.TestScript, neg bool, args []string) {
	link := strings.TrimSpace(ts.ReadFile(args[0]))
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	for i := 1; i <= n; i++ {
		exits(ts, false, []string{"2", "ledgewright", "link", "--open", link[:len(link)-i]})
	}
	code := strings.Index(link, "#") + 1
	for i := code; i < len(link); i += 1 + (len(link)-code)/n {
		other := "A"
		if link[i] == 'A' {
			other = "B"
		}
		exits(ts, false, []string{"2", "ledgewright", "link", "--open", link[:i] + other + link[i+1:]})
	}
	exits(ts, false, []string{"2", "ledgewright", "link", "--open", link[:len(link)-1]})
}
