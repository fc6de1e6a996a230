package gauge

import (
	"math"
	"slices"
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// tell puts into s what it would be on the other side of the limits in doubt.
func (t *trials) tell(s *sheet.Sheet) {
	s.Each(func(f *sheet.Figure) {
		by, _ := t.jump(sheet.Place{Key: f.Key})
		if by != 0 && f.Word == "" {
			other := f.Value + by
			f.Otherwise = &other
		}
		gap, _ := t.jump(sheet.Place{Key: f.Key, End: sheet.HighEnd})
		if limit := by - gap; limit != 0 && f.Limit != nil && !math.IsInf(f.Limit.High, 0) {
			other := f.Limit.High + limit
			f.OtherHigh = &other
		}
	})
	for i := range t.turns {
		x := &t.turns[i]
		words := x.words()
		s.Each(func(f *sheet.Figure) {
			if other, ok := words[f.Key]; ok && !slices.Contains(strings.Split(f.Word, or), other) {
				f.Word, f.Either = f.Word+or+other, true
			}
		})
		s.Doubted = append(s.Doubted, x.findings()...)
	}
	t.answer(s)
}

// or stands between two words of which the gauges cannot tell which holds.
const or = " or "

// words are those of the far side that are others than on the near one, by their
// figures' keys.
func (x *turn) words() map[string]string {
	near := wordsOf(x.near)
	var out map[string]string
	for key, word := range wordsOf(x.far) {
		if was, ok := near[key]; ok && was != word {
			if out == nil {
				out = map[string]string{}
			}
			out[key] = word
		}
	}
	return out
}

func wordsOf(s *sheet.Sheet) map[string]string {
	out := map[string]string{}
	s.Each(func(f *sheet.Figure) {
		if f.Word != "" {
			out[f.Key] = f.Word
		}
	})
	return out
}

// findings are those that say stop on one side alone.
func (x *turn) findings() []sheet.Finding {
	var out []sheet.Finding
	for _, pair := range [...][2]*sheet.Sheet{{x.near, x.far}, {x.far, x.near}} {
		for _, f := range pair[0].Findings {
			if f.Severity == sheet.Stop && !slices.ContainsFunc(pair[1].Findings, func(other sheet.Finding) bool { return other.Code == f.Code }) {
				out = append(out, f)
			}
		}
	}
	return out
}

// answers reports whether the two sides are answered otherwise.
func (x *turn) answers() bool {
	near, far := x.near.Answer, x.far.Answer
	if near == nil || far == nil {
		return near != far
	}
	return near.Format != far.Format || !slices.EqualFunc(near.Args, far.Args, alike)
}

// alike reports whether two numbers of a text are apart by no more than the short way
// between the two sides of a limit makes.
func alike(a, b quantity.Arg) bool {
	const apart = 0.1
	return a.Word == b.Word && !(math.Abs(a.Value-b.Value) > apart*math.Max(math.Abs(a.Value), math.Abs(b.Value)))
}

// answer names all the answers there may be, that of the readings by themselves
// first, and what to read to tell which.
func (t *trials) answer(s *sheet.Sheet) {
	var texts []quantity.Text
	finer := ""
	add := func(answer *quantity.Text) {
		text := quantity.Sayf("nothing")
		if answer != nil {
			text = *answer
		}
		if !slices.ContainsFunc(texts, func(other quantity.Text) bool {
			return other.Format == text.Format && slices.EqualFunc(other.Args, text.Args, alike)
		}) {
			texts = append(texts, text)
		}
	}
	for i := range t.turns {
		if x := &t.turns[i]; x.answers() {
			add(s.Answer)
			add(x.far.Answer)
			finer = x.finer
		}
	}
	if len(texts) < 2 {
		return
	}
	all := quantity.Text{Format: "these gauges cannot tell: "}
	for i, text := range texts {
		if i > 0 {
			all.Format += ";" + or
		}
		all.Format += text.Format
		all.Args = append(all.Args, text.Args...)
	}
	s.InShort(all.Format+"; read {} on a finer gauge", append(all.Args, quantity.Say(finer))...)
}
