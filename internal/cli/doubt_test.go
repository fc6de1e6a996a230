package cli

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat"

	"evenlip/internal/command"
	"evenlip/internal/command/spindle"
	"evenlip/internal/drill"
	"evenlip/internal/gauge"
	"evenlip/internal/judge"
	"evenlip/internal/plan"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit/drilltest"
)

// The uncertainty of every command's figures and lists against chance (JCGM 101 in
// small): each reading drawn at random within its gauge's step, the figures'
// standard deviations taken twice.
func TestEveryCommandsDoubt(t *testing.T) {
	gauges := quantity.Gauges{Caliper: 0.02, Protractor: math.Pi / 180, Indicator: 0.01}
	for _, c := range append(commands[:], drawings...) {
		t.Run(c.About().Name, func(t *testing.T) {
			d := drillFor(t, c)
			again := func(d *drill.Drill) *sheet.Sheet { return c.Sheet(d, false) }
			s := again(d)
			gauge.Spread(d, gauges, s, again)
			draws := chance(d, gauges, again)
			s.Numbers(func(f sheet.Number) {
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

// drawings are the drill drawn as ground, as measured, and with no height of its
// lips read.
var drawings = []command.Command{&drawn, drawnWithout(drill.Remove), drawnWithout(drill.Remove, drill.LipHeight)}

func drawnWithout(unread ...drill.Reading) command.Command {
	c := drawn
	c.Name = fmt.Sprintf("draw without %v", unread)
	c.Make = func(d *drill.Drill, explain bool) *sheet.Sheet {
		less := *d
		for _, r := range unread {
			less.Drop(r)
		}
		return drawn.Sheet(&less, explain)
	}
	return &c
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
	"pilot": {drill.Pilot: "2.3mm"},
	"cone":  {drill.SemiAngle: "30", drill.PointAngle: "118"},
	"wheel": {drill.Wheel: "200mm", drill.WheelRpm: "2900", drill.MarkedSpeed: "35m/s", drill.RestGap: "2mm", drill.TongueGap: "4mm", drill.WornTo: "150mm"},
}

const doubtRuns = 3000

func drillFor(t *testing.T, c command.Command) *drill.Drill {
	t.Helper()
	readings := drilltest.Of("size 12mm; web 2.1mm; chisel-angle 126; lip-angle 59.5,58.5; lip-height 0.14mm,0.02mm; clearance 11,13; flute 78mm; " +
		"depth 30mm; flank-wear 0.2mm; remove 5mm; feed 0.3mm; corner-wear 0.6mm")
	if c.About().Grinder {
		readings = drilltest.Readings{}
	}
	d := readings.With(own[c.About().Name]).Drill(t)
	if found := append(d.Possible(), c.Refuse(d)...); len(found) > 0 {
		t.Fatalf("%s: %v", c.About().Name, found)
	}
	return d
}

func chance(d *drill.Drill, g quantity.Gauges, again gauge.Calculation) map[sheet.Place][]float64 {
	draws := map[sheet.Place][]float64{}
	byChance(d, g, func(d *drill.Drill) {
		again(d).Numbers(func(n sheet.Number) {
			if !math.IsNaN(n.Value) {
				draws[n.Place] = append(draws[n.Place], n.Value)
			}
		})
	})
	return draws
}

// byChance calls f for the drill as chance may have it within the gauges' steps.
func byChance(d *drill.Drill, g quantity.Gauges, f func(*drill.Drill)) {
	steps := map[quantity.Gauge]float64{quantity.Caliper: g.Caliper, quantity.Protractor: g.Protractor, quantity.Indicator: g.Indicator}
	rng := rand.New(rand.NewPCG(3, 4))
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
		f(moved)
	}
}

// Where chance takes a pilot to either side of the web, the thrust over it is one or
// the other, and its uncertainty reaches from the one to the other and no further. It
// is told wherever chance finds it now and then.
func TestThePilotsTwoOutcomes(t *testing.T) {
	gauges := quantity.Gauges{Caliper: 0.02, Protractor: math.Pi / 180}
	for _, off := range []float64{-0.03, -0.014, -0.007, 0, 0.003, 0.01, 0.015, 0.03} {
		d := drilltest.Read(t, "size 20mm; web 3mm; chisel-angle 125; pilot 3mm")
		d.Put(drill.Pilot, 3+off)
		s := spindle.Pilot(d, false)
		again := func(d *drill.Drill) *sheet.Sheet { return spindle.Pilot(d, false) }
		gauge.Spread(d, gauges, s, again)
		draws := chance(d, gauges, again)
		for _, key := range [...]string{"thrust_with_pilot_n", "thrust_ratio", "torque_with_pilot_nm"} {
			f := s.Lookup(key)
			outcomes := []float64{f.Value}
			if f.Otherwise != nil {
				outcomes = append(outcomes, *f.Otherwise)
			}
			met, stray := make([]int, 2), 0
			for _, v := range draws[sheet.Place{Key: key}] {
				switch i := slices.IndexFunc(outcomes, func(o float64) bool { return math.Abs(v-o) < 0.01*o }); {
				case i >= 0:
					met[i]++
				default:
					stray++
				}
			}
			if f.Otherwise == nil && stray > doubtRuns/20 || f.Otherwise != nil && (stray > 0 || met[1] == 0) {
				t.Errorf("%g off: %s is one of %v; chance meets them %v times, and %d times another", off, key, outcomes, met, stray)
			}
			if apart := math.Abs(outcomes[len(outcomes)-1] - f.Value); f.Spread < apart || f.Spread > apart+0.01*f.Value {
				t.Errorf("%g off: %s ± %g, with outcomes of %v", off, key, f.Spread, outcomes)
			}
		}
	}
}

// A plan's word names all that chance makes of it, and nothing that chance never does.
func TestThePlansWordsAreThoseOfChance(t *testing.T) {
	gauges := quantity.Gauges{Caliper: 0.05, Protractor: math.Pi / 180, Indicator: 0.01}
	hinged := func(d *drill.Drill) *sheet.Sheet {
		s := plan.Sheet(d, false)
		judge.Hinges(d, s)
		return s
	}
	for name, line := range map[string]map[drill.Reading]string{
		"the last grind":        {drill.Flute: "42.25mm"},
		"surely the last":       {drill.Flute: "42.05mm"},
		"surely not":            {drill.Flute: "43mm"},
		"dull or not":           {drill.FlankWear: "0.25mm", drill.Flute: "80mm"},
		"clearance too much":    {drill.Clearance: "18.2", drill.FlankWear: "0.05mm", drill.Flute: "80mm"},
		"thinned or not":        {drill.Web: "2.155mm", drill.Flute: "80mm"},
		"worth thinning or not": {drill.Web: "2.155mm", drill.FlankWear: "0.05mm", drill.Flute: "80mm"},
		"past thinning or not":  {drill.Web: "4.2mm", drill.ChiselAngle: "124", drill.FlankWear: "0.05mm", drill.Flute: "80mm"},
	} {
		d := drilltest.Of("size 12mm; web 1.8mm; chisel-angle 127; lip-angle 59,59; lip-height 0; clearance 12; flank-wear 0.9mm; depth 30mm").With(line).Drill(t)
		s := hinged(d)
		gauge.Spread(d, gauges, s, hinged)
		met := map[string]map[string]int{}
		byChance(d, gauges, func(d *drill.Drill) {
			hinged(d).Each(func(f *sheet.Figure) {
				if met[f.Key] == nil {
					met[f.Key] = map[string]int{}
				}
				met[f.Key][f.Word]++
			})
		})
		for _, key := range [...]string{"plan", "thin"} {
			said := strings.Split(s.Lookup(key).Word, " or ")
			for word, times := range met[key] {
				if times > doubtRuns/20 && !slices.Contains(said, word) {
					t.Errorf("%s: %s is %q; chance says %v", name, key, said, met[key])
				}
			}
			for _, word := range said {
				if met[key][word] == 0 {
					t.Errorf("%s: %s is %q; chance says %v", name, key, said, met[key])
				}
			}
		}
	}
}
