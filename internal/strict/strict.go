// Package strict reads YAML the way a file kept by hand deserves: one document,
// plain mappings, no key twice, no anchors, and every complaint with its line
// and column. It is the only importer of the YAML library.
package strict

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strconv"

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

// Errors are complaints about several places of a file.
type Errors []error

// Error implements error, a complaint a line.
func (e Errors) Error() string { return errors.Join(e...).Error() }

// Unwrap returns the complaints one by one.
func (e Errors) Unwrap() []error { return e }

// Each returns the complaints that an error of Parse is made of.
func Each(err error) []error {
	var several Errors
	if errors.As(err, &several) {
		return several
	}
	return []error{err}
}

// Parse reads the one document of r. An empty file is an error. Errors: an
// [*Error], or [Errors] for what is YAML and is not taken.
func Parse(file string, r io.Reader) (Node, error) {
	data, err := io.ReadAll(r)
	if err != nil {
		return Node{}, &Error{File: file, Text: "cannot be read: " + err.Error()}
	}
	if err := legible(file, data); err != nil {
		return Node{}, err
	}
	dec := yaml.NewDecoder(bytes.NewReader(data))
	var doc, second yaml.Node
	switch err := dec.Decode(&doc); {
	case errors.Is(err, io.EOF):
		return Node{}, &Error{File: file, Text: "the file is empty", Hint: "one reading a line, such as size: 12mm"}
	case err != nil:
		return Node{}, syntax(file, data, err)
	}
	switch err := dec.Decode(&second); {
	case err == nil:
		return Node{}, &Error{File: file, Line: second.Line, Column: second.Column, Text: "a second document begins here", Hint: "one document a file: take out the --- line"}
	case !errors.Is(err, io.EOF):
		return Node{}, syntax(file, data, err)
	}
	if odd := oddities(file, &doc, nil); len(odd) > 0 {
		return Node{}, odd
	}
	return Node{doc.Content[0]}, nil
}

// The complaint about anchors and what to do.
const (
	noAnchors = "anchors and aliases (& and *) are not taken"
	writeOut  = "write the value out"
)

// oddities finds anchors, aliases, tags and merged keys: a file kept by hand
// needs none, and a few lines of them can stand for more memory than the
// machine has.
func oddities(file string, n *yaml.Node, found Errors) Errors {
	switch {
	case n.Kind == yaml.AliasNode || n.Anchor != "":
		found = append(found, &Error{File: file, Line: n.Line, Column: n.Column, Text: noAnchors, Hint: writeOut})
	case n.Style&yaml.TaggedStyle != 0:
		found = append(found, &Error{File: file, Line: n.Line, Column: n.Column, Text: fmt.Sprintf("the tag %q is not taken", n.Tag), Hint: "write the value alone"})
	}
	for _, c := range n.Content {
		if len(found) == mostOddities {
			break
		}
		found = oddities(file, c, found)
	}
	return found
}

// mostOddities bounds the complaints about what is no plain YAML.
const mostOddities = 20

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
