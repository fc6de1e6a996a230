package strict

import "gopkg.in/yaml.v3"

// IsFlow reports whether a mapping or a list is written between brackets.
func (n Node) IsFlow() bool { return n.y.Style&yaml.FlowStyle != 0 }

// IsBlockText reports whether a scalar is written on lines of its own, after a
// | or a >.
func (n Node) IsBlockText() bool { return n.y.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0 }

// Quote returns the mark that a scalar stands in, ' or ", and 0 for none.
func (n Node) Quote() byte {
	switch {
	case n.y.Style&yaml.DoubleQuotedStyle != 0:
		return '"'
	case n.y.Style&yaml.SingleQuotedStyle != 0:
		return '\''
	}
	return 0
}

// Same reports whether two nodes say the same, however they are written.
func Same(a, b Node) bool {
	if a.y.Kind != b.y.Kind || a.y.Value != b.y.Value || a.IsNull() != b.IsNull() || len(a.y.Content) != len(b.y.Content) {
		return false
	}
	for i := range a.y.Content {
		if !Same(Node{a.y.Content[i]}, Node{b.y.Content[i]}) {
			return false
		}
	}
	return true
}
