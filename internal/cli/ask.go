package cli

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"evenlip/internal/drill"
	"evenlip/internal/report"
)

// bench is the order in which a drill in the hand is looked at: first what ends
// the matter, then its dullness, its point, and what is left of it.
var bench = [...]drill.Reading{
	drill.Size, drill.Cracked, drill.Material, drill.FlankWear, drill.CornerWear, drill.MarginWear, drill.LipChip,
	drill.LipAngle, drill.LipHeight, drill.Clearance, drill.HeelDrop, drill.HeelTurn,
	drill.Web, drill.ChiselAngle, drill.ChiselLength, drill.Flute, drill.Depth,
}

// inBenchOrder returns the readings, those of the bench first, and how many
// those are.
func inBenchOrder(readings []drill.Reading) (ordered []drill.Reading, seen int) {
	for _, r := range bench {
		if slices.Contains(readings, r) {
			ordered = append(ordered, r)
		}
	}
	seen = len(ordered)
	for _, r := range readings {
		if !slices.Contains(bench[:], r) {
			ordered = append(ordered, r)
		}
	}
	return ordered, seen
}

// What is typed in place of a reading.
const (
	goBack  = "<"
	helpMe  = "?"
	theRest = "more"
)

var errBack = errors.New("back to the last reading")

// talk is a person at the bench being asked.
type talk struct {
	*app
	in *bufio.Reader
	c  calculation
	d  *drill.Drill
}

// ask takes the readings one by one on a terminal. A mistake is explained and
// asked again; what was read before stays.
func (a *app) ask(cmd *cobra.Command, c calculation, h *held) error {
	if _, ok := terminal(a.in); !ok {
		return usage("give the readings as flags or in a file", "--ask: wants a terminal to ask on")
	}
	if errs := a.faults(c, h); len(errs) > 0 {
		return errs
	}
	a.lines("", "One reading at a time. Enter skips a reading, < goes back, ? helps; Ctrl-D ends the questions.")
	t := talk{a, bufio.NewReader(a.in), c, h.Drill}
	if err := t.all(); errors.Is(err, io.EOF) {
		fmt.Fprintln(a.err)
	} else if err != nil {
		return err
	}
	fmt.Fprintf(a.err, "\nThe same again: %s\n\n", commandLine(cmd, h.Drill))
	return nil
}

// all asks for every reading that is not known yet, the less usual ones only
// if that is wanted.
func (t *talk) all() error {
	order, usual := inBenchOrder(t.c.takes())
	var asked []int // places in order, for going back
	for i := 0; i < len(order); i++ {
		if i == usual && usual > 0 && !t.more(order[usual:]) {
			return nil
		}
		if r := order[i]; t.d.Written(r) != "" || needless(t.d, r) {
			continue
		}
		switch err := t.one(order[i]); {
		case errors.Is(err, errBack):
			if len(asked) > 0 {
				i = asked[len(asked)-1]
				asked = asked[:len(asked)-1]
				t.d.Drop(order[i])
			}
			i--
			continue
		case err != nil:
			return err
		}
		if order[i] == drill.Cracked && t.d.Has(drill.Cracked) { // nothing else matters
			return nil
		}
		asked = append(asked, i)
	}
	return nil
}

// more asks whether to go on to the less usual readings.
func (t *talk) more(rest []drill.Reading) bool {
	names := make([]string, 0, len(rest))
	for _, r := range rest {
		if t.d.Written(r) == "" && !needless(t.d, r) {
			names = append(names, r.String())
		}
	}
	if len(names) == 0 {
		return false
	}
	fmt.Fprintln(t.err)
	t.lines("", "Enter for the answer, or "+theRest+" for what is read less often: "+strings.Join(names, ", "))
	fmt.Fprint(t.err, "answer> ")
	line, _ := t.in.ReadString('\n')
	return strings.TrimSpace(line) == theRest
}

// one asks for one reading until it is understood, skipped or gone back from.
func (t *talk) one(r drill.Reading) error {
	s := r.Spec()
	fmt.Fprintln(t.err)
	t.lines("", s.Name+": "+s.Help)
	t.lines("  ", s.How)
	if s.Usual != "" {
		t.lines("  ", "usually: "+s.Usual)
	}
	for {
		fmt.Fprintf(t.err, "%s> ", s.Name)
		line, err := t.in.ReadString('\n')
		switch line = strings.TrimSpace(line); line {
		case "":
			return err
		case goBack:
			return errBack
		case helpMe:
			t.help(r)
		default:
			if t.take(r, line) {
				return err
			}
		}
		if err != nil {
			return err
		}
	}
}

// help says what a reading may be.
func (t *talk) help(r drill.Reading) {
	if r != drill.Material {
		t.lines("  ", r.Spec().How)
		return
	}
	var names []string
	for _, m := range t.book().Materials() {
		names = append(names, m.Name)
	}
	t.lines("  ", strings.Join(names, ", "))
}

// take sets a reading, or says why it cannot be.
func (t *talk) take(r drill.Reading, line string) bool {
	if r.Spec().Switch {
		switch strings.ToLower(line) {
		case "n", "no":
			return true
		case "y", "yes":
			line = "yes"
		default:
			t.lines("  ", "takes yes or no")
			return false
		}
	}
	t.d.Set(r, line)
	complaint, hint := t.complaint(t.c, t.d, r)
	if complaint == "" {
		return true
	}
	t.d.Drop(r)
	t.lines("  ", complaint)
	if hint != "" {
		t.lines("  ", hint)
	}
	return false
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
	case drill.LipLength:
		return d.Has(drill.LipHeight)
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
	found := c.impossible(d, true)
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
