package print

import (
	"strings"
	"sync"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet/print/style"
)

// letters spell what a terminal without UTF-8 may not show.
var letters = sync.OnceValue(func() *strings.Replacer {
	return strings.NewReplacer(" °", " deg", "°", " deg", "±", "+-", "∞", "inf")
})

// Spelled returns a text with its signs spelled in letters: "59 deg" for "59°".
func Spelled(text string) string { return letters().Replace(text) }

// ascii spells the signs of a text in letters, where that was asked for.
func (t *tableWriter) ascii(text string) string {
	if !t.o.ASCII {
		return text
	}
	return Spelled(text)
}

// Harmless returns a complaint as it may go to a terminal: what it quotes of a
// file's name or contents is cleaned, its own line ends stay.
func Harmless(s string) string {
	lines := strings.Split(s, "\n")
	for i := range lines {
		lines[i] = quantity.Clean(lines[i])
	}
	return strings.Join(lines, "\n")
}

// metric is how JSON and CSV speak, whatever the reader's units.
var metric = quantity.Format{System: quantity.Metric}

// pad fills text with blanks on the right to cells; a longer text keeps its end.
func pad(text string, cells int) string {
	return text + strings.Repeat(" ", max(0, cells-style.Width(text)))
}

// padLeft fills on the left.
func padLeft(text string, cells int) string {
	return strings.Repeat(" ", max(0, cells-style.Width(text))) + text
}

// wrap breaks text into lines of at most width cells, between words. A word
// longer than the line gets one of its own.
func wrap(text string, width int) []string {
	if style.Width(text) <= width && !strings.ContainsAny(text, "\n\t") {
		return []string{text} // with the blanks that it has
	}
	return wrapItems(strings.Fields(text), " ", width)
}

// Wrap breaks text into lines of at most width cells, between words.
func Wrap(text string, width int) []string { return wrap(quantity.Clean(text), width) }

// wrapItems sets items in lines, glue between them and none broken unless it is
// longer than a line.
func wrapItems(items []string, glue string, width int) []string {
	var lines []string
	line, cells := "", 0
	for i, item := range items {
		if i < len(items)-1 {
			item += strings.TrimRight(glue, " ")
		}
		more := style.Width(item)
		switch {
		case line == "":
			line, cells = item, more
		case cells+1+more <= width:
			line, cells = line+" "+item, cells+1+more
		default:
			lines = append(lines, line)
			line, cells = item, more
		}
		if cells > width && glue != " " {
			inner := wrap(line, width)
			lines = append(lines, inner[:len(inner)-1]...)
			line = inner[len(inner)-1]
			cells = style.Width(line)
		}
	}
	return append(lines, line)
}
