package print

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// AppendFault appends the object that stands in the place of an answer: the
// file if there are several, the number of the line, what is wrong with it and,
// where there is one, a hint.
func AppendFault(b []byte, file string, line int, text, hint string) []byte {
	j := object{b: append(b, '{')}
	if file != "" {
		j.text("file", file)
	}
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
	keys    []string
	doubted []string // the figures with an uncertainty: with gauges, all
	head    []string
	where   []string // the file, if there are several
	buf     bytes.Buffer
	csv     *csv.Writer
}

// NewRows takes the columns of a sheet that has every figure, and behind them
// the file if there are several, the number of the line and what is wrong with
// it; ok is false where the answer is a list.
func NewRows(s *sheet.Sheet, several bool) (r *Rows, ok bool) {
	if mainGrid(s) != nil {
		return nil, false
	}
	out := &Rows{keys: csvKeys([]Job{{Sheet: s}})}
	if s.Gauged {
		s.Each(func(f *sheet.Figure) { out.doubted = append(out.doubted, f.Key) })
	}
	out.head = csvHead(out.keys, out.doubted, s)
	if several {
		out.head, out.where = append(out.head, "file"), []string{""}
	}
	out.head = append(out.head, "line", "error")
	return out.Of(""), true
}

// Of returns rows of the same columns for the lines of a file, and for another
// goroutine.
func (r *Rows) Of(file string) *Rows {
	out := &Rows{keys: r.keys, doubted: r.doubted, head: r.head}
	if r.where != nil {
		out.where = []string{quantity.Clean(file)}
	}
	out.csv = csv.NewWriter(&out.buf)
	out.csv.UseCRLF = true
	return out
}

// AppendHead appends the header.
func (r *Rows) AppendHead(b []byte) []byte { return r.append(b, r.head) }

// Append appends the row of a sheet, the answer to that line. A figure that has
// no column is an error, and nothing is appended.
func (r *Rows) Append(b []byte, line int, s *sheet.Sheet) ([]byte, error) {
	for key := range csvFields(s) {
		if !slices.Contains(r.head, key) {
			return b, fmt.Errorf("%s has no column", key)
		}
	}
	row := append(csvRow(r.keys, r.doubted, s), r.where...)
	return r.append(b, append(row, strconv.Itoa(line), "")), nil
}

// AppendFault appends the row that stands in the place of an answer.
func (r *Rows) AppendFault(b []byte, line int, text string) []byte {
	row := append(make([]string, len(r.head)-len(r.where)-2), r.where...)
	return r.append(b, append(row, strconv.Itoa(line), quantity.Clean(text)))
}

func (r *Rows) append(b []byte, row []string) []byte {
	r.buf.Reset()
	r.csv.Write(row) // neither fails: the writer is memory
	r.csv.Flush()
	return append(b, r.buf.Bytes()...)
}
