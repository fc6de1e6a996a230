package drill

import (
	"bytes"
	"encoding/json"
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"
)

// notJSON says what the standard library has against a line, and where.
func notJSON(line []byte) (offset int, fault, hint string) {
	if json.Valid(line) {
		if utf8.Valid(line) {
			return 0, "", ""
		}
		return bytes.IndexByte(bytes.ToValidUTF8(line, []byte{0xff}), 0xff), "is not UTF-8", "save the file as UTF-8"
	}
	err := json.Unmarshal(line, new(json.RawMessage))
	var syntax *json.SyntaxError
	if errors.As(err, &syntax) {
		offset = max(0, min(int(syntax.Offset), len(line))-1)
	}
	hint = aboutStart(strings.TrimSpace(string(line)))
	if hint == "" && strings.HasPrefix(err.Error(), "unexpected end") {
		hint = "is it all on this line? the whole drill goes on one (jq -c . does that)"
	}
	return offset, "not JSON: " + err.Error(), hint
}

// aboutStart guesses from how a line begins what was taken for JSON Lines.
func aboutStart(line string) string {
	switch {
	case strings.HasPrefix(line, "["):
		return "a list is not taken: write each drill on a line of its own (jq -c '.[]' does)"
	case strings.HasPrefix(line, "{"):
		return ""
	}
	return "one JSON object a line; for CSV say --input csv, and a drill's YAML file is for evenlip inspect FILE"
}

// kind is what stands at a place in JSON.
type kind uint8

const (
	isNull kind = iota
	isText
	isNumber
	isTruth
	isList
	isNested // an object, or a list of anything but texts and numbers
)

// walker goes through a text that is valid JSON.
type walker struct {
	text string
	at   int
}

// peek skips white space and returns the byte behind it, which is there as long
// as an object is open.
func (w *walker) peek() byte {
	for w.at < len(w.text) && w.text[w.at] <= ' ' {
		w.at++
	}
	if w.at == len(w.text) {
		return 0
	}
	return w.text[w.at]
}

// pass skips white space and, if it follows, the mark.
func (w *walker) pass(mark byte) {
	if w.peek() == mark {
		w.at++
	}
}

// value returns the value that begins here, after white space, as it would be
// written for a flag: a list's items with commas between them.
func (w *walker) value() (string, kind) {
	switch w.peek() {
	case '"':
		return w.quoted(), isText
	case '[':
		return w.list()
	case '{':
		w.skip()
		return "", isNested
	}
	from := w.at
	for w.at < len(w.text) && !ends(w.text[w.at]) {
		w.at++
	}
	word := w.text[from:w.at]
	switch word {
	case "null":
		return "", isNull
	case "true", "false":
		return word, isTruth
	}
	return word, isNumber
}

// ends reports whether a byte stands behind a number, and is none of it.
func ends(c byte) bool { return c <= ' ' || c == ',' || c == ']' || c == '}' }

// quoted returns the text of a string.
func (w *walker) quoted() string {
	from := w.at
	escaped := false
	for w.at++; w.text[w.at] != '"'; w.at++ {
		if w.text[w.at] == '\\' {
			escaped = true
			w.at++
		}
	}
	w.at++
	if !escaped {
		return w.text[from+1 : w.at-1]
	}
	var out string
	if err := json.Unmarshal([]byte(w.text[from:w.at]), &out); err != nil {
		panic("drill: a string of valid JSON is none: " + strconv.Quote(w.text[from:w.at]))
	}
	return out
}

// list joins the items of a list.
func (w *walker) list() (string, kind) {
	var items []string
	what := isList
	for w.at++; w.peek() != ']'; w.pass(',') {
		item, kind := w.value()
		if kind != isText && kind != isNumber {
			what = isNested
		}
		items = append(items, item)
	}
	w.at++
	return strings.Join(items, ","), what
}

// skip passes over an object.
func (w *walker) skip() {
	for w.at++; w.peek() != '}'; w.pass(',') {
		w.value()
		w.pass(':')
		w.value()
	}
	w.at++
}
