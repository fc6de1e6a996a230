package cli

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
)

// A picture is of the very drill that the other commands compute: of the lips
// taken to stand even where nothing says how they stand, with each lip's own
// clearance, and with the web that a grind leaves, behind a thinned point too.
func TestDrawnAsComputed(t *testing.T) {
	testkit.Property(t, "a drawing has the offset, the clearances and the web after a grind that the other commands have", func(t *rapid.T) {
		number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		size := number("size", 2, 50)
		rs := drilltest.Readings{
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
		d := rs.Drill(t)
		as := judge.Compute(d)
		if _, read := rs[drill.LipHeight]; !read {
			as = judge.Compute(rs.With(drilltest.Readings{drill.LipHeight: "0mm"}).Drill(t))
		}
		has := func(d *drill.Drill, key string, want float64) {
			if f := drawn.compute(d, false).Lookup(key); f == nil || math.Abs(f.Value-want) > 1e-9*size {
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
