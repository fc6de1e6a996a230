package cli

import (
	"cmp"
	"errors"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// source is where a command takes the readings of a drill from: the sample, a file or
// a crib, and the flags, which add to it or change it.
type source struct {
	cmd    *cobra.Command
	flags  readingFlags
	sample bool
	ask    bool
	id     string // of a drill in a crib
}

// addFlags adds the flags that say what a drill's readings begin with.
func (s *source) addFlags() {
	f := s.cmd.Flags()
	f.BoolVar(&s.sample, "sample", false, "use the built-in sample drill; other flags change its readings")
	onceFlag(f, &s.id, "drill", "use the drill `ID` of the crib (FILE, or the nearest crib.yaml); other flags change its readings")
}

// held is the drill that is worked with: what was read of it, and what is known beside
// its readings.
type held struct {
	drill.Read
	given []drill.Given
	o     drill.Options // what they are understood with
	from  string        // what a file or a crib calls it
	file  string        // "" for none
	id    string        // in a crib
	gone  string        // when it was thrown away
}

// read takes the drill that the arguments name, file being "" for none, with the flags'
// readings in place of its own.
func (a *app) read(s *source, file string) (*held, fault.List) {
	h, faults := a.begin(s, file)
	if h == nil {
		return nil, faults
	}
	h.given = append(h.given, s.flags.given(s.cmd)...)
	return h, append(faults, h.Resolve(h.given, h.o)...)
}

// begin takes what a drill is before the flags: nothing yet, the sample, a file,
// or a drill of a crib.
func (a *app) begin(s *source, file string) (*held, fault.List) {
	h := &held{o: a.set.reading()}
	h.o.Usual = a.set.usual.Units // what is typed; a file is the same for everyone
	switch {
	case file != "" && s.sample:
		return nil, fault.List{fault.New("give one of the two", "%s: a file and --sample do not go together", s.cmd.Name())}
	case s.id != "":
		return a.fromCrib(s, file)
	case s.sample:
		h.given, h.o.Sample = drill.Sample(), true
	case file != "":
		return a.fromFile(file)
	}
	return h, nil
}

// fromCrib takes a drill out of a crib: the file, the embedded one, or the
// nearest.
func (a *app) fromCrib(s *source, file string) (*held, fault.List) {
	c, err := a.openCrib(&cribFrom{file: file, sample: s.sample, named: "before --drill"})
	if err != nil {
		return nil, fault.Of(err)
	}
	kept, ok := c.Find(s.id)
	if !ok {
		return nil, fault.List{fault.Refuse(c.Meant(s.id), "no drill of this crib is called %q", s.id).In(fault.Place{Flag: "drill"}, "")}
	}
	d := kept.Readings
	h := &held{given: []drill.Given{{Reading: drill.Name, Text: kept.ID}}, from: kept.ID, id: kept.ID, gone: kept.Retired(),
		o: drill.Options{Units: d.Units, Book: a.set.book, Sample: c.Sample, Kept: true, Past: d.Past}}
	if !c.Sample {
		h.file = c.File
	}
	for _, g := range d.Given() {
		g.At = fault.Place{File: kept.ID}
		h.given = append(h.given, g)
	}
	return h, nil
}

// largestFile bounds a file of one drill: a mistaken name must not fill the
// memory.
const largestFile = 1 << 20

// fromFile takes a drill from a file of its own, "-" being standard input.
func (a *app) fromFile(name string) (*held, fault.List) {
	in, shown := a.in, "standard input"
	if name == "-" {
		a.awaits("the readings of one drill, a line each as in size: 12mm")
	} else {
		f, err := os.Open(name)
		if err != nil {
			return nil, fault.List{a.noFile(name, err)}
		}
		defer f.Close()
		in, shown = f, name
	}
	text, f := readAll(in, shown, largestFile, "the readings of one drill")
	if f != nil {
		return nil, fault.List{f}
	}
	given, faults := drill.OfFile(shown, string(text))
	h := &held{given: given, o: a.set.reading(), from: name}
	if name != "-" {
		h.file = name
	}
	return h, faults
}

// noFile says why a file cannot be read; a reading in a file's place is wrong
// usage.
func (a *app) noFile(name string, err error) *fault.Fault {
	flag := strings.TrimLeft(name, "-–—")
	if _, reading := drill.Find(flag); reading || flag != name {
		return fault.New("two plain dashes begin a flag: --"+flag, "no file is called %q", name)
	}
	if name == "help" {
		return fault.New("evenlip "+a.args[0]+" -h", "no file is called %q", name)
	}
	if hint := a.parted(name); hint != "" && errors.Is(err, os.ErrNotExist) {
		return fault.New(hint, "no file is called %q", name)
	}
	if _, f := quantity.Parse(quantity.Size, name, quantity.Unset); f == nil && errors.Is(err, os.ErrNotExist) {
		return fault.New("readings are flags: --size "+shellQuoted(name)+`; two that go together have no space between them, and in PowerShell quotes: --lip-angle "59,58"`, "no file is called %q", name)
	}
	return cannotRead(name, err)
}

// system is the units that an answer about the drill is printed in.
func (a *app) system(d *drill.Drill) quantity.System { return cmp.Or(a.set.units, d.System()) }

// tell adds to a sheet what is to be known of where the drill's readings come from.
func (h *held) tell(s *sheet.Sheet) {
	s.Origin.File = h.file
	if h.id != "" {
		s.Origin.ID, s.Origin.Name = h.id, ""
	}
	if h.gone != "" {
		s.Find("retired-and-gone", sheet.Warn, "the crib says that this drill was thrown away on {}", quantity.Say(h.gone))
	}
	if len(h.Instead) > 0 && !h.Sample {
		var names []string
		for _, r := range h.Instead {
			names = append(names, r.String())
		}
		s.Find("changed-by-flag", sheet.Note, "given as flags, in place of the drill's own: {}", quantity.Say(strings.Join(names, ", ")))
	}
}
