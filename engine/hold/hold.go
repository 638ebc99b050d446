// Package hold reckons what a module's boards, corners, rods and screws have to bear as it
// hangs on a wall.
//
// A module is a frame of straight beams (package beam) along the centre lines of its boards,
// each with the section that its cuts leave, rigid at its corners. A rod is a beam of steel,
// held at the wall by its plate's screws or in the structure, and in its bore by wood that
// gives like a bed of Winkler's tied to the board. Where a lock ties the module to its rods
// its back edges may lean on the wall; where nothing ties it they are left out, since what
// pushes there would only push the module off, and friction is never counted.
//
// What a kilogram on each shelf and a newton at each place does is found once for a module
// as it hangs ([Respond]); whatever stands on it is then a sum of these ([Response.Together]),
// with the back edges leaning where they agree to. Two rods in one board carry what statics
// says, whatever is guessed of stiffness; what depends on a guess is named in its constant.
//
// Left out: the give of a board across its grain, 3 to 6 % of droop by orthotropic plates of
// common sizes; that rods held all round, as in resin, bend the wood across its grain with
// them, which is up to twice what the rule for that has where they reach far into deep boards
// (testdata/plates); large displacements; how loads move with time.
package hold
