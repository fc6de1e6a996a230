package point

import "math"

// StockOfFlankLand returns the axial stock that takes off a wear land of width
// wear land, measured along the cutting direction:
// land (tan(clearance) - tan(feedAngle)), both angles where the land is.
// Domain: land >= 0, 0 <= feedAngle < clearance < pi/2 (a flank without working
// clearance rubs all over, and its land tells nothing); NaN outside.
func StockOfFlankLand(land, clearance, feedAngle float64) float64 {
	if !notNegative(land) || !between(clearance, 0, math.Pi/2) || !(feedAngle >= 0 && feedAngle < clearance) {
		return math.NaN()
	}
	return land * (math.Tan(clearance) - math.Tan(feedAngle))
}

// StockOfMargin returns the axial stock that clears a margin worn back from
// the outer corner over the length worn: all of that length.
// Domain: worn >= 0; NaN outside.
func StockOfMargin(worn float64) float64 {
	if !notNegative(worn) {
		return math.NaN()
	}
	return worn
}

// StockOfCorner returns the axial stock after which an outer corner is sharp again
// that is rounded over a width of lip, the width seen in the end view:
// width / sin(halfAngle). It holds of a round that runs evenly into lip and margin;
// how far up the margin is worn, where that was measured, decides.
// Domain: width >= 0, 0 < halfAngle < pi/2; NaN outside.
func StockOfCorner(width, halfAngle float64) float64 {
	if !notNegative(width) || !between(halfAngle, 0, math.Pi/2) {
		return math.NaN()
	}
	return width / math.Sin(halfAngle)
}
