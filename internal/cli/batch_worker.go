package cli

import (
	"strings"

	"evenlip/internal/batch"
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/sheet/print"
)

// batchWorker answers one line after the other.
type batchWorker struct {
	run    *batchRun
	lines  drill.Lines
	read   drill.Read
	json   print.Encoder
	header *drill.Header // of CSV; nil for JSON
	rows   *print.Rows   // for CSV; nil for JSON
}

// Answer implements batch.Worker.
func (w *batchWorker) Answer(out []byte, line batch.Line) ([]byte, error) {
	if faults := w.take(line); len(faults) > 0 {
		return w.refuse(out, line, faults)
	}
	set := &w.run.app.set
	s := command.Answer(w.run.command, &w.read.Drill, set.answering())
	s.Shop = set.shop
	s.Origin.File, s.Origin.Line = w.file(), line.Number
	if set.check && s.Outside() {
		w.run.outside.Store(true)
	}
	if w.rows != nil {
		out, err := w.rows.Append(out, line.Number, s)
		if err != nil {
			return w.refuse(out, line, fault.Of(err))
		}
		return out, nil
	}
	out = append(w.json.Append(out, s), '\n')
	s.Free()
	return out, nil
}

// take reads the line and refuses what cannot be.
func (w *batchWorker) take(line batch.Line) fault.List {
	at := fault.Place{File: w.lines.File, Line: line.Number}
	if line.Cut {
		return fault.List{fault.New("", "is longer than %d bytes: no drill takes that", batch.Longest).In(at, "")}
	}
	read := w.lines.JSON
	if w.header != nil {
		read = func(number int, text []byte) ([]drill.Given, fault.List) { return w.lines.CSV(w.header, number, text) }
	}
	given, faults := read(line.Number, line.Text)
	faults = append(faults, w.read.Resolve(given, w.run.app.set.reading())...)
	faults = append(faults, command.Possible(w.run.command, &w.read, &w.read.Drill, len(faults) == 0)...)
	for _, f := range faults {
		if f.At.Line == 0 {
			f.At = at
		}
	}
	faults.Sort()
	return faults
}

// file is the file of the line, where there are several.
func (w *batchWorker) file() string {
	if w.run.several {
		return w.lines.File
	}
	return ""
}

// refuse puts what is wrong with a line in the place of its answer.
func (w *batchWorker) refuse(out []byte, line batch.Line, faults fault.List) ([]byte, error) {
	var texts, hints []string
	for _, f := range faults {
		texts = append(texts, f.Message())
		if f.Hint != "" {
			hints = append(hints, f.Hint)
		}
	}
	text := strings.Join(texts, "; ")
	if w.rows != nil {
		return w.rows.AppendFault(out, line.Number, text), faults
	}
	return append(print.AppendFault(out, w.file(), line.Number, text, strings.Join(hints, "; ")), '\n'), faults
}
