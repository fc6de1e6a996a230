package strict

import (
	"errors"
	"maps"
	"slices"
	"strconv"
	"strings"

	"evenlip/internal/near"
	"evenlip/internal/quantity"
)

// Reader takes a file's nodes apart and collects all that is wrong with them,
// not only the first.
type Reader struct {
	File string
	Errs []error
}

// Fault tells what is wrong with a node, and what to do.
func (rd *Reader) Fault(n Node, text, hint string) {
	line, column := n.Place()
	rd.Errs = append(rd.Errs, &Error{File: rd.File, Line: line, Column: column, Text: text, Hint: hint})
}

// Refuse tells why a node's text is no quantity.
func (rd *Reader) Refuse(n Node, err error) {
	hint := ""
	var q *quantity.Error
	if errors.As(err, &q) {
		hint = q.Hint
	}
	rd.Fault(n, err.Error(), hint)
}

// Entries hands every key of a mapping to its reader and refuses the others.
func (rd *Reader) Entries(n Node, takes string, readers map[string]func(Node)) {
	if !n.IsMap() {
		rd.Fault(n, "takes "+takes+", a line each", "")
		return
	}
	seen := map[string]bool{}
	for _, e := range n.Entries() {
		key := e.Key.Text()
		read, known := readers[key]
		switch {
		case !known:
			rd.Fault(e.Key, "nothing here is called "+strconv.Quote(key), near.Hint(key, "it takes "+takes, slices.Sorted(maps.Keys(readers))...))
		case seen[key]:
			rd.Fault(e.Key, strconv.Quote(key)+" stands twice", "keep one of them")
		default:
			read(e.Value)
		}
		seen[key] = true
	}
}

// Word returns a text that stands on its key's line.
func (rd *Reader) Word(n Node) string {
	if !n.IsScalar() || n.IsNull() || strings.TrimSpace(n.Text()) == "" {
		rd.Fault(n, "takes a word or two", "leave the line out, or put the words into quotes: what follows a bare # is not read")
		return ""
	}
	return n.Text()
}
