//go:build !js

// Workshop is the program of the maker's page; it runs in a browser only.
package main

func main() {}
