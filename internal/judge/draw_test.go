package judge_test

import (
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/testkit/drilltest"
)

// bench draws readings as a bench might give them; a length is in millimetres.
type bench struct {
	t   *rapid.T
	out readings
}

// draw returns the readings of some drill that can be, any of them missing.
func draw(t *rapid.T) readings { return drawOf(t, false) }

// drawWhole returns the readings of some drill that can be, none missing of
// those that the five results need.
func drawWhole(t *rapid.T) readings { return drawOf(t, true) }

func drawOf(t *rapid.T, all bool) readings {
	b := bench{t, readings{}}
	size := rapid.Float64Range(0.5, 80).Draw(t, "size")
	b.put("size", mm(size), all)
	b.put("material", rapid.SampledFrom([]string{"steel-200", "steel-400", "cast-iron-150", "aluminium", "Mild Steel", "plastics"}).Draw(t, "material"), all)
	web := size * rapid.Float64Range(0.06, 0.4).Draw(t, "web")
	b.put("web", mm(web), all)
	if rapid.Bool().Draw(t, "by length") {
		b.put("chisel-length", mm(web*rapid.Float64Range(1.02, 1.5).Draw(t, "chisel-length")), all)
	} else {
		b.put("chisel-angle", num(rapid.Float64Range(95, 140).Draw(t, "chisel-angle")), all)
	}
	b.pair("lip-angle", 45, 75, num, all)
	if rapid.Bool().Draw(t, "indicator") {
		b.pair("lip-height", 0, 0.3, mm, all)
	} else {
		b.pair("lip-length", 0.4*size, 0.48*size, mm, all)
	}
	if rapid.Bool().Draw(t, "dropped") {
		b.pair("heel-drop", 0.01*size, 0.1*size, mm, all)
		b.put("heel-turn", num(rapid.Float64Range(5, 60).Draw(t, "heel-turn")), all)
	} else {
		b.pair("clearance", 2, 30, num, all)
	}
	b.put("feed", mm(rapid.Float64Range(0.01, 1).Draw(t, "feed")), all)
	b.put("remove", mm(rapid.Float64Range(0, 10).Draw(t, "remove")), all)
	b.put("point-angle", num(rapid.Float64Range(90, 150).Draw(t, "point-angle")), false)
	b.put("web-taper", num(rapid.Float64Range(0, 0.03).Draw(t, "web-taper")), false)
	if !all && rapid.Bool().Draw(t, "second web") {
		at := rapid.Float64Range(5, 40).Draw(t, "second-web-at")
		b.put("second-web-at", mm(at), true)
		b.put("second-web", mm(min(0.9*size, web+at*rapid.Float64Range(0.005, 0.03).Draw(t, "measured taper"))), true)
	}
	b.put("helix", num(rapid.Float64Range(10, 40).Draw(t, "helix")), false)
	b.put("flute-point", num(rapid.Float64Range(90, 150).Draw(t, "flute-point")), false)
	b.put("lip-flat", mm(size*rapid.Float64Range(0.01, 0.1).Draw(t, "lip-flat")), false)
	b.put("rpm", num(rapid.Float64Range(50, 3000).Draw(t, "rpm")), false)
	b.put("flute", mm(rapid.Float64Range(11, 300).Draw(t, "flute")), false)
	b.put("depth", mm(rapid.Float64Range(1, 200).Draw(t, "depth")), false)
	b.put("flank-wear", mm(rapid.Float64Range(0, 0.5).Draw(t, "flank-wear")), false)
	b.put("corner-wear", mm(size*rapid.Float64Range(0, 0.4).Draw(t, "corner-wear")), false)
	b.put("margin-wear", mm(size*rapid.Float64Range(0, 1.5).Draw(t, "margin-wear")), false)
	b.put("lip-chip", mm(rapid.Float64Range(0, 0.5).Draw(t, "lip-chip")), false)
	return b.out
}

// put takes a reading, unless it happens to be missing.
func (b bench) put(name, text string, always bool) {
	if always || rapid.IntRange(0, 4).Draw(b.t, name+" read") > 0 {
		b.out[drilltest.Named(name)] = text
	}
}

// pair takes a reading of both lips.
func (b bench) pair(name string, low, high float64, write func(float64) string, always bool) {
	of := rapid.Float64Range(low, high)
	b.put(name, write(of.Draw(b.t, name+" 1"))+","+write(of.Draw(b.t, name+" 2")), always)
}

// num writes a number to six decimals, which is finer than any gauge.
func num(v float64) string { return strconv.FormatFloat(v, 'f', 6, 64) }
func mm(v float64) string  { return num(v) + "mm" }

// exact writes every digit.
func exact(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// Every reading that a whole drill takes is drawn, or a figure that rests on it would be
// worked out in no test. A crack leaves no figure.
func TestEveryReadingIsDrawn(t *testing.T) {
	drawn := map[drill.Reading]bool{drill.Cracked: true}
	rapid.Check(t, func(t *rapid.T) {
		for r := range draw(t) {
			drawn[r] = true
		}
	})
	for _, r := range drill.Of(drill.Point) {
		if !drawn[r] {
			t.Errorf("%s is never drawn: put it into drawOf", r)
		}
	}
}
