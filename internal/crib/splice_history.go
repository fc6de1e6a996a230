package crib

import (
	"bytes"
	"slices"
	"strings"

	"evenlip/internal/strict"
)

// event appends an event to the drill's history; next is the line on which
// what follows the drill begins.
func (s *splice) event(n strict.Node, next int, e Event, stock string) error {
	_, column := n.Place()
	indent := strings.Repeat(" ", column-1)
	dash := indent + "  - "
	entries := n.Entries()
	at := slices.IndexFunc(entries, func(e strict.Entry) bool { return e.Key.Text() == "history" })
	if at < 0 {
		s.insert(s.lastWritten(next), append([]string{indent + "history:"}, e.lines(dash, stock)...))
		return nil
	}
	history := entries[at].Value
	if at+1 < len(entries) {
		next, _ = entries[at+1].Key.Place()
	}
	items := history.Items()
	switch {
	case history.IsFlow() && len(items) > 0:
		return errShape
	case history.IsFlow():
		from := s.offset(history)
		to, err := s.bracket(from + 1)
		if err != nil || bytes.IndexByte(s.data[from:to], '#') >= 0 {
			return errShape
		}
		s.replace(from, to, "")
	case len(items) > 0:
		line, column := items[len(items)-1].Place()
		if before := s.text(line); column-1 <= len(before) {
			dash = before[:column-1]
		}
		if strings.Trim(dash, " -") != "" {
			return errShape
		}
	}
	s.insert(s.lastWritten(next), e.lines(dash, stock))
	return nil
}

// lines writes the event as the item of a list.
func (e Event) lines(dash, stock string) []string {
	indent := strings.Repeat(" ", len(dash))
	out := []string{dash + "date: " + e.Date, indent + "what: " + string(e.What)}
	if stock != "" {
		out = append(out, indent+"stock: "+scalar(stock, 0))
	}
	if e.Note != "" {
		out = append(out, indent+"note: "+scalar(e.Note, 0))
	}
	if len(e.Before) > 0 {
		out = append(out, indent+"before:")
		for _, w := range e.Before {
			out = append(out, indent+"  "+w.Reading.String()+": "+scalar(w.Text, 0))
		}
	}
	return out
}
