package drill

import (
	"encoding/csv"
	"errors"
	"evenlip/internal/fault"
	"fmt"
	"strings"
)

// Header is the first line of CSV: what its columns are.
type Header struct{ columns []Reading }

// ReadHeader reads the line that names the columns: the flags' names, and name
// and units. Everything that is wrong with it is returned.
func ReadHeader(file string, number int, line []byte) (*Header, fault.List) {
	l := Lines{File: file}
	l.begin(number, string(line))
	names, starts := l.fields(0)
	h := new(Header)
	for i, name := range names {
		name = strings.TrimSpace(name)
		r, known := l.key(l.to(starts[i]), name)
		if !known && strings.ContainsAny(name, ";\t") {
			return h, fault.List{fault.New("save it as CSV with commas", "no comma stands between the columns").In(fault.Place{File: file, Line: number, Column: 1}, "")}
		}
		h.columns = append(h.columns, r)
	}
	return h, l.faults
}

// CSV reads the drill of one line under a header. An empty field is a reading that was
// not taken. All that is wrong with the line's form is returned.
func (l *Lines) CSV(h *Header, number int, line []byte) ([]Given, fault.List) {
	l.begin(number, string(line))
	fields, starts := l.fields(len(h.columns))
	if len(l.faults) > 0 {
		return nil, l.faults
	}
	for i, text := range fields {
		if strings.TrimSpace(text) != "" {
			l.take(starts[i], h.columns[i], text)
		}
	}
	return l.end()
}

// fields cuts the line into its fields, so many or any number if that is 0,
// and tells at which byte each begins.
func (l *Lines) fields(want int) (fields []string, starts []int) {
	if l.csv == nil {
		l.csv = csv.NewReader(&l.csvText)
		l.csv.FieldsPerRecord, l.csv.TrimLeadingSpace, l.csv.ReuseRecord = -1, true, true
	}
	l.csvText.Reset(l.text)
	fields, err := l.csv.Read()
	var parse *csv.ParseError
	switch {
	case errors.As(err, &parse):
		hint := ""
		if errors.Is(err, csv.ErrQuote) {
			hint = `a quoted field ends before a comma or the line's end, and a " inside it is written twice`
		}
		l.malformed(max(0, min(parse.Column, len(l.text))-1), "not CSV: "+parse.Err.Error(), hint)
	case err != nil: // a line that is not blank has a field
		l.malformed(0, "not CSV: "+err.Error(), "")
	case want > 0 && len(fields) != want:
		l.malformed(0, fmt.Sprintf("has %d fields where the header has %d", len(fields), want), "leave a field empty if it was not read, its comma stays")
	}
	l.starts = l.starts[:0]
	for i := range fields {
		_, column := l.csv.FieldPos(i)
		l.starts = append(l.starts, column-1)
	}
	return fields, l.starts
}
