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

// CSV reads the drill of one record under a header: a line, or several where a
// quoted field has line ends in it. An empty field is a reading that was not taken.
// All that is wrong with the record's form is returned.
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
	if l.row == nil {
		l.row = newRowReader()
	}
	fields, starts, err := l.row.read(l.text)
	var parse *csv.ParseError
	switch {
	case errors.As(err, &parse):
		hint := ""
		if errors.Is(err, csv.ErrQuote) {
			hint = `a quoted field ends before a comma or the line's end, and a " inside it is written twice`
		}
		at := lineStart(l.text, parse.Line-parse.StartLine) + parse.Column
		l.malformed(max(0, min(at, len(l.text))-1), "not CSV: "+parse.Err.Error(), hint)
	case err != nil: // a line that is not blank has a field
		l.malformed(0, "not CSV: "+err.Error(), "")
	case want > 0 && len(fields) != want:
		l.malformed(0, fmt.Sprintf("has %d fields where the header has %d", len(fields), want), "leave a field empty if it was not read, its comma stays")
	}
	return fields, starts
}

// rowReader reads one record after the other with the library's reader, which
// would otherwise be made anew for each.
type rowReader struct {
	csv    *csv.Reader
	text   strings.Reader
	starts []int
}

func newRowReader() *rowReader {
	r := new(rowReader)
	r.csv = csv.NewReader(&r.text)
	r.csv.FieldsPerRecord, r.csv.TrimLeadingSpace, r.csv.ReuseRecord = -1, true, true
	return r
}

func (r *rowReader) read(line string) (fields []string, starts []int, err error) {
	r.text.Reset(line)
	fields, err = r.csv.Read()
	r.starts = r.starts[:0]
	first := 0
	for i := range fields {
		at, column := r.csv.FieldPos(i)
		if i == 0 {
			first = at
		}
		r.starts = append(r.starts, lineStart(line, at-first)+column-1)
	}
	return fields, r.starts, err
}

// lineStart returns the byte at which a line of a text begins, counted from 0.
func lineStart(text string, line int) int {
	at := 0
	for range line {
		at += strings.IndexByte(text[at:], '\n') + 1
	}
	return at
}
