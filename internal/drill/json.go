package drill

import (
	"bytes"
	"encoding/json"
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"

	"evenlip/internal/fault"
)

// oneLine shows what a line looks like.
const oneLine = `{"size": "12mm", "web": 2.1}`

// JSON reads the drill of one line: an object whose keys are the flags' names,
// and name and units. A value is a text, a bare number, true or false, or a
// list of two; null stands for a reading that was not taken. All that is wrong with
// the line's form is returned.
func (l *Lines) JSON(number int, line []byte) ([]Given, fault.List) {
	l.begin(number, string(line))
	if at, why, hint := notJSON(line); why != "" {
		l.malformed(at, why, hint)
		return nil, l.faults
	}
	w := walker{text: l.text}
	if w.peek() != '{' {
		l.malformed(w.at, "takes one drill a line, such as "+oneLine, aboutStart(w.text[w.at:]))
		return nil, l.faults
	}
	for w.at++; w.peek() != '}'; w.pass(',') {
		l.member(&w)
	}
	return l.end()
}

// member takes one key and its value.
func (l *Lines) member(w *walker) {
	at := w.at
	key, _ := w.value()
	w.pass(':')
	r, known := l.key(l.to(at), key)
	w.peek()
	at = w.at
	text, kind := w.value()
	switch {
	case !known || kind == 'n':
	case kind == '{':
		l.refuse(l.to(at), r, key+": takes a text, a number or a list of two", "")
	case r >= readings && strings.IndexByte("tf[", kind) >= 0:
		l.refuse(l.to(at), r, key+": takes a text", "")
	default:
		l.take(at, r, text)
	}
}

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
// written for a flag: a list's items with commas between them. Its kind is the byte
// that it begins with, { also of a list of anything but texts and numbers.
func (w *walker) value() (text string, kind byte) {
	kind = w.peek()
	switch kind {
	case '"':
		return w.quoted(), kind
	case '[':
		return w.list()
	case '{':
		w.skip()
		return "", kind
	}
	from := w.at
	for w.at < len(w.text) && !ends(w.text[w.at]) {
		w.at++
	}
	return w.text[from:w.at], kind
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
func (w *walker) list() (text string, kind byte) {
	var items []string
	kind = '['
	for w.at++; w.peek() != ']'; w.pass(',') {
		item, of := w.value()
		if strings.IndexByte("tfn[{", of) >= 0 {
			kind = '{'
		}
		items = append(items, item)
	}
	w.at++
	return strings.Join(items, ","), kind
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
