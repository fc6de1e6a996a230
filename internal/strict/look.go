package strict

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// fault is what is wrong, and what to do.
type fault struct{ text, hint string }

// look finds out what is wrong with a line from which on a block is no YAML. The
// library knows that it is; why, it says in words of its own, and has none where a
// bracket is never closed, or a text stands in a key's place.
type look struct {
	part []string
	line int
	said string
}

// explain returns the line and the column, from 1, of what is wrong.
func (l *look) explain() (line, column int, f fault) {
	text := strings.TrimRight(l.part[l.line], breaks)
	before := strings.Join(l.part[:l.line], "")
	if l.said == "" {
		before += text
	}
	if at := lastOpen(before); at >= 0 {
		opened := linesOf(before[:at+1])
		line := len(opened) - 1
		if l.said == "" || indentOf(text) <= indentOf(l.part[line]) {
			return line, columnAt(opened[line], len(opened[line])-1), unclosed(before[at])
		}
		return l.line, columnAt(text, start(text)), l.other()
	}
	at, f := l.inLine(text)
	return l.line, columnAt(text, at), f
}

// start returns the byte at which a line says something.
func start(text string) int { return len(text) - len(strings.TrimLeft(text, " \t")) }

// columnAt returns the column of a byte of a line, in characters and from 1.
func columnAt(line string, at int) int { return utf8.RuneCountInString(line[:at]) + 1 }

// inLine looks at one line, from its first blank to what stands behind its value.
func (l *look) inLine(text string) (at int, f fault) {
	from := start(text)
	if tab := strings.IndexByte(text[:from], '\t'); tab >= 0 {
		return tab, fault{"a tab stands among the blanks before the key", "put spaces in its place"}
	}
	if name, ok := strings.CutPrefix(l.said, "unknown anchor '"); ok {
		name, _, _ = strings.Cut(name, "'")
		return max(0, strings.Index(text, "*"+name)), fault{noAnchors, writeOut}
	}
	if f, ok := l.outOfPlace(text); ok {
		return from, f
	}
	for isItem(text[from:]) {
		from += 1 + start(text[from+1:])
	}
	if from == len(text) {
		return start(text), l.other()
	}
	if at, f, ok := value(text, from, ""); ok {
		return at, f
	}
	behind := colon(text[from:])
	if behind < 0 {
		return noColon(text, from)
	}
	key := strings.TrimSpace(text[from : from+behind])
	from += behind + 1
	from += start(text[from:])
	if at, f, ok := value(text, from, key); ok {
		return at, f
	}
	if second := colon(text[from:]); second >= 0 {
		return from + second, fault{"a second colon on one line", "one key and its value a line; a value with a colon in it goes into quotes"}
	}
	return start(text), l.other()
}

func noColon(text string, from int) (at int, f fault) {
	if at := strings.IndexByte(text[from:], ':'); at > 0 {
		return from + at, fault{"a blank is missing behind the colon", "such as web: 2mm"}
	}
	return from, fault{"there is no key on this line", "a key, a colon and a blank go before a value, such as web: 2mm"}
}

// value looks at what a value, or a key, begins with.
func value(text string, from int, key string) (at int, f fault, ok bool) {
	if from >= len(text) {
		return 0, f, false
	}
	rest := text[from:]
	switch c := rest[0]; c {
	case '"', '\'':
		return quoted(text, from)
	case '[', '{':
		if at := lastOpen(rest); at >= 0 {
			return from + at, unclosed(rest[at]), true
		}
	case '*', '&', '%', '@', '`', '|', '>', ',', ']', '}', '?', '!':
		if key == "" {
			return from, fault{"a line cannot begin with " + string(c), "begin it with a key, such as web: 2mm"}, true
		}
		return from, fault{"a value cannot begin with " + string(c), "put it into quotes, " + key + ": " + strconv.Quote(rest)}, true
	case '-':
		if key != "" && isItem(rest) {
			return from, fault{"a list cannot begin behind its key", "begin it on the next line, or write it as [59, 58]"}, true
		}
	}
	return 0, f, false
}

// quoted looks at a text in quotes.
func quoted(text string, from int) (at int, f fault, ok bool) {
	rest, quote := text[from:], text[from:from+1]
	other := `"..."`
	twice := "''"
	if quote == `"` {
		other, twice = `'...'`, `\"`
	}
	end := closing(rest)
	if end < 0 {
		return from, unclosed(text[from]), true
	}
	if bad := badEscape(rest[:end]); bad >= 0 {
		return from + bad, fault{rest[bad:bad+2] + " is no escape", `write \\ for a \, or put the text into '...'`}, true
	}
	behind := strings.TrimLeft(rest[end:], " \t")
	if behind == "" || behind[0] == '#' || behind[0] == ':' {
		return 0, f, false
	}
	return len(text) - len(behind), fault{"text stands behind the closing " + quote, "put it all into one pair of quotes; inside " + quote + "..." + quote + " write " + twice + " for a " + quote + ", or use " + other}, true
}

// badEscape returns where a text in double quotes has an escape that YAML does not
// know, -1 for nowhere.
func badEscape(text string) int {
	if text[0] != '"' {
		return -1
	}
	for at := 1; at+1 < len(text); at++ {
		if text[at] != '\\' {
			continue
		}
		if !strings.ContainsRune("0abt\tnvfre \"/\\N_LPxuU", rune(text[at+1])) {
			return at
		}
		at++
	}
	return -1
}

func unclosed(mark byte) fault {
	closer := string(closerOf(mark))
	if closer == string(mark) {
		return fault{"the " + closer + " is not closed", "close it with " + closer + ", or take it away"}
	}
	return fault{"the " + string(mark) + " is not closed", "close it with " + closer + ", or put the value into quotes if the bracket belongs to it"}
}

// other tells the library's complaint.
func (l *look) other() fault {
	return fault{cmp.Or(l.said, "no YAML can be made of this line"), "one key and its value a line; a value with odd marks in it goes into quotes"}
}

// level is a column in which keys, or the dashes of a list, stand one below the
// other.
type level struct {
	column int
	item   bool
	open   bool // the last key has no value on its line: one may follow further in
}

// levels returns those that the lines above leave open, the innermost last.
func levels(lines []string) []level {
	var out []level
	for _, line := range lines {
		if !busy(line) || !isItem(line) && keyOf(line) == "" {
			continue
		}
		at := indentOf(line)
		for len(out) > 0 && out[len(out)-1].column > at {
			out = out[:len(out)-1]
		}
		for isItem(line[at:]) {
			out = append(above(out, at, true), level{column: at, item: true})
			at += 1 + indentOf(line[at+1:])
		}
		if keyOf(line[at:]) != "" {
			out = append(above(out, at, false), level{column: at, open: valueOf(line[at:]) == ""})
		}
	}
	return out
}

// above returns the levels over one: of those at its column, only the list's own
// key stays.
func above(all []level, column int, item bool) []level {
	for len(all) > 0 {
		last := all[len(all)-1]
		if last.column < column || last.column == column && item && !last.item {
			break
		}
		all = all[:len(all)-1]
	}
	return all
}

// outOfPlace finds a line that does not begin where the lines above allow it.
func (l *look) outOfPlace(text string) (f fault, ok bool) {
	all := levels(l.part[:l.line])
	item, at := isItem(text), indentOf(text)
	if len(all) == 0 || !item && keyOf(text) == "" {
		return f, false
	}
	other := false
	nearest := all[len(all)-1]
	for i := len(all) - 1; i >= 0; i-- {
		switch x := all[i]; {
		case x.column == at && (x.item == item || item && x.open):
			return f, false
		case x.column == at:
			other = true
		}
	}
	switch {
	case other && item:
		return fault{"a list item stands where a key belongs", "take the dash away, or put it under a key of its own"}, true
	case other:
		return fault{"a key stands where a list item belongs", "put a dash before it, or begin it in the column of the keys above"}, true
	case at > nearest.column && nearest.open:
		return f, false
	}
	return outOfLine(at, nearest.column), true
}

// outOfLine is the fault of a line that begins beside the others' column; both
// are counted from 0.
func outOfLine(column, wanted int) fault {
	return fault{fmt.Sprintf("the line begins in column %d, and those above in column %d", column+1, wanted+1), "what belongs together begins in one column"}
}
