package gauge_test

import (
	"math"
	"testing"

	"evenlip/internal/drill"
	"evenlip/internal/gauge"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit/drilltest"
)

// step is a sheet that is another one where web and chisel together are over 4.5 mm:
// figures that jump, that have a kink there and that do not hang on it, a list, a
// word, an answer and a finding; aside tells whether the limit is shown.
func step(aside bool) gauge.Calculation {
	return func(d *drill.Drill) *sheet.Sheet {
		s := &sheet.Sheet{}
		web, chisel := d.Value(drill.Web), d.Value(drill.ChiselLength)
		over := web+chisel > 4.5*(1+1e-9)
		pick := func(below, above float64) float64 {
			if over {
				return above
			}
			return below
		}
		word := map[bool]string{false: "thin", true: "retire"}[over]
		s.Add(sheet.Figure{Key: "jumps", Value: pick(100, 200) + web})
		s.Add(sheet.Figure{Key: "falls", Value: pick(100, 20)})
		s.Add(sheet.Figure{Key: "kinks", Value: math.Max(web+chisel-4.5, 0)})
		s.Add(sheet.Figure{Key: "held", Value: pick(100, 200), Limit: &handbook.Band{Low: 0, High: pick(1000, 1500)}})
		s.Add(sheet.Figure{Key: "smooth", Value: web * chisel})
		s.Add(sheet.Figure{Key: "do", Word: word, Kind: quantity.Word})
		s.Add(sheet.Figure{Key: "same", Word: "alike", Kind: quantity.Word})
		if s.InShort("{} it, web {}", quantity.Say(word), quantity.MM(web)); over {
			s.Find("spent", sheet.Stop, "spent")
			s.Find("thick", sheet.Note, "thick")
		}
		s.Grids = []sheet.Grid{{Key: "rows", Columns: []sheet.Column{{Key: "at"}}, Rows: [][]sheet.Cell{{sheet.V(pick(1, 3))}}}}
		if aside {
			s.OpenAside("what it turns on")
		}
		s.Add(sheet.Figure{Key: "sum", Label: "sum", Value: web + chisel, Limit: &handbook.Band{Low: 0, High: 4.5}})
		s.Add(sheet.Figure{Key: "half", Label: "half", Value: (web + chisel) / 2, Limit: &handbook.Band{Low: 0, High: 2.25}})
		return s
	}
}

// stepped is the sheet of a drill whose sum is off the limit by so many standard
// uncertainties of itself.
func stepped(t *testing.T, off float64, aside bool) *sheet.Sheet {
	t.Helper()
	d := drilltest.Read(t, "size 12mm; web 2mm; chisel-length 2.5mm")
	d.Put(drill.Web, 2+off*math.Sqrt2*gauge.Standard(shop.Caliper))
	again := step(aside)
	s := again(d)
	gauge.Spread(d, shop, s, again)
	return s
}

// Where the readings may lie on either side of a limit, what jumps there is one or
// the other, and what does not is as sure as ever.
func TestTwoOutcomes(t *testing.T) {
	u := gauge.Standard(shop.Caliper)
	near := func(name string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-3*math.Max(1, want) {
			t.Errorf("%s: %g, not %g", name, got, want)
		}
	}
	for _, off := range []float64{-1.9, -0.5, 0, 0.01, 0.5, 1.9} {
		s := stepped(t, off, off > 0.1)
		by, word := 1.0, "thin or retire"
		if off > 0 {
			by, word = -1, "retire or thin"
		}
		for key, jump := range map[string]float64{"jumps": 100, "falls": -80} {
			f := s.Lookup(key)
			if f.Otherwise == nil {
				t.Errorf("%g: %s has no other outcome", off, key)
				continue
			}
			near(key, *f.Otherwise, f.Value+by*jump)
		}
		if f := s.Lookup("held"); f.OtherHigh == nil {
			t.Errorf("%g: the limit has no other outcome", off)
		} else {
			near("held, its limit", *f.OtherHigh, f.Limit.High+by*500)
		}
		near("jumps ±", s.Lookup("jumps").Spread, 100+2*u)
		if f := s.Lookup("falls"); f.Mostly != "web" || s.Lookup("held").Gaps.High.Mostly != "web" {
			t.Errorf("%g: for want of %q, %+v", off, f.Mostly, s.Lookup("held").Gaps)
		}
		near("list ±", s.Grids[0].Rows[0][0].Spread, 2)
		for _, key := range [...]string{"kinks", "smooth"} {
			if f := s.Lookup(key); f.Otherwise != nil {
				t.Errorf("%g: %s may be %g", off, key, *f.Otherwise)
			}
		}
		near("smooth ±", s.Lookup("smooth").Spread, 2*u*math.Hypot(2, 2.5))
		if do, same := s.Lookup("do"), s.Lookup("same"); do.Word != word || !do.Either || same.Word != "alike" || same.Either {
			t.Errorf("%g: %q, %q", off, do.Word, same.Word)
		}
		if a := s.Answer; a.Format != "these gauges cannot tell: {} it, web {}; or {} it, web {}; read {} on a finer gauge" || a.Args[4].Word != "web" || a.Args[0].Word+" or "+a.Args[2].Word != word {
			t.Errorf("%g: %+v", off, a)
		}
		if len(s.Doubted) != 1 || s.Doubted[0].Code != "spent" {
			t.Errorf("%g: %v in doubt", off, s.Doubted)
		}
	}
}

// Out of reach of the gauges there is one outcome.
func TestOneOutcome(t *testing.T) {
	for _, off := range []float64{-2.1, 2.1, 30} {
		s := stepped(t, off, false)
		s.Each(func(f *sheet.Figure) {
			if f.Otherwise != nil || f.Either || f.Turns {
				t.Errorf("%g: %s has two outcomes", off, f.Key)
			}
		})
		if u := s.Lookup("falls").Spread; u != 0 || s.Doubted != nil || s.Answer.Format != "{} it, web {}" {
			t.Errorf("%g: ± %g, %v, %q", off, u, s.Doubted, s.Answer.Format)
		}
	}
}

// Two limits that are passed at one place tell one jump.
func TestOneJumpIsToldOnce(t *testing.T) {
	s := stepped(t, 0.5, false)
	if f := s.Lookup("jumps"); *f.Otherwise > f.Value-99 || *f.Otherwise < f.Value-101 {
		t.Errorf("%g or %g", f.Value, *f.Otherwise)
	}
	if s.Lookup("sum").OtherHigh != nil || !s.Lookup("sum").Turns || s.Lookup("half").Turns {
		t.Error("not the first of the two limits is what it turns on")
	}
}
