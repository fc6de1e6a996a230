package strict

import (
	"slices"
	"strconv"
	"strings"

	"evenlip/internal/fault"
	"evenlip/internal/near"
)

// Reader takes a file's nodes apart and collects all that is wrong with them,
// not only the first.
type Reader struct {
	File string
	Errs fault.List
}

// Fault tells what is wrong with a node, and what to do.
func (rd *Reader) Fault(n Node, text, hint string) {
	rd.Errs = append(rd.Errs, &fault.Fault{At: n.In(rd.File), Text: text, Hint: hint})
}

// Refuse tells why a node's text is no quantity.
func (rd *Reader) Refuse(n Node, why *fault.Fault) { rd.Fault(n, why.Text, why.Hint) }

// Key is one that a mapping may have, and what takes its value.
type Key struct {
	name string
	take func(Node)
}

// On makes the key of that name.
func On(name string, take func(Node)) Key { return Key{name, take} }

// Entries hands the values of a mapping to the keys that take them and refuses
// all others. It returns the keys that were refused: the one that was meant, where
// that can be told.
func (rd *Reader) Entries(n Node, keys ...Key) (refused []string) {
	if !n.IsMap() {
		rd.Fault(n, "takes "+strings.Join(names(keys), ", ")+", a line each", "")
		return nil
	}
	seen := map[string]bool{}
	for _, e := range n.Entries() {
		name := e.Key.Text()
		at := slices.IndexFunc(keys, func(k Key) bool { return k.name == name })
		switch {
		case at < 0:
			known := names(keys)
			rd.Fault(e.Key, "nothing here is called "+strconv.Quote(name), near.Hint(name, "it takes "+strings.Join(known, ", "), known...))
			refused = append(refused, near.Name(name, known...))
		case seen[name]:
			rd.Fault(e.Key, strconv.Quote(name)+" stands twice", "keep one of them")
			refused = append(refused, name)
		default:
			keys[at].take(e.Value)
		}
		seen[name] = true
	}
	return refused
}

func names(keys []Key) []string {
	out := make([]string, len(keys))
	for i, k := range keys {
		out[i] = k.name
	}
	return out
}

// Word returns a text that stands on its key's line.
func (rd *Reader) Word(n Node) string {
	if !n.IsScalar() || n.IsNull() || strings.TrimSpace(n.Text()) == "" {
		rd.Fault(n, "takes a word or two", "leave the line out, or put the words into quotes: what follows a bare # is not read")
		return ""
	}
	return n.Text()
}
