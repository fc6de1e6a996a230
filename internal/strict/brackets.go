package strict

import "strings"

// brackets are those that a text leaves open, as YAML takes them: in quotes, in a
// remark and inside a word they stand for themselves. A quote that is left open
// between brackets is one of them.
type brackets struct {
	text  string
	at    []int // of each, the innermost last
	fresh bool  // a value may begin here
}

// lastOpen returns where the innermost bracket that is never closed stands, -1 for
// none.
func lastOpen(text string) int {
	if at := openIn(text); len(at) > 0 {
		return at[len(at)-1]
	}
	return -1
}

// closers returns what closes the brackets that a text leaves open.
func closers(text string) string {
	at := openIn(text)
	out := make([]byte, 0, len(at))
	for i := len(at) - 1; i >= 0; i-- {
		out = append(out, closerOf(text[at[i]]))
	}
	return string(out)
}

func closerOf(mark byte) byte {
	switch mark {
	case '[':
		return ']'
	case '{':
		return '}'
	}
	return mark
}

func openIn(text string) []int {
	b := brackets{text: text, fresh: true}
	for at := 0; at < len(text); {
		at += b.step(at)
	}
	return b.at
}

// step goes on from a byte and returns by how many.
func (b *brackets) step(at int) int {
	rest, inside := b.text[at:], len(b.at) > 0
	switch c := rest[0]; {
	case c == '#' && (at == 0 || strings.IndexByte(" \t\n\r", b.text[at-1]) >= 0):
		if end := strings.IndexAny(rest, breaks); end >= 0 {
			return end
		}
		return len(rest)
	case b.fresh && (c == '"' || c == '\''):
		b.fresh = false
		if end := closing(rest); end > 0 {
			return end
		}
		if inside {
			b.at = append(b.at, at)
		}
		return len(rest)
	case (c == '[' || c == '{') && (inside || b.fresh):
		b.at = append(b.at, at)
		b.fresh = true
	case (c == ']' || c == '}') && inside:
		b.at = b.at[:len(b.at)-1]
		b.fresh = false
	case c == ',' && inside, c == '\n', c == '\r', c == ':' && followedByBlank(rest), c == '-' && b.fresh && followedByBlank(rest):
		b.fresh = true
	case c != ' ' && c != '\t':
		b.fresh = false
	}
	return 1
}

func followedByBlank(text string) bool {
	return len(text) == 1 || strings.IndexByte(" \t\r\n", text[1]) >= 0
}
