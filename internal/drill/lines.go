package drill

import (
	"strings"
	"unicode/utf8"

	"evenlip/internal/fault"
)

// Lines reads drills that stand one a line, as JSON or as CSV. What it returns
// is overwritten by the next line, so that a million lines take the memory of
// one.
type Lines struct {
	File string

	text string // of the line, or of the lines of one record
	at   spot
	list
	row *rowReader
}

// spot is a place that goes along a text: the byte, and the line and the column, from
// 1 and in characters, that it is at.
type spot struct{ byte, line, column int }

// begin makes room for the drill of a line.
func (l *Lines) begin(number int, text string) {
	l.text, l.at = text, spot{0, number, 1}
	l.list = list{given: l.given[:0]}
}

// to goes on to a byte of the text, and never back.
func (l *Lines) to(offset int) fault.Place {
	offset = min(max(offset, l.at.byte), len(l.text))
	for offset > l.at.byte && offset < len(l.text) && !utf8.RuneStart(l.text[offset]) {
		offset--
	}
	passed := l.text[l.at.byte:offset]
	for end := strings.IndexByte(passed, '\n'); end >= 0; end = strings.IndexByte(passed, '\n') {
		l.at.line++
		l.at.column = 1
		passed = passed[end+1:]
	}
	l.at.column += utf8.RuneCountInString(passed)
	l.at.byte = offset
	return fault.Place{File: l.File, Line: l.at.line, Column: l.at.column}
}

// malformed tells what is wrong with the line as a whole, at a byte of it.
func (l *Lines) malformed(offset int, text, hint string) {
	l.faults = append(l.faults, fault.New(hint, "%s", text).In(l.to(offset), ""))
}

// take gives the drill what stands under a key.
func (l *Lines) take(offset int, r Reading, text string) {
	if strings.TrimSpace(text) == "" {
		l.refuse(l.to(offset), r, r.String()+": takes a value", "leave it out if it was not read")
		return
	}
	l.given = append(l.given, Given{r, text, l.to(offset)})
}

// end returns what stands on the line, and everything that is wrong with its form.
func (l *Lines) end() ([]Given, fault.List) {
	none := true
	for i := range l.given {
		none = none && l.given[i].Reading >= readings
	}
	if none && len(l.faults) == 0 {
		l.at = spot{0, l.at.line, 1}
		l.malformed(0, "no reading was given", "leave the line out")
	}
	return l.given, l.faults
}
