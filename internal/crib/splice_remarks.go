package crib

import (
	"strings"

	"evenlip/internal/strict"
)

// span is some bytes of a file: a key, or one value.
type span struct{ from, to int }

// span returns where a node stands that is one word or one number.
func (l *layout) span(n strict.Node) (span, error) {
	if !n.IsScalar() {
		return span{}, errShape
	}
	to, err := l.end(n)
	return span{l.offset(n), to}, err
}

// words returns where an entry's key stands and each of its values.
func (l *layout) words(e strict.Entry) ([]span, error) {
	nodes := []strict.Node{e.Key, e.Value}
	if e.Value.IsList() {
		nodes = append(nodes[:1], e.Value.Items()...)
	}
	out := make([]span, len(nodes))
	for i, n := range nodes {
		s, err := l.span(n)
		if err != nil {
			return nil, err
		}
		out[i] = s
	}
	return out, nil
}

// remains returns what stays of the lines from the byte from to the line of the
// byte before to when the words in them go: remarks, each on a line of its own,
// and the lines that never had anything else on them. The dash of a list's item,
// where it stands before from, stays too.
func (l *layout) remains(from, to int, words []span, indent string) (string, error) {
	first, last := l.lineAt(from), l.lineAt(to-1)
	head := string(l.data[l.starts[first-1]:from])
	if t := strings.TrimSpace(head); t != "" && t != "-" {
		return "", errShape
	}
	var kept strings.Builder
	for line := first; line <= last; line++ {
		remark, said, err := l.remark(from, l.starts[line], words)
		switch {
		case err != nil:
			return "", err
		case !said:
			kept.Write(l.data[from:l.starts[line]])
		case strings.TrimSpace(head) != "" && remark == "":
			kept.WriteString(strings.TrimRight(head, " \t") + l.ending(line))
		case strings.TrimSpace(head) != "":
			kept.WriteString(head + remark + l.ending(line))
		case remark != "":
			kept.WriteString(indent + remark + l.ending(line))
		}
		from, head = l.starts[line], ""
	}
	return kept.String(), nil
}

// remark returns the remark at the end of a line, and whether anything that goes
// stands before it: words, or the marks that hold them together.
func (l *layout) remark(from, to int, words []span) (remark string, said bool, err error) {
	for at := from; at < to; {
		if w, ok := wordAt(at, words); ok {
			at, said = w.to, true
			continue
		}
		switch c := l.data[at]; {
		case c == '#':
			return strings.TrimRight(string(l.data[at:to]), "\r\n"), said, nil
		case strings.IndexByte(":-,[]", c) >= 0:
			said = true
		case c != ' ' && c != '\t' && lineBreak(l.data[at:]) == 0:
			return "", false, errShape
		}
		at += max(1, lineBreak(l.data[at:]))
	}
	return "", said, nil
}

// wordAt returns the word that a byte is of.
func wordAt(at int, words []span) (span, bool) {
	for _, w := range words {
		if at >= w.from && at < w.to {
			return w, true
		}
	}
	return span{}, false
}
