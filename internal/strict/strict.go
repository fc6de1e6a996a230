// Package strict reads YAML the way a file kept by hand deserves: one document,
// plain mappings, no key twice, no anchors, and every complaint with its line
// and column. It is the only importer of the YAML library.
package strict

import (
	"errors"
	"evenlip/internal/fault"
	"fmt"
	"io"
	"strings"

	"gopkg.in/yaml.v3"
)

// Node is one value of a file, with its place.
type Node struct {
	y *yaml.Node
}

// Parse reads the one document of a file's text. An empty file is an error. All that
// is wrong is returned; of what is no YAML, the first.
func Parse(file, text string) (Node, fault.List) {
	refuse := func(line, column int, text, hint string) (Node, fault.List) {
		return Node{}, fault.List{at(file, line, column, text, hint)}
	}
	if strings.HasPrefix(text, "\xff\xfe") || strings.HasPrefix(text, "\xfe\xff") {
		return refuse(1, 1, "the file is UTF-16", "save it as UTF-8")
	}
	var first, second yaml.Node
	dec := yaml.NewDecoder(strings.NewReader(text))
	err := dec.Decode(&first)
	if errors.Is(err, io.EOF) {
		return refuse(0, 0, "the file is empty", "one reading a line, such as size: 12mm")
	}
	if err == nil {
		err = dec.Decode(&second)
	}
	switch {
	case err == nil:
		return refuse(second.Line, second.Column, "a second document begins here", "one document a file: take out the --- line")
	case !errors.Is(err, io.EOF):
		return Node{}, fault.List{syntaxError(file, text, err)}
	}
	if errs := marks(nil, file, first.Content[0]); len(errs) > 0 {
		return Node{}, errs
	}
	return Node{first.Content[0]}, nil
}

// marks refuses the anchors, aliases and tags of a node and of what it holds. A file
// kept by hand needs none, and a few lines of them can stand for more memory than
// the machine has.
func marks(errs fault.List, file string, n *yaml.Node) fault.List {
	refuse := func(text, hint string) {
		errs = append(errs, at(file, n.Line, n.Column, text, hint))
	}
	switch {
	case n.Anchor != "" || n.Kind == yaml.AliasNode:
		refuse("anchors and aliases (& and *) are not taken", "write the value out; if the mark belongs to it, put it into quotes")
	case n.Style&yaml.TaggedStyle != 0:
		refuse(fmt.Sprintf("the tag %q is not taken", n.Tag), "write the value alone")
	}
	for _, c := range n.Content {
		errs = marks(errs, file, c)
	}
	return errs
}

// at makes the fault of a place in a file.
func at(file string, line, column int, text, hint string) *fault.Fault {
	return &fault.Fault{At: fault.Place{File: file, Line: line, Column: column}, Text: text, Hint: hint}
}

// Place returns the node's line and column, from 1.
func (n Node) Place() (line, column int) { return n.y.Line, n.y.Column }

// In returns the node's place in the file of that name.
func (n Node) In(file string) fault.Place {
	return fault.Place{File: file, Line: n.y.Line, Column: n.y.Column}
}

// IsMap reports whether the node is keys and their values.
func (n Node) IsMap() bool { return n.y.Kind == yaml.MappingNode }

// IsList reports whether the node is a list.
func (n Node) IsList() bool { return n.y.Kind == yaml.SequenceNode }

// IsScalar reports whether the node is one value.
func (n Node) IsScalar() bool { return n.y.Kind == yaml.ScalarNode }

// IsNull reports whether nothing was written after the key.
func (n Node) IsNull() bool { return n.y.Kind == yaml.ScalarNode && n.y.Tag == "!!null" }

// Text returns a scalar as it was written, without its quotes.
func (n Node) Text() string { return n.y.Value }

// Items returns the items of a list.
func (n Node) Items() []Node {
	out := make([]Node, len(n.y.Content))
	for i, c := range n.y.Content {
		out[i] = Node{c}
	}
	return out
}

// Entry is one key of a mapping and its value.
type Entry struct{ Key, Value Node }

// Comment returns what stands behind a # on the entry's line, the # included.
func (e Entry) Comment() string { return e.Value.y.LineComment + e.Key.y.LineComment }

// Entries returns the entries of a mapping in the order they were written.
func (n Node) Entries() []Entry {
	out := make([]Entry, 0, len(n.y.Content)/2)
	for i := 0; i+1 < len(n.y.Content); i += 2 {
		out = append(out, Entry{Node{n.y.Content[i]}, Node{n.y.Content[i+1]}})
	}
	return out
}

// Lookup returns the entry of a mapping whose key that is.
func (n Node) Lookup(key string) (Entry, bool) {
	for i := 0; i+1 < len(n.y.Content); i += 2 {
		if n.y.Content[i].Value == key {
			return Entry{Node{n.y.Content[i]}, Node{n.y.Content[i+1]}}, true
		}
	}
	return Entry{}, false
}
