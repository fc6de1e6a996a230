package batch

import "slices"

// A chunk is as many lines as a worker takes at a time: enough that handing
// them over costs little, few enough that their answers take little memory.
const (
	chunkLines = 16
	chunkBytes = 32 << 10
	// keptBytes bounds the buffers that a chunk keeps for the next lines.
	keptBytes = 1 << 20
)

// chunk is a run of lines and, once done, their answers.
type chunk struct {
	text  []byte
	lines []span
	out   []byte
	tally Tally
	err   error // of the line that ends a strict run
	done  chan struct{}
}

// span is a line inside a chunk's text.
type span struct {
	from, to, number int
	cut              bool
}

func newChunk() *chunk { return &chunk{done: make(chan struct{}, 1)} }

// reset empties the chunk for the next lines.
func (c *chunk) reset() {
	if cap(c.text) > keptBytes {
		c.text = nil
	}
	if cap(c.out) > keptBytes {
		c.out = nil
	}
	c.text, c.lines, c.out = c.text[:0], c.lines[:0], c.out[:0]
	c.tally, c.err = Tally{}, nil
}

func (c *chunk) full() bool { return len(c.lines) >= chunkLines || len(c.text) >= chunkBytes }

// answer lets w answer the chunk's lines.
func (c *chunk) answer(w Worker, strict bool) {
	for i := range c.lines {
		before := len(c.out)
		l := c.line(i)
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

// line returns a line of the chunk.
func (c *chunk) line(i int) Line {
	s := c.lines[i]
	return Line{s.number, slices.Clip(c.text[s.from:s.to]), s.cut}
}
