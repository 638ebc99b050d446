package hold

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/strength"
	"ledgewright/engine/words"
)

// plumbing lists the constants that no verdict depends on: tolerances, bounds of searches,
// conversions, and what keeps a frame from being singular.
var plumbing = []string{
	"mostCarried", "mostLoad", "closeness", "edgesFound", "mostRounds", "blockRounds", "leastPivot", "noForce", "noWay", "rigid", "usesRoom", "rigidBore", "nearTip", "steep",
	"levelWithin", "leastSpan", "nearStation", "leastWood", "leastGive", "linkLength", "longGroove", "UsualLimit",
	"digits", "negligible", "inch", "pound", "psi", "pi5",
}

// constants lists the constants with a value that a package declares, kinds and whys left
// out.
func constants(t *testing.T, dir string) (out []string) {
	files, err := os.ReadDir(dir)
	require.NoError(t, err)
	for _, f := range files {
		if !strings.HasSuffix(f.Name(), ".go") || strings.HasSuffix(f.Name(), "_test.go") {
			continue
		}
		tree, err := parser.ParseFile(token.NewFileSet(), dir+"/"+f.Name(), nil, 0)
		require.NoError(t, err)
		for _, d := range tree.Decls {
			if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.CONST {
				out = append(out, named(g)...)
			}
		}
	}
	return out
}

func named(g *ast.GenDecl) (out []string) {
	for _, s := range g.Specs {
		v := s.(*ast.ValueSpec)
		for i, n := range v.Names {
			if l, ok := v.Values[i].(*ast.BasicLit); !ok || l.Kind != token.STRING {
				out = append(out, n.Name)
			}
		}
	}
	return out
}

// Every constant of the two packages is in the table of factors, or is named as plumbing.
func TestEveryConstantIsInTheTable(t *testing.T) {
	for _, dir := range []string{".", "../strength"} {
		table, err := os.ReadFile(dir + "/factor.go")
		require.NoError(t, err)
		names := constants(t, dir)
		require.Greater(t, len(names), 20)
		for _, n := range names {
			if !slices.Contains(plumbing, n) {
				require.Regexp(t, "[ (]"+n+"[,)]", string(table), "%s: %s", dir, n)
			}
		}
	}
}

// Every factor has a key of its own, a value, a source and a basis.
func TestFactorsAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range Factors() {
		require.False(t, seen[f.Key], f.Key)
		seen[f.Key] = true
		require.Positive(t, f.Value, f.Key)
		require.NotEmpty(t, f.Source, f.Key)
		require.True(t, words.Has("factor."+f.Key), f.Key)
		require.Contains(t, []strength.Basis{strength.Read, strength.Memory, strength.Assumption}, f.Basis)
		if strings.Contains(f.Source, "our assumption") {
			require.Equal(t, strength.Assumption, f.Basis, f.Key)
		}
	}
}
