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
	starts []int  // of each line; the last is the end of the file
	eol    string // the file's first line end
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
	if i := bytes.IndexAny(data, "\r\n"); i >= 0 {
		l.eol = string(data[i : i+lineBreak(data[i:])])
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

// isEnded reports whether b ends with a line break.
func isEnded(b []byte) bool {
	_, size := utf8.DecodeLastRune(b)
	return size > 0 && lineBreak(b[len(b)-size:]) > 0
}

// lines returns how many lines there are.
func (l *layout) lines() int { return len(l.starts) - 1 }

// text returns a line without its end; lines count from 1.
func (l *layout) text(line int) string {
	return strings.TrimRight(string(l.data[l.starts[line-1]:l.starts[line]]), "\r\n")
}

// ending returns the line break of a line, the file's own for one that has none.
func (l *layout) ending(line int) string {
	if end := string(l.data[l.starts[line-1]+len(l.text(line)) : l.starts[line]]); end != "" {
		return end
	}
	return l.eol
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
		return l.bracket(at)
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

// bracket returns where the list between brackets ends whose last item ends at at.
func (l *layout) bracket(at int) (int, error) {
	for at < len(l.data) {
		switch c := l.data[at]; {
		case c == ']':
			return at + 1, nil
		case c == '#':
			at = l.starts[l.lineAt(at)]
		case c != ' ' && c != '\t' && c != ',' && lineBreak(l.data[at:]) == 0:
			return 0, errShape
		default:
			at += max(1, lineBreak(l.data[at:]))
		}
	}
	return 0, errShape
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
// remarks and empty lines belong to what follows, and so does a dash that has
// nothing else, or a remark alone, on its line.
func (l *layout) lastWritten(before int) int {
	line := before - 1
	for ; line > 1; line-- {
		if t := strings.TrimSpace(l.text(line)); t != "..." && t != "-" && !isRemark(t) && !isRemark(strings.TrimPrefix(t, "- ")) {
			break
		}
	}
	return line
}

// isRemark reports whether a line, or what is left of it, says nothing to YAML.
func isRemark(text string) bool {
	text = strings.TrimSpace(text)
	return text == "" || strings.HasPrefix(text, "#")
}
