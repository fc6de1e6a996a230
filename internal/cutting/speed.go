package cutting

import "math"

// Rpm returns the spindle speed for a cutting speed v in m/min at a diameter d
// in mm: 1000 v / (pi d). NaN unless v is not negative and d above zero.
// Source: common practice.
func Rpm(v, d float64) float64 {
	return orNaN(notNegative(v) && positive(d), 1000*v/(math.Pi*d))
}

// CuttingSpeed returns the cutting speed in m/min at a diameter d in mm turning
// at rpm: pi d rpm / 1000. NaN unless rpm is not negative and d above zero.
func CuttingSpeed(rpm, d float64) float64 {
	return orNaN(notNegative(rpm) && positive(d), math.Pi*d*rpm/1000)
}

// Feed returns the feed that lies a share of the way from the low to the high
// end of a band, mm per revolution. NaN unless
// 0 < low <= high and 0 <= share <= 1.
func Feed(low, high, share float64) float64 {
	return orNaN(positive(low) && high >= low && finite(high) && share >= 0 && share <= 1, low+(high-low)*share)
}

// Reduced returns a speed or a feed with a part of it cut off: v (1 - cut). NaN
// unless v is not negative and 0 <= cut < 1.
func Reduced(v, cut float64) float64 {
	return orNaN(notNegative(v) && part(cut), v*(1-cut))
}

// Penetration returns how fast the drill advances, mm/min: feed times rpm. NaN
// unless neither is negative.
func Penetration(feed, rpm float64) float64 {
	return orNaN(notNegative(feed) && notNegative(rpm), feed*rpm)
}

// HoleTime returns the seconds in the cut for a full-diameter hole of that
// depth, the point's length on top: 60 (depth + point) / (feed rpm). Withdrawals
// are not in it. NaN unless feed and rpm are above zero, and depth and point
// length not negative.
func HoleTime(depth, pointLength, feed, rpm float64) float64 {
	return orNaN(notNegative(depth) && notNegative(pointLength) && positive(feed) && positive(rpm),
		60*(depth+pointLength)/(feed*rpm))
}
