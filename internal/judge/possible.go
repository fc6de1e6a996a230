package judge

import (
	"math"
	"strconv"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
)

// Impossible says that a reading cannot be one of any drill, or that two cannot
// be of the same one.
type Impossible struct {
	Reading drill.Reading
	Text    quantity.Text
	Hint    string
}

// Check returns everything about the readings that cannot be.
func Check(d *drill.Drill) []Impossible {
	c := checker{d: d, found: CheckGiven(d)}
	c.after()
	return c.found
}

// CheckGiven returns what of the readings cannot be whatever those are that could
// not be understood: nothing is taken for granted in their place.
func CheckGiven(d *drill.Drill) []Impossible {
	c := checker{d: d}
	c.material()
	c.angles()
	c.lengths()
	c.chisel()
	return c.found
}

type checker struct {
	d     *drill.Drill
	found []Impossible
}

func (c *checker) refuse(r drill.Reading, hint, format string, args ...quantity.Arg) {
	c.found = append(c.found, Impossible{r, quantity.Sayf(format, args...), hint})
}

func (c *checker) material() {
	name := c.d.Word(drill.Material)
	if name == "" {
		return
	}
	if _, ok := c.d.Book.Material(name); ok {
		return
	}
	hint := "evenlip material lists them"
	if near := handbook.SuggestMaterial(name); near != "" {
		hint = "did you mean " + near + "?"
	}
	c.refuse(drill.Material, hint, "no material is called {}", quantity.Say(strconv.Quote(name)))
}

func (c *checker) angles() {
	for _, a := range [...]struct {
		r      drill.Reading
		top    float64
		what   string
		signed bool
	}{
		{drill.LipAngle, math.Pi, "an angle to the axis lies between 0 and 90°", false},
		{drill.PointAngle, math.Pi, "a point angle lies between 0 and 180°", false},
		{drill.ChiselAngle, math.Pi, "a chisel-edge angle lies between 0 and 180°", false},
		{drill.Clearance, math.Pi / 2, "a clearance lies under 90°", true},
		{drill.HeelTurn, math.Pi, "the turn lies between 0 and 180°", false},
		{drill.Helix, math.Pi / 2, "a helix angle lies under 90°", true},
	} {
		for _, v := range c.d.Values(a.r) {
			if v.V >= a.top || !a.signed && v.V <= 0 || v.V <= -a.top {
				c.refuse(a.r, "", "{} cannot be: "+a.what, quantity.Rad(v.V))
			}
		}
	}
}

func (c *checker) lengths() {
	for _, r := range [...]drill.Reading{drill.Web, drill.SecondWeb, drill.SecondWebAt, drill.ChiselLength, drill.LipLength, drill.Feed, drill.Rpm, drill.Flute, drill.Depth} {
		for _, v := range c.d.Values(r) {
			if v.V <= 0 {
				c.refuse(r, "leave it out if it was not read", "it cannot be zero")
			}
		}
	}
	remove, removing := c.d.Get(drill.Remove)
	if flute, ok := c.d.Get(drill.Flute); ok && removing && remove > flute {
		c.refuse(drill.Remove, "", "{} cannot come off: only {} of flute is left", quantity.MM(remove), quantity.MM(flute))
	}
	if size, sized := c.d.Get(drill.Size); sized {
		c.lengthsOn(size)
	}
}

// lengthsOn refuses what a drill of that size has no room for.
func (c *checker) lengthsOn(size float64) {
	for _, r := range [...]drill.Reading{drill.Web, drill.SecondWeb, drill.ChiselLength, drill.LipLength} {
		for _, v := range c.d.Values(r) {
			if v.V >= size {
				c.refuse(r, "is it in the unit that was meant?", "{} cannot be: the drill itself is {}", quantity.MM(v.V), quantity.MM(size))
			}
		}
	}
	for _, v := range c.d.Values(drill.HeelDrop) {
		if math.Abs(v.V) >= size {
			c.refuse(drill.HeelDrop, "is it in the unit that was meant?", "{} cannot be: the drill itself is {}", quantity.MM(v.V), quantity.MM(size))
		}
	}
	if a, b, n := c.d.Pair(drill.LipHeight); n > 0 {
		apart := a
		if n == 2 {
			apart = a - b
		}
		if math.Abs(apart) >= size {
			c.refuse(drill.LipHeight, "is it in the unit that was meant?", "{} cannot be between the lips: the drill itself is {}", quantity.MM(apart), quantity.MM(size))
		}
	}
	if v, ok := c.d.Get(drill.FlankWear); ok && v > size/2 {
		c.refuse(drill.FlankWear, "it is the width of the bright strip behind the lip", "{} cannot be: the whole flank is no wider than {}", quantity.MM(v), quantity.MM(size/2))
	}
	if v, ok := c.d.Get(drill.CornerWear); ok && v > size/2 {
		c.refuse(drill.CornerWear, "", "{} cannot be: the lip is no longer than {}", quantity.MM(v), quantity.MM(size/2))
	}
}

func (c *checker) chisel() {
	web, hasWeb := c.d.Get(drill.Web)
	length, hasLength := c.d.Get(drill.ChiselLength)
	size, sized := c.d.Get(drill.Size)
	angle, hasAngle := c.d.Get(drill.ChiselAngle)
	if made := point.ChiselLength(web, angle); sized && hasWeb && hasAngle && made >= size && web < size {
		c.refuse(drill.ChiselAngle, "measure web and angle again", "{} cannot be: with a web of {} the chisel edge would be {}, longer than the drill is wide", quantity.Rad(angle), quantity.MM(web), quantity.MM(made))
	}
	if hasWeb && hasLength && length < web {
		c.refuse(drill.ChiselLength, "the chisel runs slantwise across the web, so it is the longer of the two", "{} cannot be: it is shorter than the web, {}", quantity.MM(length), quantity.MM(web))
	}
}

// after refuses a grind that would leave more web or chisel than drill. What is
// wrong before the grind has been told already.
func (c *checker) after() {
	if len(c.found) > 0 || !c.d.Has(drill.Remove) {
		return
	}
	r := Compute(c.d)
	if r.Chisel.Ratio >= 1 || !(r.Web.After >= r.Drill.D || r.Web.RatioAfter >= 1) {
		return
	}
	at := drill.Remove
	if c.d.Has(drill.WebTaper) {
		at = drill.WebTaper
	}
	c.refuse(at, "", "taking {} off with a web taper of {} leaves a web of {}: the drill itself is {}", quantity.MM(r.Web.Remove),
		quantity.Of(quantity.Taper, r.Web.Taper), quantity.MM(r.Web.After), quantity.MM(r.Drill.D))
}
