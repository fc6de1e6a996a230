package drill

import (
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"evenlip/internal/fault"
	"evenlip/internal/near"
	"evenlip/internal/quantity"
	"evenlip/internal/strict"
)

// Places remembers where in a file each reading stood.
type Places struct {
	File string
	at   [readings]place
	text string // the line, or lines, where columns are counted in its bytes
	// unsure says that a reading on which the units of bare numbers hang was not
	// understood.
	unsure bool
}

// UnitsKnown reports whether it is known what the bare numbers of the file are. If
// not, what they seem to be is no ground to refuse them.
func (p *Places) UnitsKnown() bool { return !p.unsure }

// misread notes that what stands under a key, or was meant to, was not understood.
func (p *Places) misread(key string) {
	if slices.Contains(unitKeys(), key) {
		p.unsure = true
	}
}

// unitKeys are those on which the units of bare numbers hang.
func unitKeys() []string {
	out := []string{keyUnits}
	for _, r := range unitGivers {
		out = append(out, r.String())
	}
	return out
}

type place struct{ line, column int }

// Fault returns err, about reading r, with its place in the file.
func (p *Places) Fault(r Reading, err error) *strict.Error {
	at := p.at[r]
	down, column := p.spot(at.column)
	e := &strict.Error{File: p.File, Line: at.line + down, Column: column, Text: r.String() + ": " + err.Error()}
	if f, ok := err.(*fault.Fault); ok {
		e.Hint = f.Hint
	}
	return e
}

// spot turns a column counted in bytes, over line ends, into how many lines down it
// is and the column there, counted in characters.
func (p *Places) spot(bytes int) (down, column int) {
	if p.text == "" || bytes == 0 {
		return 0, bytes
	}
	at := min(bytes-1, len(p.text))
	for at > 0 && at < len(p.text) && !utf8.RuneStart(p.text[at]) {
		at--
	}
	before := p.text[:at]
	return strings.Count(before, "\n"), utf8.RuneCountInString(before[strings.LastIndexByte(before, '\n')+1:]) + 1
}

// The keys of a drill file that are no readings.
const (
	keyName  = "name"
	keyUnits = "units"

	keyDrills = "drills" // of a crib, given in a drill's place
)

// ReadFile reads one drill from YAML: a mapping whose keys are the flags'
// names, and name and units. The readings are resolved. All that is wrong with
// the file is returned, not only the first fault, and the drill beside it unless the
// file is no YAML.
func ReadFile(file string, r io.Reader, units quantity.System) (*Drill, *Places, []error) {
	root, errs := strict.Parse(file, r)
	if len(errs) > 0 {
		return nil, nil, errs
	}
	d, p, errs := ReadMap(file, root, units, nil)
	if d != nil && d.Name == "" {
		d.Name = file
	}
	return d, p, errs
}

// ReadMap reads one drill from a mapping of a file. The entries whose key is no
// reading's go to other first, which reports whether it knows the key; nil
// knows none.
func ReadMap(file string, root strict.Node, units quantity.System, other func(strict.Entry) bool) (*Drill, *Places, []error) {
	if !root.IsMap() {
		line, column := root.Place()
		return nil, nil, []error{&strict.Error{File: file, Line: line, Column: column, Text: "takes one reading a line, such as size: 12mm"}}
	}
	d := &Drill{Units: units}
	p := &Places{File: file}
	errs := d.fromMap(root, p, other)
	for _, e := range d.Resolve() {
		errs = append(errs, p.Fault(e.Reading, e.Err))
		p.misread(e.Reading.String())
	}
	slices.SortStableFunc(errs, strict.ByPlace)
	return d, p, errs
}

func (d *Drill) fromMap(root strict.Node, p *Places, other func(strict.Entry) bool) []error {
	var errs []error
	entries := root.Entries()
	seen := make(map[string]bool, len(entries))
	for _, e := range entries {
		key := e.Key.Text()
		line, column := e.Value.Place()
		fault := func(text, hint string) {
			errs = append(errs, &strict.Error{File: p.File, Line: line, Column: column, Text: text, Hint: hint})
			p.misread(key)
		}
		if seen[key] {
			line, column = e.Key.Place()
			fault(strconv.Quote(key)+" stands twice", "keep one of them")
			continue
		}
		seen[key] = true
		r, known := Find(key)
		if !known && other != nil && other(e) {
			continue
		}
		text, ok := scalar(e.Value, known && r.Spec().Pair)
		switch {
		case !known && key != keyName && key != keyUnits:
			line, column = e.Key.Place()
			fault(unknown(key))
			p.misread(meant(key))
		case !ok || strings.TrimSpace(text) == "":
			fault(key+": takes a value on its line", aboutBlank(key, e.Comment()))
		case key == keyName:
			d.Name = text
		case key == keyUnits:
			u, err := quantity.ParseUnits(text)
			if err != nil {
				fault("units: "+err.Error(), "")
			} else if d.Units == quantity.Unset {
				d.Units = u
			}
		default:
			d.Set(r, text)
			p.at[r] = place{line, column}
		}
	}
	return errs
}

// unknown says that a key is no reading's, and which was meant.
func unknown(key string) (text, hint string) {
	if key == keyDrills {
		return "this is a crib's file", "name the drill of it that is meant: --drill ID"
	}
	return "no reading is called " + strconv.Quote(key), near.Hint(key, "the keys are the flags' names: evenlip inspect --help", keys()...)
}

// meant returns the key that was meant, "" for none.
func meant(key string) string { return near.Name(key, keys()...) }

func keys() []string { return append(names(), keyName, keyUnits) }

func names() []string {
	var out []string
	for _, r := range All() {
		out = append(out, r.String())
	}
	return out
}

// scalar returns a value as written; of a pair, a list of two becomes "A,B".
func scalar(n strict.Node, pair bool) (string, bool) {
	if n.IsScalar() && !n.IsNull() {
		return n.Text(), true
	}
	if !n.IsList() || !pair {
		return "", false
	}
	var parts []string
	for _, item := range n.Items() {
		if !item.IsScalar() || item.IsNull() {
			return "", false
		}
		parts = append(parts, item.Text())
	}
	return strings.Join(parts, ","), len(parts) > 0
}

// aboutBlank says what to do with a key that has no value. To YAML "#7" is a
// comment.
func aboutBlank(key, comment string) string {
	if comment != "" {
		return "what follows a # is not read; if it is the value, put it into quotes: " + key + ": " + strconv.Quote(comment)
	}
	return "leave the line out if it was not read"
}
