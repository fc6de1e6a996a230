package spindle

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
)

// All sizes that serve lie from the web to the chisel edge, and none is left out.
func TestPilotSizes(t *testing.T) {
	testkit.Property(t, "every size from web to chisel edge is listed as a pilot, and no other", func(t *rapid.T) {
		d := rapid.Float64Range(2, 50).Draw(t, "D")
		s := Pilot.Sheet(drilltest.Read(t, "size "+trim(d)+"mm; web "+trim(d*rapid.Float64Range(0.1, 0.3).Draw(t, "w/D"))+"mm; chisel-angle 125"), false)
		low, high := drilltest.Value(t, s, "pilot_low_mm"), drilltest.Value(t, s, "pilot_high_mm")
		listed := map[string]bool{}
		last := 0.0
		for _, row := range drilltest.Grid(t, s, "pilot_sizes").Rows {
			v := row[2].Value
			if v < low-1e-6 || v > high+1e-6 || v < last {
				t.Fatalf("%s is %g, outside %g to %g or after %g", row[0].Word, v, low, high, last)
			}
			listed[row[0].Word], last = true, v
		}
		at := rapid.Float64Range(low, high).Draw(t, "between")
		for _, series := range quantity.AllSeries {
			n := quantity.Nearest(at, series)
			for _, size := range []quantity.SizeName{n.Below, n.At, n.Above} {
				if size.Name != "" && size.MM >= low && size.MM <= high && !listed[size.Name] {
					t.Fatalf("%s lies from %g to %g and is not listed", size.Name, low, high)
				}
			}
		}
		if ratio := drilltest.Value(t, s, "thrust_with_pilot_ratio"); !(ratio > 0 && ratio < 1) {
			t.Fatalf("a pilot multiplies the thrust by %g", ratio)
		}
	})
}

func TestPilotFindings(t *testing.T) {
	for _, c := range []struct{ pilot, codes string }{
		{"2mm", "pilot-narrower-than-web"}, {"3.3mm", ""}, {"6mm", "pilot-wider-than-chisel"}, {"15mm", "pilot-wider-than-chisel pilot-over-wide"},
	} {
		s := Pilot.Sheet(drilltest.Read(t, "size 20mm; web 3mm; chisel-angle 125; pilot "+c.pilot), false)
		var codes []string
		for _, f := range s.Findings {
			if f.Severity == sheet.Warn {
				codes = append(codes, f.Code)
			}
		}
		if got := strings.Join(codes, " "); got != c.codes || s.Outside() != (c.codes != "") {
			t.Errorf("%s: %q, outside %v", c.pilot, got, s.Outside())
		}
	}
}

// A 3/4 in drill with a web of 0.090 to 0.112 in takes a pilot of 7/64 to 1/8
// in. At 120 degrees the chisel edge is 0.104 to 0.129 in.
func TestTheTradesPilotServes(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "pilot of a 3/4 in drill, from the web to the chisel edge")
	for web, pilot := range map[string]float64{"0.090in": 0.100, "0.100in": 7. / 64, "0.112in": 1. / 8} {
		text := "size 3/4; chisel-angle 120; web " + web
		s := Pilot.Sheet(drilltest.Read(t, text), false)
		trade.Below("least pilot, web "+web, drilltest.Value(t, s, "pilot_low_mm")/25.4, pilot, "in")
		trade.Above("widest pilot, web "+web, drilltest.Value(t, s, "pilot_high_mm")/25.4, pilot, "in")
		for times, wide := range map[float64]bool{1: false, 1.2: true} {
			s := Pilot.Sheet(drilltest.Read(t, text+"; pilot "+trim(pilot*times)+"in"), false)
			if drilltest.Found(s, "pilot-wider-than-chisel") != wide {
				t.Errorf("web %s, pilot %g in: wide is %t", web, pilot*times, !wide)
			}
		}
	}
}

// The size to use: a 3/4 in drill with a web of 0.090 to 0.112 in takes 7/64 to
// 1/8 in (common practice); whole and half millimetres before the finer ones, and
// never the web itself where there is another.
func TestPilotToUse(t *testing.T) {
	for _, c := range []struct{ size, web, angle, want string }{
		{"3/4", "0.1in", "125", "7/64 in"}, {"25mm", "3.7mm", "125", "4 mm"}, {"20mm", "3mm", "125", "3.5 mm"}, {"13mm", "2.05mm", "125", "2.3 mm"},
		{"16mm", "2.6mm", "125", "3 mm"}, {"1in", "0.122in", "125", "9/64 in"}, {"10mm", "1.96mm", "101", "5/64 in"}, {"50mm", "20mm", "99.2", "20.25 mm"},
	} {
		s := Pilot.Sheet(drilltest.Read(t, "size "+c.size+"; web "+c.web+"; chisel-angle "+c.angle), false)
		g := drilltest.Grid(t, s, "pilot_sizes")
		var marked []int
		for i, row := range g.Rows {
			if row[3].Word == "yes" {
				marked = append(marked, i)
			}
		}
		if len(marked) != 1 || g.Rows[marked[0]][0].Word != c.want || g.Rows[marked[0]][2].Value != drilltest.Value(t, s, "pilot_mm") {
			t.Errorf("%s with a web of %s: rows %v marked of %v", c.size, c.web, marked, g.Rows)
			continue
		}
		if len(g.Rows) > mostShown && (len(g.Brief) != mostShown || !slices.Contains(g.Brief, marked[0]) || !slices.IsSorted(g.Brief)) {
			t.Errorf("%s: shown are %v", c.size, g.Brief)
		}
	}
}

// The size to use lies strictly between web and chisel edge if any size does.
func TestPilotToUseIsInside(t *testing.T) {
	testkit.Property(t, "the pilot to use lies between web and chisel edge, if any does", func(t *rapid.T) {
		d := rapid.Float64Range(2, 50).Draw(t, "D")
		unit, in := "mm", 1.0
		if rapid.Bool().Draw(t, "inches") {
			unit, in = "in", 25.4
		}
		s := Pilot.Sheet(drilltest.Read(t, "size "+trim(d/in)+unit+"; web "+trim(d/in*rapid.Float64Range(0.1, 0.3).Draw(t, "w/D"))+unit+"; chisel-angle 125"), false)
		low, high, use := drilltest.Value(t, s, "pilot_low_mm"), drilltest.Value(t, s, "pilot_high_mm"), drilltest.Value(t, s, "pilot_mm")
		for _, row := range drilltest.Grid(t, s, "pilot_sizes").Rows {
			if v := row[2].Value; v > low*(1+1e-6) && v < high*(1-1e-6) && !(use > low && use < high) {
				t.Fatalf("%g is to be used, not %g, between %g and %g", use, v, low, high)
			}
		}
	})
}

// Past eight of its own diameters a pilot is a deep hole (common practice), and
// small drills want none (common practice, from memory).
func TestPilotDepthAndSmallDrills(t *testing.T) {
	for depth, deep := range map[string]bool{"80mm": true, "32.1mm": true, "32mm": false, "10mm": false} {
		if s := Pilot.Sheet(drilltest.Read(t, "size 25mm; web 3.7mm; chisel-angle 125; depth "+depth), false); drilltest.Found(s, "pilot-deep") != deep || drilltest.Found(s, "pilot-depth") == deep {
			t.Errorf("%s deep: %v", depth, s.Findings)
		}
	}
	for size, small := range map[string]bool{"6mm": true, "6.1mm": false, "1/4": true, "17/64": false, "6.35mm": false} {
		s := Pilot.Sheet(drilltest.Read(t, "size "+size+"; web 0.9mm; chisel-angle 125"), false)
		if drilltest.Found(s, "small-needs-none") != small || drilltest.Found(s, "pilot-depth") == small || !sheet.Known(drilltest.Value(t, s, "pilot_mm")) {
			t.Errorf("%s: %v", size, s.Findings)
		}
	}
}
