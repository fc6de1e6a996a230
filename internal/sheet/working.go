package sheet

import (
	"slices"
	"strings"

	"evenlip/internal/quantity"
)

// A formula is written in letters, each of which is a figure of the same sheet:
//
//	dh * tan(k1) / 2
//
// It has + - * / ^ and parentheses, the functions of a pocket calculator in
// degrees (sin, cos, tan, asin, acos, atan, sqrt, abs, floor, min, max) and pi.
// A letter is a word of letters, digits and primes: k1, psi, q'. Angles are in
// degrees, lengths in the units of print, a share is a part of one.

// Formula returns how f is got, in letters: "u = dh * tan(k1) / 2".
func (s *Sheet) Formula(f *Figure) string {
	if f.Letter == "" {
		return f.Work
	}
	return f.Letter + " = " + f.Work
}

// Sum returns the formula of f with its letters' numbers in their place, in the
// units of format: a pocket calculator arrives at the figure with it.
func (s *Sheet) Sum(f *Figure, format quantity.Format) string {
	sum := operand(f, format)
	if f.Work != AsRead {
		sum = s.inNumbers(f.Work, format)
	}
	switch {
	case f.Kind != quantity.Share:
		return sum
	case f.Work == AsRead:
		return "100 * " + sum // it is shown in per cent
	}
	return "100 * (" + sum + ")"
}

// inNumbers returns a formula with its letters' numbers in their place.
func (s *Sheet) inNumbers(formula string, format quantity.Format) string {
	var b strings.Builder
	eachWord(formula, func(text string, isLetter bool) {
		if isLetter {
			if of := s.letter(text); of != nil {
				text = operand(of, format)
			}
		}
		b.WriteString(text)
	})
	return b.String()
}

// Given returns the figures whose letters stand in the formula of f, in order.
func (s *Sheet) Given(f *Figure) []*Figure {
	var out []*Figure
	if f.Work == AsRead {
		return nil
	}
	eachWord(f.Work, func(text string, isLetter bool) {
		if !isLetter {
			return
		}
		if of := s.letter(text); of != nil && !slices.Contains(out, of) {
			out = append(out, of)
		}
	})
	return out
}

// Missing names the readings without which f has no value, "" where none is.
func (s *Sheet) Missing(f *Figure) string {
	var names []string
	s.missing(f, &names)
	return strings.Join(names, " and ")
}

func (s *Sheet) missing(f *Figure, names *[]string) {
	switch {
	case f.Known():
	case f.Of != "":
		if slices.ContainsFunc(*names, func(name string) bool { return strings.Contains(name, f.Of) }) {
			return // a choice of readings names this one already
		}
		*names = append(slices.DeleteFunc(*names, func(name string) bool { return strings.Contains(f.Of, name) }), f.Of)
	default:
		for _, of := range s.Given(f) {
			s.missing(of, names)
		}
	}
}

// Worked calls f for every figure of the sheet that has a formula, each behind the
// steps that its formula starts from, and says which are such steps.
func (s *Sheet) Worked(f func(fig *Figure, step bool)) {
	var told []*Figure
	var tell func(fig *Figure)
	tell = func(fig *Figure) {
		if fig.Work == "" || !fig.Known() || slices.Contains(told, fig) {
			return
		}
		told = append(told, fig)
		for _, of := range s.Given(fig) {
			if of.Key == "" {
				tell(of)
			}
		}
		if fig.Key != "" || fig.Work != AsRead {
			f(fig, fig.Key == "")
		}
	}
	s.Each(tell)
}

// Letters returns the figures whose letters stand in a formula of the sheet, in the
// order in which they are met.
func (s *Sheet) Letters() []*Figure {
	var out []*Figure
	s.Worked(func(fig *Figure, _ bool) {
		for _, of := range s.Given(fig) {
			if !slices.Contains(out, of) {
				out = append(out, of)
			}
		}
	})
	return out
}

// EachLetter calls f for every figure that has a letter, with how many have it.
func (s *Sheet) EachLetter(f func(fig *Figure, n int)) {
	count := map[string]int{}
	each := func(visit func(*Figure)) {
		steps := s.allSteps()
		for i := range steps {
			visit(&steps[i])
		}
		s.Each(visit)
	}
	each(func(fig *Figure) { count[fig.Letter]++ })
	each(func(fig *Figure) {
		if fig.Letter != "" {
			f(fig, count[fig.Letter])
		}
	})
}

// letter returns the figure that formulas call by that letter, nil where there is
// none.
func (s *Sheet) letter(text string) *Figure {
	steps := s.allSteps()
	for i := range steps {
		if steps[i].Letter == text {
			return &steps[i]
		}
	}
	for i := range s.Sections {
		for j := range s.Sections[i].Figures {
			if f := &s.Sections[i].Figures[j]; f.Letter == text {
				return f
			}
		}
	}
	return nil
}

// operand prints a figure as a formula takes it up.
func operand(f *Figure, format quantity.Format) string {
	v := f.Value
	if f.Kind != quantity.Share {
		v = format.InSystem(f.Kind, v)
	}
	out := f.Digits(v)
	if f.Kind == quantity.Angle {
		out += "°"
	}
	if v < 0 {
		out = "(" + out + ")"
	}
	return out
}

// Digits prints v as formulas take the figure up: to eight significant digits, or
// twelve where eight would cancel away.
func (f *Figure) Digits(v float64) string {
	if f.Fine {
		return quantity.Digits(v, 12)
	}
	return quantity.Digits(v, 8)
}

// eachWord takes a formula apart and calls f for every piece of it: for a letter,
// and for all that stands between letters.
func eachWord(formula string, f func(text string, isLetter bool)) {
	for rest := formula; rest != ""; {
		from := strings.IndexFunc(rest, startsLetter)
		if from < 0 {
			f(rest, false)
			return
		}
		if digits := strings.TrimRight(rest[:from], "0123456789."); rest[from] == 'e' && digits != rest[:from] {
			f(rest[:from+1], false) // the exponent of a number: 2.5e-5
			rest = rest[from+1:]
			continue
		}
		if from > 0 {
			f(rest[:from], false)
		}
		rest = rest[from:]
		end := strings.IndexFunc(rest, func(r rune) bool { return !startsLetter(r) && r != '\'' && (r < '0' || r > '9') })
		if end < 0 {
			end = len(rest)
		}
		word := rest[:end]
		rest = rest[end:]
		f(word, word != "pi" && !strings.HasPrefix(rest, "("))
	}
}

func startsLetter(r rune) bool { return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r == '_' }
