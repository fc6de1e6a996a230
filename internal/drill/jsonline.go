package drill

// oneLine shows what a line looks like.
const oneLine = `{"size": "12mm", "web": 2.1}`

// JSON reads the drill of one line: an object whose keys are the flags' names,
// and name and units. A value is a text, a bare number, true or false, or a
// list of two; null stands for a reading that was not taken. The readings are
// resolved. All that is wrong with the line is returned.
func (l *Lines) JSON(number int, line []byte) (*Drill, *Places, []error) {
	l.begin(number, string(line))
	if at, fault, hint := notJSON(line); fault != "" {
		l.fault(at, fault, hint)
		return &l.drill, &l.places, l.errs
	}
	w := walker{text: l.places.text}
	if w.peek() != '{' {
		l.fault(w.at, "takes one drill a line, such as "+oneLine, aboutStart(w.text[w.at:]))
		return &l.drill, &l.places, l.errs
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
	r, known := l.entry(at, key)
	w.peek()
	at = w.at
	text, kind := w.value()
	switch {
	case !known || kind == isNull:
	case kind == isNested:
		l.misread(at, key, key+": takes a text, a number or a list of two", "")
	case r >= readings && kind != isText && kind != isNumber:
		l.misread(at, key, key+": takes a text", "")
	default:
		l.take(at, r, key, text)
	}
}
