// Deep does what needs the tables of functions: a stack that grows and is collected,
// panics that are recovered through methods, wrappers and defers, channels, maps and
// reflection. In the end it fails, for its trace to be read.
package main

import (
	"fmt"
	"runtime"
	"slices"
	"strings"
)

type shelf struct {
	name  string
	books []string
}

// Rescue is deferred through an interface and a struct that embeds shelf: in a wrapper.
func (s *shelf) Rescue() {
	if r := recover(); r != nil {
		fmt.Println(s.name, "went on after:", r)
	}
}

type wall struct{ *shelf }

func try(f func()) {
	var r interface{ Rescue() } = wall{&shelf{name: "a wall"}}
	defer r.Rescue()
	f()
}

// climb holds pointers in every frame, and lets them be collected at the top.
func climb(n int) int {
	held := &shelf{books: strings.Fields(strings.Repeat("book ", n%7))}
	also := []*shelf{held, {name: "empty"}}
	if n == 0 {
		runtime.GC()
		return 0
	}
	sum := climb(n - 1)
	if n%500 == 0 {
		runtime.GC()
	}
	return sum + len(held.books) + len(also[1].books)
}

// notHere recovers one call too deep, which recovers nothing.
func notHere() {
	defer func() { fmt.Println("then here:", recover()) }()
	defer func() {
		func() { fmt.Println("not here:", recover()) }()
	}()
	panic("a broken string")
}

// busy lets many stacks grow at once.
func busy() (sum int) {
	out := make(chan int)
	for i := range 20 {
		go func() { out <- climb(300 * i) }()
	}
	for range 20 {
		sum += <-out
	}
	return sum
}

// lost fails for good.
func lost(s *shelf) int { return len(s.books) }

func main() {
	fmt.Println(climb(20_000), busy())
	try(func() { climb(2_000); var m map[string]int; m["a"] = 1 })
	try(func() { var none []int; none[climb(7)%3]++ })
	notHere()
	for i := range 3 {
		defer func() { fmt.Println("in the end", i) }()
	}
	words := strings.Fields("oak ash elm beech")
	slices.SortFunc(words, strings.Compare)
	fmt.Printf("%v %+v %T\n", words, shelf{"b", words[:1]}, map[string]*shelf{})
	lost(nil)
}
