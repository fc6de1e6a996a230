package cli

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"evenlip/internal/drill"
	"evenlip/internal/sheet/print"
)

// What a short page of help keeps to: one screen, the line that was typed, the prompt.
const (
	helpStop    = 24 // columns from one reading to the next
	helpLabel   = 11 // columns of what they are read with
	helpLines   = 22
	helpSamples = 2 // examples
)

// wantsAll reports whether help was asked for in full: -h is one screen.
func (a *app) wantsAll() bool {
	for _, arg := range a.args {
		if arg == "--help" || strings.HasPrefix(arg, "--help=") {
			return true
		}
	}
	return len(a.args) > 0 && a.args[0] == "help"
}

// shortHelp is one screen about a command: what it answers, two examples, the readings
// most used by what they are read with, and where more is to be found.
func (a *app) shortHelp(cmd *cobra.Command, width int) string {
	head := cmd.CommandPath() + "  " + cmd.Short + "\n\n"
	if cmd.HasAvailableSubCommands() {
		return head + helpExamples(cmd, width) + helpCommands(cmd)
	}
	readings, others := ownFlags(cmd)
	table := helpTable(readings)
	rest := head + helpExamples(cmd, usualWidth) + helpFoot(cmd, readings, others, usualWidth)
	shorten(table, helpLines-strings.Count(rest, "\n")) // alike on every width
	return head + helpExamples(cmd, width) + typed(table, width) + helpFoot(cmd, readings, others, width)
}

func helpExamples(cmd *cobra.Command, width int) string {
	if !cmd.HasExample() {
		return ""
	}
	examples := strings.Split(cmd.Example, "\n")
	return broken(strings.Join(examples[:min(helpSamples, len(examples))], "\n"), width) + "\n\n"
}

// helpCommands lists what a command gathers.
func helpCommands(cmd *cobra.Command) string {
	list := ""
	for _, sub := range cmd.Commands() {
		if sub.IsAvailableCommand() {
			list += padRight(sub.Name(), helpLabel) + sub.Short + "\n"
		}
	}
	return list + "\nmore    " + cmd.CommandPath() + " COMMAND -h  one screen each    evenlip help flags\n"
}

// helpFoot is what stands below the readings.
func helpFoot(cmd *cobra.Command, readings []drill.Reading, others []*pflag.Flag, width int) string {
	foot := ""
	switch {
	case len(others) == 0:
	case len(readings) > 0:
		foot = typed([]helpRow{{"also", names(others)}}, width)
	default:
		foot = flagUsages(others, width)
	}
	if about := aboutAnswer(cmd, readings); about != "" {
		foot += "\n" + about
	}
	if foot != "" {
		foot += "\n"
	}
	return foot + "more    --help  every flag, and more of it    evenlip help flags, units, status\n"
}

// shortPage is what -h says: of evenlip itself, its front page.
func (a *app) shortPage(cmd *cobra.Command) string {
	if !cmd.HasParent() {
		return frontPage(a.pageWidth())
	}
	return a.shortHelp(cmd, a.pageWidth())
}

// ownFlags parts a command's own flags into those of readings and the rest.
func ownFlags(cmd *cobra.Command) (readings []drill.Reading, others []*pflag.Flag) {
	part := func(f *pflag.Flag) {
		r, ok := drill.Find(f.Name)
		switch {
		case f.Hidden:
		case ok && r.Spec().Help == f.Usage:
			readings = append(readings, r)
		default:
			others = append(others, f)
		}
	}
	cmd.LocalFlags().VisitAll(part)
	shared(cmd).VisitAll(part)
	return readings, others
}

// helpRow is a line of readings or flags as they are typed.
type helpRow struct {
	label string
	items []string
}

// helpTable groups readings by what they are taken with: those that a bench is asked for
// first, then those of both lips.
func helpTable(readings []drill.Reading) []helpRow {
	usual, rest := drill.ForBench(readings)
	slices.SortStableFunc(rest, func(a, b drill.Reading) int { return ofBoth(b) - ofBoth(a) })
	var table []helpRow
	for _, by := range drill.AllMeans {
		row := helpRow{label: by.String()}
		for _, r := range slices.Concat(usual, rest) {
			if s := r.Spec(); s.By == by {
				row.items = append(row.items, strings.TrimSpace("--"+s.Name+" "+s.Typed))
			}
		}
		if len(row.items) > 0 {
			table = append(table, row)
		}
	}
	return table
}

func ofBoth(r drill.Reading) int {
	if r.Spec().Pair {
		return 1
	}
	return 0
}

// shorten takes the last of the longest groups out, until a screen has room for the rest.
func shorten(table []helpRow, lines int) {
	for total(table) > lines {
		longest := 0
		for i := range table {
			if len(table[i].lines(usualWidth)) >= len(table[longest].lines(usualWidth)) {
				longest = i
			}
		}
		items := &table[longest].items
		*items = (*items)[:len(*items)-1]
	}
}

func total(table []helpRow) (lines int) {
	for _, row := range table {
		lines += len(row.lines(usualWidth))
	}
	return lines
}

// lines sets the items at stops, as many in a line as the width takes.
func (row helpRow) lines(width int) []string {
	var lines []string
	line := ""
	for _, item := range row.items {
		stop := (len(line) + 1 + helpStop) / helpStop * helpStop
		switch {
		case line == "":
			line = item
		case helpLabel+stop+len(item) <= width:
			line = padRight(line, stop) + item
		default:
			lines = append(lines, line)
			line = item
		}
	}
	return append(lines, line)
}

// typed sets the rows behind their labels.
func typed(table []helpRow, width int) string {
	var b strings.Builder
	for _, row := range table {
		label := row.label
		for _, line := range row.lines(width) {
			b.WriteString(padRight(label, helpLabel) + line + "\n")
			label = ""
		}
	}
	return b.String()
}

func padRight(s string, to int) string { return s + strings.Repeat(" ", max(1, to-len(s))) }

// names are flags as they are typed, with a word for what goes behind them.
func names(flags []*pflag.Flag) (out []string) {
	for _, f := range flags {
		value, _ := pflag.UnquoteUsage(f)
		out = append(out, strings.TrimSpace("--"+f.Name+" "+value))
	}
	return out
}

func flagUsages(flags []*pflag.Flag, width int) string {
	set := pflag.NewFlagSet("", pflag.ContinueOnError)
	set.SortFlags = false
	for _, f := range flags {
		set.AddFlag(f)
	}
	return set.FlagUsagesWrapped(width)
}

// aboutAnswer says what the readings of a command on a drill have in common, and how its
// answer is read.
func aboutAnswer(cmd *cobra.Command, readings []drill.Reading) string {
	c := onDrill(cmd.Name())
	if c == nil {
		return ""
	}
	out := ""
	for _, r := range readings {
		if r.Spec().Pair {
			out = "A pair A,B  lip 1, lip 2: chalk one. What was not read is left out, not guessed.\n"
			break
		}
	}
	if says := c.About().Answers; says != "" {
		out += "It answers  " + says + "\n"
	}
	if c.About().Safety == nil { // it has no screen of its own
		return out
	}
	return out + "Its bars    " + print.BarShown(!showsUTF8()) + " the line is what is allowed; 1, 2 the lips; ( ) the doubt\n"
}

// topics are what help tells beside the commands.
var topics = [...]struct {
	name, about string
	page        func(*app) string
}{
	{"flags", "the flags of every command", (*app).flagsTopic},
	{"units", "how sizes, lengths and angles are written", func(*app) string { return unitsTopic }},
	{"status", "the exit status", func(*app) string { return statusTopic }},
	{"environment", "variables and files that are heeded", func(*app) string { return environmentTopic }},
	{"safety", "at the wheel and at the spindle", func(*app) string { return safetyTopic }},
}

func (a *app) flagsTopic() string {
	flags := pflag.NewFlagSet("", pflag.ContinueOnError)
	flags.SortFlags = false
	new(globals).flags(flags)
	return "The flags of every command, before its name or behind it\n\n" + flags.FlagUsagesWrapped(a.pageWidth())
}

const statusTopic = `The exit status

  0  worked out; with --check also: within its limits, or fit
  1  with --check: outside a limit, or a verdict that is not fit
  2  wrong usage, or a reading that cannot be
  3  a file that cannot be read or makes no sense
  4  done, but the answer could not be printed: do not do it again
  5  understood, but refused as things stand: no drill of that id, one that was
     thrown away, a file that is there already

With 2, 3 and 5 nothing is printed on standard output, but by batch, which with
3 has answered the good lines. With 4 what was asked for is done, such as a
record in a crib's file whose answer went to a full disk: a script that tried
again would record it twice. A signal ends evenlip with 128 and the signal's
number. What is wrong goes to standard error, with --format json as one object.
`

const unitsTopic = `How sizes, lengths and angles are written, without a blank

  drill sizes   12mm  1/2  1-1/4in  .203in  '#7' or no.7  F
  lengths       2.1mm  0.083in  85thou  1/8  (a fraction is inches)
  angles        59  59.5deg  59°30'
  feeds         0.2mm  0.008in, for one turn
  two lips      59,58 lip 1 first; one alone stands for both; a unit behind the
                last of them holds for both: 6.4,6.3mm
  a range       "0mm..20mm by 2mm": one row a step

A number alone is in the units of the size; a size alone is in millimetres.
--units mm or in says otherwise, and in which units the answer is. A comma parts
two lips and is never a decimal point. JSON and CSV are always in mm, degrees,
N, N m, kW and rpm.
`

const environmentTopic = `Variables and files that are heeded

  NO_COLOR          any value: no colour
  FORCE_COLOR       any value but 0 or false: colour, also into a pipe
  TERM              dumb: no colour
  LC_ALL, LC_CTYPE, LANG
                    the first that is set; without UTF-8 in it, letters alone
  EVENLIP_SHOP      the file of the shop's own settings; empty or none: none
  XDG_CONFIG_HOME, HOME
                    where evenlip/shop.yaml is looked for, if none is named
                    (Windows: AppData; macOS: Library/Application Support)

A flag outweighs a variable, and both what the shop has set. The nearest
crib.yaml, in this folder or above, is the crib where none is named.
`

const safetyTopic = `At the wheel

  eyes      eye protection for everyone near, guard in place
  hands     no gloves, no loose clothing or hair near what turns
  wheel     never faster than it is marked for; without a marking, not used;
            rung before it is mounted: a dead sound is a crack
  start     stand aside, let it run for a minute; a worn wheel is not sped up
  rest      within 1/8 in (3 mm) of the wheel, tongue within 1/4 in (6 mm); set
            and clamped with the wheel stopped
  grind     on its face, never on its side; lightly; quench lightly

At the spindle

  work      clamped, never held by hand
  chips     off with a brush, the spindle stopped
  through   ease the feed where the drill breaks through
  cracked   a cracked drill is never ground nor run again

The shop's own rules and the local code come first: ask a qualified person when
unsure. docs/safety.md has where each of these comes from.
`

// topic returns the page of that name.
func (a *app) topic(name string) (string, bool) {
	for _, t := range topics {
		if t.name == name {
			return t.page(a), true
		}
	}
	return "", false
}

// shown is a page as the terminal can show it.
func (a *app) shown(page string) string {
	page = fold(page, a.pageWidth())
	if !showsUTF8() {
		page = print.Spelled(page)
	}
	return page
}
