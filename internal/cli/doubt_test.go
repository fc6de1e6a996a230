package cli

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"

	"evenlip/internal/drill"
	"evenlip/internal/figure"
	"evenlip/internal/gauge"
	"evenlip/internal/quantity"
)

// The uncertainty of every command's figures and lists against chance (JCGM 101 in
// small): each reading drawn at random within its gauge's step, the figures'
// standard deviations taken twice.
func TestEveryCommandsDoubt(t *testing.T) {
	gauges := quantity.Gauges{Caliper: 0.02, Protractor: math.Pi / 180, Indicator: 0.01}
	for _, c := range slices.Concat(calculations[:]...) {
		t.Run(c.name, func(t *testing.T) {
			d := drillFor(t, *c)
			again := func(d *drill.Drill) *figure.Sheet { return c.compute(d, false) }
			s := again(d)
			gauge.Spread(d, gauges, s, again)
			draws := chance(d, gauges, again)
			s.Numbers(func(f figure.Number) {
				got := draws[f.Place]
				if f.Kind == quantity.Count || len(got) != doubtRuns {
					return
				}
				want := 2 * stat.StdDev(got, nil)
				low, high := 0.95*want, 1.05*want+1e-9*math.Abs(f.Value)
				if steep[f.Place.Key] {
					// Near a kink the larger side says more than chance; a kink
					// further off the first order does not see, and says less.
					low, high = 0.75*want-1e-3, 2*want+1e-3
				}
				if *f.Spread < low-1e-12 || *f.Spread > high+1e-12 {
					t.Errorf("%v: spread %g, chance makes %g", f.Place, *f.Spread, want)
				}
			})
		})
	}
}

// steep are the figures with a kink (the larger of two, an end reached) that
// the readings below come near.
var steep = map[string]bool{
	"working_clearance_deg": true, "least_working_clearance_deg": true, "least_working_at_ratio": true, "feed_limit_mm": true,
	"oversize_bound_mm": true, "stock_1_inner_mm": true, "stock_1_outer_mm": true, "stock_2_inner_mm": true, "stock_2_outer_mm": true,
	"chip_share_1": true, "chip_share_2": true, "pilot_mm": true,
}

// own are the readings that one command needs beyond those of a drill.
var own = map[string]map[drill.Reading]string{
	"cone":  {drill.SemiAngle: "30", drill.PointAngle: "118"},
	"wheel": {drill.Wheel: "200mm", drill.WheelRpm: "2900", drill.MarkedSpeed: "35m/s", drill.RestGap: "2mm", drill.TongueGap: "4mm", drill.WornTo: "150mm"},
}

const doubtRuns = 3000

func drillFor(t *testing.T, c calculation) *drill.Drill {
	t.Helper()
	d := &drill.Drill{}
	for r, text := range own[c.name] {
		d.Set(r, text)
	}
	for r, text := range map[drill.Reading]string{
		drill.Size: "12mm", drill.Web: "2.1mm", drill.ChiselAngle: "126", drill.LipAngle: "59.5,58.5", drill.LipHeight: "0.14mm,0.02mm",
		drill.Clearance: "11,13", drill.Flute: "78mm", drill.Depth: "30mm", drill.FlankWear: "0.2mm", drill.Remove: "5mm", drill.Feed: "0.3mm",
		drill.CornerWear: "0.6mm",
	} {
		if !c.grinder {
			d.Set(r, text)
		}
	}
	if errs := d.Resolve(); len(errs) > 0 {
		t.Fatal(errs)
	}
	if found := c.impossible(d, true); len(found) > 0 {
		t.Fatalf("%s: %v", c.name, found)
	}
	return d
}

func chance(d *drill.Drill, g quantity.Gauges, again gauge.Calculation) map[figure.Place][]float64 {
	steps := map[quantity.Gauge]float64{quantity.Caliper: g.Caliper, quantity.Protractor: g.Protractor, quantity.Indicator: g.Indicator}
	rng := rand.New(rand.NewPCG(3, 4))
	draws := map[figure.Place][]float64{}
	for range doubtRuns {
		moved := d
		for _, r := range drill.All() {
			if r == drill.Size {
				continue
			}
			for i := range d.Values(r) {
				moved = moved.Nudged(r, i, (rng.Float64()-0.5)*steps[r.Spec().Gauge])
			}
		}
		again(moved).Numbers(func(n figure.Number) {
			if !math.IsNaN(n.Value) {
				draws[n.Place] = append(draws[n.Place], n.Value)
			}
		})
	}
	return draws
}
