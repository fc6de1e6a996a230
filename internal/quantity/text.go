package quantity

import (
	"strings"
	"unicode"
)

// Arg is a number inside a text, printed in the reader's units.
type Arg struct {
	Kind  Kind
	Gauge Gauge
	Value float64
	Word  string
	Bare  bool // without its unit, which comes later in the sentence
}

// MM makes the argument of a Text that is a length, mm, as fine as a caliper.
func MM(v float64) Arg { return Arg{Kind: Length, Gauge: Caliper, Value: v} }

// Rad makes the argument that is an angle, radians, as fine as a protractor; it
// is printed in degrees.
func Rad(v float64) Arg { return Arg{Kind: Angle, Gauge: Protractor, Value: v} }

// Num makes the argument that is a number without a unit.
func Num(v float64) Arg { return Arg{Kind: Number, Value: v} }

// Say makes the argument that is a word.
func Say(word string) Arg { return Arg{Kind: Word, Word: word} }

// Of makes the argument of any kind, in the kind's unit inside the program.
func Of(k Kind, v float64) Arg { return Arg{Kind: k, Value: v} }

// Set is an angle to set the rest to: the gauges of the readings behind it do not
// make it coarser.
func Set(v float64) Arg { return Arg{Kind: Angle, Gauge: Setting, Value: v} }

// Text is a sentence with numbers left open: each {} takes the next argument.
// Keeping them apart lets the same finding be read in inches and in millimetres.
type Text struct {
	Format string
	Args   []Arg
}

// Sayf makes a Text.
func Sayf(format string, args ...Arg) Text { return Text{format, args} }

// In returns the text with its numbers put in, as f prints them.
func (t Text) In(f Format) string { return string(t.Append(nil, f)) }

// Append appends what In returns.
func (t Text) Append(b []byte, f Format) []byte {
	rest := t.Format
	for i := range t.Args {
		before, after, found := strings.Cut(rest, "{}")
		if b = append(b, before...); !found {
			return b
		}
		switch a := &t.Args[i]; {
		case a.Kind == Word:
			b = append(b, Clean(a.Word)...)
		case a.Bare:
			b = f.appendNumber(b, a.Kind, a.Gauge, a.Value)
		default:
			b = f.AppendText(b, a.Kind, a.Gauge, a.Value)
		}
		rest = after
	}
	before, _, _ := strings.Cut(rest, "{}")
	return append(b, before...)
}

// Clean makes a name from outside harmless on a terminal: control characters,
// and marks that turn the direction of writing, become "?".
func Clean(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || r == unicode.ReplacementChar {
			return '?'
		}
		return r
	}, s)
}
