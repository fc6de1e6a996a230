package batch

import (
	"context"
	"io"
)

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
		q.free <- newChunk()
	}
	return q
}

// read fills chunks with lines until the input ends. A chunk is handed over
// when it is full and whenever the input has no further line ready: whoever
// writes one line and waits for its answer gets it.
func (q *queues) read(ctx context.Context, in *Lines) error {
	defer close(q.waiting)
	defer close(q.ordered)
	for {
		var c *chunk
		select {
		case <-ctx.Done():
			return nil
		case c = <-q.free:
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

// answer lets w answer chunks until there are no more.
func (q *queues) answer(ctx context.Context, w Worker, strict bool) {
	for {
		select {
		case <-ctx.Done():
			return
		case c, more := <-q.waiting:
			if !more {
				return
			}
			c.answer(w, strict)
			c.done <- struct{}{}
		}
	}
}

// write writes the answers in order.
func (q *queues) write(ctx context.Context, out io.Writer, o Options) (Tally, error) {
	var all Tally
	for {
		c, err := q.next(ctx)
		if c == nil {
			return all, err
		}
		if _, err := out.Write(c.out); err != nil {
			return all, &OutputError{err}
		}
		all.add(c.tally)
		if c.err != nil {
			return all, c.err
		}
		if o.Written != nil {
			o.Written(all)
		}
		c.reset()
		q.free <- c
	}
}

// next waits for the chunk whose turn it is; nil says that there is none, and
// the error why it came to that too early.
func (q *queues) next(ctx context.Context) (*chunk, error) {
	if ctx.Err() != nil {
		return nil, context.Cause(ctx)
	}
	select {
	case <-ctx.Done():
		return nil, context.Cause(ctx)
	case c, more := <-q.ordered:
		if !more {
			return nil, nil
		}
		select {
		case <-ctx.Done():
			return nil, context.Cause(ctx)
		case <-c.done:
			return c, nil
		}
	}
}

func (t *Tally) add(more Tally) {
	t.Lines += more.Lines
	t.Bad += more.Bad
	t.Last = max(t.Last, more.Last)
}
