package spindle

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
)

// The strokes end at the depth, never rise, are never under half a diameter in a
// deeper hole and never over three, or three and a half in one; and the figures
// meet the formulas that have them: rpm, advance and time, worked again here.
func TestSpeedAddsUp(t *testing.T) {
	testkit.Property(t, "strokes keep to their rule; rpm, advance and time meet their formulas and the published bands", func(t *rapid.T) {
		d := rapid.Float64Range(1, 40).Draw(t, "D")
		depth := d * rapid.Float64Range(0.2, 12).Draw(t, "depth, diameters")
		material := rapid.SampledFrom([]string{"steel-200", "steel-400", "brass", "cast-iron-150"}).Draw(t, "material")
		s := Speed.Sheet(drilltest.Read(t, "size "+trim(d)+"mm; material "+material+"; depth "+trim(depth)+"mm"), false)
		get := func(key string) float64 { return drilltest.Value(t, s, key) }
		rows := drilltest.Grid(t, s, "pecks").Rows
		sum, last := 0.0, 3*d
		if len(rows) == 1 {
			last = 3.5 * d
		}
		for i, r := range rows {
			sum += r[1].Value
			if v := r[1].Value; v > last+1e-9 || v < min(d/2, depth)-1e-9 || i > 0 && v > d+1e-9 {
				t.Fatalf("in %g mm at a depth of %g mm a stroke of %g after one of %g", d, depth, v, last)
			}
			last = r[1].Value
		}
		near(t, "all strokes", sum, depth, 1e-6)
		near(t, "the last depth", rows[len(rows)-1][0].Value, depth, 1e-6)
		near(t, "cutting speed", get("rpm")*math.Pi*d/1000, get("cutting_speed_m_min"), 1e-6*get("cutting_speed_m_min"))
		near(t, "advance", get("rpm")*get("feed_mm"), get("penetration_mm_min"), 1e-9*get("penetration_mm_min"))
		if get("cutting_speed_m_min") > get("cutting_speed_high_m_min") || get("feed_mm") > get("feed_high_mm") {
			t.Fatalf("faster than published: %g m/min, %g mm", get("cutting_speed_m_min"), get("feed_mm"))
		}
		if get("hole_time_s") < 60*depth/get("penetration_mm_min") {
			t.Fatalf("%g s", get("hole_time_s"))
		}
	})
}

// A hole a little over three diameters is drilled as one of three is, and no
// stroke is under half a diameter: 0.125 in at 1/4 in (own rules).
func TestStrokes(t *testing.T) {
	for _, c := range []struct {
		text string
		unit float64
		want []float64
	}{
		{"size 12mm; depth 36mm", 1, []float64{36}},
		{"size 12mm; depth 37mm", 1, []float64{37}},
		{"size 12mm; depth 42mm", 1, []float64{36, 6}},
		{"size 1/4in; depth 1.5in", 25.4, []float64{0.75, 0.25, 0.125, 0.125, 0.125, 0.125}},
	} {
		rows := drilltest.Grid(t, Speed.Sheet(drilltest.Read(t, c.text), false), "pecks").Rows
		if len(rows) != len(c.want) {
			t.Errorf("%s: %v", c.text, rows)
			continue
		}
		for i, r := range rows {
			near(t, c.text, r[1].Value/c.unit, c.want[i], 1e-9)
		}
	}
}

// rpm = 3.82 SFM / D, D in inches; 70 to 80 ft/min for steel of 200 HB (US Navy,
// Machinery Repairman, read in print).
func TestRpmByTheShortForm(t *testing.T) {
	s := Speed.Sheet(drilltest.Read(t, "size 1/2in; material steel-200"), false)
	trade := testkit.Against(t, testkit.Trade, "rpm is 3.82 SFM / D, by the command's readings")
	trade.Within("1/2 in at 75 ft/min", drilltest.Value(t, s, "rpm"), 3.82*75/0.5, 1, "rpm")
}

// The clearance left is what inspect makes of it, and a shank carries what
// torsion says.
func TestSpeedFindings(t *testing.T) {
	for code, text := range map[string]string{
		"flank-rubs":       "size 12mm; clearance 0.2; web 1.8mm; lip-angle 59; feed 0.17mm",
		"shank-overloaded": "size 25mm; shank-diameter 13mm; web 4mm; feed 0.3mm",
		"hole-very-deep":   "size 6mm; depth 60mm",
		"flute-short":      "size 6mm; depth 30mm; flute 31mm",
	} {
		s := Speed.Sheet(drilltest.Read(t, text), false)
		if !drilltest.Found(s, code) || !s.Outside() {
			t.Errorf("no %s, or it passes: %v", code, s.Findings)
		}
	}
	s := Speed.Sheet(drilltest.Read(t, "size 25mm; shank-diameter 13mm; web 4mm; feed 0.3mm"), false)
	near(t, "stress", drilltest.Value(t, s, "shank_stress_mpa"), 16000*drilltest.Value(t, s, "torque_nm")/(math.Pi*13*13*13), 1e-9)
	least := drilltest.Value(t, s, "least_shank_mm")
	again := Speed.Sheet(drilltest.Read(t, "size 25mm; shank-diameter "+trim(least)+"mm; web 4mm; feed 0.3mm"), false)
	if drilltest.Found(again, "shank-overloaded") {
		t.Errorf("the thinnest shank that carries it, %g mm, does not", least)
	}
}

// From three diameters on speed and feed are cut (common practice); a hole is
// called deep and wants a high helix beyond five (own rule).
func TestWhatIsDeep(t *testing.T) {
	for depth, want := range map[string]string{"29mm": "", "30mm": "speed-cut ", "50mm": "speed-cut ", "51mm": "hole-deep high-helix ", "80mm": "hole-deep high-helix ", "81mm": "hole-very-deep high-helix "} {
		s := Speed.Sheet(drilltest.Read(t, "size 10mm; depth "+depth), false)
		got := ""
		for _, code := range []string{"speed-cut", "hole-deep", "hole-very-deep", "high-helix"} {
			if drilltest.Found(s, code) {
				got += code + " "
			}
		}
		if cut := drilltest.Value(t, s, "feed_cut") > 0; got != want || cut != (want != "") {
			t.Errorf("%s: %q, cut %v", depth, got, cut)
		}
	}
}

// 0.178 mm/rev is the most that is published for 12 mm (Navy course, in print);
// 0.2 is an everyday feed, and 0.4 is none.
func TestFeedOverThePublished(t *testing.T) {
	for feed, want := range map[string]string{"0.15mm": "", "0.2mm": "feed-above-published", "0.26mm": "feed-above-published", "0.27mm": "feed-heavy", "0.09mm": "feed-light"} {
		s := Speed.Sheet(drilltest.Read(t, "size 12mm; material steel-150; feed "+feed), false)
		got := ""
		for _, code := range []string{"feed-above-published", "feed-heavy", "feed-light"} {
			if drilltest.Found(s, code) {
				got += code
			}
		}
		if got != want || s.Outside() != (want == "feed-heavy" || want == "feed-light") {
			t.Errorf("%s: %q, outside %v", feed, got, s.Outside())
		}
	}
}

// Every command takes the same feed where none is read.
func TestOneFeed(t *testing.T) {
	for _, material := range []string{"steel-200", "stainless-316", "aluminium"} {
		for _, size := range []string{"6.8mm", "12.7mm", "13mm", "25mm", "26mm"} {
			d := drilltest.Read(t, "size "+size+"; material "+material+"; web 1mm; chisel-angle 125")
			taken := judge.Compute(d).Drill.Feed
			near(t, "feed of speed", drilltest.Value(t, Speed.Sheet(d, false), "feed_mm"), taken, 1e-12)
			given := *d
			given.Put(drill.Feed, taken)
			for name, make := range map[string]func(*drill.Drill, bool) *sheet.Sheet{"thrust": Thrust.Sheet, "pilot": Pilot.Sheet} {
				near(t, name, drilltest.Value(t, make(d, false), "thrust_n"), drilltest.Value(t, make(&given, false), "thrust_n"), 1e-9)
			}
		}
	}
}

// Stainless steel is cut at the low end and a hair over 1/2 in costs a hair more
// thrust.
func TestThrustDoesNotJump(t *testing.T) {
	near(t, "feed", drilltest.Value(t, Speed.Sheet(drilltest.Read(t, "size 6.8mm; material stainless-316"), false), "feed_mm"), 0.004*25.4, 1e-9)
	for _, at := range []float64{3.175, 6.35, 12.7, 25.4} {
		under, over := Thrust.Sheet(drilltest.Read(t, "size "+trim(at-0.001)+"mm"), false), Thrust.Sheet(drilltest.Read(t, "size "+trim(at+0.001)+"mm"), false)
		ratio := drilltest.Value(t, over, "thrust_n") / drilltest.Value(t, under, "thrust_n")
		near(t, "thrust, just over by just under", ratio, 1, 0.005)
	}
}

// Work that hardens where the drill rubs is told so, and a shop's own material
// that is like it; steel is not.
func TestWorkThatHardens(t *testing.T) {
	like, _ := handbook.FindMaterial("stainless-316")
	own := *like
	own.Name = "pump-shaft"
	for name, want := range map[string]bool{"stainless-316": true, "titanium": true, "high-temperature-alloy": true, "pump-shaft": true, "steel-200": false} {
		d := drilltest.Read(t, "size 10mm; material "+name)
		d.Book = &handbook.Book{Own: []handbook.Material{own}}
		if s := Speed.Sheet(d, false); drilltest.Found(s, "work-hardens") != want || want != slices.Contains(s.Extra, handbook.HardenSource) {
			t.Errorf("%s: %v", name, s.Findings)
		}
	}
}

// A shop's own material burns as the one it is like does, and its speeds are
// called the shop's.
func TestMaterialOfTheShop(t *testing.T) {
	like, _ := handbook.FindMaterial("magnesium")
	own := *like
	own.Name, own.Speed.Source = "gearbox-alloy", &handbook.Source{Label: handbook.Shop, Text: "the yard's"}
	d := drilltest.Read(t, "size 10mm; material gearbox-alloy; rpm 9000")
	d.Book = &handbook.Book{Own: []handbook.Material{own}}
	s := Speed.Sheet(d, false)
	if !drilltest.Found(s, "fire") || s.Lookup("cutting_speed_low_m_min").Label != "the shop's, from" {
		t.Errorf("%q, %v", s.Lookup("cutting_speed_low_m_min").Label, s.Findings)
	}
	for _, f := range s.Findings {
		if f.Code == "speed-high" && f.Text.Args[1].Word != "shop's" {
			t.Errorf("speed over the %s", f.Text.Args[1].Word)
		}
	}
	if s := Speed.Sheet(drilltest.Read(t, "size 10mm; material steel-200"), false); drilltest.Found(s, "fire") || s.Lookup("cutting_speed_low_m_min").Label != "published, from" {
		t.Errorf("steel: %v", s.Findings)
	}
}
