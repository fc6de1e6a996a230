package drill

import (
	"io"
	"slices"
	"strconv"
	"strings"

	"evenlip/internal/fault"
	"evenlip/internal/near"
	"evenlip/internal/strict"
)

// keyDrills is the key of a crib's file, given in a drill's place.
const keyDrills = "drills"

// OfFile returns the readings that a YAML file has of one drill: a mapping whose keys
// are the flags' names, and name and units. A drill without a name is called as the
// file is. All that is wrong with the file's form is returned, and beside it what could
// be read.
func OfFile(file string, r io.Reader) ([]Given, fault.List) {
	root, faults := strict.Parse(file, r)
	if len(faults) > 0 {
		return nil, faults
	}
	given, faults := OfMap(file, root, nil)
	if !slices.ContainsFunc(given, func(g Given) bool { return g.Reading == Name }) {
		given = append(given, Given{Reading: Name, Text: file})
	}
	return given, faults
}

// OfMap returns the readings of one drill in a mapping of a file. The entries whose key
// is no reading's go to other first, which reports whether it knows the key; nil
// knows none.
func OfMap(file string, root strict.Node, other func(strict.Entry) bool) ([]Given, fault.List) {
	if !root.IsMap() {
		return nil, fault.List{fault.New("", "takes one reading a line, such as size: 12mm").In(root.In(file), "")}
	}
	entries := root.Entries()
	m := mapping{file: file, given: make([]Given, 0, len(entries))}
	for _, e := range entries {
		m.entry(e, other)
	}
	return m.given, m.faults
}

// mapping is a mapping that is being read.
type mapping struct {
	file   string
	seen   [entries]bool
	given  []Given
	faults fault.List
}

func (m *mapping) entry(e strict.Entry, other func(strict.Entry) bool) {
	key := e.Key.Text()
	r, known := find(key)
	switch {
	case known && m.seen[r]:
		m.refuse(e.Key, r, strconv.Quote(key)+" stands twice", "keep one of them")
		return
	case other != nil && (!known || r >= readings) && other(e):
		return
	case !known:
		text, hint := unknown(key)
		meant, _ := find(meant(key))
		m.refuse(e.Key, meant, text, hint)
		return
	}
	m.seen[r] = true
	text, ok := scalar(e.Value, r < readings && r.Spec().Pair)
	if !ok || strings.TrimSpace(text) == "" {
		m.refuse(e.Value, r, key+": takes a value on its line", aboutBlank(key, e.Comment()))
		return
	}
	m.given = append(m.given, Given{r, text, e.Value.In(m.file)})
}

// refuse tells what is wrong with an entry, and leaves that something stands there.
func (m *mapping) refuse(n strict.Node, r Reading, text, hint string) {
	m.faults = append(m.faults, fault.New(hint, "%s", text).In(n.In(m.file), ""))
	m.given = append(m.given, Given{Reading: r, At: n.In(m.file)})
}

// find returns what a key stands for, readings, name and units. Where there is none,
// it is no unit giver's either.
func find(key string) (Reading, bool) {
	switch key {
	case "name":
		return Name, true
	case "units":
		return Units, true
	}
	if r, ok := Find(key); ok {
		return r, true
	}
	return Name, false
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

func keys() []string {
	out := []string{Name.String(), Units.String()}
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
