package cli_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// elision is a line of a console block that stands for lines not shown.
const elision = "…"

// shown returns of what a command prints what a document shows: all of it or,
// where the document has elisions, the same parts as before, each a run of
// lines, in their order.
func shown(was, printed []string) ([]string, error) {
	for len(was) > 0 && was[len(was)-1] == "" {
		was = was[:len(was)-1]
	}
	if !slices.Contains(was, elision) {
		return printed, nil
	}
	var out []string
	rest := printed
	for i, part := range parts(was) {
		if i > 0 {
			out = append(out, elision)
		}
		if len(part) == 0 {
			continue
		}
		at := 0
		if i > 0 {
			at = found(part, rest)
		}
		if at < 0 || at+len(part) > len(rest) {
			return nil, fmt.Errorf("the %d lines that begin with %q are not in what is left of it", len(part), part[0])
		}
		out = append(out, rest[at:at+len(part)]...)
		rest = rest[at+len(part):]
	}
	if was[len(was)-1] != elision {
		out = append(out, rest...)
	}
	return out, nil
}

// parts splits what is shown at its elisions.
func parts(lines []string) [][]string {
	out := [][]string{nil}
	for _, l := range lines {
		if l == elision {
			out = append(out, nil)
			continue
		}
		out[len(out)-1] = append(out[len(out)-1], l)
	}
	return out
}

// found returns where a part stands in the lines, -1 for nowhere: as it is, else
// where its first line is, else where a line begins with the same words.
func found(part, lines []string) int {
	for i := range lines {
		if i+len(part) <= len(lines) && slices.Equal(lines[i:i+len(part)], part) {
			return i
		}
	}
	if i := slices.Index(lines, part[0]); i >= 0 {
		return i
	}
	words := leading(part[0])
	return slices.IndexFunc(lines, func(l string) bool { return strings.HasPrefix(l+"  ", words+" ") })
}

// leading returns the words that a line begins with, indented as they are: its
// label, or what stands before its first number.
func leading(line string) string {
	indent := line[:len(line)-len(strings.TrimLeft(line, " "))]
	text := line[len(indent):]
	if label, _, ok := strings.Cut(text, "  "); ok {
		return indent + label
	}
	words := strings.Split(text, " ")
	for i, w := range words[1:] {
		if strings.ContainsAny(w, "0123456789") {
			return indent + strings.Join(words[:i+1], " ")
		}
	}
	return line
}

func TestElisions(t *testing.T) {
	printed := strings.Split("head|  one      1.00|  two      2.00||Tail|  one      3.00|    sum 4 + 5 = 9|end", "|")
	for name, c := range map[string]struct{ was, want string }{
		"none":                      {"anything", strings.Join(printed, "|")},
		"the head":                  {"head|…", "head|…"},
		"the end":                   {"…|end", "…|end"},
		"one in the middle":         {"…|  two      2.00|…", "…|  two      2.00|…"},
		"one that has changed":      {"…|  two      7.00|…", "…|  two      2.00|…"},
		"the second, as it is":      {"…|  one      3.00|…", "…|  one      3.00|…"},
		"the second, by its order":  {"…|Tail|…|    sum 1 + 2 = 3|…", "…|Tail|…|    sum 4 + 5 = 9|…"},
		"two parts":                 {"head|…|Tail|  one      0.00|…", "head|…|Tail|  one      3.00|…"},
		"what follows the last one": {"…|    sum 0 = 0", "…|    sum 4 + 5 = 9|end"},
		"an empty line":             {"…|  two      2.00||Tail|…|", "…|  two      2.00||Tail|…"},
		"not there":                 {"…|  three    3.00|…", ""},
		"in the wrong order":        {"…|Tail|…|  two      2.00|…", ""},
		"too many lines":            {"…|end|more|…", ""},
		"only half a word":          {"…|  tw       2.00|…", ""},
		"more than was printed":     {strings.Join(printed, "|") + "|more|…", ""},
		"a head that is elsewhere":  {"Tail|…", "head|…"},
	} {
		got, err := shown(strings.Split(c.was, "|"), printed)
		if c.want == "" {
			if err == nil {
				t.Errorf("%s: %q is not refused: %q", name, c.was, got)
			}
			continue
		}
		if err != nil || strings.Join(got, "|") != c.want {
			t.Errorf("%s: %q, not %q (%v)", name, strings.Join(got, "|"), c.want, err)
		}
	}
}
