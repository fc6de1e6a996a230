package batch

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"slices"
)

// Lines cuts an input into lines. A mark of the byte order before the first one
// is left out.
type Lines struct {
	in     *bufio.Reader
	number int // of the line read last
}

// NewLines returns the lines of in.
func NewLines(in io.Reader) *Lines { return &Lines{in: bufio.NewReaderSize(in, 2*chunkBytes)} }

// Next takes the next line that is not blank out of the input, for what has to
// be known before a run; io.EOF says that there is none.
func (l *Lines) Next() (Line, error) {
	var c chunk
	for len(c.lines) == 0 {
		if err := l.one(&c); err != nil && (err != io.EOF || len(c.lines) == 0) {
			return Line{}, err
		}
	}
	return c.lines[0], nil
}

// fill puts lines into c until it is full, the input ends, or it would have to
// wait for more while c holds something.
func (l *Lines) fill(c *chunk) error {
	for len(c.lines) < chunkLines && len(c.text) < chunkBytes {
		if len(c.lines) > 0 && !l.ready() {
			return nil
		}
		if err := l.one(c); err != nil {
			return err
		}
	}
	return nil
}

// ready reports whether a whole line can be had without waiting.
func (l *Lines) ready() bool {
	buffered, _ := l.in.Peek(l.in.Buffered()) // what is buffered can be peeked at
	return bytes.IndexByte(buffered, '\n') >= 0
}

// byteOrderMark is what some editors put before the first line.
var byteOrderMark = []byte("\ufeff")

// one adds the next line to c, unless it is blank.
func (l *Lines) one(c *chunk) error {
	l.number++
	line := Line{Number: l.number}
	from := len(c.text)
	for {
		part, err := l.in.ReadSlice('\n')
		if l.number == 1 && len(c.text) == from {
			part = bytes.TrimPrefix(part, byteOrderMark)
		}
		room := max(0, from+Longest-len(c.text))
		if len(bytes.TrimRight(part, "\r\n")) > room {
			part, line.Cut = part[:room], true
		}
		c.text = append(c.text, part...)
		if errors.Is(err, bufio.ErrBufferFull) {
			continue
		}
		if err != nil && err != io.EOF {
			return err // half a line is none
		}
		line.Text = slices.Clip(bytes.TrimRight(c.text[from:], "\r\n"))
		if len(bytes.TrimSpace(line.Text)) > 0 {
			c.lines = append(c.lines, line)
		} else {
			c.text = c.text[:from]
		}
		return err
	}
}
