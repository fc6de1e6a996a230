// Package ask puts the questions at the bench: one reading after the other, forward
// and back, each looked at as soon as it is answered.
package ask

import (
	"bufio"
	"cmp"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet/print"
)

// What is typed in place of a reading.
const (
	goBack  = "<"
	helpMe  = "?"
	takeOut = "-"
	enough  = "q"
	theRest = "more"
)

var (
	errBack   = errors.New("back to the question before")
	errEnough = errors.New("no more questions")
)

// Talk is a person at the bench being asked.
type Talk struct {
	In      io.Reader
	Out     io.Writer
	Command command.Command
	Options drill.Options // what the answers are understood with
	Width   int           // of the terminal
	ASCII   bool          // it shows letters only
}

// Ask puts the questions that what was given leaves open, and returns it with the
// answers behind it. An end of the input ends the questions. Errors are the terminal's.
func (t Talk) Ask(given []drill.Given) ([]drill.Given, error) {
	w := &talk{Talk: t, in: bufio.NewReader(t.In), given: slices.Clone(given)}
	w.read.Resolve(w.given, w.Options)
	for _, r := range w.read.Taken() {
		w.known = append(w.known, r.Reading)
	}
	usual, rest := drill.ForBench(t.Command.About().Takes())
	w.questions, w.often = slices.Concat(usual, rest), len(usual)
	w.lines("", "One reading at a time. Enter skips it, "+goBack+" goes back, "+helpMe+" says more; "+
		enough+" or Ctrl-D ends the questions, and what was read is worked out.")
	err := w.gauges()
	if err == nil {
		err = w.all()
	}
	if errors.Is(err, io.EOF) {
		fmt.Fprintln(t.Out)
	}
	if errors.Is(err, io.EOF) || errors.Is(err, errEnough) {
		err = nil
	}
	return w.given, err
}

// talk is a talk that goes on.
type talk struct {
	Talk
	in        *bufio.Reader
	given     []drill.Given
	read      drill.Read      // what given makes
	known     []drill.Reading // before the first question
	questions []drill.Reading
	often     int  // how many of them come before the offer to go on
	rest      bool // the others are asked for too
}

// usualGauges are those that are at hand where nobody says more.
var usualGauges = []drill.Means{drill.ByCaliper, drill.ByGauge}

// gauges asks which gauges are at hand, where the usual ones do not read all: what they
// do not read is left to those that are asked for by name.
func (t *talk) gauges() error {
	var there []drill.Means
	for i, r := range t.questions[:t.often] {
		if by := r.Spec().By; t.asks(i) && by.Gauge() && !slices.Contains(there, by) {
			there = append(there, by)
		}
	}
	if !slices.ContainsFunc(there, func(m drill.Means) bool { return !slices.Contains(usualGauges, m) }) {
		return nil
	}
	slices.Sort(there)
	names := make([]string, len(there))
	for i, m := range there {
		names[i] = m.String()
	}
	takes := strings.Join(names, ", ") + ", or all"
	fmt.Fprintln(t.Out)
	t.lines("", "What is at hand? "+takes+"; Enter is for caliper and gauge")
	for {
		fmt.Fprint(t.Out, "gauges> ")
		line, err := t.in.ReadString('\n')
		at, unknown := usualGauges, ""
		if words := strings.FieldsFunc(strings.ToLower(line), func(r rune) bool { return r == ',' || r == ' ' || r == '\n' || r == '\r' || r == '\t' }); len(words) > 0 {
			at = nil
			for _, word := range words {
				switch i := slices.Index(names, word); {
				case word == enough:
					return errEnough
				case word == "all":
					at = there
				case i >= 0:
					at = append(at, there[i])
				case word != "and" && word != helpMe:
					unknown = word
				}
			}
		}
		switch {
		case unknown != "":
			t.lines("  ", "\""+unknown+"\" is no gauge that is asked for here: takes "+takes)
		case at == nil:
			t.lines("  ", "takes "+takes)
		default:
			t.keep(at)
			return err
		}
		if err != nil {
			return err
		}
	}
}

// keep leaves what the gauges at hand do not read to the less usual readings. Without an
// indicator the lips' lengths tell what their heights would.
func (t *talk) keep(at []drill.Means) {
	var read, left []drill.Reading
	rest := slices.Clone(t.questions[t.often:])
	for _, r := range t.questions[:t.often] {
		if by := r.Spec().By; !by.Gauge() || slices.Contains(at, by) || r == drill.Size {
			read = append(read, r)
			continue
		}
		left = append(left, r)
		if i := slices.Index(rest, drill.LipLength); r == drill.LipHeight && i >= 0 {
			read, rest = append(read, drill.LipLength), slices.Delete(rest, i, i+1)
		}
	}
	t.questions, t.often = slices.Concat(read, left, rest), len(read)
}

// all puts one question after the other, forward and back.
func (t *talk) all() error {
	for i := 0; i < len(t.questions); {
		var err error
		switch {
		case i == t.often && i > 0 && !t.rest && len(t.offered()) > 0:
			err = t.offer()
		case !t.asks(i):
			i++
			continue
		default:
			err = t.one(i)
			if err == nil {
				i++
			}
		}
		if errors.Is(err, errBack) {
			i, err = t.before(i), nil
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// before returns the last question put before one, itself if it is the first.
func (t *talk) before(i int) int {
	for back := i - 1; back >= 0; back-- {
		if t.asks(back) {
			return back
		}
	}
	return i
}

// asks reports whether a question is to be put. What was answered is asked again
// by whoever comes by, even where something else has made it needless since.
func (t *talk) asks(i int) bool {
	r := t.questions[i]
	moot := r.Spec().Moot
	return !slices.Contains(t.known, r) && (t.read.Written(r) != "" || moot == nil || !moot(&t.read.Drill))
}

// offered are the readings that are taken less often.
func (t *talk) offered() (names []string) {
	for i := t.often; i < len(t.questions); i++ {
		if t.asks(i) {
			names = append(names, t.questions[i].String())
		}
	}
	return names
}

// offer asks whether to go on to the less usual readings.
func (t *talk) offer() error {
	fmt.Fprintln(t.Out)
	for {
		t.lines("", "Enter for the answer, "+theRest+" for the rest, or one of them by name: "+strings.Join(t.offered(), ", "))
		fmt.Fprint(t.Out, "answer> ")
		line, err := t.in.ReadString('\n')
		switch word := strings.ToLower(strings.TrimSpace(line)); word {
		default:
			i := slices.IndexFunc(t.questions, func(r drill.Reading) bool { return r.String() == word })
			if i < t.often || !t.asks(i) {
				t.lines("  ", "\""+word+"\" is none of them")
				break
			}
			if err := t.one(i); err != nil && !errors.Is(err, errBack) {
				return err
			}
		case theRest:
			t.rest = true
			return err
		case goBack:
			return errBack
		case "", enough:
			return errEnough
		}
		if err != nil {
			return err
		}
	}
}

// place tells which question of how many stands at i: of the usual ones, or of
// the rest.
func (t *talk) place(i int) (nth, of int) {
	from, to := 0, t.often
	if i >= t.often {
		from, to = t.often, len(t.questions)
	}
	for k := from; k < to; k++ {
		if !t.asks(k) {
			continue
		}
		of++
		if k <= i {
			nth++
		}
	}
	return nth, of
}

// inTalk says of a reading's help what concerns whoever answers.
var inTalk = strings.NewReplacer("--", "", "A[,B]", "A,B", "see: evenlip material", helpMe+" lists them")

// one asks for one reading until it is understood, skipped or gone back from.
func (t *talk) one(i int) error {
	r := t.questions[i]
	s := r.Spec()
	nth, of := t.place(i)
	fmt.Fprintln(t.Out)
	t.lines("", fmt.Sprintf("%d of %d, %s: %s", nth, of, s.Name, inTalk.Replace(s.Help)))
	t.lines("  ", s.How)
	if usual := t.usual(s); usual != "" {
		t.lines("  ", "usually: "+usual)
	}
	t.now(r)
	for {
		fmt.Fprintf(t.Out, "%s> ", s.Name)
		line, err := t.in.ReadString('\n')
		switch line = strings.TrimSpace(line); strings.ToLower(line) {
		case "":
			return err
		case goBack:
			return errBack
		case enough:
			return errEnough
		case takeOut:
			t.answer(r, "")
			t.read.Resolve(t.given, t.Options)
			return err
		case helpMe:
			t.help(r)
		default:
			if t.take(r, line) {
				if r == drill.Cracked && t.read.Has(r) { // nothing else matters
					return errEnough
				}
				return err
			}
			t.now(r)
		}
		if err != nil {
			return err
		}
	}
}

// now shows the answer there is.
func (t *talk) now(r drill.Reading) {
	if text := t.read.Written(r); text != "" {
		t.lines("  ", "now: "+text+" (Enter keeps it, "+takeOut+" takes it out)")
	}
}

// help says how a reading is written.
func (t *talk) help(r drill.Reading) {
	s := r.Spec()
	switch {
	case r == drill.Material:
		var names []string
		for _, m := range t.Options.Book.Materials() {
			names = append(names, m.Name)
		}
		t.lines("  ", strings.Join(names, ", "))
	case s.Switch:
		t.lines("  ", "y or n")
	case isLength(s.Kind):
		t.lines("  ", "takes "+s.Kind.Takes())
		t.lines("  ", "a bare number is in "+t.bare())
	case s.Kind != quantity.Word:
		t.lines("  ", "takes "+s.Kind.Takes())
	}
	switch {
	case r == drill.LipHeight:
		t.lines("  ", "both readings with a comma between them, lip 1 first: 0.14mm,0.02mm; or one, how much higher lip 1 is")
	case s.Pair:
		t.lines("  ", "of two lips write both with a comma between them, lip 1 first; one alone counts for both")
	}
	t.lines("  ", "Enter goes on, "+goBack+" goes back, "+takeOut+" takes an answer out, "+enough+" ends the questions")
}

// isLength reports whether a bare number of that kind is in the size's unit.
func isLength(k quantity.Kind) bool {
	return k == quantity.Length || k == quantity.Size || k == quantity.Feed
}

// bare is the unit that a length without one is in.
func (t *talk) bare() string {
	if t.read.System() == quantity.Inch {
		return "inches"
	}
	return "mm"
}

// take sets a reading, or says why it cannot be and leaves the one before.
func (t *talk) take(r drill.Reading, line string) bool {
	if r.Spec().Switch {
		switch strings.ToLower(line) {
		case "n", "no":
			line = "no"
		case "y", "yes":
			line = "yes"
		}
	}
	was, unit := t.given, t.bare()
	t.answer(r, line)
	faults := t.read.Resolve(t.given, t.Options)
	faults = append(faults, command.Possible(t.Command, &t.read, &t.read.Drill, len(faults) == 0)...)
	if len(faults) == 0 {
		if bare := t.bare(); bare != unit && t.answered() {
			t.lines("  ", "bare numbers that were given are in "+bare+" now")
		}
		return true
	}
	t.given = was
	t.read.Resolve(t.given, t.Options)
	t.complain(faults[0], r)
	return false
}

// answer puts an answer in the place of an earlier one; "" takes it out.
func (t *talk) answer(r drill.Reading, text string) {
	t.given = slices.DeleteFunc(slices.Clone(t.given), func(g drill.Given) bool { return g.Reading == r })
	if text != "" {
		t.given = append(t.given, drill.Given{Reading: r, Text: text})
	}
}

// usual is a sane range of a reading, in the units of bare numbers.
func (t *talk) usual(s *drill.Spec) string {
	if t.read.System() == quantity.Inch && s.Usual[1] != "" {
		return s.Usual[1]
	}
	return s.Usual[0]
}

// complain says what is wrong with the answer about r. What was read before was right,
// so any complaint is about this reading, if only beside an older one.
func (t *talk) complain(f *fault.Fault, r drill.Reading) {
	text := f.Text
	if about := cmp.Or(f.About, f.At.Flag); about != r.String() {
		text = about + ": " + text
	}
	t.lines("  ", text)
	if f.Hint != "" {
		t.lines("  ", f.Hint)
	}
}

// answered reports whether a length stands that was written without a unit.
func (t *talk) answered() bool {
	return slices.ContainsFunc(drill.All(), func(r drill.Reading) bool {
		return r != drill.Size && isLength(r.Spec().Kind) && slices.ContainsFunc(t.read.AsRead(r), func(v quantity.Value) bool { return v.Assumed })
	})
}

// lines prints text in lines that fit the terminal, in letters where the locale
// has no more.
func (t *talk) lines(indent, text string) {
	if t.ASCII {
		text = print.Spelled(text)
	}
	for _, l := range print.Wrap(text, t.Width-len(indent)) {
		fmt.Fprintln(t.Out, indent+l)
	}
}
