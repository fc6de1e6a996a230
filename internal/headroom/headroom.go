// Package headroom gives the stack that the program starts on its room at once.
//
// A Go stack begins at a few kilobytes and is copied to twice the size whenever
// it runs out, each time by way of tables for every function that is on it. The
// initialisation of the libraries and the reading of the command line run it
// out three or four times, with ever more functions on it; those tables lie all
// over the program and have to be fetched into memory. Grown while next to
// nothing is on it, it is copied once. docs/performance.md has what that saves.
//
// The package imports nothing, so that it is initialised before those that do.
package headroom

// room is more than half of the 64 KiB that a run has been seen to want.
const room = 33 << 10

func init() { reserve(0) }

// reserve makes the stack large enough for room and, when n is 0, touches none
// of it.
//
//go:noinline
func reserve(n int) byte {
	if n == 0 {
		return 0
	}
	var space [room]byte
	for i := range space {
		space[i] = byte(i * n)
	}
	return space[n%room]
}
