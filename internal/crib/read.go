package crib

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"
	"sync"

	"evenlip/internal/drill"
	"evenlip/internal/inspect"
	"evenlip/internal/plan"
	"evenlip/internal/quantity"
	"evenlip/internal/reference"
	"evenlip/internal/report"
	"evenlip/internal/strict"
)

// Version is the version of the file that this program reads and writes.
const Version = 1

// Of what is made while a large file is read almost all stays: looking for garbage
// as often as usual would take a third of the time and find little.
const (
	largeFile = 1 << 20 // bytes
	seldom    = 400     // percent
)

// reader collects what is wrong with a file.
type reader struct {
	strict.Reader
	book *reference.Book
}

// Read reads a crib from the bytes of its file. Everything that is wrong with
// it is returned, each with its line and column, in the file's order.
func Read(file string, data []byte, book *reference.Book) (*Crib, []error) {
	if len(data) > largeFile {
		defer debug.SetGCPercent(debug.SetGCPercent(seldom))
	}
	root, err := strict.Parse(file, bytes.NewReader(data))
	if err != nil {
		return nil, strict.Each(err)
	}
	rd := &reader{strict.Reader{File: file}, book}
	if !rd.version(root) {
		return nil, rd.Errs
	}
	c := &Crib{File: file, root: root}
	var drills strict.Node
	listed := false
	rd.Entries(root,
		strict.On("version", func(strict.Node) {}),
		strict.On("name", func(n strict.Node) { c.Name = rd.Word(n) }),
		strict.On("units", func(n strict.Node) { c.Units = rd.units(n) }),
		strict.On("keep", func(n strict.Node) { c.Keep = rd.keep(n) }),
		strict.On("drills", func(n strict.Node) { drills, listed = n, true }),
	)
	if listed {
		c.Drills = rd.drills(drills, c.Units)
	} else {
		rd.Fault(root, "there is no list of drills", "drills: and below it a drill each, such as - id: A1")
	}
	if len(rd.Errs) > 0 {
		slices.SortStableFunc(rd.Errs, byPlace)
		return nil, rd.Errs
	}
	return c, nil
}

func byPlace(a, b error) int {
	var x, y *strict.Error
	if !errors.As(a, &x) || !errors.As(b, &y) {
		return 0
	}
	return cmp.Or(cmp.Compare(x.Line, y.Line), cmp.Compare(x.Column, y.Column))
}

// version decides whether the file can be read at all: what a later version
// means by its keys is not known here.
func (rd *reader) version(root strict.Node) bool {
	if !root.IsMap() {
		rd.Fault(root, "this is no crib: it takes version, name, units, keep and drills, a line each", "evenlip crib new starts one")
		return false
	}
	for _, e := range root.Entries() {
		if e.Key.Text() != "version" {
			continue
		}
		n, ok := rd.count(e.Value)
		switch {
		case !ok:
		case n > Version:
			rd.Fault(e.Value, fmt.Sprintf("this crib is of version %d, and this evenlip knows no later one than %d", n, Version), "use a newer evenlip")
		case n < 1:
			rd.Fault(e.Value, "there is no version 0 of a crib", "version: 1")
		default:
			return true
		}
		return false
	}
	rd.Fault(root, "the version is missing", "begin the file with version: 1")
	return false
}

func (rd *reader) drills(n strict.Node, units quantity.System) []Drill {
	if n.IsNull() || n.IsList() && len(n.Items()) == 0 {
		return nil
	}
	if !n.IsList() {
		rd.Fault(n, "drills: takes a list, a drill each", "such as - id: A1")
		return nil
	}
	items := n.Items()
	out := make([]Drill, len(items))
	var faults sync.Mutex
	inParts(len(items), func(from, to int) {
		part := &reader{strict.Reader{File: rd.File}, rd.book}
		for i := from; i < to; i++ {
			out[i] = part.drill(items[i], units)
		}
		faults.Lock()
		defer faults.Unlock()
		rd.Errs = append(rd.Errs, part.Errs...)
	})
	rd.unique(out)
	return out
}

// unique refuses an id that stands twice.
func (rd *reader) unique(drills []Drill) {
	first := make(map[string]strict.Node, len(drills))
	for i := range drills {
		d := &drills[i]
		if d.ID == "" {
			continue
		}
		at, _ := d.node.Lookup("id")
		before, twice := first[d.ID]
		if !twice {
			first[d.ID] = at.Value
			continue
		}
		line, _ := before.Place()
		rd.Fault(at.Value, fmt.Sprintf("the id %q stands twice, first on line %d", d.ID, line), "give each drill an id of its own")
	}
}

func (rd *reader) drill(n strict.Node, units quantity.System) Drill {
	d := Drill{node: n}
	var history strict.Node
	told := false
	if has(n, "units") {
		units = quantity.Unset // the drill's own come first
	}
	readings, places, errs := drill.ReadMap(rd.File, n, units, func(e strict.Entry) bool {
		switch e.Key.Text() {
		case "id":
			d.ID = strings.TrimSpace(rd.Word(e.Value))
		case "series":
			d.Series = rd.oneOf("series", e.Value, orNone, serieses)
		case "shank":
			d.Shank = rd.oneOf("shank", e.Value, orNone, shanks)
		case "note":
			d.Note = rd.Word(e.Value)
		case "history":
			history, told = e.Value, true
		case "name":
			rd.Fault(e.Value, "a drill of a crib has no name", "id: is what it is called, note: a remark")
		default:
			return false
		}
		return true
	})
	rd.Errs = append(rd.Errs, errs...)
	if readings == nil {
		return d
	}
	d.Readings = readings
	readings.Book = rd.book
	rd.useful(readings, places)
	if d.ID == "" && !has(n, "id") {
		rd.Fault(n, "a drill without an id", "give each an id of its own, such as id: A1")
	}
	if readings.Written(drill.Size) == "" && !has(n, drill.Size.String()) {
		rd.Fault(n, "a drill without a size", "such as size: 12mm")
	}
	if told {
		d.History = rd.history(history, readings.System())
		readings.Past = d.past()
	}
	if len(errs) > 0 {
		return d
	}
	for _, im := range slices.Concat(inspect.Check(readings), plan.Check(readings)) {
		fault := places.Fault(im.Reading, errors.New(report.Say(im.Text, readings.System())))
		fault.Hint = im.Hint
		rd.Errs = append(rd.Errs, fault)
	}
	return d
}

// useful refuses the readings that tell nothing of a drill in a drawer.
func (rd *reader) useful(d *drill.Drill, places *drill.Places) {
	for _, r := range useless() {
		if d.Written(r) != "" {
			fault := places.Fault(r, errors.New("a crib has no use for it"))
			fault.Hint = "take the line out"
			rd.Errs = append(rd.Errs, fault)
		}
	}
}

// keep reads how many drills of each size are to be there.
func (rd *reader) keep(n strict.Node) []Keep {
	if !n.IsMap() {
		rd.Fault(n, "keep: takes a size a line and how many are to be there", "such as 12mm: 2")
		return nil
	}
	var out []Keep
	for _, e := range n.Entries() {
		size, err := quantity.Parse(quantity.Size, e.Key.Text(), quantity.Metric)
		if err != nil {
			rd.Refuse(e.Key, err)
			continue
		}
		if slices.ContainsFunc(out, func(k Keep) bool { return sameSize(k.Size.V, size.V) }) {
			rd.Fault(e.Key, strconv.Quote(e.Key.Text())+" stands twice", "keep one of them")
			continue
		}
		if count, ok := rd.count(e.Value); ok {
			out = append(out, Keep{size, count})
		}
	}
	return out
}

// sameSize reports whether two diameters in millimetres are one size.
func sameSize(a, b float64) bool {
	const rounding = 1e-6
	return a-b < rounding && b-a < rounding
}
