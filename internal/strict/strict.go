// Package strict reads YAML the way a file kept by hand deserves: one document,
// plain mappings, no key twice, no anchors, and every complaint with its line
// and column. It is the only importer of the YAML library.
package strict

import (
	"cmp"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// Node is one value of a file, with its place.
type Node struct {
	y *yaml.Node
}

// Error is a complaint about a place in a file.
type Error struct {
	File         string
	Line, Column int
	Text, Hint   string
}

// Error implements error: "file:line:column: text".
func (e *Error) Error() string {
	where := e.File
	if e.Line > 0 {
		where += ":" + strconv.Itoa(e.Line)
		if e.Column > 0 {
			where += ":" + strconv.Itoa(e.Column)
		}
	}
	return where + ": " + e.Text
}

// ByPlace puts complaints about one file in the file's order; what has no place in
// it comes last.
func ByPlace(a, b error) int {
	lineA, columnA := placeOf(a)
	lineB, columnB := placeOf(b)
	return cmp.Or(cmp.Compare(lineA, lineB), cmp.Compare(columnA, columnB))
}

func placeOf(err error) (line, column int) {
	var e *Error
	if !errors.As(err, &e) {
		return math.MaxInt, 0
	}
	return e.Line, e.Column
}

// Each returns the complaints that an error of Parse is made of.
func Each(err error) []error {
	var d *document
	if errors.As(err, &d) {
		return d.faults
	}
	return []error{err}
}

// Parse reads the one document of r. An empty file is an error. Errors: an
// [*Error], or several of them for [Each]; where something is wrong with a part of
// the file only, [RestOf] has what can be read of the others.
func Parse(file string, r io.Reader) (Node, error) {
	data, err := io.ReadAll(r)
	if err != nil {
		return Node{}, &Error{File: file, Text: "cannot be read: " + err.Error()}
	}
	text := string(data)
	if root, ok := inPieces(text, pieces(len(text))); ok {
		return Node{root}, nil
	}
	d, err := decode(file, text)
	if err != nil {
		return Node{}, mend(file, text)
	}
	if d.root.y == nil && len(d.faults) == 0 {
		return Node{}, &Error{File: file, Text: "the file is empty", Hint: "one reading a line, such as size: 12mm"}
	}
	if len(d.faults) > 0 {
		return Node{}, &d
	}
	return d.root, nil
}

// document is what can be read of a file, and what is wrong with it.
type document struct {
	root   Node // of no value where nothing can be
	lost   []string
	faults []error
}

// decode reads a text that may be no YAML.
func decode(file, text string) (document, error) {
	if _, _, bad := illegible(text); bad != nil {
		return document{}, errors.New(bad.text)
	}
	dec := yaml.NewDecoder(strings.NewReader(text))
	var first, second yaml.Node
	switch err := dec.Decode(&first); {
	case errors.Is(err, io.EOF):
		return document{}, nil
	case err != nil:
		return document{}, err
	}
	switch err := dec.Decode(&second); {
	case errors.Is(err, io.EOF):
		return plainly(file, first.Content[0]), nil
	case err != nil:
		return document{}, err
	}
	d := plainly(file, first.Content[0])
	d.faults = append(d.faults, &Error{File: file, Line: second.Line, Column: second.Column, Text: "a second document begins here", Hint: "one document a file: take out the --- line"})
	return d, nil
}

// Place returns the node's line and column, from 1.
func (n Node) Place() (line, column int) { return n.y.Line, n.y.Column }

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
