package cli

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
)

// taking is how a command takes the readings of a drill: what it begins with,
// and the flags that add to it or change it.
type taking struct {
	cmd     *cobra.Command
	flags   map[drill.Reading]*string
	cracked bool // as the flag says, if it was given
	sample  bool
	ask     bool
	id      string // of a drill in a crib
}

// sourceFlags adds the flags that say what a drill's readings begin with.
func (t *taking) sourceFlags() {
	f := t.cmd.Flags()
	f.BoolVar(&t.sample, "sample", false, "use the built-in sample drill; other flags change its readings")
	onceFlag(f, &t.id, "drill", "use this drill of the crib (FILE, or the nearest crib.yaml); other flags change its readings")
}

// held is a drill as it is now held: its readings, and where they stand.
type held struct {
	*drill.Drill
	places   *drill.Places // in a file
	unread   fault.List    // what is wrong with the file
	from     string        // the crib's drill that the others come from
	typed    map[drill.Reading]bool
	replaced []string // the readings of the drill's own that flags stand in place of
	gone     string   // when the crib's drill was thrown away
}

// set takes a reading that was typed.
func (h *held) set(r drill.Reading, text string) {
	if h.Has(r) && !h.Sample {
		h.replaced = append(h.replaced, r.String())
	}
	h.Set(r, text)
	h.typed[r] = true
}

// hold takes the drill that the arguments name, "" for none, and sets the flags'
// readings in place of its own.
func (a *app) hold(t *taking, file string) (*held, error) {
	h, err := a.begin(t, file)
	if err != nil {
		return nil, err
	}
	given := givenFlags(t.cmd, t.flags)
	h.Book, h.typed = a.book(), map[drill.Reading]bool{}
	for _, r := range drill.All() {
		if text := given[r]; text != "" {
			h.set(r, text)
		}
	}
	if t.cmd.Flags().Changed(drill.Cracked.String()) {
		h.set(drill.Cracked, map[bool]string{true: "yes", false: "no"}[t.cracked])
	}
	return h, nil
}

// givenFlags returns what was written in each reading's flag that was given.
func givenFlags(cmd *cobra.Command, flags map[drill.Reading]*string) map[drill.Reading]string {
	given := map[drill.Reading]string{}
	for _, r := range drill.All() {
		if s, ok := flags[r]; ok && cmd.Flags().Changed(r.String()) {
			given[r] = *s
		}
	}
	return given
}

// begin takes what a drill is before the flags: nothing yet, the sample, a file,
// or a drill of a crib.
func (a *app) begin(t *taking, file string) (*held, error) {
	units, err := a.system()
	switch {
	case err != nil:
		return nil, err
	case file != "" && t.sample:
		return nil, fault.New("give one of the two", "%s: a file and --sample do not go together", t.cmd.Name())
	case t.id != "":
		return a.fromCrib(t, file)
	case t.sample:
		d := drill.Sample()
		d.Units = units
		return &held{Drill: d}, nil
	case file == "":
		return &held{Drill: &drill.Drill{Units: units}}, nil
	}
	return a.fromFile(t, file, units)
}

// fromCrib takes a drill out of a crib: the file, the embedded one, or the
// nearest. It is a copy, since flags change it.
func (a *app) fromCrib(t *taking, file string) (*held, error) {
	c, err := a.openCrib(&cribFrom{file: file, sample: t.sample, named: "before --drill"})
	if err != nil {
		return nil, err
	}
	kept, ok := c.Find(t.id)
	if !ok {
		return nil, fault.Flag("drill", c.Meant(t.id), "no drill of this crib is called %q", t.id)
	}
	d := *kept.Readings
	d.Name, d.Kept, d.Sample = kept.ID, true, c.Sample
	return &held{Drill: &d, from: kept.ID, gone: kept.Retired()}, nil
}

// fromFile takes a drill from a file of its own, "-" being standard input.
func (a *app) fromFile(t *taking, name string, units quantity.System) (*held, error) {
	in, shown := a.in, "standard input"
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return nil, t.noFile(name, err)
		}
		defer f.Close()
		in, shown = f, name
	}
	text, err := io.ReadAll(io.LimitReader(in, largestFile+1))
	switch {
	case err != nil:
		return nil, t.noFile(name, err)
	case len(text) > largestFile:
		return nil, fault.NewData("", "%s is too large for the readings of one drill: over %d bytes", shown, largestFile)
	}
	d, places, errs := drill.ReadFile(shown, bytes.NewReader(text), units)
	if d == nil {
		return nil, listOf(errs)
	}
	for _, e := range d.Resolve() { // they are told with the rest of the file
		d.Drop(e.Reading)
	}
	return &held{Drill: d, places: places, unread: listOf(errs)}, nil
}

// noFile says why a file cannot be read; a reading in a file's place is wrong
// usage.
func (t *taking) noFile(name string, err error) error {
	if _, noSize := quantity.Parse(quantity.Size, name, quantity.Unset); noSize == nil && errors.Is(err, os.ErrNotExist) {
		return fault.New(t.misplaced(name), "no file is called %q", name)
	}
	return fault.Unreadable("cannot read "+name, err)
}

// misplaced says where a reading belongs that stands alone: behind the one that
// a blank parts it from, where it can be that, or PowerShell, which takes a comma
// for one; else it is a size.
func (t *taking) misplaced(text string) string {
	for _, r := range drill.All() {
		first, taken := t.flags[r]
		if !taken || !t.cmd.Flags().Changed(r.String()) {
			continue
		}
		before := strings.TrimRight(*first, ", ")
		kind, several := r.Spec().Kind, r.Spec().Pair && !strings.Contains(before, ",")
		if r == drill.At {
			kind, several = quantity.Number, true
		}
		if _, err := quantity.Parse(kind, text, quantity.Unset); several && err == nil {
			return fmt.Sprintf("without a space, and in PowerShell in quotes: --%s \"%s,%s\"", r, before, text)
		}
	}
	return "readings are flags: --size " + shellQuoted(text)
}

// largestFile bounds a file of one drill: a mistaken name must not fill the
// memory.
const largestFile = 1 << 20

// fault says what is wrong with a reading, and where that stands: in a file, in
// a crib, or on the command line.
func (h *held) fault(r drill.Reading, text, hint string) *fault.Fault {
	switch {
	case h.typed[r] || h.places == nil && h.from == "":
		return fault.Flag(r.String(), hint, "%s", text)
	case h.places != nil:
		at := h.places.Fault(r, errors.New(text))
		at.Hint = hint
		return faultOf(at)
	}
	return &fault.Fault{At: fault.Place{File: h.from}, About: r.String(), Text: text, Hint: hint}
}

// faults returns everything that is wrong with the file and the readings. Where it
// is not known what bare numbers are, nothing is said of what they come to.
func (a *app) faults(c calculation, h *held) fault.List {
	errs := slices.Clone(h.unread)
	unitsKnown := h.places == nil || h.places.UnitsKnown()
	for _, e := range h.Resolve() {
		errs = append(errs, h.fault(e.Reading, e.Err.Text, e.Err.Hint))
		unitsKnown = unitsKnown && !e.Reading.GivesUnits()
	}
	if !unitsKnown {
		return errs
	}
	for _, im := range c.impossible(h.Drill, len(errs) == 0) {
		errs = append(errs, h.fault(im.Reading, a.say(im, h.Drill), im.Hint))
	}
	errs.Sort()
	return errs
}
