package crib

import (
	"bytes"
	"cmp"
	"slices"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/strict"
)

// write splices an outcome into the file.
func (c *Crib) write(data []byte, out *Outcome) ([]byte, error) {
	d, _ := c.Find(out.ID)
	if d.node.IsFlow() {
		return nil, errShape
	}
	s := &splice{layout: layoutOf(data)}
	_, column := d.node.Place()
	indent := strings.Repeat(" ", column-1)
	gone := map[drill.Reading]bool{}
	var added []string
	for _, mv := range out.Moves {
		e, there := d.node.Lookup(mv.Reading.String())
		switch {
		case mv.To == "":
			gone[mv.Reading] = true
		case !there:
			added = append(added, indent+mv.Reading.String()+": "+scalar(mv.To, 0))
		default:
			if err := s.set(e.Value, mv.To); err != nil {
				return nil, err
			}
		}
	}
	if err := s.drop(d.node, gone); err != nil {
		return nil, err
	}
	if len(added) > 0 {
		if err := s.add(d.lastReading(gone), added); err != nil {
			return nil, err
		}
	}
	if err := s.event(d.node, c.after(d, s.lines()), out.Event, out.stock); err != nil {
		return nil, err
	}
	return s.bytes(), nil
}

// lastReading returns the last reading of the drill's entries that stays.
func (d *Drill) lastReading(gone map[drill.Reading]bool) strict.Entry {
	last, _ := d.node.Lookup(drill.Size.String())
	for _, e := range d.node.Entries() {
		if r, known := drill.Find(e.Key.Text()); known && !gone[r] {
			last = e
		}
	}
	return last
}

// after returns the line on which what follows the drill begins.
func (c *Crib) after(d *Drill, lines int) int {
	at, _ := d.node.Place()
	next := lines + 1
	nearer := func(n strict.Node) {
		if line, _ := n.Place(); line > at && line < next {
			next = line
		}
	}
	for i := range c.Drills {
		nearer(c.Drills[i].node)
	}
	for _, e := range c.root.Entries() {
		nearer(e.Key)
	}
	return next
}

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
