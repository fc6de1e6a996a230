package print

import (
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet/print/style"
)

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
