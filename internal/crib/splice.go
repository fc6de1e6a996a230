package crib

import (
	"errors"
	"slices"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/strict"
)

// errShape says that a drill is written in a way that is not changed here.
var errShape = errors.New("written in a way that only a hand can change")

// splice changes lines of a file and leaves all others as they are. A reading that
// changes stands on one line, with its key and the remark behind it.
type splice struct {
	was, now []string // the lines with their ends
	eol      string   // the file's first line end
}

// write returns the file with an outcome in it.
func (c *Crib) write(data []byte, out *Outcome) ([]byte, error) {
	d, _ := c.Find(out.ID)
	if d.node.IsFlow() {
		return nil, errShape
	}
	s := spliceOf(string(data))
	_, column := d.node.Place()
	indent := strings.Repeat(" ", column-1)
	next := c.after(d, len(s.was)+1)
	gone := map[drill.Reading]bool{}
	var added []string
	for _, mv := range out.Moves {
		e, there := d.node.Lookup(mv.Reading.String())
		switch {
		case !there:
			added = append(added, indent+mv.Reading.String()+": "+strict.Scalar(mv.To, 0))
			continue
		case mv.To == "":
			gone[mv.Reading] = true
		}
		if err := s.set(e, mv.To); err != nil {
			return nil, err
		}
	}
	if len(added) > 0 {
		s.add(s.lastWritten(d.lastReading(gone, next)), added)
	}
	if err := s.event(d.node, next, out.Event, out.stock); err != nil {
		return nil, err
	}
	text := strings.Join(s.now, "")
	if strict.LineEnd(string(data)) == "" { // the last line that there is gets no end either
		text = strings.TrimSuffix(text, s.eol)
	}
	return []byte(text), nil
}

func spliceOf(text string) *splice {
	s := &splice{was: strict.Lines(text), eol: "\n"}
	if end := strict.LineEnd(s.was[0]); end != "" {
		s.eol = end
	}
	if last := &s.was[len(s.was)-1]; strict.LineEnd(*last) == "" {
		*last += s.eol
	}
	s.now = slices.Clone(s.was)
	return s
}

// after returns the line on which what follows the drill begins.
func (c *Crib) after(d *Drill, next int) int {
	at, _ := d.node.Place()
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

// lastReading returns the line on which what follows the last reading that stays
// begins; next is where what follows the drill does.
func (d *Drill) lastReading(gone map[drill.Reading]bool, next int) int {
	entries := d.node.Entries()
	for i := len(entries) - 1; ; i-- { // the size stays
		if r, known := drill.Find(entries[i].Key.Text()); known && !gone[r] {
			return next
		}
		next, _ = entries[i].Key.Place()
	}
}

// set puts another text in the place of an entry's value, in the quotes that it
// stood in. For "" the entry goes: the remark behind it stays on the line, and so does
// the list's dash before a drill's first key.
func (s *splice) set(e strict.Entry, text string) error {
	number, _ := e.Key.Place()
	line := s.was[number-1]
	from, to, err := value(line, number, e.Value)
	if err != nil {
		return err
	}
	if text != "" {
		s.now[number-1] = line[:from] + strict.Scalar(text, e.Value.Quote()) + line[to:]
		return nil
	}
	_, column := e.Key.Place()
	head := line[:offset(line, column)]
	remark := strings.TrimLeft(line[to:], " \t")
	switch dash := strings.TrimSpace(head); {
	case dash != "" && dash != "-":
		return errShape
	case strings.HasPrefix(remark, "#"):
		s.now[number-1] = head + remark
	case dash == "-":
		s.now[number-1] = strings.TrimRight(head, " \t") + remark
	default:
		s.now[number-1] = ""
	}
	return nil
}

// value returns where in a line, the one of that number, a value stands. It has to
// stand there whole.
func value(line string, number int, n strict.Node) (from, to int, err error) {
	at, column := n.Place()
	if at != number {
		return 0, 0, errShape
	}
	from = offset(line, column)
	text := strings.TrimSuffix(line[from:], strict.LineEnd(line))
	for _, remark := range [...]string{" #", "\t#"} {
		text, _, _ = strings.Cut(text, remark)
	}
	text = strings.TrimRight(text, " \t")
	alone, faults := strict.Parse("", text)
	if len(faults) > 0 || !strict.Same(alone, n) {
		return 0, 0, errShape
	}
	return from, from + len(text), nil
}

// offset returns the byte of a line at which a column begins.
func offset(line string, column int) int {
	for at := range line {
		if column--; column == 0 {
			return at
		}
	}
	return len(line)
}

// add puts lines below one.
func (s *splice) add(below int, lines []string) {
	s.now[below-1] += strings.Join(lines, s.eol) + s.eol
}

// lastWritten returns the last line before the given one that says anything:
// remarks and empty lines belong to what follows, and so does a dash that has
// nothing else, or a remark alone, on its line.
func (s *splice) lastWritten(before int) int {
	line := before - 1
	for ; line > 1; line-- {
		text := strings.TrimSpace(s.was[line-1])
		text = strings.TrimSpace(strings.TrimPrefix(text+" ", "- "))
		if text != "" && text != "..." && text[0] != '#' {
			break
		}
	}
	return line
}

// event appends an event to the drill's history; next is the line on which what
// follows the drill begins.
func (s *splice) event(n strict.Node, next int, e Event, stock string) error {
	_, column := n.Place()
	indent := strings.Repeat(" ", column-1)
	dash := indent + "  - "
	entries := n.Entries()
	at := slices.IndexFunc(entries, func(e strict.Entry) bool { return e.Key.Text() == "history" })
	if at < 0 {
		s.add(s.lastWritten(next), append([]string{indent + "history:"}, e.lines(dash, stock)...))
		return nil
	}
	if at+1 < len(entries) {
		next, _ = entries[at+1].Key.Place()
	}
	history := entries[at].Value
	switch items := history.Items(); {
	case len(items) > 0 && history.IsFlow():
		return errShape
	case len(items) > 0:
		line, column := items[len(items)-1].Place()
		if dash = s.was[line-1][:column-1]; strings.Trim(dash, " -") != "" {
			return errShape
		}
	case history.IsFlow():
		number, _ := entries[at].Key.Place()
		line := s.was[number-1]
		from, to, err := value(line, number, history)
		if err != nil {
			return err
		}
		s.now[number-1] = line[:from] + line[to:]
	}
	s.add(s.lastWritten(next), e.lines(dash, stock))
	return nil
}

// lines writes the event as the item of a list.
func (e Event) lines(dash, stock string) []string {
	indent := strings.Repeat(" ", len(dash))
	out := []string{dash + "date: " + e.Date, indent + "what: " + string(e.What)}
	if stock != "" {
		out = append(out, indent+"stock: "+strict.Scalar(stock, 0))
	}
	if e.Note != "" {
		out = append(out, indent+"note: "+strict.Scalar(e.Note, 0))
	}
	if len(e.Before) > 0 {
		out = append(out, indent+"before:")
		for _, w := range e.Before {
			out = append(out, indent+"  "+w.Reading.String()+": "+strict.Scalar(w.Text, 0))
		}
	}
	return out
}
