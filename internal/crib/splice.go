package crib

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/strict"
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
}

func (s *splice) replace(from, to int, text string) {
	s.edits = append(s.edits, edit{from, to, text})
}

// insert puts whole lines after a line.
func (s *splice) insert(after int, lines []string) {
	at := s.starts[after]
	var b strings.Builder
	ended := lineBreak(s.data[max(0, at-1):at]) > 0
	for _, line := range lines {
		if ended {
			b.WriteString(line + s.eol)
		} else {
			b.WriteString(s.eol + line)
		}
	}
	s.replace(at, at, b.String())
}

// bytes returns the file with the edits made.
func (s *splice) bytes() []byte {
	slices.SortStableFunc(s.edits, func(a, b edit) int { return cmp.Compare(a.from, b.from) })
	var out bytes.Buffer
	at := 0
	for _, e := range s.edits {
		out.Write(s.data[at:max(at, e.from)])
		out.WriteString(e.text)
		at = max(at, e.to)
	}
	out.Write(s.data[at:])
	return out.Bytes()
}

// set writes a reading that the drill already has, in the way it was written.
func (s *splice) set(e strict.Entry, text string) error {
	to, err := s.end(e.Value)
	if err != nil {
		return err
	}
	switch {
	case e.Value.IsScalar():
		s.replace(s.offset(e.Value), to, scalar(text, e.Value.Quote()))
	case e.Value.IsFlow():
		parts := strings.Split(text, ",")
		for i, p := range parts {
			parts[i] = scalar(strings.TrimSpace(p), 0)
		}
		s.replace(s.offset(e.Value), to, "["+strings.Join(parts, ", ")+"]")
	default:
		key, err := s.end(e.Key)
		colon := bytes.IndexByte(s.data[key:], ':')
		if err != nil || colon < 0 {
			return errShape
		}
		s.replace(key+colon+1, to, " "+scalar(text, 0))
	}
	return nil
}

// drop takes readings out of a drill, their lines with them. A drill's first
// key shares its line with the list's dash: the key that follows moves up.
func (s *splice) drop(n strict.Node, gone map[drill.Reading]bool) error {
	entries := n.Entries()
	dropped := func(e strict.Entry) bool {
		r, known := drill.Find(e.Key.Text())
		return known && gone[r]
	}
	first := 0
	for first < len(entries) && dropped(entries[first]) {
		first++
	}
	if first > 0 && first < len(entries) {
		s.replace(s.offset(entries[0].Key), s.offset(entries[first].Key), "")
	}
	for _, e := range entries[first:] {
		if !dropped(e) {
			continue
		}
		to, err := s.end(e.Value)
		if err != nil {
			return err
		}
		line, _ := e.Key.Place()
		s.replace(s.starts[line-1], s.starts[s.lineAt(to-1)], "")
	}
	return nil
}

// add writes readings that the drill did not have below one that it keeps.
func (s *splice) add(below strict.Entry, lines []string) error {
	to, err := s.end(below.Value)
	if err != nil {
		return err
	}
	s.insert(s.lineAt(to-1), lines)
	return nil
}

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
		closed := bytes.IndexByte(s.data[from:], ']')
		if closed < 0 {
			return errShape
		}
		s.replace(from, from+closed+1, "")
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

// scalar writes a text in YAML, in the quotes given where it stood in some.
func scalar(text string, quote byte) string {
	switch {
	case quote == '\'' && !strings.ContainsFunc(text, odd):
		return "'" + strings.ReplaceAll(text, "'", "''") + "'"
	case quote == 0 && isPlain(text):
		return text
	}
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(text); err != nil { // no string fails to encode
		return fmt.Sprintf("%q", text)
	}
	return strings.TrimRight(b.String(), "\n")
}

// odd reports whether a rune is better written as an escape.
func odd(r rune) bool { return r < ' ' || r >= 0x7f && r != '°' }

// isPlain reports whether a text means itself to YAML without quotes.
func isPlain(text string) bool {
	if text == "" || text != strings.TrimSpace(text) || strings.EqualFold(text, "null") {
		return false
	}
	head := strings.TrimLeft(text, "-+.")
	if len(text)-len(head) > 1 || head == "" || !isLetterOrDigit(rune(head[0])) {
		return false
	}
	return !strings.ContainsFunc(text, func(r rune) bool { return !isLetterOrDigit(r) && !strings.ContainsRune(` .,_+-/°()'"%;`, r) })
}

func isLetterOrDigit(r rune) bool {
	return r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
}
