package strict

import (
	"errors"
	"fmt"
	"slices"

	"gopkg.in/yaml.v3"
)

// The complaint about anchors and what to do.
const (
	noAnchors = "anchors and aliases (& and *) are not taken"
	writeOut  = "write the value out; if the mark belongs to it, put it into quotes"
)

// plainly takes what is no plain YAML out of a document: anchors, aliases, tags
// and merged keys. A file kept by hand needs none, and a few lines of them can
// stand for more memory than the machine has. An anchor or a tag only goes; where
// an alias stands, the entry or the list's item with it is set aside.
func plainly(file string, root *yaml.Node) document {
	s := stripper{file: file}
	if root.Kind != yaml.MappingNode {
		if !s.strip(root) {
			return document{root: Node{root}, faults: s.found}
		}
		return document{faults: s.found}
	}
	d := document{root: Node{root}}
	s.own(root)
	kept := root.Content[:0]
	for i := 0; i+1 < len(root.Content); i += 2 {
		key, value := root.Content[i], root.Content[i+1]
		if s.strip(key) || s.entry(value) {
			d.lost = append(d.lost, key.Value)
			continue
		}
		kept = append(kept, key, value)
	}
	root.Content, d.faults = kept, s.found
	return d
}

// stripper collects what is no plain YAML.
type stripper struct {
	file  string
	found []error
}

func (s *stripper) tell(n *yaml.Node, text, hint string) {
	if len(s.found) < mostFaults {
		s.found = append(s.found, &Error{File: s.file, Line: n.Line, Column: n.Column, Text: text, Hint: hint})
	}
}

// entry strips the value of an entry of the file, and takes the items with an
// alias out of a list. It reports whether the value is of no use.
func (s *stripper) entry(n *yaml.Node) bool {
	if n.Kind != yaml.SequenceNode {
		return s.strip(n)
	}
	s.own(n)
	kept := n.Content[:0]
	for _, item := range n.Content {
		if !s.strip(item) {
			kept = append(kept, item)
		}
	}
	n.Content = kept
	return false
}

// strip takes anchors and tags off a value and what it holds, and reports whether
// an alias stands in it.
func (s *stripper) strip(n *yaml.Node) (alias bool) {
	alias = s.own(n)
	for _, c := range n.Content {
		alias = s.strip(c) || alias
	}
	return alias
}

// own strips a value, and not what it holds.
func (s *stripper) own(n *yaml.Node) (alias bool) {
	switch {
	case n.Kind == yaml.AliasNode:
		s.tell(n, noAnchors, writeOut)
		return true
	case n.Anchor != "":
		s.tell(n, noAnchors, writeOut)
	case n.Style&yaml.TaggedStyle != 0:
		s.tell(n, fmt.Sprintf("the tag %q is not taken", n.Tag), "write the value alone")
	}
	n.Anchor, n.Style = "", n.Style&^yaml.TaggedStyle
	return false
}

// Error implements error, a complaint a line.
func (d *document) Error() string { return errors.Join(d.faults...).Error() }

// Unwrap returns the complaints one by one.
func (d *document) Unwrap() []error { return d.faults }

// Rest is what can be read of a file in spite of what is wrong with it.
type Rest struct {
	Root Node
	lost []string
}

// RestOf returns what can be read of a file that Parse refused with err; false for
// nothing.
func RestOf(err error) (Rest, bool) {
	var d *document
	if !errors.As(err, &d) || d.root.y == nil {
		return Rest{}, false
	}
	return Rest{d.root, d.lost}, true
}

// Lacks reports whether an entry of the file of one of those keys may be among what
// was set aside.
func (r Rest) Lacks(keys ...string) bool {
	return slices.ContainsFunc(r.lost, func(lost string) bool { return lost == "" || slices.Contains(keys, lost) })
}
