package crib

import (
	"bytes"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/strict"
)

// set writes a reading that the drill already has, in the way it was written: of
// a list, the items that are others now.
func (s *splice) set(n strict.Node, text string) error {
	if !n.IsList() {
		return s.word(n, text)
	}
	items, texts := n.Items(), strings.Split(text, ",")
	both := min(len(items), len(texts))
	for i, item := range items[:both] {
		if err := s.word(item, strings.TrimSpace(texts[i])); err != nil {
			return err
		}
	}
	for _, more := range texts[both:] {
		if err := s.more(n, scalar(strings.TrimSpace(more), 0)); err != nil {
			return err
		}
	}
	if both < len(items) {
		return s.fewer(n, both)
	}
	return nil
}

// word writes a single value, in the quotes that it stood in.
func (s *splice) word(n strict.Node, text string) error {
	at, err := s.span(n)
	if err == nil && n.Text() != text {
		s.replace(at.from, at.to, scalar(text, n.Quote()))
	}
	return err
}

// more adds an item to a list, behind or below its last one.
func (s *splice) more(n strict.Node, text string) error {
	items := n.Items()
	last, err := s.span(items[len(items)-1])
	if err != nil {
		return err
	}
	if n.IsFlow() {
		s.replace(last.to, last.to, ", "+text)
		return nil
	}
	dash := string(s.data[s.starts[s.lineAt(last.from)-1]:last.from])
	if strings.TrimSpace(dash) != "-" {
		return errShape
	}
	s.insert(s.lineAt(last.to-1), []string{dash + text})
	return nil
}

// fewer takes the items from one on out of a list.
func (s *splice) fewer(n strict.Node, from int) error {
	var words []span
	for _, item := range n.Items()[from-1:] {
		w, err := s.span(item)
		if err != nil {
			return err
		}
		words = append(words, w)
	}
	if n.IsFlow() {
		return s.fewerBetween(n, words)
	}
	line := s.text(s.lineAt(words[1].from))
	below, to := s.starts[s.lineAt(words[0].to-1)], words[len(words)-1].to
	text, err := s.remains(below, to, words[1:], line[:len(line)-len(strings.TrimLeft(line, " "))])
	s.replaceLines(below, s.starts[s.lineAt(to-1)], text)
	return err
}

// fewerBetween takes all words but the first out of a list between brackets, and
// the commas behind it; not those of a remark.
func (s *splice) fewerBetween(n strict.Node, words []span) error {
	from := words[0].to
	to, err := s.end(n)
	if err != nil {
		return err
	}
	if last := words[len(words)-1].to; !bytes.ContainsAny(s.data[from:last], "#\r\n") {
		s.replace(from, last, "")
		return nil
	}
	for at := from; at < to; at++ {
		if w, ok := wordAt(at, words[1:]); ok {
			s.replace(w.from, w.to, "")
			at = w.to - 1
			continue
		}
		switch s.data[at] {
		case '#':
			at = s.starts[s.lineAt(at)] - 1
		case ',':
			s.replace(at, at+1, "")
		}
	}
	return nil
}

// drop takes readings out of a drill. A drill's first key shares its line with
// the list's dash: the key that follows moves up, unless something stays between.
func (s *splice) drop(n strict.Node, gone map[drill.Reading]bool) error {
	entries := n.Entries()
	dropped := func(e strict.Entry) bool {
		r, known := drill.Find(e.Key.Text())
		return known && gone[r]
	}
	first := 0
	for dropped(entries[first]) { // the size stays
		first++
	}
	if first > 0 {
		if err := s.cut(entries[:first]); err != nil {
			return err
		}
		s.moveUp(entries[0].Key, entries[first].Key)
	}
	for i, e := range entries[first:] {
		if !dropped(e) {
			continue
		}
		if err := s.cut(entries[first+i:][:1]); err != nil {
			return err
		}
	}
	return nil
}

// cut takes entries that follow one another out of the file.
func (s *splice) cut(entries []strict.Entry) error {
	var words []span
	for _, e := range entries {
		more, err := s.words(e)
		if err != nil {
			return err
		}
		words = append(words, more...)
	}
	to, err := s.end(entries[len(entries)-1].Value)
	if err != nil {
		return err
	}
	line, column := entries[0].Key.Place()
	text, err := s.remains(words[0].from, to, words, strings.Repeat(" ", column-1))
	s.replaceLines(s.starts[line-1], s.starts[s.lineAt(to-1)], text)
	return err
}

// moveUp puts the key that stays behind the dash that the one cut last has left
// alone, if it stands on the next line.
func (s *splice) moveUp(gone, stays strict.Node) {
	last := &s.edits[len(s.edits)-1]
	from, to := s.offset(gone), s.offset(stays)
	line, _ := gone.Place()
	alone := strings.TrimLeft(last.text, " ") == "-"+s.ending(line)
	if alone && strings.TrimSpace(string(s.data[last.to:to])) == "" && s.lineAt(last.to) == s.lineAt(to) {
		*last = edit{from: from, to: to}
	}
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
