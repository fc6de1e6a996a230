package uncertainty_test

import (
	"math"
	"slices"
	"testing"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit/drilltest"
	"evenlip/internal/uncertainty"
)

// stepped is a sheet that is another one where the web is over 2 mm: figures that jump,
// that have a kink there and that do not hang on it, one that is known on one side
// alone, words, a limit, and a verdict with a heavy reason before a lighter one.
func stepped(d *drill.Drill) *sheet.Sheet {
	web, chisel := d.Value(drill.Web), d.Value(drill.ChiselLength)
	over := web > 2
	pick := func(below, above float64) float64 {
		if over {
			return above
		}
		return below
	}
	s := sheet.New("stepped", false)
	s.Add(sheet.Figure{Key: "jumps", Label: "jumps", Value: pick(100, 200)})
	s.Add(sheet.Figure{Key: "kinks", Label: "kinks", Value: max(web-2, 0)})
	s.Add(sheet.Figure{Key: "smooth", Label: "smooth", Value: chisel})
	s.Add(sheet.Figure{Key: "part", Label: "part", Value: pick(math.NaN(), 1)})
	s.Add(sheet.Figure{Key: "fixed", Label: "fixed", Value: 3})
	s.Add(sheet.Figure{Key: "do", Word: map[bool]string{false: "thin", true: "retire"}[over], Value: math.NaN(), Kind: quantity.Word})
	s.Add(sheet.Figure{Key: "same", Word: "alike", Value: math.NaN(), Kind: quantity.Word})
	s.Add(sheet.Figure{Key: "there", Word: map[bool]string{true: "there"}[over], Value: math.NaN(), Kind: quantity.Word})
	rarely := sheet.Figure{Key: "rarely", Word: map[bool]string{false: "below", true: "above"}[over], Value: math.NaN(), Kind: quantity.Word}
	if chisel > 2.549 {
		rarely.Word = "long"
	}
	s.Add(rarely)
	s.Add(sheet.Figure{Key: "web_mm", Label: "web", Value: web, Kind: quantity.Length, Limit: &handbook.Band{Low: 0, High: 2}})
	if s.Verdict = (&sheet.Verdict{Word: "thin", Reasons: []string{"chisel-long"}}); over {
		s.Verdict = &sheet.Verdict{Word: "retire", Reasons: []string{"web-spent", "chisel-long"}}
	}
	return s
}

// told is the sheet of a drill with the gauges' doubt: a web by so much over 2 mm, read
// to 0.1 mm.
func told(t *testing.T, off float64) *sheet.Sheet {
	t.Helper()
	d := drilltest.Read(t, "size 12mm; web 2mm; chisel-length 2.5mm")
	d.Put(drill.Web, 2+off)
	s := stepped(d)
	if off > 0 { // as shown, the heavier reason stands before the lighter one
		s.Verdict.Reasons = []string{"web-spent"}
		s.Verdict.Hidden = map[string]sheet.Finding{"web-spent": {Code: "chisel-long", Severity: sheet.Warn, Text: quantity.Sayf("thin it")}}
	}
	for _, code := range s.Verdict.Reasons {
		s.Find(code, sheet.Stop, "so it is")
	}
	uncertainty.Tell(s, d, steps(0.1, 0, 0), stepped)
	return s
}

// Where the readings may lie on either side of a limit, what jumps there reaches over
// both, a word names both, no state and no verdict is told, and what to read is said.
func TestEitherSide(t *testing.T) {
	for _, off := range []float64{-0.03, 0.03} {
		s := told(t, off)
		word, verdict, share := "thin or retire", "thin in 80 % of the draws, retire in 20 %", 0.8
		if off > 0 {
			word, verdict = "retire or thin", "retire in 80 % of the draws, thin in 20 %"
		}
		if d := s.Lookup("jumps").Doubt; d.Low != 100 || d.High != 200 || d.Unsure {
			t.Errorf("%g: jumps %+v", off, *d)
		}
		if d := s.Lookup("kinks").Doubt; d.Low != 0 || math.Abs(d.High-(0.0475+off)) > 1e-3 {
			t.Errorf("%g: kinks %+v", off, *d)
		}
		if d := s.Lookup("smooth").Doubt; math.Abs(d.High-d.Low-0.095) > 1e-3 || d.Known != 1 {
			t.Errorf("%g: smooth %+v", off, *d)
		}
		if d := s.Lookup("fixed").Doubt; d.Low != 3 || d.High != 3 {
			t.Errorf("%g: fixed %+v", off, *d)
		}
		if d := s.Lookup("part").Doubt; d.Low != 1 || d.High != 1 || math.Abs(d.Known-(0.5+10*off)) > 0.003 {
			t.Errorf("%g: part %+v", off, *d)
		}
		if do, same := s.Lookup("do"), s.Lookup("same"); do.Word != word || do.Doubt.Finer != "web on a finer gauge" || len(do.Doubt.Words) != 2 || same.Word != "alike" || same.Doubt.Unsure {
			t.Errorf("%g: %q, %q, %+v", off, do.Word, same.Word, *do.Doubt)
		}
		// A word that too few of the draws give to matter is not named; one that some do
		// not give at all is known in part.
		if f := s.Lookup("rarely"); len(f.Doubt.Words) != 2 || f.Doubt.Known != 1 {
			t.Errorf("%g: %q, %+v", off, f.Word, *f.Doubt)
		}
		if f := s.Lookup("there"); off > 0 && (f.Word != "there" || !f.Doubt.Unsure || math.Abs(f.Doubt.Known-share) > 0.003) || off < 0 && f.Word != "" {
			t.Errorf("%g: %q, %+v", off, f.Word, *f.Doubt)
		}
		if web := s.Lookup("web_mm"); web.State() != sheet.Unsure || web.Doubt.Finer != "web on a finer gauge" {
			t.Errorf("%g: the web is %v, %+v", off, web.State(), *web.Doubt)
		}
		v := s.Verdict
		if v.Word != "" || v.Finer != "web on a finer gauge" || !slices.Equal(v.Missing, []string{"web on a finer gauge"}) || math.Abs(v.Share-share) > 0.003 {
			t.Errorf("%g: %+v", off, *v)
		}
		if !slices.Equal(v.Reasons, []string{"chisel-long"}) { // holds on both sides
			t.Errorf("%g: reasons %v", off, v.Reasons)
		}
		if got := drilltest.Codes(s); !slices.Equal(got, map[bool][]string{false: {"chisel-long", "cannot-tell", "known-in-part", "verdict-in-doubt"}, true: {"cannot-tell", "known-in-part", "chisel-long", "verdict-in-doubt"}}[off > 0]) {
			t.Errorf("%g: remarks %v", off, got)
		}
		if f := s.Findings[len(s.Findings)-1]; f.Text.Args[0].Word != verdict || f.Text.Args[1].Word != "web on a finer gauge" {
			t.Errorf("%g: %+v", off, f.Text)
		}
	}
}

// Out of reach of the gauge, or almost, there is one answer.
func TestOneSide(t *testing.T) {
	for off, share := range map[float64]float64{-0.06: 1, -0.047: 0.97, 0.047: 0.97, 0.06: 1} {
		s := told(t, off)
		v, word, reason := s.Verdict, "thin", "chisel-long"
		if off > 0 {
			word, reason = "retire", "web-spent"
		}
		if v.Word != word || !slices.Equal(v.Reasons, []string{reason}) || math.Abs(v.Share-share) > 0.003 || v.Finer != "" || v.Missing != nil || v.Words != nil {
			t.Errorf("%g: %+v", off, *v)
		}
		if do := s.Lookup("do"); do.Word != word || do.Doubt.Unsure || s.Lookup("web_mm").State() == sheet.Unsure {
			t.Errorf("%g: %q, %v", off, do.Word, s.Lookup("web_mm").State())
		}
		if got := drilltest.Codes(s); got[0] != reason || slices.Contains(got, "cannot-tell") || slices.Contains(got, "verdict-in-doubt") || slices.Contains(got, "known-in-part") {
			t.Errorf("%g: remarks %v", off, got)
		}
	}
}

// From just which share on a state and a word are told.
func TestTells(t *testing.T) {
	for draws, sure := range map[float64]bool{491: false, 492: true} {
		s := told(t, 0.1*(draws/uncertainty.N-0.5)) // so many draws of the web are over 2 mm
		if v := s.Verdict; v.Share != draws/uncertainty.N || (v.Word == "retire") != sure || (s.Lookup("web_mm").State() == sheet.Over) != sure || (s.Lookup("do").Word == "retire") != sure {
			t.Errorf("%g draws: %+v, %v", draws, *v, s.Lookup("web_mm").State())
		}
		if f := s.Findings[len(s.Findings)-1]; !sure && f.Text.Args[0].Word != "retire in 95 % of the draws, thin in 4 %" { // 95.9 is not enough
			t.Errorf("%g draws: %q", draws, f.Text.Args[0].Word)
		}
	}
}

// A verdict that is missing for want of readings stays so, and what it wants is told.
func TestNoVerdictStaysNone(t *testing.T) {
	d := drilltest.Read(t, "size 12mm; web 2mm")
	none := func(*drill.Drill) *sheet.Sheet {
		s := sheet.New("inspect", false)
		s.Verdict = &sheet.Verdict{Missing: []string{"lip-angle A,B"}}
		return s
	}
	s := none(d)
	uncertainty.Tell(s, d, steps(0.1, 0, 0), none)
	if v := s.Verdict; v.Word != "" || v.Share != 1 || v.Finer != "" || !slices.Equal(v.Missing, []string{"lip-angle A,B"}) || s.Findings != nil {
		t.Errorf("%+v", *v)
	}
}

// A lighter reason takes the place of one in doubt if the draws bear it out, and is
// told once.
func TestLighterReasons(t *testing.T) {
	light := sheet.Finding{Code: "light"}
	for share, want := range map[float64][]string{0.9: {"sure"}, 1: {"light", "sure"}} {
		v := &sheet.Verdict{Word: "retire", Reasons: []string{"heavy", "heavier", "sure"}, Hidden: map[string]sheet.Finding{"heavy": light, "heavier": light}}
		verdicts := uncertainty.NewVerdicts(v)
		for i := range uncertainty.N {
			drawn := sheet.Verdict{Word: "retire", Reasons: []string{"sure"}}
			if i%2 == 0 {
				drawn.Reasons = append(drawn.Reasons, "heavy", "heavier")
			}
			if float64(i) < share*uncertainty.N {
				drawn.Reasons = append(drawn.Reasons, "light")
			}
			verdicts.Add(&drawn)
		}
		if verdicts.Settle(nil); v.Word != "retire" || v.Share != 1 || !slices.Equal(v.Reasons, want) {
			t.Errorf("light in %g: %q %v, want %v", share, v.Word, v.Reasons, want)
		}
	}
}
