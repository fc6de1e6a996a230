package edge

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
)

const degree = math.Pi / 180

type readings = drilltest.Readings

// column returns one column of the sheet's rows, in degrees or the kind's unit.
func column(t drilltest.Tester, s *sheet.Sheet, key string) []float64 {
	t.Helper()
	var out []float64
	g := &s.Grids[0]
	for i, c := range g.Columns {
		if c.Key != key {
			continue
		}
		for _, row := range g.Rows {
			out = append(out, quantity.Export(c.Kind, row[i].Value))
		}
		return out
	}
	t.Fatalf("no column %s", key)
	return nil
}

var plain = readings{drill.Size: "10mm", drill.Web: "1.5mm", drill.PointAngle: "118", drill.Helix: "30", drill.Clearance: "12",
	drill.Feed: "0.2mm", drill.ChiselAngle: "126.579", drill.Rpm: "700", drill.At: "1,0.4"}

func TestCheckValues(t *testing.T) {
	apart := testkit.Against(t, testkit.Derived, "along the lip, as the command gives it, by vectors")
	s := Command.Sheet(plain.Drill(t), false)
	for key, want := range map[string][2]float64{
		"inclination_deg":       {7.39, 18.75},
		"normal_rake_deg":       {30.62, 2.99},
		"normal_clearance_deg":  {10.53, 17.83},
		"lip_clearance_deg":     {12, 18.78},
		"working_clearance_deg": {11.64, 17.87},
		"radius_ratio":          {1, 0.4},
		"cutting_speed_m_min":   {21.99, 8.80},
	} {
		got := column(t, s, key)
		for i := range want {
			// The source gives two decimals; its inclination at the corner is 7.39 where 7.387 rounds.
			if len(got) != 2 {
				t.Fatalf("%s is %v, want %v", key, got, want)
			}
			apart.Within(fmt.Sprintf("%s, place %d", key, i+1), got[i], want[i], 0.006, "")
		}
	}
}

// Print and practice: rake about +30 at the margin and about -30 beside the
// chisel, clearance 8 to 12 at the margin rising to 20 to 25 further in, the
// chisel edge at about -56.
func TestBandsOfPractice(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "rake and clearance along the lip of a 1/2 in drill")
	r := readings{drill.Size: "1/2", drill.Clearance: "10"}
	s := Command.Sheet(r.Drill(t), false)
	rake, clearance := column(t, s, "normal_rake_deg"), column(t, s, "lip_clearance_deg")
	last := len(rake) - 1
	for name, x := range map[string][3]float64{
		"rake at the margin":     {rake[0], 27, 34},
		"rake at the chisel":     {rake[last], -45, -25},
		"clearance at a third":   {clearance[7], 18, 25},
		"rake on the chisel":     {s.Lookup("chisel_rake_deg").Value / degree, -58, -53},
		"zero rake along radius": {s.Lookup("rake_zero_ratio").Value, 0.25, 0.45},
	} {
		trade.Between(name, x[0], x[1], x[2], "")
	}
}

func anyLip(t *rapid.T) readings {
	d := rapid.Float64Range(2, 40).Draw(t, "size")
	num := func(name string, low, high float64) string {
		return fmt.Sprintf("%.6f", rapid.Float64Range(low, high).Draw(t, name))
	}
	return readings{drill.Size: fmt.Sprintf("%.6fmm", d), drill.Web: fmt.Sprintf("%.6fmm", d*rapid.Float64Range(0.1, 0.3).Draw(t, "web")),
		drill.LipAngle: num("lip angle", 45, 75), drill.Helix: num("helix", 5, 45), drill.Clearance: num("clearance", 3, 20),
		drill.ChiselAngle: num("chisel", 110, 140), drill.Feed: fmt.Sprintf("%.6fmm", d*rapid.Float64Range(0, 0.02).Draw(t, "feed")+0.001)}
}

// The faces by their normals, another way: rake face through lip and helix,
// flank plane through lip and its slope.
func TestWedgeByNormals(t *testing.T) {
	testkit.Property(t, "rake, clearance and wedge are those of the faces' normals", func(t *rapid.T) {
		l := Compute(anyLip(t).Drill(t))
		inner, outer := l.inner, l.outer
		r := inner + (outer-inner)*rapid.Float64Range(0.001, 1).Draw(t, "along")
		x, y := math.Sqrt(r*r-l.web*l.web/4), l.web/2
		lead := r / outer * math.Tan(l.helix)
		u := point.Vec{X: math.Sin(l.k), Z: -math.Cos(l.k)}
		h := point.Vec{X: lead * y / r, Y: -lead * x / r, Z: -1}
		face := point.Vec{X: u.Y*h.Z - u.Z*h.Y, Y: u.Z*h.X - u.X*h.Z, Z: u.X*h.Y - u.Y*h.X}
		back := point.Vec{X: 1 / math.Tan(l.k), Y: -l.flank.Slope(), Z: 1}
		between := math.Acos(math.Abs(face.Dot(back)) / face.Norm() / back.Norm())
		got := l.wedge(r)
		if math.Abs(math.Min(got, math.Pi-got)-between) > 1e-9 {
			t.Fatalf("wedge %v, by normals %v", got/degree, between/degree)
		}
	})
}

// The figures named are on the lip, and are what they say.
func TestNamedPlaces(t *testing.T) {
	testkit.Property(t, "the places named on the lip are on it and are what they say", func(t *rapid.T) {
		r := anyLip(t)
		s := Command.Sheet(r.Drill(t), false)
		corner := s.Lookup("chisel_corner_ratio").Value
		if zero := s.Lookup("rake_zero_ratio").Value; !math.IsNaN(zero) {
			r[drill.At] = fmt.Sprintf("%.12f", zero)
			if rake := column(t, Command.Sheet(r.Drill(t), false), "normal_rake_deg")[0]; math.Abs(rake) > 1e-6 || zero < corner {
				t.Fatalf("at %v the rake is %v; the chisel's corner is at %v", zero, rake, corner)
			}
		}
		least := s.Lookup("least_working_clearance_deg").Value / degree
		for i, v := range column(t, s, "working_clearance_deg") {
			if v < least-1e-9 {
				t.Fatalf("row %d has %v, under the least, %v", i, v, least)
			}
		}
	})
}

// A steep helix, a thick web and a flat point: the rake would be zero only
// inside the chisel edge, which is no place on the lip.
func TestRakeOfOneSign(t *testing.T) {
	s := Command.Sheet(readings{drill.Size: "10mm", drill.Web: "2mm", drill.LipAngle: "75", drill.Helix: "45", drill.ChiselAngle: "140"}.Drill(t), false)
	rake := column(t, s, "normal_rake_deg")
	if zero := s.Lookup("rake_zero_ratio").Value; !math.IsNaN(zero) || rake[len(rake)-1] <= 0 {
		t.Errorf("zero at %v; rakes %v", zero, rake)
	}
	for _, f := range s.Findings {
		if f.Code == "rake-one-sign" {
			return
		}
	}
	t.Error("that the rake keeps its sign is not said")
}

func TestUsualPlaces(t *testing.T) {
	testkit.Property(t, "the usual places run from the corner to the chisel, in order", func(t *rapid.T) {
		l := Compute(anyLip(t).Drill(t))
		inner, outer := l.inner, l.outer
		p := l.places()
		if p[0] != 1 || p[len(p)-1] != inner/outer {
			t.Fatalf("%v does not run from the margin to the chisel's corner at %v", p, inner/outer)
		}
		for i := 1; i < len(p); i++ {
			if p[i] >= p[i-1]-0.019 {
				t.Fatalf("%v is crowded", p)
			}
		}
	})
}

func TestRefusedPlaces(t *testing.T) {
	for at, refused := range map[string]bool{"1,0.8": false, "0.2..1 by 0.2": false, " 0.5 , 0.4": false, "1.01": true, "0.1": true, "1,,0.5": true,
		"0.5mm": true, "x": true, "1..0.5 by 0.1": true, "-1": true, "NaN": true, "0": true} {
		r := readings{drill.Size: "10mm", drill.Web: "1.5mm", drill.ChiselAngle: "125", drill.At: at}
		found := Check(r.Drill(t))
		if (len(found) > 0) != refused {
			t.Errorf("--at %q: %v", at, found)
		}
	}
	if len(Check(readings{drill.Size: "10mm", drill.Web: "9.9mm"}.Drill(t))) == 0 {
		t.Error("a web that leaves no lip is let through")
	}
}

func TestAssumptionsAreSaid(t *testing.T) {
	codes := func(r readings) map[string]bool {
		out := map[string]bool{}
		for _, f := range Command.Sheet(r.Drill(t), false).Findings {
			out[f.Code] = true
		}
		return out
	}
	all := []string{"point-angle-assumed", "web-assumed", "chisel-angle-assumed", "clearance-assumed", "helix-assumed", "feed-assumed", "rpm-assumed"}
	bare, given := codes(readings{drill.Size: "10mm"}), codes(plain)
	for _, c := range all {
		if !bare[c] || given[c] {
			t.Errorf("%s: said of a bare size %v, of a full drill %v", c, bare[c], given[c])
		}
	}
	if s := Command.Sheet(readings{drill.Rpm: "500"}.Drill(t), false); len(s.Grids[0].Rows) != 0 || s.Missing(s.Lookup("rake_zero_ratio")) == "" {
		t.Error("without a size there are rows, or nothing is wanted")
	}
}

func TestRubbingFlankIsSaid(t *testing.T) {
	s := Command.Sheet(readings{drill.Size: "3mm", drill.Clearance: "1", drill.Feed: "0.5mm", drill.Web: "0.45mm"}.Drill(t), false)
	if !s.Outside() {
		t.Error("a flank that rubs is within limits")
	}
	found := false
	for _, f := range s.Findings {
		found = found || f.Code == "flank-rubs"
	}
	if !found {
		t.Error("a flank that rubs is not said")
	}
}

// Whatever is typed: an error, or places that are numbers and not below zero.
func FuzzPlaces(f *testing.F) {
	for _, text := range []string{"1,0.8,0.6", "0.2..1 by 0.1", "1", "", ",", "1,,1", "NaN", "1e9..2e9 by 1", "0..1 by 1e-9", "-1", "1..", "..", " by ", "½"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		places, err := readPlaces(text)
		if err == nil && len(places) == 0 || len(places) > mostPlaces+1 {
			t.Fatalf("%q gives %d places", text, len(places))
		}
		for _, p := range places {
			if !(p >= 0) || math.IsInf(p, 0) {
				t.Fatalf("%q gives %v", text, p)
			}
		}
	})
}

// Rake and clearance from the vectors are those of the closed forms.
func TestVectorsAgree(t *testing.T) {
	testkit.Property(t, "rake and clearance from vectors are those of the closed forms", func(t *rapid.T) {
		s := Command.Sheet(anyLip(t).Drill(t), false)
		for key, by := range map[string]string{"vector_rake_deg": "corner_normal_rake_deg", "vector_clearance_deg": "corner_lip_clearance_deg"} {
			if a, b := s.Lookup(key).Value, s.Lookup(by).Value; !(math.Abs(a-b) < 1e-9) {
				t.Fatalf("%s is %v, %s %v", key, a/degree, by, b/degree)
			}
		}
		if a, b := -math.Asin(s.Lookup("vector_u_v").Value), s.Lookup("corner_inclination_deg").Value; !(math.Abs(a-b) < 1e-9) {
			t.Fatalf("the inclination is %v by the lip and the cutting direction, not %v", a/degree, b/degree)
		}
	})
}

// A flattened lip cuts as one of a straight flute does, of which the rake is
// -atan(cos k tan b).
func TestFlattenedLip(t *testing.T) {
	testkit.Property(t, "a flattened lip has a straight flute's rake", func(t *rapid.T) {
		r := anyLip(t)
		r[drill.LipFlat] = "0.5mm"
		d := r.Drill(t)
		if len(Check(d)) > 0 {
			t.Skip("no lip")
		}
		got := Compute(d)
		b := math.Asin(got.web / got.Drill.D)
		if rake := Command.Sheet(d, false).Lookup("corner_normal_rake_deg").Value; math.Abs(rake+math.Atan(math.Cos(got.k)*math.Tan(b))) > 1e-12 {
			t.Fatalf("the rake at the corner is %v", rake)
		}
	})
}
