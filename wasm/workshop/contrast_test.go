//go:build !js

package main

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The tokens of the page's style sheet against each other, by the formula of WCAG 2.2
// (relative luminance, and contrast ratio (L₁ + 0.05)/(L₂ + 0.05)).

// views are the three lights of the page.
func views() []string { return []string{"day", "evening", "bench"} }

// tokens reads the colours of a view: the root's, and over them the view's own.
func tokens(t *testing.T, css, view string) map[string]string {
	t.Helper()
	out := map[string]string{}
	for _, selector := range []string{":root", "[data-view=" + view + "]"} {
		block := regexp.MustCompile(`(?m)^` + regexp.QuoteMeta(selector) + `\{([^}]*)\}`).FindStringSubmatch(css)
		if block == nil {
			require.Equal(t, "day", view, selector)
			continue
		}
		for _, m := range regexp.MustCompile(`--([a-z0-9-]+):(#[0-9a-f]{3,6}|var\(--[a-z0-9-]+\))`).FindAllStringSubmatch(block[1], -1) {
			out[m[1]] = m[2]
		}
	}
	for name, value := range out {
		if of, ok := strings.CutPrefix(value, "var(--"); ok {
			out[name] = out[strings.TrimSuffix(of, ")")]
		}
	}
	return out
}

// luminance is the relative luminance of a colour.
func luminance(t *testing.T, hex string) float64 {
	t.Helper()
	hex = strings.TrimPrefix(hex, "#")
	if len(hex) == 3 {
		hex = hex[:1] + hex[:1] + hex[1:2] + hex[1:2] + hex[2:] + hex[2:]
	}
	require.Len(t, hex, 6)
	l := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		n, err := strconv.ParseUint(hex[2*i:2*i+2], 16, 8)
		require.NoError(t, err)
		c := float64(n) / 255
		if c <= 0.04045 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		l += weight * c
	}
	return l
}

func contrast(t *testing.T, a, b string) float64 {
	x, y := luminance(t, a), luminance(t, b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// mix lays a colour over another with an opacity.
func mix(t *testing.T, over, under string, opacity float64) string {
	t.Helper()
	out := "#"
	for i := range 3 {
		a, err := strconv.ParseUint(over[1+2*i:3+2*i], 16, 8)
		require.NoError(t, err)
		b, err := strconv.ParseUint(under[1+2*i:3+2*i], 16, 8)
		require.NoError(t, err)
		out += fmt.Sprintf("%02x", int(math.Round(opacity*float64(a)+(1-opacity)*float64(b))))
	}
	return out
}

// pairs are the tokens that stand on each other: words 4.5, on the bench 7; lines,
// outlines and shapes 3.
var pairs = []struct {
	over, under string
	words       bool
}{
	{"ink", "paper", true}, {"ink", "paper-2", true}, {"ink", "leaf", true}, {"ink", "chalk-2", true}, {"ink", "plaster", true},
	{"ink-2", "paper", true}, {"ink-2", "paper-2", true}, {"ink-2", "leaf", true}, {"ink-2", "plaster", true}, {"ink-2", "chalk-2", true},
	{"chalk", "paper", true}, {"chalk", "leaf", true}, {"chalk", "plaster", true}, {"chalk", "chalk-2", true},
	{"on-chalk", "chalk", true},
	{"warn", "paper", true}, {"warn", "leaf", true}, {"warn", "plaster", true}, {"warn", "chalk-2", true}, {"paper", "warn", false},
	{"ok", "paper", true}, {"ok", "leaf", true}, {"ok", "chalk-2", true}, {"paper", "ok", false},
	{"ask", "paper", true}, {"ask", "leaf", true}, {"ask", "chalk-2", true},
	{"chalk", "floor", false}, {"chalk", "wood", false}, {"on-wood", "wood", false},
	{"line", "paper", false}, {"line", "leaf", false}, {"line", "plaster", false},
	{"wall-ink", "plaster", false}, {"edge", "plaster", false}, {"edge", "wood-2", false},
}

func TestContrastOfTokens(t *testing.T) {
	css := pageCSS(t)
	for _, view := range views() {
		colours := tokens(t, css, view)
		for _, p := range pairs {
			need := 3.0
			if p.words {
				need = 4.5
				if view == "bench" {
					need = 7
				}
			}
			require.NotEmpty(t, colours[p.over], p.over)
			require.NotEmpty(t, colours[p.under], p.under)
			if got := contrast(t, colours[p.over], colours[p.under]); got < need {
				t.Errorf("%s: %s on %s is %.2f, %.1f is needed", view, p.over, p.under, got, need)
			}
		}
	}
}

// The words of the stick stand on grain, darker lines on lighter wood: both are asked.
func TestContrastOfTheStick(t *testing.T) {
	css := pageCSS(t)
	opacity := 0.0
	_, err := fmt.Sscanf(found(t, css, `\.timber::before\{[^}]*opacity:(\.?[0-9.]+)`), "%f", &opacity)
	require.NoError(t, err)
	token := found(t, css, `(?m)^\.rod\{[^}]*[;{]color:var\(--([a-z-]+)\)`)
	for _, view := range views() {
		colours := tokens(t, css, view)
		words := colours[token]
		for _, wood := range []string{"wood", "wood-2"} {
			require.GreaterOrEqual(t, contrast(t, words, colours[wood]), 4.5, "%s on %s", view, wood)
			darkest := mix(t, colours["wood-line"], colours[wood], opacity)
			require.GreaterOrEqual(t, contrast(t, words, darkest), 4.5, "%s on the darkest grain of %s", view, wood)
		}
	}
}

// No colour of words or ground is used that is not among the pairs.
func TestEveryTokenIsAmongThePairs(t *testing.T) {
	css := pageCSS(t)
	over, under := map[string]bool{}, map[string]bool{}
	for _, p := range pairs {
		over[p.over], under[p.under] = true, true
	}
	colours := tokens(t, css, "day")
	for _, m := range regexp.MustCompile(`[;{]color:var\(--([a-z0-9-]+)\)`).FindAllStringSubmatch(css, -1) {
		require.True(t, over[m[1]] || colours[m[1]] == "", "words in %s", m[1])
	}
	for _, m := range regexp.MustCompile(`[;{]background(?:-color)?:var\(--([a-z0-9-]+)\)`).FindAllStringSubmatch(css, -1) {
		require.True(t, under[m[1]] || over[m[1]] || decoration[m[1]] || colours[m[1]] == "", "a ground of %s", m[1])
	}
}

// decoration are grounds on which nothing stands that has to be read.
var decoration = map[string]bool{"plaster-2": true, "wood-line": true, "line": true, "hair": true, "ink": true}

func found(t *testing.T, css, pattern string) string {
	t.Helper()
	m := regexp.MustCompile(pattern).FindStringSubmatch(css)
	require.NotNil(t, m, pattern)
	return m[1]
}

func pageCSS(t *testing.T) string {
	t.Helper()
	css := ""
	for _, name := range []string{"tokens.css", "workshop/page.css"} {
		sheet, err := os.ReadFile("../../site/" + name)
		require.NoError(t, err)
		css += string(sheet)
	}
	return css
}
