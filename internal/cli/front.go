package cli

import (
	"cmp"
	"strings"

	"github.com/spf13/cobra"
)

// front is the table of what evenlip says when it is called alone, by what is in the hand
// of whoever asks: what to type, and what it is for. An empty label is a blank line.
var front = [...]struct {
	label string
	names int // columns of what is typed
	items [][2]string
}{
	{},
	{"start here", 27, [][2]string{{"evenlip inspect --ask", "is it fit? one reading at a time"}, {"evenlip inspect --sample", "the same with a made-up drill"}}},
	{},
	{"drill in hand", 10, [][2]string{{"inspect", "fit or not, and why"}, {"regrind", "what comes off"},
		{"point  clearance  chisel  web  lips  edge  draw", "one thing"}}},
	{"at the wheel", 10, [][2]string{{"wheel", "before it is started"}, {"cone", "in a fixture"}, {"thin", "a web grown thick"}}},
	{"at the spindle", 10, [][2]string{{"speed", "rpm, feed, pecks"}, {"pilot", "its size"}, {"thrust", "push, torque, power"}}},
	{"a drawer full", 10, [][2]string{{"crib", "list, audit, plan, record"}, {"batch", "a drill a line"}}},
	{"to look up", 10, [][2]string{{"size  material  sources  version  schema", ""}}},
	{},
	{"more", 27, [][2]string{{"evenlip COMMAND -h", "one screen each"}, {"evenlip help", "safety, units, flags, status"}}},
}

// The columns of the front page: of a label, and of one command beside another where the
// screen is wide enough.
const frontLabel, frontItem = 16, 37

// frontPage sets the front page for a width.
func frontPage(width int) string {
	var b strings.Builder
	b.WriteString("evenlip  a good regrind is two even lips\n")
	for _, row := range front {
		label := row.label
		for _, line := range frontLines(row.items, row.names, width-frontLabel) {
			b.WriteString(padRight(label, frontLabel) + line + "\n")
			label = ""
		}
		if len(row.items) == 0 {
			b.WriteByte('\n')
		}
	}
	return b.String()
}

// frontLines sets what stands behind a label: two items beside one another where there is
// room, what is too long for its column by itself.
func frontLines(items [][2]string, names, width int) (lines []string) {
	beside := false // the last line has room beside it
	for _, item := range items {
		text := strings.TrimRight(padRight(item[0], names)+item[1], " ")
		last := len(lines) - 1
		switch {
		case len(item[0]) >= names && len(item[0]+"   "+item[1]) <= width:
			lines = append(lines, strings.TrimRight(item[0]+"   "+item[1], " "))
		case len(text) > width && item[1] != "":
			lines = append(lines, item[0], "  "+item[1])
		case beside && frontItem+len(text) <= width:
			lines[last] = padRight(lines[last], frontItem) + text
			beside = false
			continue
		default:
			lines = append(lines, text)
		}
		beside = len(item[0]) < names
	}
	return lines
}

// withoutShop runs before a command to which the shop's own settings say
// nothing: a fault in their file must not keep back what helps to mend it.
func (a *app) withoutShop(cmd *cobra.Command, _ []string) error {
	return cmp.Or(blanks(cmd), a.settle(false))
}

// helpCommand is cobra's own, but for the topics and a word that is no command.
func (a *app) helpCommand() *cobra.Command {
	long := "All of what a command does, its flags and examples, as evenlip COMMAND --help;\n-h is one screen of it. Beside the commands it knows of"
	for _, t := range topics {
		long += "\n  " + padRight(t.name, helpLabel+2) + t.about
	}
	return &cobra.Command{
		Use: "help [COMMAND or TOPIC]", Short: "all about a command, or a topic such as units or safety",
		Long:              long,
		Example:           "  evenlip help inspect\n  evenlip help crib record\n  evenlip help units",
		ValidArgsFunction: a.helpSubjects,
		PersistentPreRunE: a.withoutShop,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 1 {
				if page, ok := a.topic(args[0]); ok {
					a.buf.WriteString(a.shown(page))
					return nil
				}
			}
			about, rest, err := cmd.Root().Find(args)
			if err != nil || len(rest) > 0 {
				return noCommand(about, rest[0], "no command or topic is called %q", topicNames()...)
			}
			return about.Help()
		},
	}
}

func topicNames() (names []string) {
	for _, t := range topics {
		names = append(names, t.name)
	}
	return names
}
