package print

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// writeCSV prints a header, then a row a drill in millimetres and degrees; or the
// rows of the list that is a sheet's main answer. With crlf it is RFC 4180 to the
// line ends; without, a line ends in a line feed.
func writeCSV(w io.Writer, jobs []Job, crlf bool) error {
	out := csv.NewWriter(w)
	out.UseCRLF = crlf
	keys, doubted := csvKeys(jobs), csvDoubted(jobs)
	for i, j := range jobs {
		if g := mainGrid(j.Sheet); g != nil {
			csvGrid(out, g, i == 0)
			continue
		}
		if i == 0 {
			out.Write(csvHead(keys, doubted, j.Sheet))
		}
		out.Write(csvRow(keys, doubted, j.Sheet))
	}
	out.Flush()
	return out.Error()
}

func mainGrid(s *sheet.Sheet) *sheet.Grid {
	for i := range s.Grids {
		if s.Grids[i].Main {
			return &s.Grids[i]
		}
	}
	return nil
}

// csvKeys lists the figures and the plain lists of all the jobs, so that each
// row has as many fields as the header: a cracked drill has fewer figures than
// a whole one.
func csvKeys(jobs []Job) []string {
	var keys []string
	add := func(key string) {
		if !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	for _, j := range jobs {
		j.Sheet.Each(func(f *sheet.Figure) { add(f.Key) })
	}
	for _, j := range jobs {
		for i := range j.Sheet.Grids {
			if g := &j.Sheet.Grids[i]; len(g.Columns) == 1 {
				add(g.Key)
			}
		}
	}
	return keys
}

// uncertaintyOf is the name of the column that holds a figure's uncertainty.
func uncertaintyOf(key string) string { return "uncertainty_" + key }

// csvDoubted lists the figures that carry an uncertainty in any of the jobs.
func csvDoubted(jobs []Job) []string {
	var keys []string
	for _, j := range jobs {
		j.Sheet.Each(func(f *sheet.Figure) {
			if _, _, ok := exported(f); ok && !slices.Contains(keys, f.Key) {
				keys = append(keys, f.Key)
			}
		})
	}
	return keys
}

func csvHead(keys, doubted []string, s *sheet.Sheet) []string {
	head := append([]string{"drill"}, keys...)
	for _, key := range doubted {
		head = append(head, uncertaintyOf(key))
	}
	if s.Verdict != nil {
		head = append(head, "verdict")
	}
	if s.Shop {
		head = append(head, ofShopKey)
	}
	return append(head, "findings")
}

func csvRow(keys, doubted []string, s *sheet.Sheet) []string {
	fields := csvFields(s)
	row := []string{clean(s.Title)}
	for _, key := range keys {
		row = append(row, fields[key])
	}
	for _, key := range doubted {
		row = append(row, fields[uncertaintyOf(key)])
	}
	if s.Verdict != nil {
		row = append(row, s.Verdict.Word)
	}
	if s.Shop {
		row = append(row, strings.Join(setByShop(s), " "))
	}
	codes := make([]string, len(s.Findings))
	for i, f := range s.Findings {
		codes[i] = f.Code
	}
	return append(row, strings.Join(codes, " "))
}

// csvFields returns the figures of a sheet, their uncertainties and its plain
// lists by the names of their columns.
func csvFields(s *sheet.Sheet) map[string]string {
	fields := map[string]string{}
	s.Each(func(f *sheet.Figure) {
		fields[f.Key] = field(f.Kind, knownWord(f), f.Value)
		if u, _, ok := exported(f); ok {
			fields[uncertaintyOf(f.Key)] = full(u)
		}
	})
	for i := range s.Grids {
		if g := &s.Grids[i]; len(g.Columns) == 1 {
			fields[g.Key] = oneCell(g)
		}
	}
	return fields
}

// oneCell puts a plain list into one cell, its items apart by a semicolon.
func oneCell(g *sheet.Grid) string {
	items := make([]string, len(g.Rows))
	for i, row := range g.Rows {
		items[i] = field(g.Columns[0].Kind, row[0].Word, row[0].Value)
	}
	return strings.Join(items, "; ")
}

func csvGrid(out *csv.Writer, g *sheet.Grid, head bool) {
	marked := anyOfShop(g)
	if head {
		keys := make([]string, len(g.Columns))
		for i, c := range g.Columns {
			keys[i] = c.Key
		}
		if marked {
			keys = append(keys, ofShopKey)
		}
		out.Write(keys)
	}
	for _, row := range g.Rows {
		cells := make([]string, len(row))
		for i, c := range row {
			cells[i] = field(g.Columns[i].Kind, c.Word, c.Value)
		}
		if marked {
			cells = append(cells, ofShop(g, row))
		}
		out.Write(cells)
	}
}

// field is a word, or a number without one; what is not known is empty.
func field(kind quantity.Kind, word string, v float64) string {
	switch {
	case word != "" && kind == quantity.Switch:
		return strconv.FormatBool(word == yes)
	case word != "":
		return clean(word)
	}
	return full(quantity.Export(kind, v))
}

// clean is quantity.Clean line by line: a quoted field may hold line breaks.
func clean(s string) string {
	lines := strings.Split(strings.ReplaceAll(s, "\r\n", "\n"), "\n")
	for i, line := range lines {
		lines[i] = quantity.Clean(line)
	}
	return strings.Join(lines, "\n")
}

// full prints v in full precision, "" for NaN.
func full(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	return string(appendNumber(nil, v))
}

// Rows turns sheets into rows of CSV under one header, for answers that come
// one after the other.
type Rows struct {
	keys    []string
	doubted []string // the figures with an uncertainty: with gauges, all
	head    []string
	where   []string // the file, if there are several
	crlf    bool
	buf     bytes.Buffer
	csv     *csv.Writer
}

// NewRows takes the columns of a sheet that has every figure, and behind them
// the file if there are several, the number of the line and what is wrong with
// it; ok is false where the answer is a list. With crlf a line ends in both.
func NewRows(s *sheet.Sheet, several, crlf bool) (r *Rows, ok bool) {
	if mainGrid(s) != nil {
		return nil, false
	}
	out := &Rows{keys: csvKeys([]Job{{Sheet: s}}), crlf: crlf}
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
	out := &Rows{keys: r.keys, doubted: r.doubted, head: r.head, crlf: r.crlf}
	if r.where != nil {
		out.where = []string{clean(file)}
	}
	out.csv = csv.NewWriter(&out.buf)
	out.csv.UseCRLF = r.crlf
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
	return r.append(b, append(row, strconv.Itoa(line), clean(text)))
}

func (r *Rows) append(b []byte, row []string) []byte {
	r.buf.Reset()
	r.csv.Write(row) // neither fails: the writer is memory
	r.csv.Flush()
	return append(b, r.buf.Bytes()...)
}
