package cli

import (
	"strings"

	"github.com/spf13/cobra"
)

// Manual is the tree of commands as pages of a manual want it: the table of the
// front page, the exit status and the environment in the first, what is set in columns kept in them, and examples no
// wider than width.
func Manual(width int) *cobra.Command {
	root := new(app).root(nil)
	paragraphs := strings.Split(frontPage(usualWidth), "\n\n")
	for _, table := range paragraphs[1 : len(paragraphs)-1] {
		root.Long += "\n\n  " + strings.ReplaceAll(table, "\n", "\n  ")
	}
	root.Long += "\n\n" + statusTopic + "\n" + environmentTopic
	forManual(root, width)
	return root
}

func forManual(cmd *cobra.Command, width int) {
	cmd.Long, cmd.Example = verbatim(cmd.Long), broken(cmd.Example, width)
	cmd.DisableAutoGenTag = true
	for _, c := range cmd.Commands() {
		forManual(c, width)
	}
}

// verbatim makes code blocks of Markdown of the lines that are indented.
func verbatim(text string) string {
	var out []string
	before := false
	for _, line := range strings.Split(text, "\n") {
		indented := strings.HasPrefix(line, "  ")
		if indented != before {
			out = append(out, "")
		}
		if indented {
			line = "  " + line
		}
		out, before = append(out, line), indented
	}
	return strings.Join(out, "\n")
}
