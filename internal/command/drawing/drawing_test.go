package drawing

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/draw"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
	"evenlip/internal/testkit/pocket"
)

// anyPoint draws the readings of a point that can be drawn, and its size.
func anyPoint(t *rapid.T) (rs drilltest.Readings, size float64) {
	number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	size = number("size", 2, 50)
	rs = drilltest.Readings{
		drill.Size: fmt.Sprintf("%.3fmm", size), drill.LipAngle: fmt.Sprintf("%.2f,%.2f", number("k1", 52, 68), number("k2", 52, 68)),
		drill.Clearance: fmt.Sprintf("%.2f,%.2f", number("c1", 6, 16), number("c2", 6, 16)),
	}
	maybe := func(r drill.Reading, text string) {
		if rapid.Bool().Draw(t, r.String()+" read") {
			rs[r] = text
		}
	}
	maybe(drill.Web, fmt.Sprintf("%.3fmm", size*number("web", 0.1, 0.2)))
	maybe(drill.ChiselAngle, fmt.Sprintf("%.2f", number("chisel", 115, 140)))
	maybe(drill.LipHeight, fmt.Sprintf("%.4fmm", size*number("height", -0.01, 0.01)))
	maybe(drill.Helix, fmt.Sprintf("%.2f", number("helix", 10, 35)))
	return rs, size
}

// A picture is of the very drill that the other commands compute: of the lips
// taken to stand even where nothing says how they stand, with each lip's own
// clearance, and with the web that a grind leaves, behind a thinned point too.
func TestDrawnAsComputed(t *testing.T) {
	testkit.Property(t, "a drawing has the offset, the clearances and the web after a grind that the other commands have", func(t *rapid.T) {
		rs, size := anyPoint(t)
		number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		d := rs.Drill(t)
		as := judge.Compute(d)
		if _, read := rs[drill.LipHeight]; !read {
			as = judge.Compute(rs.With(drilltest.Readings{drill.LipHeight: "0mm"}).Drill(t))
		}
		has := func(d *drill.Drill, key string, want float64) {
			if f := Command.Sheet(d, false).Lookup(key); f == nil || math.Abs(f.Value-want) > 1e-9*size {
				t.Fatalf("%s is drawn as %v, not %v", key, f, want)
			}
		}
		has(d, "point_offset_mm", as.Lips.Offset)
		has(d, "lip_clearance_1_deg", as.Clearance.Lip1)
		has(d, "lip_clearance_2_deg", as.Clearance.Lip2)
		if _, read := rs[drill.Web]; !read {
			return
		}
		d.Put(drill.Remove, size*number("remove", 0.001, 1))
		if rapid.Bool().Draw(t, "thinned") {
			d.Past.Body = d.Value(drill.Web) * number("thinned from", 1, 1.4)
		}
		has(d, "web_mm", judge.Compute(d).Web.After)
	})
}

// Every formula beside a figure, worked out by an evaluator of another house
// (expr-lang/expr): of the drill as measured and after a grind, in the terminal and
// on paper.
func TestWorkingGivesTheFigure(t *testing.T) {
	ground, trued := 0, 0
	testkit.Property(t, "every formula of a drawing, in letters and as printed, gives the figure", func(t *rapid.T) {
		rs, size := anyPoint(t)
		if rapid.Bool().Draw(t, "no clearance") {
			delete(rs, drill.Clearance)
		}
		if rapid.Bool().Draw(t, "ground") {
			rs[drill.Remove] = fmt.Sprintf("%.3fmm", size*rapid.Float64Range(0.001, 0.3).Draw(t, "remove"))
			rs[drill.PointAngle] = fmt.Sprintf("%.1f", rapid.Float64Range(110, 130).Draw(t, "point"))
		}
		d := rs.Drill(t)
		if len(Check(d)) > 0 {
			t.Skip("it cannot be drawn")
		}
		r := Compute(d)
		if r.Before != nil {
			ground++
		}
		if r.trued {
			trued++
		}
		screen := Command.Sheet(d, true)
		r.InTerminal(screen, quantity.Format{}, 80, false)
		pocket.Worked(t, screen)
		paper := Command.Sheet(d, true)
		if _, err := r.OnPaper(paper, quantity.Format{}, draw.Scale{}, "file.svg"); err != nil {
			t.Fatal(err)
		}
		pocket.Worked(t, paper)
	})
	if trued == 0 || trued == ground {
		t.Errorf("%d ground, %d trued", ground, trued)
	}
}

// What cannot be drawn is told of the reading that makes it so.
func TestCheck(t *testing.T) {
	for line, want := range map[string]drill.Reading{
		"size 10mm; lip-angle 59; web 6mm":                               drill.Web,
		"size 10mm; lip-angle 59; clearance 70":                          drill.Clearance,
		"size 10mm; lip-angle 59; chisel-length 9mm; chisel-angle 135":   drill.Size,
		"size 10mm; lip-angle 59; web 1.5mm; web-taper 0.1; remove 60mm": drill.Remove,
	} {
		found := Check(drilltest.Read(t, line))
		if len(found) != 1 || drilltest.About(found[0]) != want.String() {
			t.Errorf("%s: %v", line, found)
		}
	}
	if found := Check(drilltest.Read(t, "size 10mm")); found != nil {
		t.Errorf("of a drill that wants readings: %v", found)
	}
}
