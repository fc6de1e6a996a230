package strict

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// block is a part of a file that stands for itself, whatever is wrong with the
// others: an entry of the file, or an item of the list that it is.
type block struct {
	from, to int    // its lines
	key      string // of an entry; "" where its first line names none
	item     bool
	column   int // of an item's dash, from 0
	first    int // the same of the list's first item
}

// keyless reports whether the block is what stands before the first key.
func (b *block) keyless() bool { return !b.item && b.key == "" }

// entry is an entry of a file: its key, with its value unless that is a list, and
// the list's items.
type entry struct {
	head  block
	items []block
}

// last returns the block that goes on with the next line.
func (e *entry) last() *block {
	if n := len(e.items); n > 0 {
		return &e.items[n-1]
	}
	return &e.head
}

// entriesOf cuts a file as its indentation shows it.
func entriesOf(lines []string) []entry {
	var all []entry
	for i, line := range lines {
		n := len(all)
		switch {
		case idle(line):
		case n == 0 || beginsEntry(&all[n-1], lines[i:]):
			all = append(all, entry{head: block{from: i, key: keyOf(line)}})
		case beginsItem(&all[n-1], lines, line):
			e := &all[n-1]
			it := block{from: i, item: true, column: indentOf(line), first: indentOf(line)}
			if len(e.items) > 0 {
				it.first = e.items[0].column
			}
			e.items = append(e.items, it)
		}
		if n := len(all); n > 0 {
			all[n-1].last().to = i + 1
		}
	}
	return all
}

// beginsEntry reports whether a line begins the entry after e. Below a list, a key
// that has a value and something under it all the same has slipped out of an item.
func beginsEntry(e *entry, lines []string) bool {
	if indentOf(lines[0]) > 0 || keyOf(lines[0]) == "" {
		return false
	}
	return len(e.items) == 0 || valueOf(lines[0]) == "" || !deeper(lines[1:])
}

// deeper reports whether the next line is a key or an item further in.
func deeper(lines []string) bool {
	for _, next := range lines {
		if busy(next) {
			return indentOf(next) > 0 && (isItem(next) || keyOf(next) != "")
		}
	}
	return false
}

// beginsItem reports whether a line begins an item of the entry's list: the first
// right below an entry that has no value on its line, or one no further in than
// what an item holds.
func beginsItem(e *entry, lines []string, line string) bool {
	switch {
	case !isItem(line):
		return false
	case len(e.items) > 0:
		return indentOf(line) < e.items[0].column+len("- ")
	}
	return e.head.key != "" && valueOf(lines[e.head.from]) == "" && !slices.ContainsFunc(lines[e.head.from+1:e.head.to], busy)
}

// idle reports whether a line says nothing: blank, a remark, or a mark of where
// a document begins or ends.
func idle(line string) bool {
	text := strings.TrimSpace(line)
	return text == "" || text[0] == '#' || strings.HasPrefix(line, "---") || strings.HasPrefix(line, "...")
}

func busy(line string) bool { return !idle(line) }

// indentOf returns how many blanks a line begins with.
func indentOf(line string) int { return len(line) - len(strings.TrimLeft(line, " ")) }

func isItem(line string) bool {
	text := strings.TrimLeft(line, " ")
	return strings.HasPrefix(text, "- ") || strings.TrimRight(text, breaks) == "-"
}

// columnOf returns where a line's key stands, from 0, behind any dashes.
func columnOf(line string) int {
	at := indentOf(line)
	for isItem(line[at:]) {
		at += 1 + indentOf(line[at+1:])
	}
	return at
}

// keyOf returns the key that a line begins with, "" for none.
func keyOf(line string) string {
	text := strings.TrimLeft(line, " ")
	at := colon(text)
	if at <= 0 || strings.ContainsRune(noKey, rune(text[0])) || isItem(text) {
		return ""
	}
	return strings.Trim(strings.TrimSpace(text[:at]), `"'`)
}

// noKey is what no key written by hand begins with.
const noKey = "\t#[]{},&*!|>%@`?"

// valueOf returns what stands behind a line's key, "" for a remark.
func valueOf(line string) string {
	text := strings.TrimLeft(line, " ")
	value := strings.TrimSpace(text[colon(text)+1:])
	if strings.HasPrefix(value, "#") {
		return ""
	}
	return value
}

// colon returns where the colon behind a line's key stands, -1 for none.
func colon(text string) int {
	from := 0
	if text != "" && (text[0] == '"' || text[0] == '\'') {
		end := closing(text)
		if end < 0 {
			return -1
		}
		from = end
	}
	for at := from; at < len(text); at++ {
		if text[at] == ':' && (at+1 == len(text) || strings.ContainsRune(" \t"+breaks, firstRune(text[at+1:]))) {
			return at
		}
		if text[at] == '#' && at > 0 && text[at-1] == ' ' {
			return -1
		}
	}
	return -1
}

func firstRune(text string) rune {
	r, _ := utf8.DecodeRuneInString(text)
	return r
}

// closing returns where a text that begins with a quote is behind the one that
// closes it, -1 where none does.
func closing(text string) int {
	quote := text[0]
	for at := 1; at < len(text); at++ {
		switch {
		case text[at] == '\\' && quote == '"':
			at++
		case text[at] != quote:
		case quote == '\'' && strings.HasPrefix(text[at+1:], "'"):
			at++
		default:
			return at + 1
		}
	}
	return -1
}

// breaks are the characters that end a line of YAML 1.1.
const breaks = "\r\n\u0085\u2028\u2029"

// linesOf cuts a text into lines, each with its end.
func linesOf(text string) []string {
	var out []string
	for text != "" {
		at := strings.IndexAny(text, breaks)
		if at < 0 {
			return append(out, text)
		}
		_, size := utf8.DecodeRuneInString(text[at:])
		if strings.HasPrefix(text[at:], "\r\n") {
			size = len("\r\n")
		}
		out = append(out, text[:at+size])
		text = text[at+size:]
	}
	return out
}

// breakOf returns the end of a line.
func breakOf(line string) string { return line[len(strings.TrimRight(line, breaks)):] }
