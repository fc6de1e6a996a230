package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync/atomic"
	"syscall"
	"time"

	"evenlip/internal/batch"
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/sheet/print"
)

// batchRun is what the lines of all the files have in common.
type batchRun struct {
	*batchFlags
	app      *app
	command  command.Command
	rows     *print.Rows // for CSV; nil for JSON
	told     []string    // the cautions, where the answers do not carry them
	outside  atomic.Bool // a line is outside a limit
	all      batch.Tally
	several  bool // files, so that the number of a line does not tell it
	progress *progress
}

func (a *app) newBatch(f *batchFlags, formatted, several bool) (*batchRun, error) {
	b := &batchRun{batchFlags: f, app: a, several: several}
	var err error
	if b.command, err = ofDrill(f.command); err != nil {
		return nil, err
	}
	if !formatted {
		a.set.printAs(print.JSON)
	}
	form := a.set.Form
	switch {
	case !slices.Contains([]string{"", inputJSON, inputCSV}, f.input):
		return nil, fault.Flag("input", "", "cannot read %q: takes json or csv", f.input)
	case form != print.JSON && form != print.CSV:
		return nil, fault.Flag("format", "leave it out for JSON Lines", "batch prints json or csv, not %s", form)
	case form == print.JSON && f.sources:
		return b, nil
	}
	return b, b.likeSample(form)
}

// What the lines of a file are.
const (
	inputJSON = "json"
	inputCSV  = "csv"
)

// likeSample takes the columns of CSV, and the cautions that answers without
// them leave to be told, from the built-in sample drill: it has every figure.
func (b *batchRun) likeSample(form print.Form) error {
	var rd drill.Read
	if faults := rd.Resolve(drill.Sample(), b.app.set.reading()); len(faults) > 0 {
		return faults
	}
	s := command.Answer(b.command, &rd.Drill, b.app.set.answering())
	b.told = s.Cautions
	if form == print.JSON {
		return nil
	}
	var ok bool
	if b.rows, ok = print.NewRows(s, b.several, b.app.set.CRLF); !ok {
		return fault.Flag("format", "leave --format out for JSON Lines", "%s answers one drill with a table, which is no row of CSV", b.command.About().Name)
	}
	return nil
}

// tellCautions tells once what the answers do not repeat.
func (b *batchRun) tellCautions() {
	if len(b.told) == 0 || b.app.global.quiet {
		return
	}
	const lead = "safety  " // as at the foot of a table
	for _, line := range hang(lead, strings.Join(b.told, "; "), len(lead), usualWidth) {
		fmt.Fprintln(b.app.err, line)
	}
}

// file answers the lines of one file.
func (b *batchRun) file(ctx context.Context, name string, first bool) error {
	in, shown := b.app.in, "standard input"
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return cannotRead(name, err)
		}
		defer f.Close()
		in, shown = f, name
	}
	lines := batch.NewLines(in)
	var header *drill.Header
	if b.input == inputCSV || b.input == "" && strings.EqualFold(filepath.Ext(name), ".csv") {
		var err error
		if header, err = readHeader(shown, lines); err != nil {
			return err
		}
	}
	if b.rows != nil && first {
		if _, err := b.app.out.Write(b.rows.AppendHead(nil)); err != nil {
			return b.stopped(shown, batch.Tally{}, &batch.OutputError{Err: err})
		}
	}
	tally, err := batch.Run(ctx, lines, b.app.out, b.workers(shown, header), batch.Options{Strict: b.strict, Written: func(t batch.Tally) { b.progress.tell(time.Now(), b.all.Lines+t.Lines) }})
	b.all.Lines += tally.Lines
	b.all.Bad += tally.Bad
	return b.stopped(shown, tally, err)
}

func readHeader(file string, lines *batch.Lines) (*drill.Header, error) {
	line, err := lines.Next()
	switch {
	case err == io.EOF:
		return nil, &fault.Fault{At: fault.Place{File: file}, Text: "the header is missing", Hint: "the first line names the columns: size,web,lip-angle"}
	case err != nil:
		return nil, cannotRead(file, err)
	}
	header, faults := drill.ReadHeader(file, line.Number, line.Text)
	return header, faults.Err()
}

// mostWorkers are more than the one who writes their answers can keep up with;
// each takes some memory.
const mostWorkers = 16

func (b *batchRun) workers(file string, header *drill.Header) []batch.Worker {
	workers := make([]batch.Worker, min(runtime.GOMAXPROCS(0), mostWorkers))
	for i := range workers {
		w := &batchWorker{run: b, lines: drill.Lines{File: file}, header: header,
			json: print.Encoder{Version: b.app.set.Version, Explain: b.app.set.Explain, Lean: !b.sources}}
		if b.rows != nil {
			w.rows = b.rows.Of(file)
		}
		workers[i] = w
	}
	return workers
}

// stopped puts into words why a file was not answered to its end.
func (b *batchRun) stopped(file string, tally batch.Tally, err error) error {
	var in *batch.InputError
	var out *batch.OutputError
	var signal interrupted
	switch {
	case errors.As(err, &in):
		return cannotRead(file, in.Unwrap())
	case errors.As(err, &out) && errors.Is(err, syscall.EPIPE):
		return &fault.Fault{Status: exitPipe} // whoever read has read enough
	case errors.As(err, &out):
		return fault.Unreadable("cannot write the answers", out.Unwrap())
	case errors.As(err, &signal):
		return &fault.Fault{Status: exitSignal + fault.Status(signal.Signal), Text: fmt.Sprintf("%s: stopped after line %d: %s", file, tally.Last, err)}
	}
	return err
}

// end says how it went, once every line is answered.
func (b *batchRun) end() error {
	if b.all.Bad > 0 {
		return fault.NewData("", "%d of %d lines make no sense; an error stands in the place of each answer", b.all.Bad, b.all.Lines)
	}
	b.app.outside = b.app.set.check && b.outside.Load()
	return nil
}
