package pocket

import (
	"math"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// tester is a test, or one drawing of a property.
type tester interface {
	Helper()
	Errorf(format string, args ...any)
}

// Worked holds every formula of a sheet against its figure, in both systems of
// units: the formula in letters, and the printed sum.
func Worked(t tester, s *sheet.Sheet) {
	t.Helper()
	s.EachLetter(func(f *sheet.Figure, n int) {
		if n > 1 {
			t.Errorf("%s: %d figures have the letter %s", s.Command, n, f.Letter)
		}
	})
	for _, system := range []quantity.System{quantity.Metric, quantity.Inch} {
		format := quantity.Format{System: system}
		letters := map[string]float64{}
		s.EachLetter(func(f *sheet.Figure, _ int) { letters[f.Letter] = calculator(f, format) })
		s.Worked(func(f *sheet.Figure, _ bool) {
			if f.Work == sheet.AsRead {
				return
			}
			want := calculator(f, format)
			if got, err := EvaluateIn(f.Work, letters); err != nil || !near(got, want, 1e-9) {
				t.Errorf("%s: %s%s: %s gives %v, the figure is %v (%v)", s.Command, f.Key, f.Letter, s.Formula(f), got, want, err)
			}
			if f.Kind == quantity.Share {
				want *= 100
			}
			largest := 1.0 // of the numbers that were rounded to eight digits
			for _, of := range s.Given(f) {
				largest = math.Max(largest, math.Abs(calculator(of, format)))
			}
			if got, err := Evaluate(s.Sum(f, format)); err != nil || !near(got, want, 1e-6*largest) {
				t.Errorf("%s: %s%s: %s gives %v, the figure is %v (%v)", s.Command, f.Key, f.Letter, s.Sum(f, format), got, want, err)
			}
		})
	}
	s.Each(func(f *sheet.Figure) {
		if f.Known() && f.Word == "" && f.Work == "" {
			t.Errorf("%s: nothing shows how %s is got", s.Command, f.Key)
		}
	})
}

// calculator is a figure as a pocket calculator takes it: degrees, the units of
// print, a share as a part of one.
func calculator(f *sheet.Figure, format quantity.Format) float64 {
	if f.Kind == quantity.Share {
		return f.Value
	}
	return format.InSystem(f.Kind, f.Value)
}

func near(got, want, part float64) bool {
	return math.Abs(got-want) <= part*math.Max(1, math.Abs(want))
}
