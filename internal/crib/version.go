package crib

import (
	"bytes"
	"fmt"
	"strconv"
	"unicode/utf8"

	"evenlip/internal/fault"
	"evenlip/internal/strict"
)

// Version is the version of the file that this program reads and writes. It is the
// first. Whoever makes a second still has to read this one: where version lets a
// file pass whose number is lower, its tree is brought into the form of this one,
// and testdata/version-1.yaml then shows that it is read as it was.
const Version = 1

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
			line, column := e.Value.Place()
			rd.tooNew(line, column, n)
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

// later refuses a file of a later version before anything else is asked of it:
// what its words mean, or whether it is YAML at all, is not known here.
func (rd *reader) later(data []byte) bool {
	from, digits := versionIn(data)
	n, err := strconv.Atoi(string(digits))
	if err != nil || n <= Version {
		return false
	}
	l := layoutOf(data[:from+len(digits)])
	line := l.lines()
	rd.tooNew(line, utf8.RuneCount(data[l.starts[line-1]:from])+1, n)
	return true
}

// versionIn finds the version where a person or a program writes it, at the
// beginning of a line or of a file between brackets, and returns its digits; none
// where there is no such line, or no number on it.
func versionIn(data []byte) (from int, digits []byte) {
	key := []byte("version")
	for at := bytes.Index(data, key); at >= 0; {
		if begins(data[:at]) {
			rest := bytes.TrimLeft(data[at+len(key):], "\"' \t")
			if value, ok := bytes.CutPrefix(rest, []byte(":")); ok {
				value = bytes.TrimLeft(value, " \t\"'")
				end := bytes.IndexFunc(value, func(r rune) bool { return r < '0' || r > '9' })
				if end < 0 {
					end = len(value)
				}
				return len(data) - len(value), value[:end]
			}
		}
		next := bytes.Index(data[at+len(key):], key)
		if next < 0 {
			break
		}
		at += len(key) + next
	}
	return 0, nil
}

// begins reports whether a key behind these bytes begins a line, or a file that
// stands between brackets.
func begins(before []byte) bool {
	before = bytes.TrimRight(before, "\"'")
	if bytes.HasSuffix(before, []byte("\n")) || bytes.HasSuffix(before, []byte("\r")) {
		return true
	}
	head := bytes.TrimSpace(bytes.TrimPrefix(before, []byte("\ufeff")))
	return len(head) == 0 || string(head) == "{"
}

func (rd *reader) tooNew(line, column, version int) {
	rd.Errs = append(rd.Errs, &fault.Fault{At: fault.Place{File: rd.File, Line: line, Column: column},
		Text: fmt.Sprintf("this crib is of version %d, and this evenlip knows no later one than %d", version, Version), Hint: "use a newer evenlip"})
}
