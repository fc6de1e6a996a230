package cli

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"evenlip/internal/command"
	"evenlip/internal/command/drawing"
	"evenlip/internal/command/regrind"
	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit/drilltest"
	"evenlip/internal/uncertainty"
)

// doubtRuns are the random draws of a drill, and doubtRoom is what a share of them may
// be off: four times by chance, and what the program's own draws leave.
const (
	doubtRuns = 2000
	doubtRoom = 0.012 + 0.014
)

// What the gauges leave in doubt of every command's figures, worked out a second time:
// each reading by plain random numbers within its gauge's step. An end of an interval
// has a fortieth of the random draws beyond it.
func TestEveryCommandsDoubt(t *testing.T) {
	gauges := quantity.Gauges{Caliper: 0.02, Protractor: math.Pi / 180, Indicator: 0.01}
	for _, c := range append(commands[:], drawings...) {
		t.Run(c.About().Name, func(t *testing.T) {
			d := drillFor(t, c)
			again := func(d *drill.Drill) *sheet.Sheet { return c.Sheet(d, false) }
			s := again(d)
			uncertainty.Tell(s, d, gauges, c.Draw)
			values := map[string][]float64{}
			byChance(d, gauges, func(d *drill.Drill) {
				on := again(d)
				defer on.Free()
				on.Each(func(f *sheet.Figure) {
					if f.Word == "" && !math.IsNaN(f.Value) {
						values[f.Key] = append(values[f.Key], f.Value)
					}
				})
			})
			s.Each(func(f *sheet.Figure) {
				drawn := values[f.Key]
				if f.Word != "" || len(drawn) != doubtRuns {
					return
				}
				const beyond, hair = (1 - uncertainty.Coverage) / 2, 1e-9
				rounding := hair * (1 + math.Abs(f.Value))
				for end, c := range map[string][2]float64{
					"low":  {part(drawn, func(v float64) bool { return v < f.Doubt.Low-rounding }), part(drawn, func(v float64) bool { return v <= f.Doubt.Low+rounding })},
					"high": {part(drawn, func(v float64) bool { return v > f.Doubt.High+rounding }), part(drawn, func(v float64) bool { return v >= f.Doubt.High-rounding })},
				} {
					if c[0] > beyond+doubtRoom || c[1] < beyond-min(beyond, doubtRoom) {
						t.Errorf("%s: beyond the %s end of %+v are %.3f of what chance makes, %.3f with the end itself", f.Key, end, *f.Doubt, c[0], c[1])
					}
				}
			})
		})
	}
}

func part(values []float64, holds func(float64) bool) float64 {
	n := 0
	for _, v := range values {
		if holds(v) {
			n++
		}
	}
	return float64(n) / float64(len(values))
}

// drawings are the drill drawn as ground, as measured, and with no height of its
// lips read.
var drawings = []command.Command{&drawing.Command, drawnWithout(drill.Remove), drawnWithout(drill.Remove, drill.LipHeight)}

func drawnWithout(unread ...drill.Reading) command.Command {
	c := drawing.Command
	c.Name = fmt.Sprintf("draw without %v", unread)
	c.Compute = func(d *drill.Drill) drawing.Result {
		less := *d
		for _, r := range unread {
			less.Drop(r)
		}
		return drawing.Compute(&less)
	}
	return &c
}

// own are the readings that one command needs beyond those of a drill.
var own = map[string]map[drill.Reading]string{
	"pilot": {drill.Pilot: "2.3mm"},
	"cone":  {drill.SemiAngle: "30", drill.PointAngle: "118"},
	"wheel": {drill.Wheel: "200mm", drill.WheelRpm: "2900", drill.MarkedSpeed: "35m/s", drill.RestGap: "2mm", drill.TongueGap: "4mm", drill.WornTo: "150mm"},
}

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

// meant are the readings that no gauge has a part in.
var meant = []drill.Reading{drill.Size, drill.PointAngle, drill.Remove, drill.Depth, drill.Pilot, drill.ToWeb, drill.CleanUp, drill.Every, drill.LeastDiameter}

// byChance calls f for the drill as chance may have it within the gauges' steps.
func byChance(d *drill.Drill, g quantity.Gauges, f func(*drill.Drill)) {
	steps := map[quantity.Gauge]float64{quantity.Caliper: g.Caliper, quantity.Protractor: g.Protractor, quantity.Indicator: g.Indicator}
	rng := rand.New(rand.NewPCG(3, 4))
	moved := d.Copy()
	for range doubtRuns {
		for _, r := range drill.All() {
			step := steps[r.Spec().Gauge]
			if slices.Contains(meant, r) || step == 0 {
				continue
			}
			a, b, n := d.Pair(r)
			for lip, v := range [...]float64{a, b} {
				if n > lip || n == 1 && r.Spec().Pair && r != drill.LipHeight {
					moved.Move(r, lip, v+(rng.Float64()-0.5)*step)
				}
			}
		}
		f(moved)
	}
}

// A plan's words name what chance makes of it, and nothing that chance never does.
func TestThePlansWordsAreThoseOfChance(t *testing.T) {
	gauges := quantity.Gauges{Caliper: 0.05, Protractor: math.Pi / 180, Indicator: 0.01}
	sound := drilltest.Of("size 12mm; web 1.8mm; chisel-angle 127; lip-angle 59,59; lip-height 0; clearance 12; flank-wear 0.9mm; depth 30mm")
	for name, line := range map[string]string{
		"the last grind":        "flute 42.25mm",
		"surely the last":       "flute 42.05mm",
		"surely not":            "flute 43mm",
		"dull or not":           "flank-wear 0.25mm; flute 80mm",
		"clearance too much":    "clearance 16.2; flank-wear 0.05mm; flute 80mm",
		"thinned or not":        "web 2.155mm; flute 80mm",
		"worth thinning or not": "web 2.155mm; flank-wear 0.05mm; flute 80mm",
		"past thinning or not":  "web 4.2mm; chisel-angle 124; flank-wear 0.05mm; flute 80mm",
	} {
		d := sound.With(drilltest.Of(line)).Drill(t)
		s := regrind.Command.Sheet(d, false)
		uncertainty.Tell(s, d, gauges, regrind.Command.Draw)
		met := map[string]map[string]int{"plan": {}, "thin": {}}
		byChance(d, gauges, func(d *drill.Drill) {
			on := regrind.Command.Sheet(d, false)
			for key := range met {
				met[key][on.Lookup(key).Word]++
			}
		})
		for key, words := range met {
			said := strings.Split(s.Lookup(key).Word, " or ")
			for word, times := range words {
				share := float64(times) / doubtRuns
				if share > 1-uncertainty.Tells+doubtRoom && !slices.Contains(said, word) {
					t.Errorf("%s: %s is %q; chance says %v", name, key, said, words)
				}
			}
			for _, word := range said {
				if words[word] == 0 {
					t.Errorf("%s: %s is %q; chance says %v", name, key, said, words)
				}
			}
		}
	}
}
