package strict

import (
	"errors"
	"evenlip/internal/fault"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// advice is the one hint for whatever is no YAML.
const advice = "a value with odd marks in it goes into quotes; or look for a quote or a bracket left open, a colon with no blank behind it, a tab, a line out of its column"

// syntaxError tells what the library has against a text: its words, and the line between
// its neighbours with a caret under it.
func syntaxError(file, text string, err error) *fault.Fault {
	lines := Lines(strings.TrimPrefix(text, "\ufeff"))
	line, words := complaint(lines, err)
	f := at(file, line, column(lines[line-1], words), "not YAML: "+words, advice)
	f.Shown = excerpt(lines, f.At)
	return f
}

// complaint returns the library's words, and the line. Some complaints name the
// line on which the list or the mapping began, often the file's first. It is rather
// the line that was read last, or the one above where that is enough to complain of,
// since the library looks ahead. Only a bracket that was read past is the fault
// itself: it is open.
func complaint(lines []string, whole error) (line int, words string) {
	read, err := decode(lines)
	if err == nil { // U+FEFF is taken in one place of the library's buffer only
		err = whole
	}
	words = strings.TrimPrefix(err.Error(), "yaml: ")
	told, _ := fmt.Sscanf(words, "line %d:", &line)
	if told == 1 {
		_, words, _ = strings.Cut(words, ": ")
		bracket := strings.HasPrefix(words, "did not find expected ','")
		switch {
		case bracket && indent(lines[read-1]) <= indent(lines[line-1]):
			return line, words
		case !strings.HasPrefix(words, "did not find expected") && !strings.HasPrefix(words, "found undefined tag") && !strings.HasPrefix(words, "found a tab"):
			return max(line-1, 1), words
		}
	}
	above := lastBusy(lines[:read-1])
	if _, err := decode(lines[:above]); err != nil {
		return above, words
	}
	return read, words
}

func indent(line string) int { return len(line) - len(strings.TrimLeft(line, " ")) }

// lastBusy returns the number of the last line that is no blank one nor a remark, 0
// if there is none.
func lastBusy(lines []string) int {
	n := len(lines)
	for n > 0 && strings.HasPrefix(strings.TrimSpace(lines[n-1])+"#", "#") {
		n--
	}
	return n
}

// decode reads lines that may be no YAML and returns how many of them the library
// has asked for. A blank line goes before them: the library takes the number of the
// first for none.
func decode(lines []string) (read int, err error) {
	r := &byLine{lines: lines, rest: "\n"}
	dec := yaml.NewDecoder(r)
	for err == nil {
		err = dec.Decode(new(yaml.Node))
	}
	if errors.Is(err, io.EOF) {
		err = nil
	}
	return r.read, err
}

// byLine is a reader that hands out a line at a time.
type byLine struct {
	lines []string
	read  int
	rest  string // of the line that was read last
}

func (r *byLine) Read(p []byte) (int, error) {
	for r.rest == "" {
		if r.read == len(r.lines) {
			return 0, io.EOF
		}
		r.rest = r.lines[r.read]
		r.read++
	}
	n := copy(p, r.rest)
	r.rest = r.rest[n:]
	return n, nil
}

// column returns where a line is at fault, from 1: at the first byte that is no text, at
// the bracket that is missed at its end, or else at its first mark.
func column(line, words string) int {
	line = visible(line)
	at := strings.IndexRune(line, utf8.RuneError)
	if open := unclosed(line); at < 0 && open >= 0 && strings.HasPrefix(words, "did not find expected ','") {
		at = open
	}
	if at < 0 {
		at = indent(line)
	}
	return utf8.RuneCountInString(line[:at]) + 1
}

// unclosed returns where the first bracket stands that the line does not close, -1 for
// none.
func unclosed(line string) int {
	var open []int
	for i, r := range line {
		switch r {
		case '[', '{':
			open = append(open, i)
		case ']', '}':
			open = open[:max(0, len(open)-1)]
		}
	}
	if len(open) == 0 {
		return -1
	}
	return open[0]
}

// visible is a line as it may be shown: without its end, and with a mark for what is no
// text.
func visible(line string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) && r != '\t' {
			return utf8.RuneError
		}
		return r
	}, strings.TrimSuffix(line, LineEnd(line)))
}

// widest is how long a line is still shown, in characters.
const widest = 160

// excerpt returns a line of a file with its number and a caret below it, between its
// neighbours.
func excerpt(lines []string, at fault.Place) string {
	var out []string
	digits := len(strconv.Itoa(at.Line + 1))
	for n := at.Line - 1; n <= at.Line+1; n++ {
		if n < 1 || n > len(lines) {
			continue
		}
		line := strings.ReplaceAll(visible(lines[n-1]), "\t", " ")
		if utf8.RuneCountInString(line) > widest {
			if n == at.Line {
				return ""
			}
			continue
		}
		out = append(out, strings.TrimRight(fmt.Sprintf("  %*d  %s", digits, n, line), " "))
		if n == at.Line {
			out = append(out, strings.Repeat(" ", digits+3+at.Column)+"^")
		}
	}
	return strings.Join(out, "\n")
}
