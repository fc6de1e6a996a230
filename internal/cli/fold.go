package cli

import (
	"io"
	"strings"

	"github.com/spf13/cobra"

	"evenlip/internal/sheet/print"
)

const (
	hanging     = 4  // how far what goes on stands further in than what it goes on with
	leastColumn = 20 // a second column is worth keeping from here on
)

// helpPage has cobra's help page fit a narrow terminal.
func (a *app) helpPage(root *cobra.Command) {
	help := root.HelpFunc()
	root.SetHelpFunc(func(cmd *cobra.Command, args []string) {
		if words := cmd.Flags().Args(); cmd.HasSubCommands() && len(words) > 0 {
			a.helpless = cmd.ValidateArgs(words)
			return
		}
		out := cmd.OutOrStdout()
		if !a.wantsAll() {
			_, _ = io.WriteString(out, a.shown(a.shortPage(cmd)))
			return
		}
		var page strings.Builder
		cmd.SetOut(&page)
		help(cmd, args)
		cmd.SetOut(out)
		_, _ = io.WriteString(out, a.shown(page.String()))
	})
}

// pageWidth is what a page of help is printed for: 80 columns, or as many as a
// narrower terminal has.
func (a *app) pageWidth() int {
	width, _ := a.columns()
	return min(width, usualWidth)
}

// fold fits a page that is written for 80 columns into fewer: what is said in
// sentences is set anew, a line that is set in or has columns goes on below itself.
func fold(page string, width int) string {
	if width >= usualWidth {
		return page
	}
	var out []string
	var sentences []string
	set := func() {
		if len(sentences) > 0 {
			out = append(out, print.Wrap(strings.Join(sentences, " "), width)...)
			sentences = nil
		}
	}
	for _, line := range strings.Split(page, "\n") {
		if isProse(line) {
			sentences = append(sentences, line)
			continue
		}
		set()
		out = append(out, foldLine(line, width)...)
	}
	set()
	return strings.Join(out, "\n")
}

// isProse reports whether a line is part of a paragraph, and no row of a table.
func isProse(line string) bool {
	return line != "" && line[0] != ' ' && line[0] != '\t' && !strings.Contains(line, "  ")
}

// foldLine folds a line that is set in, or whose second column begins after two
// spaces. What cobra sets in with a tab is to be typed as it stands.
func foldLine(line string, width int) []string {
	line = strings.TrimRight(line, " ")
	if len(line) <= width || line[0] == '\t' {
		return []string{line}
	}
	text := strings.TrimLeft(line, " ")
	lead := len(line) - len(text)
	left, right, columns := strings.Cut(text, "  ")
	if !columns {
		return hang(line[:lead], text, lead+hanging, width)
	}
	right = strings.TrimLeft(right, " ")
	column := len(line) - len(right)
	if width-column < leastColumn {
		return append(hang(line[:lead], left, lead+hanging, width), hang(strings.Repeat(" ", lead+hanging), right, lead+hanging, width)...)
	}
	return hang(line[:column], right, column, width)
}

// hang sets text behind what its first line begins with, the rest of it in so far.
// A command goes on in the way of a shell.
func hang(first, text string, in, width int) []string {
	var lines []string
	if strings.HasPrefix(text, "evenlip ") && !strings.Contains(text, "  ") {
		lines = strings.Split(broken(text, width-len(first)), "\n")
	} else {
		lines = print.Wrap(text, width-max(in, len(first)))
	}
	for i := range lines {
		if i == 0 {
			lines[i] = first + lines[i]
		} else {
			lines[i] = strings.Repeat(" ", in) + strings.TrimLeft(lines[i], " ")
		}
	}
	return lines
}
