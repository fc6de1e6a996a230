package spindle

import (
	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
)

// checker collects what cannot be about the readings of these commands.
type checker struct {
	d     *drill.Drill
	found fault.List
}

func (c *checker) refuse(r drill.Reading, hint, format string, args ...quantity.Arg) {
	c.found = append(c.found, c.d.Refuse(r, hint, format, args...))
}

// CheckDrill returns everything about the readings of a drill at work that
// cannot be, beyond what the catalogue finds.
func CheckDrill(d *drill.Drill) fault.List {
	c := checker{d: d}
	c.edge()
	c.targets()
	if len(c.found) == 0 {
		c.thrust()
	}
	return c.found
}

// edge refuses a web that at the angle taken for it makes a chisel edge longer than
// the drill is wide.
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
}

// targets refuses two targets of thinning at once.
func (c *checker) targets() {
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
