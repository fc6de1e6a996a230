// Package cli is the command line: one file a command, flags to readings to
// core to report. It holds no formula.
package cli

import (
	"bytes"
	"fmt"
	"io"
	"slices"

	"github.com/spf13/cobra"

	"evenlip/internal/fault"
	"evenlip/internal/sheet/print"
)

// The exit statuses beside those of package fault.
const (
	exitSignal = 128             // and the signal's number: as a shell reports it
	exitPipe   = exitSignal + 13 // nobody reads the answer any more
)

// app is one run of the program.
type app struct {
	args     []string
	in       io.Reader
	out, err io.Writer
	buf      bytes.Buffer // what goes to out if all ends well
	outside  bool         // --check found something
	done     string       // what stands even if the answer cannot be printed
	helpless error        // help was asked for on a command that there is not
	global   globals
	set      settings
}

// Main runs the program and returns its exit status.
func Main(args []string, in io.Reader, out, errw io.Writer) int {
	a := &app{args: args, in: in, out: out, err: errw}
	root := a.root(args)
	if completing(args) {
		a.completions(root)
	}
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(&a.buf)
	root.SetErr(errw)
	completionCommand(root)
	err := root.Execute()
	if err == nil {
		err = a.helpless
	}
	if err != nil {
		return a.fail(err)
	}
	if _, err := a.buf.WriteTo(out); err != nil {
		unprinted := fault.Unreadable("cannot write the answer", err)
		if a.done != "" {
			unprinted.Hint, unprinted.Status = a.done, fault.Unprinted
		}
		return a.fail(unprinted)
	}
	if a.outside {
		return int(fault.Outside)
	}
	return int(fault.OK)
}

// fail prints what went wrong and returns the status for it.
func (a *app) fail(err error) int {
	list := fault.Of(err)
	status := int(list.Exit())
	list = slices.DeleteFunc(slices.Clone(list), func(f *fault.Fault) bool { return f.Text == "" }) // its status says it all
	if len(list) > 0 && a.wantsJSON() {
		fmt.Fprintf(a.err, "%s\n", print.AppendErrors(nil, list))
		return status
	}
	for _, f := range list {
		a.complain("error:", f.Error())
		if f.Shown != "" {
			a.show(f.Shown)
		}
		if f.Hint != "" {
			a.complain("hint:", f.Hint)
		}
	}
	return status
}

// wantsJSON reports whether JSON was asked for, also behind the flag that is at fault.
func (a *app) wantsJSON() bool {
	const flag, form = "--format", string(print.JSON)
	at := slices.Index(a.args, flag)
	return slices.Contains(a.args, flag+"="+form) || at >= 0 && at+1 < len(a.args) && a.args[at+1] == form
}

// remark prints a line for a person, unless none is wanted.
func (a *app) remark(head, text string) {
	if !a.global.quiet {
		a.complain(head, text)
	}
}

// complain prints a line for a person.
func (a *app) complain(head, text string) { a.show(head + " " + text) }

// show prints text for a person, in letters where the locale has no more.
func (a *app) show(text string) {
	text = print.Harmless(text)
	if !showsUTF8() {
		text = print.Spelled(text)
	}
	fmt.Fprintln(a.err, text)
}

// noArgs is noArgs, and says so of a word that a blank has parted from its flag's.
func (a *app) noArgs(cmd *cobra.Command, args []string) error {
	if len(args) > 0 {
		if hint := a.parted(args[0]); hint != "" {
			return fault.New(hint, "%s takes no argument, but %q was given", cmd.Name(), args[0])
		}
	}
	return noArgs(cmd, args)
}

// noArgs is cobra.NoArgs with a hint.
func noArgs(cmd *cobra.Command, args []string) error {
	if err := unquoted(cmd.Name(), args); err != nil {
		return err
	}
	if len(args) > 0 {
		return fault.New("what it takes are flags: "+cmd.CommandPath()+" --help", "%s takes no argument, but %q was given", cmd.Name(), args[0])
	}
	return nil
}
