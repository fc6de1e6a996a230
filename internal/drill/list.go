package drill

import (
	"strconv"

	"evenlip/internal/fault"
	"evenlip/internal/near"
)

// list is what a source gives, as it is being read.
type list struct {
	seen   [entries]bool
	given  []Given
	faults fault.List
}

// key finds what a key stands for; false says that it was told as a fault.
func (l *list) key(at fault.Place, key string) (Reading, bool) {
	r, known := find(key)
	switch {
	case !known:
		text, hint := unknown(key)
		meant, _ := find(near.Name(key, keys()...))
		l.refuse(at, meant, text, hint)
		return 0, false
	case l.seen[r]:
		l.refuse(at, r, strconv.Quote(key)+" stands twice", "keep one of them")
		return 0, false
	}
	l.seen[r] = true
	return r, true
}

// refuse tells what is wrong with what stands under a key, and leaves that something
// does.
func (l *list) refuse(at fault.Place, r Reading, text, hint string) {
	l.faults = append(l.faults, fault.New(hint, "%s", text).In(at, ""))
	l.given = append(l.given, Given{Reading: r, At: at})
}

// find returns what a key stands for, readings, name and units. Where there is none,
// it is no unit giver's either.
func find(key string) (Reading, bool) {
	for r := range entries {
		if r.String() == key {
			return r, true
		}
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

func keys() (out []string) {
	for r := range entries {
		out = append(out, r.String())
	}
	return out
}
