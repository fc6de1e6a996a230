package drill

import (
	"encoding/csv"
	"strings"
	"unicode/utf8"

	"evenlip/internal/fault"
)

// Lines reads drills that stand one a line, as JSON or as CSV. What it returns
// is overwritten by the next line, so that a million lines take the memory of
// one.
type Lines struct {
	File string

	text   string // of the line
	number int
	at     int // a byte of the text, and its column: places are told from left to right
	column int
	list

	csv     *csv.Reader // of csvText, and used for one line after the other
	csvText strings.Reader
	starts  []int
}

// begin makes room for the drill of a line.
func (l *Lines) begin(number int, text string) {
	l.text, l.number, l.at, l.column = text, number, 0, 1
	l.list = list{given: l.given[:0]}
}

// to returns the place of a byte of the text, never one before those already told.
func (l *Lines) to(offset int) fault.Place {
	offset = min(max(offset, l.at), len(l.text))
	for offset > l.at && offset < len(l.text) && !utf8.RuneStart(l.text[offset]) {
		offset--
	}
	l.column += utf8.RuneCountInString(l.text[l.at:offset])
	l.at = offset
	return fault.Place{File: l.File, Line: l.number, Column: l.column}
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
		l.at, l.column = 0, 1
		l.malformed(0, "no reading was given", "leave the line out")
	}
	return l.given, l.faults
}
