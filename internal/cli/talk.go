package cli

import (
	"bufio"
	"errors"
	"fmt"
	"slices"
	"strings"

	"evenlip/internal/drill"
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

// talk is a person at the bench being asked.
type talk struct {
	*app
	in        *bufio.Reader
	c         calculation
	d         *drill.Drill
	questions []question
	given     []drill.Reading // known before the first question
	rest      bool            // what is read less often is asked for too
}

// question is one reading, or whether to go on to those read less often.
type question struct {
	reading drill.Reading
	offer   bool
}

func newTalk(a *app, c calculation, d *drill.Drill) *talk {
	t := &talk{app: a, in: bufio.NewReader(a.in), c: c, d: d}
	usual, rest := inBenchOrder(c.takes())
	for _, r := range usual {
		t.questions = append(t.questions, question{reading: r})
	}
	if len(usual) > 0 {
		t.questions = append(t.questions, question{offer: true})
	}
	for _, r := range rest {
		t.questions = append(t.questions, question{reading: r})
	}
	for _, r := range drill.All() {
		if d.Written(r) != "" {
			t.given = append(t.given, r)
		}
	}
	return t
}

// all puts one question after the other, forward and back.
func (t *talk) all() error {
	for i := t.next(-1, 1); i < len(t.questions); {
		err := t.put(i)
		switch {
		case errors.Is(err, errBack):
			i = max(t.next(i, -1), t.next(-1, 1))
		case err != nil:
			return err
		default:
			i = t.next(i, 1)
		}
	}
	return nil
}

// next returns the place of the next question to be put, forward or back.
func (t *talk) next(i, way int) int {
	for i += way; i >= 0 && i < len(t.questions) && !t.asks(t.questions[i]); {
		i += way
	}
	return i
}

// asks reports whether a question is to be put. What was answered is asked again
// by whoever comes by, even where something else has made it needless since.
func (t *talk) asks(q question) bool {
	if q.offer {
		return !t.rest && len(t.offered()) > 0
	}
	return !slices.Contains(t.given, q.reading) && (t.d.Written(q.reading) != "" || !needless(t.d, q.reading))
}

func (t *talk) put(i int) error {
	if t.questions[i].offer {
		return t.offer()
	}
	return t.one(i)
}

// offered are the readings that are taken less often.
func (t *talk) offered() (names []string) {
	at := slices.IndexFunc(t.questions, func(q question) bool { return q.offer })
	for _, q := range t.questions[at+1:] {
		if t.asks(q) {
			names = append(names, q.reading.String())
		}
	}
	return names
}

// offer asks whether to go on to the less usual readings.
func (t *talk) offer() error {
	fmt.Fprintln(t.err)
	for {
		t.lines("", "Enter for the answer, or "+theRest+" for what is read less often: "+strings.Join(t.offered(), ", "))
		fmt.Fprint(t.err, "answer> ")
		line, err := t.in.ReadString('\n')
		switch strings.ToLower(strings.TrimSpace(line)) {
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
	from, to := 0, len(t.questions)
	switch at := slices.IndexFunc(t.questions, func(q question) bool { return q.offer }); {
	case i < at:
		to = at
	default:
		from = at + 1
	}
	for k := from; k < to; k++ {
		if !t.asks(t.questions[k]) {
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
	r := t.questions[i].reading
	s := r.Spec()
	nth, of := t.place(i)
	fmt.Fprintln(t.err)
	t.lines("", fmt.Sprintf("%d of %d, %s: %s", nth, of, s.Name, inTalk.Replace(s.Help)))
	t.lines("  ", s.How)
	if s.Usual != "" {
		t.lines("  ", "usually: "+s.Usual)
	}
	t.now(r)
	for {
		fmt.Fprintf(t.err, "%s> ", s.Name)
		line, err := t.in.ReadString('\n')
		switch line = strings.TrimSpace(line); strings.ToLower(line) {
		case "":
			return err
		case goBack:
			return errBack
		case enough:
			return errEnough
		case takeOut:
			t.d.Drop(r)
			return err
		case helpMe:
			t.help(r)
		default:
			if t.take(r, line) {
				if r == drill.Cracked && t.d.Has(r) { // nothing else matters
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
	if text := t.d.Written(r); text != "" {
		t.lines("  ", "now: "+text+" (Enter keeps it, "+takeOut+" takes it out)")
	}
}

// help says how a reading is written.
func (t *talk) help(r drill.Reading) {
	s := r.Spec()
	switch {
	case r == drill.Material:
		var names []string
		for _, m := range t.book().Materials() {
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
	if t.d.System() == quantity.Inch {
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
	was, unit := t.d.Written(r), t.bare()
	t.d.Set(r, line)
	complaint, hint := t.complaint(t.c, t.d, r)
	if complaint == "" {
		if bare := t.bare(); bare != unit && t.answered() {
			t.lines("  ", "bare numbers that were given are in "+bare+" now")
		}
		return true
	}
	t.d.Drop(r)
	t.d.Set(r, was)
	t.d.Resolve()
	t.lines("  ", complaint)
	if hint != "" {
		t.lines("  ", hint)
	}
	return false
}

// answered reports whether a length stands that was written without a unit.
func (t *talk) answered() bool {
	return slices.ContainsFunc(drill.All(), func(r drill.Reading) bool {
		return r != drill.Size && isLength(r.Spec().Kind) && slices.ContainsFunc(t.d.Values(r), func(v quantity.Value) bool { return v.Assumed })
	})
}

// complaint says what is wrong with the reading just taken, "" if nothing is.
// What was read before was right, so any complaint is about this reading, if
// only beside an older one.
func (a *app) complaint(c calculation, d *drill.Drill, r drill.Reading) (text, hint string) {
	about := r
	if errs := d.Resolve(); len(errs) > 0 {
		about, text, hint = errs[0].Reading, errs[0].Err.Text, errs[0].Err.Hint
	} else if found := c.impossible(d, true); len(found) > 0 {
		about, text, hint = found[0].Reading, a.say(found[0], d), found[0].Hint
	}
	if about != r {
		text = about.String() + ": " + text
	}
	return text, hint
}

// lines prints text in lines that fit the terminal, in letters where the locale
// has no more.
func (t *talk) lines(indent, text string) {
	if !showsUTF8() {
		text = print.Spelled(text)
	}
	for _, l := range print.Wrap(text, t.width()-len(indent)) {
		fmt.Fprintln(t.err, indent+l)
	}
}

func (t *talk) width() int {
	width, err := t.columns()
	if err != nil {
		return usualWidth
	}
	return width
}
