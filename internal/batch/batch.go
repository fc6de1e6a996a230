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
			for c, ok := receive(ctx, q.waiting); ok; c, ok = receive(ctx, q.waiting) {
				c.answer(w, o.Strict)
				c.done <- true
			}
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

// queues hand chunks round: free ones are filled by the reader, answered by
// whichever worker is idle and written in the order in which they were read.
// There are only so many chunks, so a slow reader of the output slows the
// reading of the input down.
type queues struct {
	free    chan *chunk
	waiting chan *chunk // for a worker
	ordered chan *chunk // for the writer
}

func newQueues(chunks int) *queues {
	q := &queues{make(chan *chunk, chunks), make(chan *chunk, chunks), make(chan *chunk, chunks)}
	for range chunks {
		q.free <- &chunk{done: make(chan bool, 1)}
	}
	return q
}

// receive waits for what comes through a channel; false once that is closed or ctx has
// ended.
func receive[T any](ctx context.Context, from <-chan T) (v T, ok bool) {
	if ctx.Err() != nil {
		return v, false
	}
	select {
	case <-ctx.Done():
		return v, false
	case v, ok = <-from:
		return v, ok
	}
}

// read fills chunks with lines until the input ends. A chunk is handed over
// when it is full and whenever the input has no further line ready: whoever
// writes one line and waits for its answer gets it.
func (q *queues) read(ctx context.Context, in *Lines) error {
	defer close(q.waiting)
	defer close(q.ordered)
	for {
		c, ok := receive(ctx, q.free)
		if !ok {
			return nil
		}
		err := in.fill(c)
		if len(c.lines) > 0 {
			q.ordered <- c // never blocks: there is room for every chunk
			q.waiting <- c
		}
		switch {
		case err == io.EOF:
			return nil
		case err != nil:
			return &InputError{err}
		}
	}
}

// write writes the answers in order.
func (q *queues) write(ctx context.Context, out io.Writer, o Options) (all Tally, err error) {
	for {
		c, ok := receive(ctx, q.ordered)
		if ok {
			_, ok = receive(ctx, c.done)
		}
		if !ok { // there are no more, or it was told to end
			return all, context.Cause(ctx)
		}
		if _, err := out.Write(c.out); err != nil {
			return all, &OutputError{err}
		}
		all.Lines += c.tally.Lines
		all.Bad += c.tally.Bad
		all.Last = max(all.Last, c.tally.Last)
		if c.err != nil {
			return all, c.err
		}
		if o.Written != nil {
			o.Written(all)
		}
		*c = chunk{text: c.text[:0], lines: c.lines[:0], out: c.out[:0], done: c.done}
		q.free <- c
	}
}

// A chunk is as many lines as a worker takes at a time: enough that handing
// them over costs little, few enough that their answers take little memory.
const (
	chunkLines = 16
	chunkBytes = 32 << 10
)

// chunk is a run of lines and, once done, their answers.
type chunk struct {
	text  []byte
	lines []Line // of text
	out   []byte
	tally Tally
	err   error // of the line that ends a strict run
	done  chan bool
}

// answer lets w answer the chunk's lines.
func (c *chunk) answer(w Worker, strict bool) {
	for _, l := range c.lines {
		before := len(c.out)
		var err error
		c.out, err = w.Answer(c.out, l)
		if err != nil && strict {
			c.out, c.err = c.out[:before], err
			return
		}
		if err != nil {
			c.tally.Bad++
		}
		c.tally.Lines++
		c.tally.Last = l.Number
	}
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
