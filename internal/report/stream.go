package report

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"

	"evenlip/internal/figure"
)

// AppendFault appends the object that stands in the place of an answer: the
// number of the line, what is wrong with it and, where there is one, a hint.
func AppendFault(b []byte, line int, text, hint string) []byte {
	j := object{b: append(b, '{')}
	j.raw("line", strconv.Itoa(line))
	j.text("error", text)
	if hint != "" {
		j.text("hint", hint)
	}
	return append(j.b, '}')
}

// Rows turns sheets into rows of CSV under one header, for answers that come
// one after the other.
type Rows struct {
	keys []string
	head []string
	buf  bytes.Buffer
	csv  *csv.Writer
}

// NewRows takes the columns of a sheet that has every figure, and the number of
// the line and what is wrong with it behind them; ok is false where the answer
// is a list.
func NewRows(s *figure.Sheet) (r *Rows, ok bool) {
	if mainGrid(s) != nil {
		return nil, false
	}
	keys := csvKeys([]Job{{Sheet: s}})
	return (&Rows{keys: keys, head: append(csvHead(keys, nil, s), "line", "error")}).Clone(), true
}

// Clone returns Rows of the same columns for another goroutine.
func (r *Rows) Clone() *Rows {
	out := &Rows{keys: r.keys, head: r.head}
	out.csv = csv.NewWriter(&out.buf)
	out.csv.UseCRLF = true
	return out
}

// AppendHead appends the header.
func (r *Rows) AppendHead(b []byte) []byte { return r.append(b, r.head) }

// Append appends the row of a sheet, the answer to that line. A figure that has
// no column is an error, and nothing is appended.
func (r *Rows) Append(b []byte, line int, s *figure.Sheet) ([]byte, error) {
	for key := range csvFields(s) {
		if !slices.Contains(r.keys, key) {
			return b, fmt.Errorf("%s has no column", key)
		}
	}
	return r.append(b, append(csvRow(r.keys, nil, s), strconv.Itoa(line), "")), nil
}

// AppendFault appends the row that stands in the place of an answer.
func (r *Rows) AppendFault(b []byte, line int, text string) []byte {
	row := make([]string, len(r.head))
	row[len(row)-2], row[len(row)-1] = strconv.Itoa(line), clean(text)
	return r.append(b, row)
}

func (r *Rows) append(b []byte, row []string) []byte {
	r.buf.Reset()
	r.csv.Write(row) // neither fails: the writer is memory
	r.csv.Flush()
	return append(b, r.buf.Bytes()...)
}
