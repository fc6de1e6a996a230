package cli

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"evenlip/internal/drill"
	"evenlip/internal/report"
)

// ask takes the readings one by one on a terminal. A mistake is explained and
// asked again; what was read before stays.
func (a *app) ask(cmd *cobra.Command, c calculation, d *drill.Drill) error {
	if _, ok := terminal(a.in); !ok {
		return usage("give the readings as flags or in a file", "--ask: wants a terminal to ask on")
	}
	if errs := a.faults(c, d); len(errs) > 0 {
		return errs
	}
	fmt.Fprintln(a.err, "One reading at a time. Enter skips a reading; Ctrl-D ends the questions.")
	in := bufio.NewReader(a.in)
	for _, r := range c.takes() {
		if d.Written(r) != "" || needless(d, r) {
			continue
		}
		if err := a.askOne(in, c, d, r); errors.Is(err, io.EOF) {
			fmt.Fprintln(a.err)
			break
		} else if err != nil {
			return err
		}
	}
	fmt.Fprintf(a.err, "\nThe same again: %s\n\n", commandLine(cmd, d))
	return nil
}

func (a *app) askOne(in *bufio.Reader, c calculation, d *drill.Drill, r drill.Reading) error {
	s := r.Spec()
	fmt.Fprintln(a.err)
	a.lines("", s.Name+": "+s.Help)
	a.lines("  ", s.How)
	if s.Usual != "" {
		a.lines("  ", "usually: "+s.Usual)
	}
	for {
		fmt.Fprintf(a.err, "%s> ", s.Name)
		line, err := in.ReadString('\n')
		line = strings.TrimSpace(line)
		if line == "" {
			return err
		}
		d.Set(r, line)
		complaint, hint := a.complaint(c, d, r)
		if complaint == "" {
			return err
		}
		d.Drop(r)
		a.lines("  ", complaint)
		if hint != "" {
			a.lines("  ", hint)
		}
		if err != nil {
			return err
		}
	}
}

// needless reports whether a reading would say nothing that is not known from
// those taken before it.
func needless(d *drill.Drill, r drill.Reading) bool {
	switch r {
	case drill.SecondWebAt:
		return !d.Has(drill.SecondWeb)
	case drill.WebTaper:
		return d.Has(drill.SecondWeb) && d.Has(drill.SecondWebAt)
	case drill.ChiselLength:
		return d.Has(drill.Web) && d.Has(drill.ChiselAngle)
	case drill.HeelDrop:
		return d.Has(drill.Clearance)
	case drill.HeelTurn:
		return !d.Has(drill.HeelDrop)
	}
	return false
}

// lines prints text in lines that fit the terminal.
func (a *app) lines(indent, text string) {
	width, err := a.columns()
	if err != nil {
		width = usualWidth
	}
	for _, l := range report.Wrap(text, width-len(indent)) {
		fmt.Fprintln(a.err, indent+l)
	}
}

// complaint says what is wrong with the reading just taken, "" if nothing is.
// What was read before was right, so any complaint is about this reading, if
// only beside an older one.
func (a *app) complaint(c calculation, d *drill.Drill, r drill.Reading) (text, hint string) {
	if errs := d.Resolve(); len(errs) > 0 {
		return errs[0].Err.Error(), hintOf(errs[0].Err)
	}
	found := c.impossible(d)
	if len(found) == 0 {
		return "", ""
	}
	text = a.say(found[0], d)
	if found[0].Reading != r {
		text = found[0].Reading.String() + ": " + text
	}
	return text, found[0].Hint
}

// commandLine is the command that gives the same answer again.
func commandLine(cmd *cobra.Command, d *drill.Drill) string {
	out := "evenlip " + cmd.Name()
	for _, r := range drill.All() {
		switch text := d.Written(r); {
		case !d.Has(r):
		case r.Spec().Switch:
			out += " --" + r.String()
		default:
			out += " --" + r.String() + " " + shellQuoted(text)
		}
	}
	cmd.InheritedFlags().VisitAll(func(f *pflag.Flag) {
		if f.Changed {
			out += " --" + f.Name + "=" + shellQuoted(f.Value.String())
		}
	})
	return out
}

// shellQuoted quotes a word for a POSIX shell where it needs it.
func shellQuoted(s string) string {
	if strings.Trim(s, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789.,/-+=:_") == "" {
		return s
	}
	return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'"
}
