// Package batch answers a stream of lines: many at a time, on every core, the
// answers in the order of the lines, in bounded memory, and without waiting for
// more when no more is there to be read. It knows nothing of what a line says.
package batch

import (
	"context"
	"io"
	"sync"
)

// Line is one line of the input, its end taken off. Text may be changed and is
// valid until the Worker returns.
type Line struct {
	Number int // from 1
	Text   []byte
	// Cut says that the line was longer than Longest: Text is its beginning.
	Cut bool
}

// Longest bounds a line, in bytes: a file without line ends must not fill the
// memory.
const Longest = 1 << 20

// Worker answers lines, one after the other. Each goroutine of a run has its
// own.
type Worker interface {
	// Answer appends the answer to a line to out, its line end included. With an
	// error it appends what goes in the answer's place.
	Answer(out []byte, line Line) ([]byte, error)
}

// Tally counts what a run has written.
type Tally struct {
	Lines int // that were answered, blank ones not among them
	Bad   int // of these, with an error
	Last  int // the number of the last one
}

// Options change how a run goes.
type Options struct {
	// Strict ends the run at the first line whose answer is an error. Everything
	// before it is written, and nothing for the line itself.
	Strict bool
	// Written is called now and then with what was written so far; may be nil.
	Written func(Tally)
}

// Run answers every line of in that is not blank. It returns what was written
// and why it ended early: an *InputError, an *OutputError, the error of a bad
// line where o is strict, or the cause of ctx's end. Whatever the reason, out
// ends with a whole line. An input that blocks is not waited for once ctx ends;
// the goroutine that reads it ends with its next byte.
func Run(ctx context.Context, in *Lines, out io.Writer, workers []Worker, o Options) (Tally, error) {
	ctx, cancel := context.WithCancel(ctx)
	var running sync.WaitGroup
	defer running.Wait()
	defer cancel()
	q := newQueues(2 * len(workers))
	running.Add(len(workers))
	for _, w := range workers {
		go func() {
			defer running.Done()
			q.answer(ctx, w, o.Strict)
		}()
	}
	failed := make(chan error, 1)
	go func() { failed <- q.read(ctx, in) }()
	tally, err := q.write(ctx, out, o)
	if err != nil {
		return tally, err
	}
	return tally, <-failed
}

// InputError says that the input could not be read to its end.
type InputError struct{ Err error }

// Error implements error.
func (e *InputError) Error() string { return e.Err.Error() }

// Unwrap returns the cause.
func (e *InputError) Unwrap() error { return e.Err }

// OutputError says that an answer could not be written.
type OutputError struct{ Err error }

// Error implements error.
func (e *OutputError) Error() string { return e.Err.Error() }

// Unwrap returns the cause.
func (e *OutputError) Unwrap() error { return e.Err }
