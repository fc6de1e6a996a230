package drill

import (
	"slices"
	"strconv"
	"strings"

	"evenlip/internal/fault"
	"evenlip/internal/strict"
)

// keyDrills is the key of a crib's file, given in a drill's place.
const keyDrills = "drills"

// OfFile returns the readings that a YAML file has of one drill: a mapping whose keys
// are the flags' names, and name and units. A drill without a name is called as the
// file is. All that is wrong with the file's form is returned, and beside it what could
// be read.
func OfFile(file, text string) ([]Given, fault.List) {
	root, faults := strict.Parse(file, text)
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
	out := list{given: make([]Given, 0, len(entries))}
	var others []string
	for _, e := range entries {
		key := e.Key.Text()
		if r, known := find(key); other != nil && (!known || r >= readings) {
			if slices.Contains(others, key) {
				out.refuse(e.Key.In(file), Name, strconv.Quote(key)+" stands twice", "keep one of them")
				continue
			}
			if other(e) {
				others = append(others, key)
				continue
			}
		}
		r, ok := out.key(e.Key.In(file), key)
		if !ok {
			continue
		}
		text, ok := scalar(e.Value, r < readings && r.Spec().Pair)
		if !ok || strings.TrimSpace(text) == "" {
			out.refuse(e.Value.In(file), r, key+": takes a value on its line", aboutBlank(key, e.Comment()))
			continue
		}
		out.given = append(out.given, Given{r, text, e.Value.In(file)})
	}
	return out.given, out.faults
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
