//go:build !js

// Stage is the pane of glass of the maker's page: it paints drawings with the graphics
// processor. It runs in a browser only.
package main

func main() {}
