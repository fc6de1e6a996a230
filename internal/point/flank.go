package point

import "math"

// Flank is the strip of a flank along a straight lip. Flat or conical, it has
// one tangent plane there, so the clearance at the outer corner fixes the
// clearance everywhere on the lip. The zero value, and a flank made from
// impossible input, answers NaN to everything.
type Flank struct {
	d, web, halfAngle float64
	slope             float64 // dz/dy of the tangent plane
	cotan             float64 // 1/tan(halfAngle), the lip's fall along x
}

// NewFlank returns the flank with the clearance cornerClearance at the outer
// corner, in the plane tangent to the drill's cylinder there. Its slope is
// g = (tan(cornerClearance) - sin b/tan k) / cos b with b the web angle at the
// corner and k the half angle. A g below zero is a clearance smaller than the
// lip's own fall past the web gives.
// Domain: 0 < web < d, 0 < halfAngle < pi/2, |cornerClearance| < pi/2; a
// flank that answers NaN outside.
func NewFlank(d, web, halfAngle, cornerClearance float64) Flank {
	if requireWeb(d, web) != nil || !between(halfAngle, 0, math.Pi/2) ||
		!between(cornerClearance, -math.Pi/2, math.Pi/2) {
		return Flank{slope: math.NaN()}
	}
	b := WebAngle(web, d/2)
	g := (math.Tan(cornerClearance) - math.Sin(b)*cot(halfAngle)) / math.Cos(b)
	return flankOfSlope(d, web, halfAngle, g)
}

// flankOfSlope returns the flank whose tangent plane along the lip has the
// slope g = dz/dy.
func flankOfSlope(d, web, halfAngle, g float64) Flank {
	return Flank{d, web, halfAngle, g, cot(halfAngle)}
}

// Slope returns g, the slope dz/dy of the tangent plane along the lip.
func (f Flank) Slope() float64 {
	if !f.onLip(f.d / 2) {
		return math.NaN()
	}
	return f.slope
}

// Clearance returns the lip clearance at radius r, in the plane tangent to the
// cylinder of that radius: atan(g cos b + sin b/tan k), b the web angle there.
// Domain: web/2 <= r <= d/2; NaN outside.
func (f Flank) Clearance(r float64) float64 {
	if !f.onLip(r) {
		return math.NaN()
	}
	sin, cos := f.web/(2*r), AlongLip(r, f.web)/r
	return math.Atan(f.slope*cos + sin*f.cotan)
}

// Working returns the clearance left at radius r when feeding: the lip
// clearance less the feed angle. Domain: web/2 <= r <= d/2, feed >= 0; NaN
// outside.
func (f Flank) Working(r, feed float64) float64 {
	return f.Clearance(r) - FeedAngle(feed, r)
}

// FeedLimit returns the largest feed per revolution at which no place on the
// lip between the radii from and to rubs, and the radius where rubbing begins
// beyond it. At radius r the limit is 2 pi (g sqrt(r^2 - web^2/4) + (web/2) /
// tan k), which only rises or only falls along the lip, so it is lowest at an
// end; it is zero when the flank has no clearance there to begin with.
// Domain: web/2 <= from <= to <= d/2; NaN outside.
func (f Flank) FeedLimit(from, to float64) (feed, r float64) {
	if !f.span(from, to) {
		return math.NaN(), math.NaN()
	}
	inner, outer := FeedLimit(from, f.Clearance(from)), FeedLimit(to, f.Clearance(to))
	if outer < inner {
		return outer, to
	}
	return inner, from
}

// LeastWorking returns where between the radii from and to the working
// clearance is least, and how much it is there. With t = tan b it is
// stationary where a cubic in t has a root, so the ends and those roots are
// the only candidates. Domain: web/2 <= from <= to <= d/2, feed >= 0; NaN
// outside.
func (f Flank) LeastWorking(feed, from, to float64) (r, clearance float64) {
	if !f.span(from, to) || !notNegative(feed) {
		return math.NaN(), math.NaN()
	}
	r, clearance = from, f.Working(from, feed)
	if c := f.Working(to, feed); c < clearance {
		r, clearance = to, c
	}
	roots, n := f.stationary(feed).rootsIn(f.tanWebAngle(to), f.tanWebAngle(from))
	for _, t := range roots[:n] {
		at := math.Min(to, math.Max(from, f.web/2*math.Sqrt(1+1/(t*t))))
		if c := f.Working(at, feed); c < clearance {
			r, clearance = at, c
		}
	}
	return r, clearance
}

// stationary returns the polynomial in t = tan b whose roots are the places
// where the working clearance neither rises nor falls: the derivative of
// atan(g cos b + m sin b) - atan(q sin b), m = 1/tan k and q = feed/(pi web),
// cleared of its denominators.
func (f Flank) stationary(feed float64) cubic {
	g, m, q := f.slope, f.cotan, feed/(math.Pi*f.web)
	return cubic{
		m - q*(1+g*g),
		-g - 2*q*g*m,
		m*(1+q*q) - q*(1+m*m),
		-g * (1 + q*q),
	}
}

// tanWebAngle returns tan b at radius r, kept finite at the foot of the lip,
// where it is infinite.
func (f Flank) tanWebAngle(r float64) float64 {
	const steep = 1e8
	return math.Min(steep, f.web/2/AlongLip(r, f.web))
}

// onLip reports whether the radius lies on the lip or its line inward to the
// foot of the perpendicular from the axis. A last-digit excess is let through.
func (f Flank) onLip(r float64) bool {
	return finite(f.slope) && r > 0 && r >= f.web/2 && r <= f.d/2*(1+1e-12)
}

// span reports whether both radii lie on the lip, in order.
func (f Flank) span(from, to float64) bool {
	return f.onLip(from) && f.onLip(to) && from <= to
}
