package cutting

import (
	"math"

	"evenlip/internal/point"
	"evenlip/internal/quantity"
)

// Thick is a point whose web is to be thinned.
type Thick struct {
	D           float64         // drill diameter, mm
	Web         float64         // web thickness at the point, mm
	ChiselAngle float64         // chisel-edge angle to the lip, radians, obtuse or acute
	Feed        float64         // mm per revolution, for the thrust
	System      quantity.System // picks the equations of the thrust, as in [Load]
}

// Thinning is a thick web brought to a target.
//
// The model, in the end view: a notch is ground along each lip, parallel to
// it, so that what is left of the web at the point lies midway. The chisel edge
// keeps its angle and loses both its ends.
type Thinning struct {
	Needed       bool    // false: the point is at its target already, nothing comes off
	WebTarget    float64 // mm
	NotchDepth   float64 // square to the lip, each side, mm
	ChiselBefore float64 // mm
	ChiselAfter  float64 // mm
	RatioBefore  float64 // c/D
	RatioAfter   float64 // c/D
	WebRatio     float64 // w/D left
	ThrustRatio  float64 // thrust after over thrust before
}

// ToWeb thins to a web thickness in mm, such as that of a new drill:
//
//	notch depth = (w - target)/2    c = w / sin psi
//
// A target that the web already meets takes nothing off. Domain: target above zero, and
// a point with 0 < web < d, feed above zero and a chisel edge shorter than d; NaN
// outside. Derived from the point's geometry; the thrust ratio is [ThrustRatio].
func (t Thick) ToWeb(target float64) Thinning {
	web, needed := t.Web, target < t.Web*(1-1e-12)
	if needed {
		web = target
	}
	if !t.possible() || !positive(target) {
		web, t.Web, needed = math.NaN(), math.NaN(), false
	}
	before, after := t.ratio(t.Web), t.ratio(web)
	return Thinning{
		Needed:       needed,
		WebTarget:    web,
		NotchDepth:   (t.Web - web) / 2,
		ChiselBefore: before * t.D,
		ChiselAfter:  after * t.D,
		RatioBefore:  before,
		RatioAfter:   after,
		WebRatio:     web / t.D,
		ThrustRatio:  ThrustRatio(t.System, t.D, t.Feed, after, before),
	}
}

// ToRatio is [Thick.ToWeb] for a chisel ratio c/D: the target web is
// q D sin psi. Domain: 0 < q < 1 besides; NaN outside.
func (t Thick) ToRatio(q float64) Thinning {
	return t.ToWeb(point.WebOfChisel(orNaN(q < 1, q)*t.D, t.ChiselAngle))
}

// ToThrust is [Thick.ToWeb] for a wanted thrust, given as a part of the present
// one: the chisel ratio at which [ThrustRatio] has that value. Domain: share above
// [Thick.LeastThrust], and 1 at most; NaN outside.
func (t Thick) ToThrust(share float64) Thinning {
	if !(share > t.LeastThrust() && share <= 1) {
		return t.ToWeb(math.NaN())
	}
	q0 := t.ratio(t.Web)
	low, high := 0.0, q0
	for high-low > 1e-15 {
		mid := low + (high-low)/2
		if ThrustRatio(t.System, t.D, t.Feed, mid, q0) < share {
			low = mid
		} else {
			high = mid
		}
	}
	return t.ToRatio(high)
}

// LeastThrust returns the part of the present thrust that is the lips' and that
// no thinning takes away, with the lips grown to the axis; NaN for an
// impossible point.
func (t Thick) LeastThrust() float64 {
	return orNaN(t.possible(), ThrustRatio(t.System, t.D, t.Feed, 0, t.ratio(t.Web)))
}

// ratio returns c/D for a web.
func (t Thick) ratio(web float64) float64 { return point.ChiselLength(web, t.ChiselAngle) / t.D }

// possible reports whether the point makes sense.
func (t Thick) possible() bool {
	return positive(t.D) && positive(t.Feed) && t.Web > 0 && t.Web < t.D && t.ratio(t.Web) < 1
}
