// Package style is the only place that knows how a terminal is coloured.
// Colour repeats what the words say and never says more.
package style

import (
	"io"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// Pen styles text; the zero Pen is without colour and returns it as it came. A
// style is large and a pen is handed on with every word, so it points to them.
type Pen struct{ styles *[roles]lipgloss.Style }

// What a piece of text is for.
const (
	heading = iota
	good
	bad
	faint
	doubt
	warnBadge
	goodBadge
	stopBadge
	roles // how many there are
)

// New returns a pen. The profile and the background are set here and never
// asked of the terminal: a terminal that does not answer would stall us.
func New(on bool) Pen {
	if !on {
		return Pen{}
	}
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(termenv.ANSI)
	r.SetHasDarkBackground(true)
	s := r.NewStyle
	return Pen{&[roles]lipgloss.Style{
		heading: s().Bold(true),
		good:    s().Foreground(lipgloss.Color("2")),
		bad:     s().Bold(true).Foreground(lipgloss.Color("1")),
		faint:   s().Faint(true),
		doubt:   s().Bold(true).Foreground(lipgloss.Color("3")),
		// Ground and letters are both set, so that a badge holds on any theme.
		warnBadge: s().Bold(true).Foreground(lipgloss.Color("0")).Background(lipgloss.Color("3")),
		goodBadge: s().Bold(true).Foreground(lipgloss.Color("0")).Background(lipgloss.Color("2")),
		stopBadge: s().Bold(true).Foreground(lipgloss.Color("15")).Background(lipgloss.Color("1")),
	}}
}

func (p Pen) with(role int, text string) string {
	if p.styles == nil || text == "" {
		return text
	}
	return p.styles[role].Render(text)
}

// Title styles what a whole answer is about; text is of one line, here and below.
// lipgloss would underline it letter by letter, an escape sequence each.
func (p Pen) Title(text string) string {
	if p.styles == nil || text == "" {
		return text
	}
	return termenv.ANSI.String().Bold().Underline().Styled(text)
}

// Heading styles the head of a section.
func (p Pen) Heading(text string) string { return p.with(heading, text) }

// Bold styles what is to be seen first.
func (p Pen) Bold(text string) string { return p.with(heading, text) }

// Plain leaves a text as it is.
func (p Pen) Plain(text string) string { return text }

// Doubt styles what cannot be told.
func (p Pen) Doubt(text string) string { return p.with(doubt, text) }

// Verdicts are the words that are painted as verdicts.
var Verdicts = []string{"FIT", "THIN", "REGRIND", "MEASURE", "RETIRE"}

// Verdict styles a verdict in capitals where it stands in a list.
func (p Pen) Verdict(word string) string { return p.with([...]int{doubt, good, bad}[rank(word)], word) }

// Badge styles the verdict that an answer begins with.
func (p Pen) Badge(word string) string {
	return p.with([...]int{warnBadge, goodBadge, stopBadge}[rank(word)], word)
}

// rank says what a verdict asks for: 0 work, 1 nothing, 2 to stop.
func rank(word string) int {
	switch word {
	case "FIT", "STOP":
		return 1
	case "RETIRE", "DO NOT START":
		return 2
	}
	return 0
}

// Good styles what is in order.
func (p Pen) Good(text string) string { return p.with(good, text) }

// Bad styles what is not.
func (p Pen) Bad(text string) string { return p.with(bad, text) }

// Faint styles what may be passed over.
func (p Pen) Faint(text string) string { return p.with(faint, text) }

// Width is the number of terminal cells that text takes. Most text is plain
// ASCII, a cell a letter, and need not be taken apart to be measured.
func Width(text string) int {
	for i := 0; i < len(text); i++ {
		if c := text[i]; c < ' ' || c > '~' {
			return lipgloss.Width(text)
		}
	}
	return len(text)
}

// Ready has a Windows console take escape sequences, and reports whether it
// will; elsewhere there is nothing to be told.
func Ready(out io.Writer) bool {
	_, err := termenv.EnableVirtualTerminalProcessing(termenv.NewOutput(out, termenv.WithProfile(termenv.ANSI)))
	return err == nil
}
