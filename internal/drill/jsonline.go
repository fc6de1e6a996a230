package drill

import "evenlip/internal/fault"

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
	case !known || kind == isNull:
	case kind == isNested:
		l.refuse(l.to(at), r, key+": takes a text, a number or a list of two", "")
	case r >= readings && kind != isText && kind != isNumber:
		l.refuse(l.to(at), r, key+": takes a text", "")
	default:
		l.take(at, r, text)
	}
}
