package batch

import (
	"bufio"
	"bytes"
	"errors"
	"io"
)

// Lines cuts an input into lines. A mark of the byte order before the first one
// is left out.
type Lines struct {
	in     *bufio.Reader
	number int  // of the line read last
	quoted bool // a quoted field may hold line ends
}

// NewLines returns the lines of in.
func NewLines(in io.Reader) *Lines { return &Lines{in: bufio.NewReaderSize(in, 2*chunkBytes)} }

// Next takes the next line that is not blank out of the input, for what has to
// be known before a run; io.EOF says that there is none.
func (l *Lines) Next() (Line, error) {
	c := newChunk()
	for len(c.lines) == 0 {
		if err := l.one(c); err != nil && (err != io.EOF || len(c.lines) == 0) {
			return Line{}, err
		}
	}
	return c.line(0), nil
}

// fill puts lines into c until it is full, the input ends, or it would have to
// wait for more while c holds something.
func (l *Lines) fill(c *chunk) error {
	for !c.full() {
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
	if !l.quoted {
		return bytes.IndexByte(buffered, '\n') >= 0
	}
	_, s := ofRecord(buffered)
	return s == ended || s == broken && bytes.IndexByte(buffered, '\n') >= 0
}

// one adds the next line to c, unless it is blank.
func (l *Lines) one(c *chunk) error {
	l.number++
	s := span{from: len(c.text), number: l.number}
	if l.quoted {
		if n := l.record(); n > 0 {
			return l.whole(c, s, n)
		}
	}
	for {
		part, err := l.in.ReadSlice('\n')
		if l.number == 1 && len(c.text) == s.from {
			part = bytes.TrimPrefix(part, byteOrderMark)
		}
		room := s.from + Longest - len(c.text)
		if ended := bytes.TrimRight(part, "\r\n"); len(ended) > room {
			part, s.cut = part[:room], true
		}
		c.text = append(c.text, part...)
		switch {
		case errors.Is(err, bufio.ErrBufferFull):
			continue
		case err != nil && err != io.EOF:
			return err // half a line is none
		}
		s.to = s.from + len(bytes.TrimRight(c.text[s.from:], "\r\n"))
		if len(bytes.TrimSpace(c.text[s.from:s.to])) > 0 {
			c.lines = append(c.lines, s)
		} else {
			c.text = c.text[:s.from]
		}
		return err
	}
}

// whole adds a record of so many bytes, all of them buffered, to c.
func (l *Lines) whole(c *chunk, s span, size int) error {
	text, _ := l.in.Peek(size)
	l.number += bytes.Count(bytes.TrimSuffix(text, []byte("\n")), []byte("\n"))
	if s.number == 1 {
		text = bytes.TrimPrefix(text, byteOrderMark)
	}
	c.text = append(c.text, text...)
	s.to = s.from + len(bytes.TrimRight(c.text[s.from:], "\r\n"))
	c.lines = append(c.lines, s)
	_, err := l.in.Discard(size)
	return err
}

// byteOrderMark is what some editors put before the first line.
var byteOrderMark = []byte("\ufeff")
