package crib

import (
	"fmt"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"
	"sync"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/strict"
)

// Version is the version of the file that this program reads and writes. It is the
// first. Whoever makes a second still has to read this one: where version lets a
// file pass whose number is lower, its tree is brought into the form of this one,
// and testdata/version-1.yaml then shows that it is read as it was.
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
	book *handbook.Book
	// unsure says that the units of bare numbers were not understood.
	unsure bool
}

// Read reads a crib from the bytes of its file. Everything that is wrong with
// it is returned, each with its line and column, in the file's order.
func Read(file string, data []byte, book *handbook.Book) (*Crib, fault.List) {
	if len(data) > largeFile {
		defer debug.SetGCPercent(debug.SetGCPercent(seldom))
	}
	rd := &reader{Reader: strict.Reader{File: file}, book: book}
	root, errs := strict.Parse(file, string(data))
	if len(errs) > 0 {
		return nil, errs
	}
	if !rd.version(root) {
		return nil, rd.sorted()
	}
	c := &Crib{File: file, root: root}
	rd.crib(c)
	if len(rd.Errs) > 0 {
		return nil, rd.sorted()
	}
	return c, nil
}

// version decides whether the file can be read at all: what a later version
// means by its keys is not known here.
func (rd *reader) version(root strict.Node) bool {
	if !root.IsMap() {
		rd.Fault(root, "this is no crib: it takes version, name, units, keep and drills, a line each", "evenlip crib new starts one")
		return false
	}
	e, there := root.Lookup("version")
	if !there {
		rd.Fault(root, "the version is missing", "begin the file with version: 1")
		return false
	}
	n, ok := rd.count(e.Value)
	switch {
	case n > Version:
		rd.Fault(e.Value, fmt.Sprintf("this crib is of version %d, and this evenlip knows no later one than %d", n, Version), "use a newer evenlip")
	case ok && n < 1:
		rd.Fault(e.Value, "there is no version 0 of a crib", "version: 1")
	}
	return n == Version
}

// crib reads what the file says.
func (rd *reader) crib(c *Crib) {
	var drills strict.Node
	strange := rd.Entries(c.root,
		strict.On("version", func(strict.Node) {}),
		strict.On("name", func(n strict.Node) { c.Name = rd.Word(n) }),
		strict.On("units", func(n strict.Node) { c.Units = rd.units(n) }),
		strict.On("keep", func(n strict.Node) { c.Keep = rd.keep(n) }),
		strict.On("drills", func(n strict.Node) { drills = n }),
	)
	rd.unsure = rd.unsure || slices.Contains(strange, "units")
	if drills == (strict.Node{}) {
		rd.Fault(c.root, "there is no list of drills", "drills: and below it a drill each, such as - id: A1")
		return
	}
	c.Drills = rd.drills(drills, c.Units)
}

// sorted returns all that is wrong with the file in its order.
func (rd *reader) sorted() fault.List {
	rd.Errs.Sort()
	return rd.Errs
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
		part := &reader{Reader: strict.Reader{File: rd.File}, book: rd.book, unsure: rd.unsure}
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
	if has(n, "units") {
		units = quantity.Unset // the drill's own come first
	}
	given, faults := drill.OfMap(rd.File, n, func(e strict.Entry) bool {
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
			history = e.Value
		case "name":
			rd.Fault(e.Value, "a drill of a crib has no name", "id: is what it is called, note: a remark")
		default:
			return false
		}
		return true
	})
	read := new(drill.Read)
	faults = append(faults, read.Resolve(given, drill.Options{Units: units, Book: rd.book})...)
	rd.Errs = append(rd.Errs, faults...)
	if !n.IsMap() {
		return d
	}
	readings := &read.Drill
	d.Readings = readings
	rd.useful(given)
	if d.ID == "" && !has(n, "id") {
		rd.Fault(n, "a drill without an id", "give each an id of its own, such as id: A1")
	}
	if !has(n, drill.Size.String()) {
		rd.Fault(n, "a drill without a size", "such as size: 12mm")
	}
	if history != (strict.Node{}) {
		d.History = rd.history(history, readings, read.UnitsKnown() && !rd.unsure)
		readings.Past = d.past()
	}
	if rd.unsure || !read.UnitsKnown() {
		return d
	}
	found := readings.Possible()
	if len(found)+len(faults) == 0 {
		found = judge.Cannot(readings)
	}
	rd.Errs = append(rd.Errs, found...)
	return d
}

// useful refuses the readings that tell nothing of a drill in a drawer.
func (rd *reader) useful(given []drill.Given) {
	for _, g := range given {
		if g.Text != "" && useless(g.Reading) {
			rd.Errs = append(rd.Errs, fault.New("take the line out", "a crib has no use for it").In(g.At, g.Reading.String()))
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
