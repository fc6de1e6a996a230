// Package cli is the command line: one file a command, flags to readings to
// core to report. It holds no formula.
package cli

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"evenlip/internal/handbook/shop"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet/print"
	"evenlip/internal/strict"
)

// The exit statuses.
const (
	exitOK      = 0
	exitOutside = 1 // with --check: outside a limit
	exitUsage   = 2 // wrong usage or an impossible input
	exitData    = 3 // a data file that cannot be read or makes no sense

	exitSignal = 128             // and the signal's number: as a shell reports it
	exitPipe   = exitSignal + 13 // nobody reads the answer any more
)

// app is one run of the program.
type app struct {
	in       io.Reader
	out, err io.Writer
	buf      bytes.Buffer // what goes to out if all ends well
	outside  bool         // --check found something
	done     string       // what stands even if the answer cannot be printed
	global   globals
	shop     *shop.Shop // nil where the shop has set nothing
}

// Main runs the program and returns its exit status.
func Main(args []string, in io.Reader, out, errw io.Writer) int {
	a := &app{in: in, out: out, err: errw}
	root := a.root(args)
	if completing(args) {
		a.completions(root)
	}
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(&a.buf)
	root.SetErr(errw)
	completionCommand(root)
	if err := root.Execute(); err != nil {
		return a.fail(err)
	}
	if _, err := a.buf.WriteTo(out); err != nil {
		return a.fail(&hinted{&dataError{fmt.Errorf("cannot write the answer: %w", err)}, a.done})
	}
	if a.outside {
		return exitOutside
	}
	return exitOK
}

// dataError marks an error as one of the data, not of the usage.
type dataError struct{ error }

func (e *dataError) Unwrap() error { return e.error }

// ended is the end of a run that has an exit status of its own; said may be nil.
type ended struct {
	status int
	said   error
}

func (e *ended) Error() string { return fmt.Sprint(e.said) }

// hinted is an error with advice.
type hinted struct {
	error
	hint string
}

func (e *hinted) Unwrap() error { return e.error }

// many is several errors, each on lines of its own.
type many []error

func (m many) Error() string { return errors.Join(m...).Error() }

// and adds an error, or each of those that it is made of: every one has a hint
// and a status of its own.
func (m many) and(err error) many {
	var list many
	if errors.As(err, &list) {
		return append(m, list...)
	}
	return append(m, err)
}

// fail prints what went wrong and returns the status for it.
func (a *app) fail(err error) int {
	var early *ended
	if errors.As(err, &early) {
		if early.said != nil {
			fmt.Fprintln(a.err, "error:", early.said)
		}
		return early.status
	}
	var list many
	if !errors.As(err, &list) {
		list = many{err}
	}
	status := exitUsage
	for _, e := range list {
		a.complain("error:", e.Error())
		if hint := hintOf(e); hint != "" {
			a.complain("hint:", hint)
		}
		var data *dataError
		var file *strict.Error
		if errors.As(e, &data) || errors.As(e, &file) || errors.Is(err, os.ErrNotExist) {
			status = exitData
		}
	}
	return status
}

// complain prints a line for a person, in letters where the locale has no more.
func (a *app) complain(head, text string) {
	text = print.Harmless(text)
	if !showsUTF8() {
		text = print.Spelled(text)
	}
	fmt.Fprintln(a.err, head, text)
}

func hintOf(err error) string {
	var h *hinted
	var q *quantity.Error
	var f *strict.Error
	switch {
	case errors.As(err, &h):
		return h.hint
	case errors.As(err, &f):
		return f.Hint
	case errors.As(err, &q):
		return q.Hint
	}
	return ""
}

func usage(hint, format string, args ...any) error {
	return &hinted{fmt.Errorf(format, args...), hint}
}

// noArgs is cobra.NoArgs with a hint.
func noArgs(cmd *cobra.Command, args []string) error {
	if err := unquoted(cmd.Name(), args); err != nil {
		return err
	}
	if len(args) > 0 {
		return usage("what it takes are flags: "+cmd.CommandPath()+" --help", "%s takes no argument, but %q was given", cmd.Name(), args[0])
	}
	return nil
}
