package drill

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
)

// Given is one reading as a source gives it. Its text is empty where the source could
// not read what stands there, and has told so.
type Given struct {
	Reading
	Text string
	At   fault.Place
}

// Flag makes the reading of a flag. Only a flag takes a range.
func Flag(r Reading, text string) Given {
	return Given{Reading: r, Text: text, At: fault.Place{Flag: r.String()}}
}

// Taken is a reading that was understood.
type Taken struct {
	Given
	Values [2]quantity.Value
	N      int    // of the values
	Swept  *Sweep // where it was given as a range; then there are no values
}

// Read is the drill that a list of readings makes. The zero value may be resolved, and
// resolved again: its memory is used again, and what was read before is overwritten.
type Read struct {
	Drill
	Instead []Reading // of which a later one holds
	Ranges  []Reading

	unsure bool // a reading on which the units of bare numbers hang was not understood
}

// Options are what a list is understood with, and what is known of the drill beside it.
type Options struct {
	Units  quantity.System // of bare numbers; Unset goes by the list, then by the size
	Usual  quantity.System // of bare numbers where those do not say; Unset is millimetres
	Book   *handbook.Book  // nil is the embedded one
	Sample bool
	Kept   bool
	Past   Past
}

// unitGivers are the readings whose units bare numbers take, the first that was
// read.
var unitGivers = [...]Reading{Size, Wheel}

// GivesUnits reports whether bare numbers may take their units from what stands there.
func (r Reading) GivesUnits() bool { return r == Units || slices.Contains(unitGivers[:], r) }

// UnitsKnown reports whether it is known what bare numbers are. If not, what they seem
// to be is no ground to refuse them.
func (rd *Read) UnitsKnown() bool { return !rd.unsure }

// Resolve understands a list of readings. It returns everything that is wrong, not
// only the first, in the catalogue's order; what could be understood is there beside
// it. Of two for one reading the later holds.
func (rd *Read) Resolve(given []Given, o Options) fault.List {
	*rd = Read{Drill: Drill{Sample: o.Sample, Kept: o.Kept, Past: o.Past, Book: o.Book, Units: o.Units, taken: rd.taken[:0]}, Instead: rd.Instead[:0], Ranges: rd.Ranges[:0]}
	rd.taken = slices.Grow(rd.taken, len(given))
	s := resolver{rd: rd, given: given}
	for i := range given {
		s.note(i, o.Units)
	}
	said := rd.Units
	for _, r := range unitGivers {
		if s.last[r] > 0 {
			rd.Units = cmp.Or(said, o.Usual)
			s.take(r)
			said = cmp.Or(said, s.system(r))
		}
	}
	rd.Units = cmp.Or(said, o.Usual)
	rd.Units = rd.System()
	for r := range readings {
		if s.last[r] > 0 && !r.GivesUnits() {
			s.take(r)
		}
	}
	for _, i := range s.before {
		var t Taken
		s.understand(&t, given[i])
	}
	s.put()
	return s.faults
}

// resolver understands one list.
type resolver struct {
	rd     *Read
	given  []Given
	last   [readings]int // the one that holds, from 1
	before []int         // those that do not
	faults fault.List
}

// note takes one entry of the list in.
func (s *resolver) note(i int, asked quantity.System) {
	g := &s.given[i]
	switch {
	case g.Text == "":
		s.rd.unsure = s.rd.unsure || g.Reading.GivesUnits()
	case g.Reading == Name:
		s.rd.Name = g.Text
	case g.Reading == Units:
		units, f := quantity.ParseUnits(g.Text)
		if f != nil {
			s.refuse(f, g)
		} else if asked == quantity.Unset {
			s.rd.Units = units
		}
	default:
		if held := s.last[g.Reading]; held > 0 {
			s.before = append(s.before, held-1)
			s.rd.Instead = append(s.rd.Instead, g.Reading)
		}
		s.last[g.Reading] = i + 1
	}
}

func (s *resolver) refuse(f *fault.Fault, g *Given) {
	s.faults = append(s.faults, f.In(g.At, g.Reading.String()))
	s.rd.unsure = s.rd.unsure || g.Reading.GivesUnits()
}

// take understands the one that holds.
func (s *resolver) take(r Reading) {
	var t Taken
	if g := &s.given[s.last[r]-1]; g.isNew() && s.rd.unsure && !s.rd.Has(Size) {
		return // of the size it is told already
	}
	if !s.understand(&t, s.given[s.last[r]-1]) {
		return
	}
	rd := s.rd
	rd.taken = append(rd.taken, t)
	rd.count[r] = uint8(t.N)
	rd.value[r] = [2]float64{t.Values[0].V, t.Values[max(0, t.N-1)].V}
	if t.Swept != nil {
		rd.Ranges = append(rd.Ranges, r)
		rd.sweep(&rd.Drill, &t, t.Swept.From.V)
	}
}

// system is the one that the reading was written in.
func (s *resolver) system(r Reading) quantity.System {
	switch t := s.rd.written(r); {
	case t == nil:
		return quantity.Unset
	case t.Swept != nil:
		return t.Swept.From.System
	default:
		return t.Values[0].System
	}
}

// put brings what was taken into the catalogue's order, and bounds the steps that the
// ranges make.
func (s *resolver) put() {
	rd := s.rd
	slices.SortFunc(rd.taken, func(a, b Taken) int { return int(a.Reading) - int(b.Reading) })
	slices.Sort(rd.Ranges)
	slices.Sort(rd.Instead)
	steps := 1
	for _, r := range rd.Ranges {
		t := rd.written(r)
		if steps *= t.Swept.Len(); steps > mostSteps {
			s.refuse(fault.New("take larger steps or fewer ranges", "makes over %d rows", mostSteps), &t.Given)
			break
		}
	}
}

// understand reads the text of a reading, or tells why it cannot be one.
func (s *resolver) understand(t *Taken, g Given) bool {
	t.Given = g
	t.Text = strings.TrimSpace(g.Text)
	f := t.read(s.rd)
	if f != nil {
		s.refuse(f, &g)
	}
	return f == nil
}

func (t *Taken) read(rd *Read) *fault.Fault {
	s := &specs[t.Reading]
	switch {
	case s.Switch:
		return t.readSwitch()
	case s.Kind == quantity.Word:
		return t.readWord()
	case t.isNew():
		return t.readNew(rd, s)
	}
	if t.At.Flag != "" && quantity.IsRange(t.Text) {
		return t.readRange(rd.Units, s)
	}
	return t.readNumbers(rd.Units, s)
}

func (t *Taken) readNumbers(bare quantity.System, s *Spec) (f *fault.Fault) {
	reader := quantity.Reader{Kind: s.Kind, Bare: bare, Signed: s.Signed}
	if !s.Pair {
		t.N = 1
		t.Values[0], f = reader.One(t.Text)
		return f
	}
	t.Values[0], t.Values[1], t.N, f = reader.Pair(t.Text)
	if f == nil || strings.Contains(t.Text, ",") {
		return f
	}
	for _, words := range [...][]string{strings.Fields(t.Text), strings.FieldsFunc(t.Text, betweenLips)} {
		if len(words) == 2 && reads(reader, words[0]) && reads(reader, words[1]) {
			f.Hint = "the readings of two lips go together: " + words[0] + "," + words[1]
			break
		}
	}
	return f
}

func reads(r quantity.Reader, text string) bool {
	_, f := r.One(text)
	return f == nil
}

// betweenLips reports whether a sign is written where a comma parts two lips.
func betweenLips(sign rune) bool { return unicode.IsSpace(sign) || strings.ContainsRune(";/&+:", sign) }

func (t *Taken) readWord() *fault.Fault {
	if t.Text == "" {
		return quantity.Refusal(t.Given.Text, "a word", "nothing was written")
	}
	t.N = 1
	return nil
}

func (t *Taken) readSwitch() *fault.Fault {
	switch strings.ToLower(t.Text) {
	case "true", "yes":
		t.N = 1
	case "false", "no":
	default:
		return quantity.Refusal(t.Text, "yes or no", "")
	}
	return nil
}

// asNew is the word for a new drill's.
const asNew = "new"

// isNew reports whether the reading is to be a new drill's.
func (g *Given) isNew() bool {
	return specs[g.Reading].AsNew != nil && strings.EqualFold(strings.TrimSpace(g.Text), asNew)
}

// readNew takes what the reading is on a new drill of this size.
func (t *Taken) readNew(rd *Read, s *Spec) *fault.Fault {
	size, ok := rd.Get(Size)
	if !ok {
		return quantity.Refusal(t.Text, "a length", "new goes by the drill's size: give size too")
	}
	t.Values[0], t.N = quantity.Value{V: s.AsNew(size), Text: asNew}, 1
	return nil
}
