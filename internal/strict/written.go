package strict

import (
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// IsFlow reports whether a mapping or a list is written between brackets.
func (n Node) IsFlow() bool { return n.y.Style&yaml.FlowStyle != 0 }

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

// Scalar writes a text as one value that means just that, in the quotes given or, where
// that is 0, in those that it needs.
func Scalar(text string, quote byte) string {
	n := yaml.Node{Kind: yaml.ScalarNode, Value: text}
	switch {
	case quote == '"' || n.ShortTag() == "!!null" || strings.Contains(text, "\n"):
		n.Style = yaml.DoubleQuotedStyle
	case quote == '\'':
		n.Style = yaml.SingleQuotedStyle
	}
	out, err := yaml.Marshal(&n)
	if err != nil {
		panic(err) // a text can always be written
	}
	return strings.TrimSuffix(string(out), "\n")
}

// lineEnds are the characters that end a line in YAML 1.1.
const lineEnds = "\n\r\u0085\u2028\u2029"

// Lines cuts a text into lines with their ends.
func Lines(text string) []string {
	var lines []string
	from := 0
	for at, r := range text {
		if strings.ContainsRune(lineEnds, r) && !strings.HasPrefix(text[at:], "\r\n") {
			end := at + utf8.RuneLen(r)
			lines = append(lines, text[from:end])
			from = end
		}
	}
	if from < len(text) {
		lines = append(lines, text[from:])
	}
	return lines
}

// LineEnd returns what ends a line, "" for a last one without an end.
func LineEnd(line string) string { return line[len(strings.TrimRight(line, lineEnds)):] }
