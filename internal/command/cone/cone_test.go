package cone

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/point"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
)

type readings = drilltest.Readings

var plain = readings{drill.Size: "10mm", drill.Web: "1.5mm", drill.PointAngle: "118", drill.Clearance: "12", drill.SemiAngle: "30"}

func TestCheckValues(t *testing.T) {
	apart := testkit.Against(t, testkit.Derived, "settings of a swing fixture, as the command gives them, by brute force")
	for _, c := range []struct {
		r                              readings
		phi, s, tangent, chord, length float64
	}{
		{plain.With(readings{drill.Vertex: "4.808mm"}), 29.2817, 1.2644, 125.0011, 126.5790, 1.8679},
		{plain.With(readings{drill.PointAngle: "135", drill.Clearance: "10", drill.Vertex: "5mm"}), 37.7448, 1.1805, 134.7068, 137.5927, 2.2242},
	} {
		s := Command.Sheet(c.r.Drill(t), false)
		for key, want := range map[string]float64{"axis_angle_deg": c.phi * degree, "axis_offset_mm": c.s, "chisel_angle_axis_deg": c.tangent * degree,
			"chisel_angle_deg": c.chord * degree, "chisel_length_mm": c.length} {
			unit, one := "mm", 1.0
			if strings.HasSuffix(key, "_deg") {
				unit, one = "°", degree
			}
			apart.Within(c.r[drill.PointAngle]+"°, "+key, drilltest.Value(t, s, key)/one, want/one, 6e-5/one, unit)
		}
	}
}

// A flat point of 118 degrees and 12 of clearance has a chisel of 101.6 and
// wants a second facet of about 30 for one of 120.
func TestFacets(t *testing.T) {
	s := Command.Sheet(plain.With(readings{drill.Vertex: "4.808mm"}).Drill(t), false)
	apart := testkit.Against(t, testkit.Derived, "facets of a point of 118°, clearance 12°").Because("worked out to a whole degree")
	apart.Within("chisel of one facet", drilltest.Value(t, s, "facet_chisel_angle_deg")/degree, 101.6, 0.06, "°")
	g := math.Tan(drilltest.Value(t, s, "facet_angle_deg"))
	for key, want := range map[string]float64{"second_facet_low_deg": 120, "second_facet_high_deg": 135} {
		if got := point.Obtuse(point.TwoFacetChisel(g, math.Tan(drilltest.Value(t, s, key)), 59*degree)) / degree; math.Abs(got-want) > 1e-9 {
			t.Errorf("%s gives a chisel of %v, not %v", key, got, want)
		}
	}
	apart.Within("second facet for a chisel of 120°", drilltest.Value(t, s, "second_facet_low_deg")/degree, 30, 0.4, "°")
}

// anyWish draws a point that can be ground.
func anyWish(t *rapid.T) readings {
	d := rapid.Float64Range(3, 30).Draw(t, "size")
	num := func(name string, low, high float64) string {
		return fmt.Sprintf("%.9f", rapid.Float64Range(low, high).Draw(t, name))
	}
	return readings{drill.Size: fmt.Sprintf("%.9fmm", d), drill.Web: fmt.Sprintf("%.9fmm", d*rapid.Float64Range(0.1, 0.2).Draw(t, "web")),
		drill.PointAngle: num("point", 110, 140), drill.Clearance: num("clearance", 9, 14), drill.SemiAngle: num("semi", 18, 32), drill.ChiselAngle: num("chisel", 118, 132)}
}

// The setting found, given back, grinds the point that was asked for.
func TestRoundTrip(t *testing.T) {
	testkit.Property(t, "a setting found and given back grinds the point wished", func(t *rapid.T) {
		r := anyWish(t)
		d := r.Drill(t)
		if len(Check(d)) > 0 {
			t.Skip("out of reach")
		}
		there := Command.Sheet(d, false)
		back := &drill.Drill{}
		*back = *readings{drill.Size: r[drill.Size], drill.Web: r[drill.Web]}.Drill(t)
		back.Put(drill.SemiAngle, drilltest.Value(t, there, "cone_semi_angle_deg"))
		back.Put(drill.AxisAngle, drilltest.Value(t, there, "axis_angle_deg"))
		back.Put(drill.AxisOffset, drilltest.Value(t, there, "axis_offset_mm"))
		back.Put(drill.Vertex, drilltest.Value(t, there, "vertex_distance_mm"))
		if found := Check(back); len(found) > 0 {
			t.Fatalf("its own setting is refused: %v", found)
		}
		again := Command.Sheet(back, false)
		for _, key := range []string{"point_angle_deg", "lip_clearance_deg", "chisel_angle_deg", "chisel_length_mm", "chisel_angle_axis_deg", "chisel_rake_deg"} {
			if a, b := drilltest.Value(t, there, key), drilltest.Value(t, again, key); !(math.Abs(a-b) < 1e-8) {
				t.Fatalf("%s: %v there and %v back", key, a, b)
			}
		}
	})
}

// The knobs' table is what turning the knob does.
func TestKnobs(t *testing.T) {
	setting := readings{drill.Size: "10mm", drill.Web: "1.5mm", drill.SemiAngle: "30", drill.AxisAngle: "29.2817", drill.AxisOffset: "1.2644mm", drill.Vertex: "4.808mm"}
	knobs := Command.Sheet(setting.Drill(t), false).Grids[0]
	for n, turned := range [][2]readings{
		{{drill.SemiAngle: "30.05"}, {drill.SemiAngle: "29.95"}}, {{drill.AxisAngle: "29.3317"}, {drill.AxisAngle: "29.2317"}},
		{{drill.AxisOffset: "1.2694mm"}, {drill.AxisOffset: "1.2594mm"}}, {{drill.Vertex: "4.813mm"}, {drill.Vertex: "4.803mm"}},
	} {
		up, down := Command.Sheet(setting.With(turned[0]).Drill(t), false), Command.Sheet(setting.With(turned[1]).Drill(t), false)
		for i, key := range []string{"point_angle_deg", "lip_clearance_deg", "chisel_angle_deg", "chisel_length_mm"} {
			want, got := 10*(drilltest.Value(t, up, key)-drilltest.Value(t, down, key)), knobs.Rows[n][2+i].Value
			if math.Abs(got-want) > 2e-4*math.Max(1, math.Abs(want)) {
				t.Errorf("%s moves %s by %v, turning it by %v", knobs.Rows[n][0].Word, key, got, want)
			}
		}
	}
	// Fugelso, 2001: semi-angle and axis angle add to half the point angle, so a
	// degree on either moves the point angle by two.
	for n := range 2 {
		if got := knobs.Rows[n][2].Value / degree; math.Abs(got-2) > 0.1 {
			t.Errorf("a degree of %s moves the point angle by %v", knobs.Rows[n][0].Word, got)
		}
	}
}

func TestThickerWebIsTheSettingOnIt(t *testing.T) {
	setting := readings{drill.Size: "10mm", drill.Web: "1.5mm", drill.SemiAngle: "30", drill.AxisAngle: "29.2817", drill.AxisOffset: "1.2644mm", drill.Vertex: "4.808mm"}
	webs := Command.Sheet(setting.Drill(t), false).Grids[1]
	for _, row := range webs.Rows {
		s := Command.Sheet(setting.With(readings{drill.Web: fmt.Sprintf("%.12fmm", row[2].Value)}).Drill(t), false)
		for i, key := range []string{"point_angle_deg", "lip_clearance_deg", "chisel_angle_deg", "chisel_length_mm"} {
			if math.Abs(drilltest.Value(t, s, key)-row[3+i].Value) > 1e-9 {
				t.Errorf("web %v, %s: %v, by itself %v", row[2].Value, key, row[3+i].Value, drilltest.Value(t, s, key))
			}
		}
	}
	if len(webs.Rows) != 4 || !(webs.Rows[3][5].Value > webs.Rows[0][5].Value) {
		t.Error("a thicker web does not turn the chisel")
	}
	for _, row := range webs.Rows { // 0.016 mm/mm, the middle of common practice
		if got := 1.5 + 0.016*row[0].Value; math.Abs(got-row[2].Value) > 1e-9 {
			t.Errorf("%v off leaves a web of %v, not %v", row[0].Value, got, row[2].Value)
		}
	}
}

func TestRefused(t *testing.T) {
	setting := readings{drill.Size: "10mm", drill.SemiAngle: "30", drill.AxisAngle: "29", drill.AxisOffset: "1.2mm", drill.Vertex: "4mm"}
	for name, c := range map[string]struct {
		r     readings
		blame drill.Reading
	}{
		"chisel and vertex":    {plain.With(readings{drill.Vertex: "4mm", drill.ChiselAngle: "125"}), drill.ChiselAngle},
		"point and setting":    {setting.With(readings{drill.PointAngle: "118"}), drill.PointAngle},
		"chisel and setting":   {setting.With(readings{drill.ChiselAngle: "118"}), drill.ChiselAngle},
		"chisel out of reach":  {plain.With(readings{drill.ChiselAngle: "95"}), drill.ChiselAngle},
		"semi-angle too wide":  {plain.With(readings{drill.ChiselAngle: "125", drill.SemiAngle: "75"}), drill.SemiAngle},
		"semi-angle over 90":   {plain.With(readings{drill.ChiselAngle: "125", drill.SemiAngle: "95"}), drill.SemiAngle},
		"axis angle of 0":      {setting.With(readings{drill.AxisAngle: "0"}), drill.AxisAngle},
		"no clearance":         {setting.With(readings{drill.AxisOffset: "-1mm"}), drill.AxisOffset},
		"vertex too close":     {plain.With(readings{drill.Vertex: "0.1mm"}), drill.Vertex},
		"vertex on the axis":   {plain.With(readings{drill.Vertex: "0mm"}), drill.Vertex},
		"opens beyond flat":    {setting.With(readings{drill.AxisAngle: "80"}), drill.AxisAngle},
		"clearance of nothing": {plain.With(readings{drill.ChiselAngle: "125", drill.Clearance: "0"}), drill.Clearance},
	} {
		found := Check(c.r.Drill(t))
		if len(found) == 0 || drilltest.About(found[0]) != c.blame.String() {
			t.Errorf("%s: %v", name, found)
		}
	}
	for name, r := range map[string]readings{"a wish": plain.With(readings{drill.ChiselAngle: "125"}), "an acute one": plain.With(readings{drill.ChiselAngle: "55"}), "a setting": setting} {
		if found := Check(r.Drill(t)); len(found) > 0 {
			t.Errorf("%s is refused: %v", name, found)
		}
	}
}

func TestWhatIsWanted(t *testing.T) {
	for want, r := range map[string]readings{
		"chisel-angle or vertex":                {drill.Size: "10mm"},
		"size and chisel-angle or vertex":       {drill.SemiAngle: "30"},
		"semi-angle and axis-offset and vertex": {drill.Size: "10mm", drill.AxisAngle: "30"},
	} {
		s := Command.Sheet(r.Drill(t), true)
		if f := s.Lookup("axis_angle_deg"); f.Known() || s.Missing(f) != want {
			t.Errorf("%v wants %q, not %q", r, s.Missing(f), want)
		}
		if len(s.Grids) != 0 {
			t.Errorf("%v: there are tables of nothing", r)
		}
	}
}

func TestAssumptionsAreSaid(t *testing.T) {
	count := func(r readings) (n int) {
		for _, f := range Command.Sheet(r.Drill(t), false).Findings {
			switch f.Code {
			case "web-assumed", "point-angle-assumed", "clearance-assumed", "semi-angle-assumed":
				n++
			}
		}
		return n
	}
	if n := count(readings{drill.Size: "10mm", drill.ChiselAngle: "125"}); n != 4 {
		t.Errorf("%d of 4 assumptions are said", n)
	}
	if n := count(plain.With(readings{drill.ChiselAngle: "125"})); n != 0 {
		t.Errorf("%d assumptions are said where all was given", n)
	}
}
