package spindle

import (
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
)

// checker collects what cannot be about the readings of these commands.
type checker struct {
	d     *drill.Drill
	found []judge.Impossible
}

func (c *checker) refuse(r drill.Reading, hint, format string, args ...quantity.Arg) {
	c.found = append(c.found, judge.Impossible{Reading: r, Text: quantity.Sayf(format, args...), Hint: hint})
}

// CheckDrill returns everything about the readings of a drill at work that
// cannot be, beyond what judge.Check finds.
func CheckDrill(d *drill.Drill) []judge.Impossible {
	c := checker{d: d}
	c.machine()
	c.above(drill.ToWeb, drill.ToThrust)
	c.edge()
	c.hole()
	c.targets()
	if len(c.found) == 0 {
		c.thrust()
	}
	return c.found
}

// mostMarked, m/s, is faster than any grinding wheel may run: a speed above it was
// read in feet.
const mostMarked = 200

// CheckWheel is CheckDrill for the readings of a grinder.
func CheckWheel(d *drill.Drill) []judge.Impossible {
	c := checker{d: d}
	c.above(drill.Wheel, drill.WornTo, drill.WheelRpm, drill.MarkedSpeed, drill.MarkedRpm)
	if v := d.Value(drill.MarkedSpeed); v > mostMarked {
		c.refuse(drill.MarkedSpeed, "wheels are marked in m/s or in ft/min: write 6500ft/min", "{} cannot be: no wheel is made for it", quantity.Of(quantity.Surface, v))
	}
	for _, r := range [...]drill.Reading{drill.RestGap, drill.TongueGap} {
		if d.Value(r) < 0 {
			c.refuse(r, "", "a gap cannot be negative")
		}
	}
	if d.Value(drill.WornTo) > d.Value(drill.Wheel) {
		c.refuse(drill.WornTo, "--wheel is the diameter when new", "{} cannot be: the wheel was {} when new", quantity.MM(d.Value(drill.WornTo)), quantity.MM(d.Value(drill.Wheel)))
	}
	return c.found
}

// above refuses what is not above zero.
func (c *checker) above(readings ...drill.Reading) {
	for _, r := range readings {
		if c.d.Value(r) <= 0 {
			c.refuse(r, "leave it out if it was not read", "it must be above zero")
		}
	}
}

func (c *checker) machine() {
	if v := c.d.Value(drill.WearFactor); v < 1 {
		c.refuse(drill.WearFactor, "1 is sharp, 1.3 normal, 1.5 very dull", "{} cannot be: a sharp drill has 1, a duller one more", quantity.Num(v))
	}
	if v := c.d.Value(drill.Efficiency); v <= 0 || v > 1 {
		c.refuse(drill.Efficiency, "write 0.8 or 80%", "{} cannot be: it lies above 0 and is 100 % at most", quantity.Of(quantity.Share, v))
	}
	name := c.d.Word(drill.Drive)
	if _, ok := handbook.DriveFactor(name); name != "" && !ok {
		var names []string
		for _, f := range handbook.DriveFactors() {
			names = append(names, f.Name)
		}
		c.refuse(drill.Drive, "takes "+strings.Join(names, ", "), "no drive is called {}", quantity.Say(`"`+name+`"`))
	}
}

// edge refuses what is wider than the drill: a web that at the angle taken for
// it makes a chisel edge longer than that, a pilot, a web to leave.
func (c *checker) edge() {
	size, sized := c.d.Get(drill.Size)
	if !sized {
		return
	}
	r := judge.Compute(c.d)
	if e := edgeOf(&r); e.from == angleAssumed && e.length >= size {
		c.refuse(drill.Web, "is it in the unit that was meant?", "{} cannot be: the chisel edge would be {} long on a {} drill",
			quantity.MM(e.web), quantity.MM(e.length), quantity.Of(quantity.Size, size))
	}
	for _, x := range [...]drill.Reading{drill.Pilot, drill.ToWeb} {
		if v := c.d.Value(x); v >= size {
			c.refuse(x, "is it in the unit that was meant?", "{} cannot be: the drill itself is {}", quantity.MM(v), quantity.Of(quantity.Size, size))
		}
	}
}

// deepest is more than any twist drill is long, diameters.
const deepest = 200

func (c *checker) hole() {
	size, depth := c.d.Value(drill.Size), c.d.Value(drill.Depth)
	if depth > deepest*size {
		c.refuse(drill.Depth, "is it in the unit that was meant?", "{} cannot be: no twist drill of {} reaches that far", quantity.MM(depth), quantity.Of(quantity.Size, size))
	}
}

// targets refuses a target of thinning that cannot be, and two at once.
func (c *checker) targets() {
	if v := c.d.Value(drill.ToChiselRatio); v <= 0 || v >= 1 {
		c.refuse(drill.ToChiselRatio, "0.18 is a standard drill's, 0.03 a split point's", "{} cannot be: it is a part of the diameter", quantity.Num(v))
	}
	var given []drill.Reading
	for _, r := range [...]drill.Reading{drill.ToChiselRatio, drill.ToWeb, drill.ToThrust} {
		if c.d.Has(r) {
			given = append(given, r)
		}
	}
	if len(given) > 1 {
		c.refuse(given[1], "give one of chisel-ratio, to-web, thrust", "{} is given too: one target at a time", quantity.Say("--"+given[0].String()))
	}
}

// thrust refuses a wanted thrust that no thinning reaches.
func (c *checker) thrust() {
	if !c.d.Has(drill.ToThrust) {
		return
	}
	w := workOf(c.d)
	if w.edge.from == asNew {
		return
	}
	if least := w.thick().LeastThrust(); w.thrustShare() <= least {
		c.refuse(drill.ToThrust, "feed less, or pilot the hole", "thinning cannot reach it: the lips alone take {}", quantity.Of(quantity.Force, least*w.thrustNow()))
	}
}
