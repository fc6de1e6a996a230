package crib

import (
	"bytes"
	"errors"
	"slices"
	"strings"
	"unicode/utf8"

	"evenlip/internal/strict"
)

// layout knows where the lines of a file begin, as YAML counts them.
type layout struct {
	data   []byte
	starts []int // of each line; the last is the end of the file
	eol    string
}

func layoutOf(data []byte) layout {
	l := layout{data: data, starts: []int{0}, eol: "\n"}
	for at := 0; at < len(data); {
		n := lineBreak(data[at:])
		if n == 0 {
			at++
			continue
		}
		at += n
		l.starts = append(l.starts, at)
	}
	if l.starts[len(l.starts)-1] != len(data) {
		l.starts = append(l.starts, len(data))
	}
	if i := bytes.IndexByte(data, '\n'); i > 0 && data[i-1] == '\r' {
		l.eol = "\r\n"
	}
	return l
}

// lineBreak returns the length of the line break that b begins with, 0 for none.
func lineBreak(b []byte) int {
	if bytes.HasPrefix(b, []byte("\r\n")) {
		return 2
	}
	switch r, size := utf8.DecodeRune(b); r {
	case '\n', '\r', 0x85, 0x2028, 0x2029:
		return size
	}
	return 0
}

// lines returns how many lines there are.
func (l *layout) lines() int { return len(l.starts) - 1 }

// text returns a line without its end; lines count from 1.
func (l *layout) text(line int) string {
	return strings.TrimRight(string(l.data[l.starts[line-1]:l.starts[line]]), "\r\n")
}

// offset returns where a node begins.
func (l *layout) offset(n strict.Node) int {
	line, column := n.Place()
	at := l.starts[line-1]
	for range column - 1 {
		_, size := utf8.DecodeRune(l.data[at:])
		at += size
	}
	return at
}

// lineAt returns the line of a byte.
func (l *layout) lineAt(at int) int {
	i, exact := slices.BinarySearch(l.starts, at)
	if exact {
		return i + 1
	}
	return i
}

// errShape says that a value is written in a way that is not changed here.
var errShape = errors.New("written in a way that only a hand can change")

// end returns where the value n ends.
func (l *layout) end(n strict.Node) (int, error) {
	at := l.offset(n)
	switch {
	case n.IsList() && len(n.Items()) > 0:
		items := n.Items()
		at, err := l.end(items[len(items)-1])
		if err != nil || !n.IsFlow() {
			return at, err
		}
		rest := bytes.TrimLeft(l.data[at:], " \t\r\n,")
		if !bytes.HasPrefix(rest, []byte("]")) {
			return 0, errShape
		}
		return len(l.data) - len(rest) + 1, nil
	case !n.IsScalar() || n.IsBlockText():
		return 0, errShape
	case n.Quote() != 0:
		return l.closing(at, n.Quote())
	}
	end := at + len(n.Text())
	if end > len(l.data) || string(l.data[at:end]) != n.Text() {
		return 0, errShape
	}
	return end, nil
}

// closing returns where the quoted scalar that begins at from ends.
func (l *layout) closing(from int, quote byte) (int, error) {
	for at := from + 1; at < len(l.data); at++ {
		switch c := l.data[at]; {
		case c == '\\' && quote == '"':
			at++
		case c != quote:
		case quote == '\'' && at+1 < len(l.data) && l.data[at+1] == quote:
			at++
		default:
			return at + 1, nil
		}
	}
	return 0, errShape
}

// lastWritten returns the last line before the given one that says anything:
// remarks and empty lines belong to what follows.
func (l *layout) lastWritten(before int) int {
	line := before - 1
	for ; line > 1; line-- {
		if t := strings.TrimSpace(l.text(line)); t != "" && t != "-" && t != "..." && !strings.HasPrefix(t, "#") {
			break
		}
	}
	return line
}
