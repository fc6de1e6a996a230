package plan_test

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/command/point"
	"evenlip/internal/command/regrind"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/plan"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
)

// readings is a drill as it is written down.
type readings = drilltest.Readings

// fit is a drill with nothing to be done to it.
var fit = readings{drill.Size: "12mm", drill.Web: "2mm", drill.ChiselAngle: "125", drill.LipAngle: "59,59", drill.LipHeight: "0",
	drill.Clearance: "12", drill.Flute: "80mm", drill.Depth: "30mm", drill.Feed: "0.2mm"}

func TestWhatIsToBeDone(t *testing.T) {
	for name, c := range map[string]struct {
		more   readings
		do     plan.Do
		reason string
	}{
		"nothing":              {nil, plan.Leave, "flute-short"},
		"worn, but not dull":   {readings{drill.FlankWear: "0.2mm"}, plan.Leave, "flute-short"},
		"dull":                 {readings{drill.FlankWear: "0.3mm"}, plan.Regrind, "flute-short"},
		"chipped":              {readings{drill.LipChip: "0.1mm"}, plan.Regrind, "flute-short"},
		"thick":                {readings{drill.Web: "2.4mm"}, plan.Thin, "flute-short"},
		"thick and dull":       {readings{drill.Web: "2.4mm", drill.FlankWear: "0.3mm"}, plan.Regrind, "flute-short"},
		"too thick":            {readings{drill.Web: "6.3mm"}, plan.Retire, "web-spent"},
		"cracked":              {readings{drill.Cracked: "yes"}, plan.Retire, "cracked"},
		"dull at the end":      {readings{drill.FlankWear: "0.3mm", drill.Flute: "42.1mm"}, plan.Retire, "flute-short"},
		"sharp for a last job": {readings{drill.Flute: "42.1mm"}, plan.Leave, "flute-short"},
		"dull, flute not read": {readings{drill.FlankWear: "0.3mm", drill.Flute: ""}, plan.Regrind, ""},
	} {
		t.Run(name, func(t *testing.T) {
			p := plan.Of(fit.With(c.more).Drill(t))
			if p.Do != c.do || p.Reason != c.reason {
				t.Errorf("%v for %q, not %v for %q", p.Do, p.Reason, c.do, c.reason)
			}
		})
	}
}

// A drill that is left, only thinned, or retired, gives up nothing off its end, and what a
// grind would take is said. By hand: the land reaches 0.2 (tan 12° - 0.2 / (12 pi)) =
// 0.0415 mm deep, and 0.05 mm is the clean-up.
func TestAGrindThatWaitsTakesNothing(t *testing.T) {
	for name, c := range map[string]struct {
		more    readings
		do      string
		says    string
		flute   float64
		thinned string
	}{
		"left":    {readings{drill.FlankWear: "0.2mm"}, "leave", "nothing measured is outside its limit: the grind can wait; it would take 0.09 mm off the end, for flank-land", 80, "no"},
		"thinned": {readings{drill.FlankWear: "0.2mm", drill.Web: "2.4mm"}, "thin", "the lips are within their limits: thin the web, and leave the grind; it would take 0.09 mm off the end, for flank-land", 80, "yes"},
		"sharp":   {nil, "leave", "", 80, "no"},
		"retired": {readings{drill.FlankWear: "0.2mm", drill.Flute: "40mm"}, "retire", "", 40, "no"},
		// another angle than the one wanted, and within its limit: by how little metal
		"blunter":        {readings{drill.FlankWear: "0.2mm", drill.LipAngle: "60,60"}, "leave", "nothing measured is outside its limit: the grind can wait; it would take 0.21 mm off the end, for truing", 80, "no"},
		"a hair blunter": {readings{drill.FlankWear: "0.2mm", drill.LipAngle: "59.2,59.2"}, "leave", "nothing measured is outside its limit: the grind can wait; it would take 0.12 mm off the end, for flank-land", 80, "no"},
	} {
		s := regrind.Command.Sheet(fit.With(c.more).Drill(t), true)
		if s.Lookup("plan").Word != c.do || s.Lookup("stock_reason").Word != "none" || s.Lookup("thin").Word != c.thinned {
			t.Errorf("%s: to %s for %s", name, s.Lookup("plan").Word, s.Lookup("stock_reason").Word)
		}
		for _, key := range []string{"stock_mm", "take_1_inner_mm", "take_1_outer_mm", "take_2_inner_mm", "take_2_outer_mm"} {
			if got := s.Lookup(key).Value; got != 0 {
				t.Errorf("%s: %s is %g", name, key, got)
			}
		}
		if got := s.Lookup("flute_after_mm").Value; got != c.flute {
			t.Errorf("%s: %g of flute is left", name, got)
		}
		if now, done := judge.Compute(fit.With(c.more).Drill(t)).Point.Length, s.Lookup("point_length_after_mm").Value; now != done {
			t.Errorf("%s: the point is %g long, and %g when nothing came off", name, now, done)
		}
		said := ""
		for _, f := range s.Findings {
			if f.Code == "can-wait" {
				said = f.Text.In(quantity.Format{System: quantity.Metric})
			}
		}
		if said != c.says {
			t.Errorf("%s: says %q", name, said)
		}
		if got := s.Lookup("stock_flank_mm").Value; c.says != "" && math.Abs(got-0.04145) > 1e-5 {
			t.Errorf("%s: the land asks for %g", name, got)
		}
	}
}

// Whatever is taken for want of a reading is said, and nothing else is.
func TestWhatWasTakenForGranted(t *testing.T) {
	all := fit.With(readings{drill.Material: "steel-200", drill.WebTaper: "0.016", drill.MarginWear: "0.5mm", drill.FlankWear: "0.1mm"})
	if got := drilltest.Codes(regrind.Command.Sheet(all.Drill(t), false)); !slices.Equal(got, []string{"margin-worn", "grind-to", "life-hangs-on-stock"}) {
		t.Fatalf("all was read, and yet %v", got)
	}
	for code, more := range map[string]readings{
		"clearance-aimed":    {drill.Clearance: ""},
		"lips-taken-even":    {drill.LipHeight: ""},
		"lip-angle-taken":    {drill.LipAngle: ""},
		"depth-missing":      {drill.Depth: ""},
		"back-taper-missing": {drill.LeastDiameter: "11.9mm"},
		"web-taper-assumed":  {drill.WebTaper: ""},
		"feed-assumed":       {drill.Feed: ""},
		"material-assumed":   {drill.Material: ""},
		"remove-too-little":  {drill.Remove: "0.5mm"},
		"corner-bound":       {drill.CornerWear: "0.5mm", drill.MarginWear: ""},
		"chisel-put-right":   {drill.ChiselAngle: "140"},
		"trued-to":           {drill.PointAngle: "120", drill.MarginWear: ""},
		"mark-lip-1":         {drill.LipHeight: "0.2mm"},
		"small-drill":        {drill.Size: "3mm", drill.Web: "0.5mm", drill.MarginWear: "0.2mm"},
		"straight-flutes":    {drill.Material: "brass"},
		"lips-curved":        {drill.PointAngle: "135"},
		"wear-counted-once":  {drill.MarginWear: "3mm"},
	} {
		if got := drilltest.Codes(regrind.Command.Sheet(all.With(more).Drill(t), false)); !slices.Contains(got, code) {
			t.Errorf("no %s among %v", code, got)
		}
	}
}

// fit has 80 mm of flute of which its job wants 42: what is left for grinding is
// counted here by hand.
func TestWhatTheLifeWouldBeAtAnotherStock(t *testing.T) {
	for margin, want := range map[string]string{
		"0.2mm": "0.48 0.96 40",        // (38 - 0.25)/0.96 and the first
		"0.5mm": "0.55 0.48 79 1.1 35", // (38 - 0.55)/0.48, /1.1
		"0.7mm": "0.7 0.48 0.75 50",    // (38 - 0.75)/0.75
		"5mm":   "5 0.48 5.05 7",       // (38 - 5.05)/5.05
	} {
		s := regrind.Command.Sheet(fit.With(readings{drill.MarginWear: margin}).Drill(t), false)
		got := ""
		for _, f := range s.Findings {
			if f.Code == "life-hangs-on-stock" || f.Code == "wear-counted-once" {
				for _, a := range f.Text.Args {
					got += fmt.Sprintf(" %.3g", a.Value)
				}
			}
		}
		if got != " "+want {
			t.Errorf("margin worn %s:%s, not %s", margin, got, want)
		}
	}
}

// A chisel edge as long as the drill is wide leaves no lip to grind; that is
// said, and no figure stands in its place.
func TestNoPlanOfADrillWithoutLips(t *testing.T) {
	s := regrind.Command.Sheet(readings{drill.Size: "10mm", drill.Web: "9mm", drill.ChiselAngle: "130", drill.FlankWear: "0.3mm", drill.Flute: "50mm"}.Drill(t), true)
	if got := drilltest.Codes(s); !slices.Contains(got, "no-plan") || !slices.Contains(got, "web-spent") {
		t.Errorf("only %v", got)
	}
	if v := s.Lookup("stock_mm").Value; !math.IsNaN(v) {
		t.Errorf("stock %g", v)
	}
	if s.Lookup("plan").Word != "retire" || s.Lookup("regrinds_left").Value != 0 {
		t.Errorf("%+v", s.Sections)
	}
}

// A drill to be reground is ground: whatever the reason, it takes metal off.
func TestEveryReasonToRegrindTakesMetal(t *testing.T) {
	met := map[judge.Reason]readings{
		judge.Dull: {drill.FlankWear: "0.3mm"}, judge.CornerWorn: {drill.CornerWear: "0.3mm"}, judge.MarginWorn: {drill.MarginWear: "0.5mm"},
		judge.Chipped: {drill.LipChip: "0.1mm"}, judge.PointOff: {drill.LipAngle: "56,56"}, judge.ClearanceLow: {drill.Clearance: "5"},
		judge.ClearanceHigh: {drill.Clearance: "23"}, judge.FlankRubs: {drill.Feed: "9mm"}, judge.ChiselOff: {drill.ChiselAngle: "110"},
		judge.LipsUneven: {drill.LipHeight: "0.2mm"}, judge.AnglesUneven: {drill.LipAngle: "62,56", drill.LipHeight: ""}, judge.ClearancesUneven: {drill.Clearance: "8.2,15.8"},
	}
	for i, holds := range plan.Of(fit.Drill(t)).Found.Verdict.Reasons {
		x := judge.Reason(i)
		if holds {
			t.Errorf("%s: a fit drill", x.Code())
		}
		if x.Verdict() != judge.Regrind {
			continue
		}
		p := plan.Of(fit.With(met[x]).Drill(t))
		if !p.Found.Verdict.Reasons[x] || p.Do != plan.Regrind || !(p.Stock.Total > 0) {
			t.Errorf("%s holds: %v, to do: %v, stock %g", x.Code(), p.Found.Verdict.Reasons[x], p.Do, p.Stock.Total)
		}
	}
}

func TestWhatCannotBe(t *testing.T) {
	for _, c := range []struct {
		more readings
		on   drill.Reading
	}{
		{readings{drill.Every: "0"}, drill.Every},
		{readings{drill.Length: "0"}, drill.Length},
		{readings{drill.BackTaper: "0.05"}, drill.BackTaper},
		{readings{drill.LeastDiameter: "12.1mm"}, drill.LeastDiameter},
		{readings{drill.Length: "79mm"}, drill.Length},
	} {
		found := fit.With(c.more).Drill(t).Possible()
		if len(found) != 1 || drilltest.About(found[0]) != c.on.String() {
			t.Errorf("%v: %v", c.more, found)
		}
	}
	if found := fit.With(readings{drill.Length: "80mm", drill.LeastDiameter: "12mm", drill.Every: "1mm"}).Drill(t).Possible(); len(found) != 0 {
		t.Errorf("refused: %v", found)
	}
}

// anyDrill draws a drill that could lie in a crib, worn this way or that.
func anyDrill(t *rapid.T) readings {
	r := readings{}
	d := rapid.Float64Range(1, 60).Draw(t, "size")
	set := func(x drill.Reading, low, high float64, unit string) {
		if rapid.Bool().Draw(t, x.String()+" read") {
			r[x] = fmt.Sprintf("%.5f%s", rapid.Float64Range(low, high).Draw(t, x.String()), unit)
		}
	}
	r[drill.Size] = fmt.Sprintf("%.3fmm", d)
	set(drill.Web, 0.08*d, 0.5*d, "mm")
	set(drill.ChiselAngle, 100, 150, "")
	set(drill.LipAngle, 45, 75, "")
	set(drill.LipHeight, 0, 0.02*d, "mm")
	set(drill.Clearance, 1, 30, "")
	set(drill.Flute, d, 12*d, "mm")
	set(drill.Depth, d, 5*d, "mm")
	set(drill.FlankWear, 0, 0.05*d, "mm")
	set(drill.CornerWear, 0, 0.2*d, "mm")
	set(drill.MarginWear, 0, 1.2*d, "mm")
	set(drill.LipChip, 0, 0.1*d, "mm")
	set(drill.LipFlat, 0.01*d, 0.1*d, "mm")
	set(drill.Helix, 10, 40, "")
	set(drill.FlutePoint, 90, 150, "")
	set(drill.Every, 0.3, 2, "mm")
	set(drill.CleanUp, 0.01, 0.2, "mm")
	set(drill.Feed, 0.002*d, 0.03*d, "mm")
	set(drill.PointAngle, 90, 150, "")
	set(drill.Length, 12*d, 20*d, "mm")
	set(drill.BackTaper, 0, 0.001, "")
	set(drill.LeastDiameter, 0.99*d, d, "mm")
	for _, x := range []drill.Reading{drill.LipAngle, drill.Clearance} {
		if one, ok := r[x]; ok && rapid.Bool().Draw(t, x.String()+" of both lips") {
			r[x] = one + "," + exact(rapid.Float64Range(0.9, 1.1).Draw(t, "by")*number(t, one))
		}
	}
	if rapid.Bool().Draw(t, "material read") {
		r[drill.Material] = rapid.SampledFrom([]string{"steel-400", "brass", "stainless-316", "aluminium", "plastics"}).Draw(t, "material")
	}
	return r
}

func number(t *rapid.T, text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// A plan never contradicts inspect, its schedule is as long as it says, and
// --check passes it where it passes inspect.
func TestPlanAgreesWithItself(t *testing.T) {
	testkit.Property(t, "a plan agrees with inspect and with its own schedule, and --check passes it where it passes inspect", func(t *rapid.T) {
		d := anyDrill(t).Drill(t)
		if len(d.Possible()) > 0 {
			t.Skip("no such drill")
		}
		s, verdict := regrind.Command.Sheet(d, false), point.Inspect.Sheet(d, false).Verdict.Word
		do, left := s.Lookup("plan").Word, s.Lookup("regrinds_left").Value
		wants := map[string][]string{"": {""}, "fit": {"leave"}, "thin": {"thin"}, "regrind": {"regrind", "retire"}, "retire": {"retire"}}
		if !slices.Contains(wants[verdict], do) {
			t.Fatalf("inspect says %q, the plan %q", verdict, do)
		}
		rows := 0
		for _, g := range s.Grids {
			if g.Key == "schedule" {
				rows = len(g.Rows)
			}
		}
		if !math.IsNaN(left) && left != float64(rows) {
			t.Fatalf("%g grinds left, %d in the schedule", left, rows)
		}
		if s.Outside() != (verdict != "fit") {
			t.Fatalf("%s, and outside is %v: %v", do, s.Outside(), drilltest.Codes(s))
		}
		stock, cause := s.Lookup("stock_mm").Value, s.Lookup("stock_reason").Word
		if !(stock >= 0) && !drilltest.Found(s, "no-plan") {
			t.Fatalf("stock %g", stock)
		}
		if waits := do == "leave" || do == "thin"; waits && stock > 0 || do == "regrind" && stock == 0 || stock >= 0 && (stock == 0) != (cause == "none") {
			t.Fatalf("to %s, %g comes off for %s", do, stock, cause)
		}
	})
}

// What a drill's history tells counts: its usual stock, unless another is given,
// and the web that a grind brings back where the point is thinned now.
func TestWhatTheHistoryTells(t *testing.T) {
	thinned := fit.With(readings{drill.Web: "1.8mm", drill.FlankWear: "0.3mm"})
	with := func(r readings, past drill.Past) *sheet.Sheet {
		d := r.Drill(t)
		d.Past = past
		return regrind.Command.Sheet(d, true)
	}
	past := drill.Past{Usual: 0.9, Body: 2.4}
	plainly, told := with(thinned, drill.Past{}), with(thinned, past)
	for _, c := range []struct {
		key         string
		alone, past float64
	}{{"usual_stock_mm", 0.48, 0.9}, {"web_after_mm", 1.8, 0.18 * 12 * math.Sin(55*math.Pi/180)}, {"regrinds_left", 79, 43}} {
		if got := plainly.Lookup(c.key).Value; math.Abs(got-c.alone) > 0.01 {
			t.Errorf("%s is %v, not %v", c.key, got, c.alone)
		}
		if got := told.Lookup(c.key).Value; math.Abs(got-c.past) > 0.01 {
			t.Errorf("%s is %v with a history, not %v", c.key, got, c.past)
		}
	}
	if got := drilltest.Codes(told); !slices.Contains(got, "usual-of-history") || !slices.Contains(got, "thinned-before") || told.Lookup("thin").Word != "yes" {
		t.Errorf("%v", got)
	}
	if got := drilltest.Codes(plainly); slices.Contains(got, "usual-of-history") || slices.Contains(got, "thinned-before") || plainly.Lookup("thin").Word != "no" {
		t.Errorf("without a history %v", got)
	}
	if given := with(thinned.With(readings{drill.Every: "2mm"}), past); given.Lookup("usual_stock_mm").Value != 2 || slices.Contains(drilltest.Codes(given), "usual-of-history") {
		t.Errorf("with --every 2mm it is %v", given.Lookup("usual_stock_mm").Value)
	}
	// A history outweighs what is usual in the shop, as a flag does.
	usual := func(past drill.Past, r readings) float64 {
		d := thinned.With(r).Drill(t)
		d.Past, d.Book = past, &handbook.Book{Every: 1.5, Source: handbook.Source{Label: handbook.Shop}}
		return regrind.Command.Sheet(d, true).Lookup("usual_stock_mm").Value
	}
	if shop, history, flag := usual(drill.Past{}, nil), usual(past, nil), usual(past, readings{drill.Every: "2mm"}); shop != 1.5 || history != 0.9 || flag != 2 {
		t.Errorf("usual stock %v by the shop, %v by the history, %v by the flag", shop, history, flag)
	}
	// Nothing to grind: it stays as it was thinned.
	if sharp := with(fit.With(readings{drill.Web: "1.8mm"}), past); sharp.Lookup("thin").Word != "no" || sharp.Lookup("web_after_mm").Value != 1.8 {
		t.Errorf("a sharp drill is thinned again: %s, to %v", sharp.Lookup("thin").Word, sharp.Lookup("web_after_mm").Value)
	}
}

// Inspect and the plan foretell one web for one stock.
func TestInspectForetellsTheSameWeb(t *testing.T) {
	for _, body := range []float64{0, 2.2} {
		d := fit.With(readings{drill.Web: "1.8mm", drill.Remove: "3mm", drill.WebTaper: "0.02"}).Drill(t)
		d.Past.Body = body
		point := point.Inspect.Sheet(d, true)
		want := math.Max(1.8, body) + 0.02*3
		if got := point.Lookup("web_after_mm").Value; math.Abs(got-want) > 1e-12 {
			t.Errorf("inspect: %v, not %v", got, want)
		}
		if told := slices.Contains(drilltest.Codes(point), "thinned-before"); told != (body > 0) {
			t.Errorf("with a web of %v behind the point: %v", body, drilltest.Codes(point))
		}
		p := plan.Of(d)
		if got := p.Body.Ground(alike(3)).Web; math.Abs(got-want) > 1e-12 {
			t.Errorf("plan: %v, not %v", got, want)
		}
	}
}

var kept plan.Plan

// Plans are drawn by the hundred for their numbers alone: no list is made of the life that is left.
func TestPlanAllocatesNothing(t *testing.T) {
	d := fit.With(readings{drill.MarginWear: "0.3mm", drill.Web: "2.4mm", drill.LipAngle: "60,60"}).Drill(t)
	if n := testing.AllocsPerRun(20, func() { kept = plan.Of(d) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

func BenchmarkOf(b *testing.B) {
	d := fit.With(readings{drill.MarginWear: "0.3mm"}).Drill(b)
	b.ReportAllocs()
	for b.Loop() {
		kept = plan.Of(d)
	}
}
