package cli

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"evenlip/internal/batch"
	"evenlip/internal/drill"
	"evenlip/internal/sheet/print"
	"evenlip/internal/strict"
)

// batchWorker answers one line after the other.
type batchWorker struct {
	run    *batchRun
	lines  drill.Lines
	json   print.Encoder
	header *drill.Header // of CSV; nil for JSON
	rows   *print.Rows   // for CSV; nil for JSON
}

// Answer implements batch.Worker.
func (w *batchWorker) Answer(out []byte, line batch.Line) ([]byte, error) {
	d, errs := w.drill(line)
	if len(errs) > 0 {
		return w.refuse(out, line, errs)
	}
	a := w.run.app
	s := a.job(*w.run.command, d).Sheet
	if a.global.check && s.Outside() {
		w.run.outside.Store(true)
	}
	switch {
	case w.rows != nil:
		out, err := w.rows.Append(out, line.Number, s)
		if err != nil {
			return w.refuse(out, line, []error{err})
		}
		return out, nil
	}
	out = append(w.json.Append(out, s), '\n')
	s.Free()
	return out, nil
}

// drill reads the line and refuses what cannot be.
func (w *batchWorker) drill(line batch.Line) (*drill.Drill, []error) {
	if line.Cut {
		return nil, []error{&strict.Error{File: w.lines.File, Line: line.Number, Text: fmt.Sprintf("is longer than %d bytes: no drill takes that", batch.Longest)}}
	}
	d, places, errs := w.read(line)
	if !places.UnitsKnown() {
		return nil, errs
	}
	for _, im := range w.run.command.impossible(d, len(errs) == 0) {
		fault := places.Fault(im.Reading, errors.New(w.run.app.say(im, d)))
		fault.Hint = im.Hint
		if fault.Line == 0 {
			fault.Line = line.Number
		}
		errs = append(errs, fault)
	}
	slices.SortStableFunc(errs, strict.ByPlace)
	return d, errs
}

func (w *batchWorker) read(line batch.Line) (*drill.Drill, *drill.Places, []error) {
	if w.header != nil {
		return w.lines.CSV(w.header, line.Number, line.Text)
	}
	return w.lines.JSON(line.Number, line.Text)
}

// refuse puts what is wrong with a line in the place of its answer.
func (w *batchWorker) refuse(out []byte, line batch.Line, errs []error) ([]byte, error) {
	var texts, hints []string
	for _, err := range errs {
		var e *strict.Error
		if !errors.As(err, &e) {
			e = &strict.Error{Text: err.Error()}
		}
		texts = append(texts, e.Text)
		if e.Hint != "" {
			hints = append(hints, e.Hint)
		}
	}
	text := strings.Join(texts, "; ")
	if w.rows != nil {
		return w.rows.AppendFault(out, line.Number, text), listOf(errs)
	}
	file := ""
	if w.run.several {
		file = w.lines.File
	}
	return append(print.AppendFault(out, file, line.Number, text, strings.Join(hints, "; ")), '\n'), listOf(errs)
}
