package crib

import (
	"runtime"
	"sync"
)

// leastPart is how many drills are worth a goroutine of their own.
const leastPart = 256

// inParts does something with the numbers from 0 to n, in as many parts as there
// are processors to work on them.
func inParts(n int, do func(from, to int)) {
	parts := max(1, min(runtime.GOMAXPROCS(0), n/leastPart))
	var wg sync.WaitGroup
	for p := range parts - 1 {
		wg.Add(1)
		go func() {
			defer wg.Done()
			do(p*n/parts, (p+1)*n/parts)
		}()
	}
	do((parts-1)*n/parts, n) // the last one here: a small crib starts no goroutine
	wg.Wait()
}
