package crib

import (
	"bytes"
	"cmp"
	"slices"
	"strings"
)

// splice changes bytes of a file and leaves all others as they are.
type splice struct {
	layout
	edits []edit
}

// edit puts text in the place of the bytes from up to to.
type edit struct {
	from, to int
	text     string
	whole    bool // the text is whole lines
}

func (s *splice) replace(from, to int, text string) {
	s.edits = append(s.edits, edit{from, to, text, false})
}

// replaceLines puts whole lines in the place of those from from up to to.
func (s *splice) replaceLines(from, to int, text string) {
	s.edits = append(s.edits, edit{from, to, text, true})
}

// insert puts lines after one.
func (s *splice) insert(after int, lines []string) {
	end := s.ending(after)
	s.replaceLines(s.starts[after], s.starts[after], strings.Join(lines, end)+end)
}

// bytes returns the file with the edits made. Where its last line has no end, the
// last line that it then has gets none.
func (s *splice) bytes() []byte {
	slices.SortStableFunc(s.edits, func(a, b edit) int { return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to)) })
	var out bytes.Buffer
	at := 0
	for _, e := range s.edits {
		out.Write(s.data[at:max(at, e.from)])
		if e.whole && e.text != "" && !isEnded(out.Bytes()) {
			out.WriteString(s.eol)
		}
		out.WriteString(e.text)
		at = max(at, e.to)
	}
	out.Write(s.data[at:])
	next := out.Bytes()
	if !isEnded(s.data) && isEnded(next) {
		next = bytes.TrimSuffix(bytes.TrimSuffix(next, []byte("\n")), []byte("\r"))
	}
	return next
}
