//go:build browser

package main

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"ledgewright/engine"
	"ledgewright/testdata/visitor"
)

// These tests visit the whole page in Chromium, as it is released; they are built only
// with -tags browser, and fail where Chromium is missing.

// house is the site, built once for all tests.
var house *visitor.House

func TestMain(m *testing.M) {
	var err error
	if house, err = visitor.Open(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	code := m.Run()
	house.Close()
	os.Exit(code)
}

// arrive visits the start page on a tablet, for the first time.
func arrive(t *testing.T) *visitor.Tab {
	t.Helper()
	return house.Visit(t, visitor.Tablet, "").Go("")
}

// aWall makes a wall of two figures.
func aWall(t *testing.T) *visitor.Tab {
	t.Helper()
	b := arrive(t)
	b.Write("Wall width", "2960")
	b.Write("Height", "2460")
	b.Tap("button", "Draw this wall")
	b.See("heading", "Survey")
	return b
}

// aShelf is a wall with found studs every 400 from 150, and a shelf on it.
func aShelf(t *testing.T) *visitor.Tab {
	t.Helper()
	b := aWall(t)
	b.Pick("Made of", "board on studs")
	b.Pick("Lining", "plasterboard")
	b.Fill("Lining thickness, mm", "12.5")
	b.Pick("Stud material", "wood")
	b.Fill("Stud width, mm", "38")
	b.Fill("Stud depth, mm", "90")
	b.Fill("First stud at, mm", "150")
	b.Fill("Stud spacing, mm", "400")
	b.Pick("Studs by spacing are", "edges found")
	b.Job("Arrange")
	b.Tap("button", "Add a Shelf")
	b.Tap("button", "Place again: on the studs within reach")
	b.Keeps("a shelf on brackets", func(k visitor.Kept) bool { return len(k.Plan.Modules) == 1 && len(k.Plan.Modules[0].Brackets) > 0 })
	return b
}

// steps returns how many steps can be undone once the page has kept all it was told.
func steps(b *visitor.Tab) int {
	b.T.Helper()
	k, _ := b.Kept()
	return len(k.Steps)
}

// build returns the build file as the page hands it on.
func build(b *visitor.Tab) string {
	b.T.Helper()
	b.Job("Agree")
	return string(b.Saved(func() { b.Tap("button", "Save: build") }))
}

// savedPlan returns the plan file as the page hands it on.
func savedPlan(b *visitor.Tab) []byte {
	b.T.Helper()
	b.Job("Agree")
	return b.Saved(func() { b.Tap("button", "Save: plan") })
}

// derived returns the build of a plan that is kept, worked out beside the page.
func derived(t *testing.T, k visitor.Kept) string {
	t.Helper()
	text, err := engine.Encode(engine.Derive(k.Plan, nil))
	require.NoError(t, err)
	return string(text)
}

// Keys that are pressed.
var (
	enter, escape, tab, arrowRight = kb.Enter, kb.Escape, kb.Tab, kb.ArrowRight
)

// plainly makes the spaces of a text plain ones.
func plainly(s string) string {
	return strings.NewReplacer("\u00a0", " ", "\u202f", "").Replace(s)
}
