package spindle

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
)

// Thinning never raises the thrust, takes nothing back on, and leaves the web
// that its two notches leave.
func TestThinning(t *testing.T) {
	testkit.Property(t, "thinning never raises the thrust and leaves the web that two notches leave", func(t *rapid.T) {
		d := rapid.Float64Range(2, 60).Draw(t, "D")
		web := d * rapid.Float64Range(0.1, 0.35).Draw(t, "w/D")
		text := "size " + trim(d) + "mm" + "; web " + trim(web) + "mm" + "; chisel-angle " + trim(rapid.Float64Range(110, 140).Draw(t, "psi"))
		switch rapid.IntRange(0, 2).Draw(t, "target") {
		case 1:
			text += "; chisel-ratio " + trim(rapid.Float64Range(0.02, 0.4).Draw(t, "q"))
		case 2:
			text += "; to-web " + trim(d*rapid.Float64Range(0.02, 0.4).Draw(t, "w'/D")) + "mm"
		}
		s := Thin.Sheet(drilltest.Read(t, text), false)
		get := func(key string) float64 { return drilltest.Value(t, s, key) }
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
		s := Thin.Sheet(drilltest.Read(t, "size 20mm; web 4mm; chisel-angle 125; feed 0.25mm; thrust "+want), false)
		v, err := quantity.Parse(quantity.Force, want, quantity.Unset)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "thrust", drilltest.Value(t, s, "thrust_after_n"), v.V, 1e-6*v.V)
	}
	if s := Thin.Sheet(drilltest.Read(t, "size 20mm; web 4mm; thrust 90kN"), false); !drilltest.Found(s, "thin-enough") {
		t.Error("a thrust above the present one takes metal off")
	}
	if s := Thin.Sheet(drilltest.Read(t, "size 20mm; web 4mm; material plastics; thrust 5kN"), false); sheet.Known(drilltest.Value(t, s, "web_target_mm")) {
		t.Error("a thrust without a force factor gives a web")
	}
}

// The chisel edge of a new drill is 0.18 of the diameter (Machinery's Handbook,
// 31st ed., p. 1153, in print) from about 14 mm on; a small drill's is longer.
func TestThinnedToANewChiselEdge(t *testing.T) {
	s := Thin.Sheet(drilltest.Read(t, "size 25mm; web 5mm; chisel-angle 126"), false)
	near(t, "c/D", drilltest.Value(t, s, "chisel_ratio_after"), 0.18, 1e-9)
	near(t, "web to leave", drilltest.Value(t, s, "web_target_mm"), 0.18*25*math.Sin(54*math.Pi/180), 1e-9)
	// and beside it the web that a new drill has: 12 % at one inch (from memory)
	near(t, "a new drill's web", drilltest.Value(t, s, "new_web_mm"), 0.12*25, 0.02)
	for _, size := range []string{"3mm", "8mm", "1/2in", "40mm"} {
		d := drilltest.Read(t, "size "+size)
		thick := Thin.Sheet(drilltest.Read(t, "size "+size+"; web "+trim(0.3*d.Value(drill.Size))+"mm; chisel-angle 120"), false)
		taken := Thrust.Sheet(d, false)
		near(t, size+": c/D after", drilltest.Value(t, thick, "chisel_ratio_after"), drilltest.Value(t, taken, "new_chisel_ratio"), 1e-9)
	}
}

// A notch makes another point than form N, which has none (DIN 1412, from
// memory, medium).
func TestFormOfTheThinnedPoint(t *testing.T) {
	for _, c := range []struct {
		web, form      string
		waits, nothing bool
	}{{"5mm", "A", false, false}, {"3.9mm", "A", true, false}, {"3.5mm", "N", false, true}} {
		s := Thin.Sheet(drilltest.Read(t, "size 25mm; web "+c.web+"; chisel-angle 126"), false)
		if got := s.Lookup("point_form").Word; got != c.form || drilltest.Found(s, "thinning-can-wait") != c.waits || drilltest.Found(s, "thin-enough") != c.nothing {
			t.Errorf("web %s: form %s, %v", c.web, got, s.Findings)
		}
	}
}
