package spindle

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/figure"
	"evenlip/internal/quantity"
)

// read makes a drill of flags: "size", "12mm", "web", "2mm".
func read(t fataler, pairs ...string) *drill.Drill {
	t.Helper()
	d := &drill.Drill{}
	for i := 0; i < len(pairs); i += 2 {
		r, ok := drill.Find(pairs[i])
		if !ok {
			t.Fatalf("no reading is called %s", pairs[i])
		}
		d.Set(r, pairs[i+1])
	}
	for _, e := range d.Resolve() {
		t.Fatalf("%v", e)
	}
	return d
}

type fataler interface {
	Helper()
	Fatalf(string, ...any)
}

// value is a figure of a sheet.
func value(t fataler, s *figure.Sheet, key string) float64 {
	t.Helper()
	f := s.Lookup(key)
	if f == nil {
		t.Fatalf("%s has no %s", s.Command, key)
		return math.NaN()
	}
	return f.Value
}

func grid(t fataler, s *figure.Sheet, key string) *figure.Grid {
	t.Helper()
	for i := range s.Grids {
		if s.Grids[i].Key == key {
			return &s.Grids[i]
		}
	}
	t.Fatalf("%s has no list %s", s.Command, key)
	return nil
}

func found(s *figure.Sheet, code string) bool {
	for _, f := range s.Findings {
		if f.Code == code {
			return true
		}
	}
	return false
}

func near(t fataler, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Fatalf("%s is %.9g, not %.9g within %g", what, got, want, within)
	}
}

var handbook = []string{"size", "7/8", "material", "steel-200", "chisel-length", "0.1575in", "feed", "0.008in", "rpm", "350", "wear-factor", "1.3", "efficiency", "0.8"}

// The worked example of the Machinery's Handbook, 31st ed.: size, work,
// efficiency and rpm read in print; feed, W and the answers 2313 lb, 559 in lb,
// 3.1 hp and 3.9 hp from memory.
func TestHandbookExample(t *testing.T) {
	s := Thrust(read(t, handbook...), false)
	rows := grid(t, s, "methods").Rows
	printed := rows[len(rows)-1]
	if printed[0].Word != "printed" {
		t.Fatalf("the last row is %q", printed[0].Word)
	}
	near(t, "thrust, lb", printed[4].Value/poundForce, 2313, 1)
	near(t, "torque, in lb", printed[5].Value/inchPound, 559, 0.5)
	near(t, "power at the cutter, hp", printed[6].Value/horsepower, 3.1, 0.05)
	near(t, "power at the motor, hp", printed[7].Value/horsepower, 3.9, 0.05)
	// The table is rounded: the closed forms behind it come within 3 %.
	near(t, "thrust by the closed forms, lb", value(t, s, "thrust_n")/poundForce, 2313, 0.03*2313)
	near(t, "torque by the closed forms, in lb", value(t, s, "torque_nm")/inchPound, 559, 0.005*559)
}

// Modern Machining Technology (2011), p. 145 (read in print): the chisel edge
// takes 50 to 60 % of the axial force of a 29.5 mm drill in work of 200 HB, and
// the margins, which the method leaves out, about 10 %: 56 to 67 % of the rest.
func TestChiselShareAsMeasured(t *testing.T) {
	share := value(t, Thrust(read(t, "size", "29.5mm", "material", "steel-200", "feed", "0.3mm"), false), "chisel_share")
	near(t, "the chisel's share", share, 0.615, 0.055)
}

// A drill read in inches and the same in millimetres differ by the handbook's
// two sets of rounded constants and no more.
func TestInchesAndMillimetres(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(0.1, 2).Draw(t, "D, in")
		w := d * rapid.Float64Range(0.1, 0.3).Draw(t, "w/D")
		f := rapid.Float64Range(0.001, 0.02).Draw(t, "feed, in")
		text := func(v float64, unit string) string { return trim(v) + unit }
		in := Thrust(read(t, "size", text(d, "in"), "web", text(w, "in"), "chisel-angle", "125", "feed", text(f, "in"), "rpm", "300", "efficiency", "0.8"), false)
		mm := Thrust(read(t, "size", text(d*25.4, "mm"), "web", text(w*25.4, "mm"), "chisel-angle", "125", "feed", text(f*25.4, "mm"), "rpm", "300", "efficiency", "0.8"), false)
		for _, key := range []string{"thrust_n", "torque_nm", "power_cutter_kw", "power_motor_kw", "chisel_share"} {
			a, b := value(t, in, key), value(t, mm, key)
			near(t, key, a, b, 0.015*b)
		}
		for _, key := range []string{"chisel_ratio", "factor_a", "factor_b", "factor_j", "thrust_ratio"} {
			a, b := value(t, in, key), value(t, mm, key)
			near(t, key, a, b, 1e-6*b)
		}
	})
}

// Each step up in wear costs its factor and nothing else.
func TestSharpAndDull(t *testing.T) {
	s := Thrust(read(t, handbook...), false)
	rows := grid(t, s, "conditions").Rows
	for _, r := range rows {
		near(t, r[0].Word, r[2].Value/rows[0][2].Value, r[1].Value, 1e-9)
		near(t, r[0].Word, r[3].Value/rows[0][3].Value, r[1].Value, 1e-9)
	}
	if len(rows) != 3 || rows[1][2].Value != value(t, s, "thrust_n") {
		t.Errorf("%d rows", len(rows))
	}
}

// Power is torque times angular speed: a second way to the same figure.
func TestPowerIsTorqueTimesSpeed(t *testing.T) {
	for _, size := range []string{"7/8", "22mm"} {
		s := Thrust(read(t, "size", size, "rpm", "350", "drive", "belt"), false)
		watts := value(t, s, "torque_nm") * 350 * 2 * math.Pi / 60
		near(t, "power", value(t, s, "power_cutter_kw"), watts/1000, 1e-4*watts/1000)
		near(t, "power at the motor", value(t, s, "power_motor_kw"), watts/1000/0.9, 1e-4*watts/1000)
	}
}

// Thinning never raises the thrust, takes nothing back on, and leaves the web
// that its two notches leave.
func TestThinning(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(2, 60).Draw(t, "D")
		web := d * rapid.Float64Range(0.1, 0.35).Draw(t, "w/D")
		pairs := []string{"size", trim(d) + "mm", "web", trim(web) + "mm", "chisel-angle", trim(rapid.Float64Range(110, 140).Draw(t, "psi"))}
		switch rapid.IntRange(0, 2).Draw(t, "target") {
		case 1:
			pairs = append(pairs, "chisel-ratio", trim(rapid.Float64Range(0.02, 0.4).Draw(t, "q")))
		case 2:
			pairs = append(pairs, "to-web", trim(d*rapid.Float64Range(0.02, 0.4).Draw(t, "w'/D"))+"mm")
		}
		s := Thin(read(t, pairs...), false)
		get := func(key string) float64 { return value(t, s, key) }
		if get("thrust_ratio") > 1+1e-9 || get("notch_depth_mm") < 0 || get("thrust_after_n") > get("thrust_before_n")*(1+1e-9) {
			t.Fatalf("thrust times %g, notch %g", get("thrust_ratio"), get("notch_depth_mm"))
		}
		near(t, "web less two notches", get("web_mm")-2*get("notch_depth_mm"), get("web_target_mm"), 1e-9)
		near(t, "c' over c", get("chisel_length_after_mm")/get("chisel_length_mm"), get("web_target_mm")/get("web_mm"), 1e-9)
		near(t, "thrust", get("thrust_after_n")/get("thrust_before_n"), get("thrust_ratio"), 1e-9)
	})
}

func TestThinningToAThrust(t *testing.T) {
	for _, want := range []string{"2100lbf", "8000N"} {
		s := Thin(read(t, "size", "20mm", "web", "4mm", "chisel-angle", "125", "feed", "0.25mm", "thrust", want), false)
		v, err := quantity.Parse(quantity.Force, want, quantity.Unset)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "thrust", value(t, s, "thrust_after_n"), v.V, 1e-6*v.V)
	}
	if s := Thin(read(t, "size", "20mm", "web", "4mm", "thrust", "90kN"), false); !found(s, "thin-enough") {
		t.Error("a thrust above the present one takes metal off")
	}
	if s := Thin(read(t, "size", "20mm", "web", "4mm", "material", "plastics", "thrust", "5kN"), false); figure.Known(value(t, s, "web_target_mm")) {
		t.Error("a thrust without a force factor gives a web")
	}
}

// All sizes that serve lie from the web to the chisel edge, and none is left out.
func TestPilotSizes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(2, 50).Draw(t, "D")
		s := Pilot(read(t, "size", trim(d)+"mm", "web", trim(d*rapid.Float64Range(0.1, 0.3).Draw(t, "w/D"))+"mm", "chisel-angle", "125"), false)
		low, high := value(t, s, "pilot_low_mm"), value(t, s, "pilot_high_mm")
		listed := map[string]bool{}
		last := 0.0
		for _, row := range grid(t, s, "pilot_sizes").Rows {
			v := row[2].Value
			if v < low-1e-6 || v > high+1e-6 || v < last {
				t.Fatalf("%s is %g, outside %g to %g or after %g", row[0].Word, v, low, high, last)
			}
			listed[row[0].Word], last = true, v
		}
		at := rapid.Float64Range(low, high).Draw(t, "between")
		for _, series := range quantity.AllSeries {
			n, _ := quantity.Nearest(at, series)
			for _, size := range []quantity.SizeName{n.Below, n.At, n.Above} {
				if size.Name != "" && size.MM >= low && size.MM <= high && !listed[size.Name] {
					t.Fatalf("%s lies from %g to %g and is not listed", size.Name, low, high)
				}
			}
		}
		if ratio := value(t, s, "thrust_ratio"); !(ratio > 0 && ratio < 1) {
			t.Fatalf("a pilot multiplies the thrust by %g", ratio)
		}
	})
}

func TestPilotFindings(t *testing.T) {
	for pilot, code := range map[string]string{"2mm": "pilot-narrower-than-web", "6mm": "pilot-wider-than-chisel", "15mm": "pilot-over-wide"} {
		if s := Pilot(read(t, "size", "20mm", "web", "3mm", "chisel-angle", "125", "pilot", pilot), false); !found(s, code) || !s.Outside() {
			t.Errorf("%s: no %s in %v", pilot, code, s.Findings)
		}
	}
	if s := Pilot(read(t, "size", "20mm", "web", "3mm", "chisel-angle", "125", "pilot", "3.3mm"), false); s.Outside() {
		t.Errorf("3.3 mm is refused: %v", s.Findings)
	}
}

// The strokes end at the depth, never rise, and the figures meet the formulas
// that have them: rpm, advance and time, worked again here.
func TestSpeedAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(1, 40).Draw(t, "D")
		depth := d * rapid.Float64Range(0.2, 12).Draw(t, "depth, diameters")
		material := rapid.SampledFrom([]string{"steel-200", "steel-400", "brass", "cast-iron-150"}).Draw(t, "material")
		s := Speed(read(t, "size", trim(d)+"mm", "material", material, "depth", trim(depth)+"mm"), false)
		get := func(key string) float64 { return value(t, s, key) }
		rows := grid(t, s, "pecks").Rows
		sum, last := 0.0, math.Inf(1)
		for _, r := range rows {
			sum += r[1].Value
			if r[1].Value > last+1e-9 {
				t.Fatalf("a stroke of %g after one of %g", r[1].Value, last)
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

// rpm = 3.82 SFM / D, D in inches (common practice); 70 to 80 ft/min for steel
// of 200 HB (US Navy, Machinery Repairman, read in print).
func TestRpmByTheShortForm(t *testing.T) {
	s := Speed(read(t, "size", "1/2in", "material", "steel-200"), false)
	near(t, "rpm", value(t, s, "rpm"), 3.82*75/0.5, 1)
}

// The clearance left is what inspect makes of it, and a shank carries what
// torsion says.
func TestSpeedFindings(t *testing.T) {
	for code, pairs := range map[string][]string{
		"flank-rubs":       {"size", "12mm", "clearance", "0.2", "web", "1.8mm", "lip-angle", "59", "feed", "0.17mm"},
		"shank-overloaded": {"size", "25mm", "shank-diameter", "13mm", "web", "4mm", "feed", "0.3mm"},
		"hole-very-deep":   {"size", "6mm", "depth", "60mm"},
		"flute-short":      {"size", "6mm", "depth", "30mm", "flute", "31mm"},
	} {
		s := Speed(read(t, pairs...), false)
		if !found(s, code) || !s.Outside() {
			t.Errorf("no %s, or it passes: %v", code, s.Findings)
		}
	}
	s := Speed(read(t, "size", "25mm", "shank-diameter", "13mm", "web", "4mm", "feed", "0.3mm"), false)
	near(t, "stress", value(t, s, "shank_stress_mpa"), 16000*value(t, s, "torque_nm")/(math.Pi*13*13*13), 1e-9)
	least := value(t, s, "least_shank_mm")
	again := Speed(read(t, "size", "25mm", "shank-diameter", trim(least)+"mm", "web", "4mm", "feed", "0.3mm"), false)
	if found(again, "shank-overloaded") {
		t.Errorf("the thinnest shank that carries it, %g mm, does not", least)
	}
}

// v = pi D N (derived); 8 in at 3450 rpm is 7226 ft/min, and 6500 ft/min is
// 3104 rpm on it.
func TestWheel(t *testing.T) {
	s := Wheel(read(t, "wheel", "8in", "wheel-rpm", "3450", "marked-speed", "6500sfm", "worn-to", "4in"), false)
	near(t, "new, ft/min", value(t, s, "surface_speed_new_mps")/foot, 7226, 0.5)
	near(t, "worn, ft/min", value(t, s, "surface_speed_mps")/foot, 3613, 0.5)
	near(t, "allowed", value(t, s, "allowed_rpm"), 3104, 0.5)
	if !found(s, "wheel-too-fast") || !s.Outside() || !found(s, "wheel-worn") {
		t.Errorf("%v", s.Findings)
	}
}

func TestWheelOfFewReadings(t *testing.T) {
	for want, pairs := range map[string][]string{
		"allowed 3600 fast":  {"marked-rpm", "3600", "wheel-rpm", "3700"},
		"allowed 3600":       {"marked-rpm", "3600", "wheel-rpm", "3600"},
		"allowed 3000 fast":  {"wheel", "200mm", "marked-rpm", "3000", "marked-speed", "50m/s", "wheel-rpm", "3001"},
		"allowed 3342":       {"wheel", "200mm", "marked-speed", "35m/s"},
		"allowed 3151 guess": {"wheel", "200mm"},
		"allowed NaN guess":  {"rest-gap", "1mm"},
	} {
		s := Wheel(read(t, pairs...), false)
		got := "allowed " + whole(value(t, s, "allowed_rpm"))
		if found(s, "wheel-too-fast") {
			got += " fast"
		}
		if found(s, "marking-not-read") {
			got += " guess"
		}
		if got != want {
			t.Errorf("%v: %s, not %s", pairs, got, want)
		}
	}
}

// What cannot be is refused by name.
func TestChecks(t *testing.T) {
	for reading, pairs := range map[string][]string{
		"wear-factor": {"wear-factor", "0.9"}, "drive": {"drive", "chain"}, "efficiency": {"efficiency", "0"},
		"pilot": {"size", "5mm", "pilot", "5mm"}, "to-web": {"size", "5mm", "to-web", "6mm"}, "web": {"size", "5mm", "web", "4.9mm"},
		"depth": {"size", "5mm", "depth", "2m"}, "chisel-ratio": {"chisel-ratio", "1"}, "thrust": {"size", "20mm", "web", "4mm", "thrust", "10N"},
	} {
		if reading == "depth" {
			pairs[3] = "1200mm"
		}
		im := CheckDrill(read(t, pairs...))
		if len(im) != 1 || im[0].Reading.String() != reading {
			t.Errorf("%v: %v", pairs, im)
		}
	}
	if im := CheckDrill(read(t, "size", "20mm", "web", "4mm", "to-web", "3mm", "thrust", "10kN")); len(im) != 1 || !strings.Contains(im[0].Text.Format, "one target") {
		t.Errorf("two targets: %v", im)
	}
	if im := CheckDrill(read(t, handbook...)); im != nil {
		t.Errorf("the handbook's example cannot be: %v", im)
	}
	if im := CheckDrill(read(t, "size", "20mm", "thrust", "10N")); im != nil {
		t.Errorf("a thrust on a drill not measured: %v", im)
	}
	for reading, pairs := range map[string][]string{
		"worn-to": {"wheel", "200mm", "worn-to", "201mm"}, "wheel": {"wheel", "0mm"}, "marked-speed": {"marked-speed", "0m/s"},
	} {
		if im := CheckWheel(read(t, pairs...)); len(im) != 1 || im[0].Reading.String() != reading {
			t.Errorf("%v: %v", pairs, im)
		}
	}
}

// A reading that is missing makes no number of what hangs on it, and no sheet
// changes its figures' names for it.
func TestMissingReadings(t *testing.T) {
	for name, make := range map[string]func(*drill.Drill, bool) *figure.Sheet{"thrust": Thrust, "thin": Thin, "pilot": Pilot, "speed": Speed} {
		full := make(read(t, "size", "12mm", "web", "2mm", "chisel-angle", "125", "feed", "0.2mm", "rpm", "500", "depth", "20mm"), false)
		none := make(read(t, "feed", "0.2mm"), true)
		if names(full) != names(none) {
			t.Errorf("%s: %s\nbut with nothing read %s", name, names(full), names(none))
		}
		none.Each(func(f *figure.Figure) {
			if f.Known() && f.Kind != quantity.Cutting && f.Key != "wear_factor" && f.Key != "feed_mm" && f.Key != "kd_thrust" && f.Key != "kd_torque" {
				t.Errorf("%s without a size has %s = %g", name, f.Key, f.Value)
			}
			if !f.Known() && f.Wants == "" {
				t.Errorf("%s: %s is not known and wants nothing", name, f.Key)
			}
		})
	}
}

func names(s *figure.Sheet) string {
	out := ""
	s.Each(func(f *figure.Figure) { out += f.Key + " " })
	return out
}
