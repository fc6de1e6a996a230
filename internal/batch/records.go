package batch

import "bytes"

// Quoted makes the lines records of CSV (RFC 4180): one goes on over its end while
// a quoted field is open, as long as the record fits into the buffer. Where the
// field is never closed, or not by a quote that ends one, a line is a line: one
// slip must not swallow what follows it.
func (l *Lines) Quoted() { l.quoted = true }

// record returns how many bytes the next record takes, if that is more than one
// line; else 0.
func (l *Lines) record() int {
	for {
		seen, _ := l.in.Peek(l.in.Buffered())
		end, state := ofRecord(seen)
		switch {
		case state == ended && bytes.IndexByte(seen[:end-1], '\n') < 0, state == broken:
			return 0
		case state == ended:
			return end
		case len(seen) == l.in.Size():
			return 0
		}
		if _, err := l.in.Peek(len(seen) + 1); err != nil { // no more comes
			_, state := ofRecord(append(bytes.Clone(seen), '\n'))
			if state != ended || bytes.IndexByte(seen, '\n') < 0 {
				return 0
			}
			return len(seen)
		}
	}
}

// state is how far a record goes in the bytes that there are.
type state uint8

const (
	going  state = iota // on
	ended               // to its end
	broken              // to something that is no CSV
)

// ofRecord returns how many of the bytes are of the first record.
func ofRecord(b []byte) (end int, s state) {
	if end := bytes.IndexByte(b, '\n'); end >= 0 && bytes.IndexByte(b[:end], '"') < 0 {
		return end + 1, ended
	}
	for at := 0; at < len(b); {
		if field := bytes.TrimLeft(b[at:], " \t"); len(field) > 0 && field[0] == '"' {
			at = len(b) - len(field)
			closed := closing(b[at+1:])
			if closed < 0 {
				return len(b), going
			}
			at += 1 + closed
			rest := bytes.TrimPrefix(b[at:], []byte("\r"))
			switch {
			case len(rest) == 0:
				return len(b), going
			case rest[0] == '\n':
				return len(b) - len(rest) + 1, ended
			case b[at] != ',':
				return 0, broken
			}
			at++
			continue
		}
		next := bytes.IndexAny(b[at:], ",\n")
		if next < 0 {
			return len(b), going
		}
		at += next + 1
		if b[at-1] == '\n' {
			return at, ended
		}
	}
	return len(b), going
}

// closing returns where a quoted field is behind the quote that closes it, -1 where
// none does as yet; of two quotes in a row neither closes it.
func closing(b []byte) int {
	for at := 0; at+1 < len(b); at++ {
		switch {
		case b[at] != '"':
		case b[at+1] == '"':
			at++
		default:
			return at + 1
		}
	}
	return -1
}
