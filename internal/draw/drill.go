package draw

import (
	"math"

	"evenlip/internal/point"
)

// Drill is what a drawing shows, in millimetres and radians.
type Drill struct {
	D      float64
	Web    float64 // between the two lips' lines in the end view
	Chisel float64 // acute chisel-edge angle to the lip
	Offset float64 // the point off the axis along the lips, positive toward lip 1
	Helix  float64
	Made   float64 // half point angle that the flutes were made for; 0 for each lip's own
	Flat   float64 // height of the land along lips flattened to no rake; 0 for none
	Lips   [2]Lip
	Land   Land
}

// Lip is one lip as it was measured.
type Lip struct {
	HalfAngle float64 // to the drill axis
	Corner    float64 // height of the outer corner along the axis
	Clearance float64 // at the outer corner
}

// Land is what of the body is drawn without being measured.
type Land struct {
	Margin float64 // width of the margin along the periphery
	Body   float64 // diameter behind the margin, as a part of D
	Flute  float64 // angle from a lip's corner to the heel across its flute
}

// The limits of what can be drawn.
const (
	mostWeb  = 0.5 // w/D; beyond it the flute drawn does not clear the web
	mostTurn = 2.0 // radians by which the helix turns over the length of the point
	leastArc = math.Pi / 9
	mostHeel = 0.8 * math.Pi
)

// Check returns a [*point.DomainError] for a drill that cannot be drawn: angles
// outside 0 to 90 degrees, a web over half the diameter, a chisel edge that
// leaves no lip, a helix too steep for its point.
func (d *Drill) Check() error {
	for _, c := range [...]struct {
		name, why string
		value     float64
		ok        bool
	}{
		{"size", "must be greater than zero and finite", d.D, d.D > 0 && !math.IsInf(d.D, 0)},
		{"web", "must be more than nothing and at most half the diameter to be drawn", d.Web, d.Web > 0 && d.Web <= mostWeb*d.D},
		{"chisel-angle", "must lie between 0 and 90 degrees", d.Chisel, angle(d.Chisel)},
		{"helix", "must lie between -90 and 90 degrees", d.Helix, math.Abs(d.Helix) < math.Pi/2},
		{"flute-point", "must lie between 0 and 180 degrees", 2 * d.Made, d.Made == 0 || angle(d.Made)},
		{"lip-angle", "must lie between 0 and 90 degrees", d.Lips[0].HalfAngle, angle(d.Lips[0].HalfAngle)},
		{"lip-angle", "must lie between 0 and 90 degrees", d.Lips[1].HalfAngle, angle(d.Lips[1].HalfAngle)},
		{"lip-flat", "must be at most an eighth of the diameter to be drawn", d.Flat, d.Flat >= 0 && d.Flat <= d.D/8},
		{"margin", "must be narrower than a twelfth of the periphery", d.Land.Margin, d.Land.Margin >= 0 && d.Land.Margin < d.D*math.Pi/12},
		{"body diameter", "must be over nine tenths of the diameter", d.Land.Body, d.Land.Body >= 0.9 && d.Land.Body <= 1},
		{"flute", "must be between 60 and 140 degrees wide", d.Land.Flute, d.Land.Flute >= math.Pi/3 && d.Land.Flute <= mostHeel},
	} {
		if !c.ok {
			return &point.DomainError{Quantity: c.name, Why: c.why, Value: c.value}
		}
	}
	return d.checkLips()
}

// checkLips looks at what depends on several readings together.
func (d *Drill) checkLips() error {
	for i, l := range d.Lips {
		f := d.flute(i)
		switch {
		case !(math.Abs(l.Corner-d.Lips[1-i].Corner) <= d.D):
			return &point.DomainError{Quantity: "lip-height", Why: "must be less than the diameter", Value: l.Corner - d.Lips[1-i].Corner}
		case !(d.inner(i) < f.outer) || !(d.inner(i) > -f.outer):
			return &point.DomainError{Quantity: "chisel-angle", Why: "leaves no lip", Value: d.Chisel}
		case f.turn > mostTurn || f.heel > mostHeel+f.corner:
			return &point.DomainError{Quantity: "helix", Why: "is too steep for this point to be drawn", Value: d.Helix}
		case !(math.Tan(l.Clearance)*math.Tan(d.Helix) < 0.9) || math.IsNaN(l.Clearance) || math.Abs(l.Clearance) >= math.Pi/3:
			return &point.DomainError{Quantity: "clearance", Why: "is too large to be drawn", Value: l.Clearance}
		}
	}
	return nil
}

func angle(v float64) bool { return v > 0 && v < math.Pi/2 }

// inner returns where lip i begins beside the chisel edge, along the lip from
// the axis: the chisel is centred on the point.
func (d *Drill) inner(i int) float64 {
	along := point.ChiselCorner(d.Web, d.Chisel)
	if i == 0 {
		return along + d.Offset
	}
	return along - d.Offset
}

// height returns lip i's height at the distance x along it from the axis.
func (d *Drill) height(i int, x float64) float64 {
	outer := point.AlongLip(d.D/2, d.Web)
	return d.Lips[i].Corner + (outer-x)/math.Tan(d.Lips[i].HalfAngle)
}

// Tip returns the height of the end of the drill.
func (d *Drill) Tip() float64 {
	return math.Max(d.height(0, d.inner(0)), d.height(1, d.inner(1)))
}

// apex returns where the two lips' lines cross in the side view: the offset
// along the lips and the height.
func (d *Drill) apex() (x, z float64) {
	c0, c1 := 1/math.Tan(d.Lips[0].HalfAngle), 1/math.Tan(d.Lips[1].HalfAngle)
	x = (d.height(0, 0) - d.height(1, 0)) / (c0 + c1)
	return x, d.height(0, x)
}
