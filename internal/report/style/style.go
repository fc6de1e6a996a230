// Package style is the only place that knows how a terminal is coloured.
// Colour repeats what the words say and never says more.
package style

import (
	"io"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// Pen styles text; a pen without colour returns it as it came.
type Pen struct {
	on                               bool
	title, heading, good, bad, faint lipgloss.Style
}

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
	return Pen{
		on:      true,
		title:   s().Bold(true).Underline(true),
		heading: s().Bold(true),
		good:    s().Foreground(lipgloss.Color("2")),
		bad:     s().Bold(true).Foreground(lipgloss.Color("1")),
		faint:   s().Faint(true),
	}
}

func (p Pen) with(s lipgloss.Style, text string) string {
	if !p.on || text == "" {
		return text
	}
	return s.Render(text)
}

// Title, Heading, Good, Bad and Faint style one line's worth of text.
func (p Pen) Title(t string) string   { return p.with(p.title, t) }
func (p Pen) Heading(t string) string { return p.with(p.heading, t) }
func (p Pen) Good(t string) string    { return p.with(p.good, t) }
func (p Pen) Bad(t string) string     { return p.with(p.bad, t) }
func (p Pen) Faint(t string) string   { return p.with(p.faint, t) }

// Width is the number of terminal cells that text takes.
func Width(text string) int { return lipgloss.Width(text) }
