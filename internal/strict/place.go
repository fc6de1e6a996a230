package strict

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// legible refuses bytes that are no text. The library refuses them too, but
// does not say where.
func legible(file string, data []byte) error {
	for at := 0; at < len(data); {
		r, size := utf8.DecodeRune(data[at:])
		if r == utf8.RuneError && size == 1 {
			line, column := place(data, at)
			return &Error{File: file, Line: line, Column: column, Text: "the bytes from here are not UTF-8", Hint: "save the file as UTF-8 text"}
		}
		if isControl(r) {
			line, column := place(data, at)
			return &Error{File: file, Line: line, Column: column, Text: fmt.Sprintf("control character U+%04X", r), Hint: "take it out"}
		}
		at += size
	}
	return nil
}

// isControl reports whether YAML 1.2 (section 5.1) keeps r out of a file.
func isControl(r rune) bool {
	switch {
	case r == '\t' || r == '\n' || r == '\r' || r == 0x85:
		return false
	case r < ' ' || r >= 0x7f && r < 0xa0:
		return true
	}
	return r == 0xfffe || r == 0xffff
}

// place returns the line and the column, in characters, of a byte; from 1.
func place(data []byte, at int) (line, column int) {
	before := data[:at]
	start := bytes.LastIndexByte(before, '\n') + 1
	return bytes.Count(before, []byte{'\n'}) + 1, utf8.RuneCount(before[start:]) + 1
}

// syntax turns the library's complaint into ours, with its line.
func syntax(file string, data []byte, err error) error {
	text := strings.TrimPrefix(err.Error(), "yaml: ")
	if name, ok := strings.CutPrefix(text, "unknown anchor '"); ok {
		name, _, _ = strings.Cut(name, "'")
		line, column := place(data, max(0, bytes.Index(data, []byte("*"+name))))
		return &Error{File: file, Line: line, Column: column, Text: noAnchors, Hint: writeOut}
	}
	line := 0
	if rest, ok := strings.CutPrefix(text, "line "); ok {
		if number, after, ok := strings.Cut(rest, ": "); ok {
			line, _ = strconv.Atoi(number)
			text = after
		}
	}
	line = trueLine(line, text, data)
	return &Error{File: file, Line: line, Column: tabIn(data, line), Text: "not YAML: " + text, Hint: hintFor(text)}
}

// tabIn returns the column of a tab among the blanks that a line begins with, 0
// for none: of what is no YAML the library tells the line alone.
func tabIn(data []byte, line int) int {
	lines := bytes.SplitN(data, []byte{'\n'}, line+1)
	text := lines[line-1]
	blank := text[:len(text)-len(bytes.TrimLeft(text, " \t"))]
	return bytes.IndexByte(blank, '\t') + 1
}

// trueLine mends the library's line: it leaves it out on the first line, and
// counts from 0 where its parser complains and from 1 where its scanner does.
func trueLine(line int, text string, data []byte) int {
	for _, parser := range [...]string{"key", "',' or", "'-' indicator", "node content", "<document start>"} {
		if line > 0 && strings.HasPrefix(text, "did not find expected "+parser) {
			line++
		}
	}
	last := bytes.Count(bytes.TrimRight(data, "\n"), []byte{'\n'}) + 1
	return min(max(line, 1), last)
}

// hintFor explains the complaints that a file kept by hand runs into.
func hintFor(text string) string {
	switch {
	case strings.Contains(text, "mapping values are not allowed"):
		return "one reading a line: a second colon on a line goes into quotes"
	case strings.Contains(text, "cannot start any token") || strings.Contains(text, "tab character"):
		return "begin the line with the reading's name, spaces and no tabs before it, and put a value with odd marks into quotes"
	}
	return ""
}
