package judge

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Chisel is the chisel edge: any two of web, angle and length give the third.
type Chisel struct {
	Web      float64 // at the point
	Behind   float64 // behind a point that is thinned: read, and thicker than the chisel edge is long; else zero
	Angle    float64 // obtuse, lip to chisel in the end view
	Acute    float64
	Length   float64
	Ratio    float64 // c/D
	WebRatio float64 // w/D, of the web behind a point that is thinned
	// Gap is the length that web and angle make less the length read, where all
	// three were read and contradict each other; zero where they agree.
	Gap float64
	// Readings taken, as against figures computed.
	WebRead, AngleRead, LengthRead bool
	AcuteRead                      bool // the angle was read the acute way
}

// contradiction is how far, as a part of the length read, three readings of
// one chisel may disagree before it is said: a degree on the protractor and a
// few hundredths on the caliper together come to about this on a small drill.
const contradiction = 0.05

func chiselOf(dr *drill.Drill, b *Basics) Chisel {
	c := Chisel{Web: dr.Value(drill.Web), Length: dr.Value(drill.ChiselLength), Acute: dr.Value(drill.ChiselAngle)}
	c.AcuteRead = c.Acute < math.Pi/2
	c.Acute = point.Acute(c.Acute)
	c.WebRead, c.AngleRead, c.LengthRead = known(c.Web), known(c.Acute), known(c.Length)
	if c.Length < c.Web { // no chisel edge is shorter than its web is thick, unless it was thinned
		c.Behind, c.Web, c.WebRead = c.Web, math.NaN(), false
	}
	switch {
	case c.WebRead && c.AngleRead && c.LengthRead:
		made := point.ChiselLength(c.Web, c.Acute)
		if math.Abs(made-c.Length) > contradiction*c.Length {
			c.Gap = made - c.Length
		}
	case c.WebRead && c.AngleRead:
		c.Length = point.ChiselLength(c.Web, c.Acute)
	case c.WebRead && c.LengthRead:
		c.Acute = point.ChiselAngle(c.Web, c.Length)
	case c.AngleRead && c.LengthRead:
		c.Web = point.WebOfChisel(c.Length, c.Acute)
	}
	c.Angle = point.Obtuse(c.Acute)
	c.Ratio = c.Length / b.D
	c.WebRatio = c.body() / b.D
	return c
}

// body is the web that was read, of the point or behind its thinning.
func (c *Chisel) body() float64 {
	if c.Behind > 0 {
		return c.Behind
	}
	return c.Web
}

// ChiselEdge defines the figures of the chisel edge: of web, angle and length two
// are read, and the third follows.
var ChiselEdge = sheet.Group[Result]{Title: "Chisel edge", Figures: []sheet.Def[Result]{
	{Key: "web_mm", Letter: "w", Label: "web at the point", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.Chisel.Web }, OfWays: WantsChisel,
		Work: "c * sin(psi)", Read: func(r *Result) bool { return r.Chisel.WebRead }},
	{Key: "chisel_angle_deg", Letter: "psi'", Label: "chisel-edge angle, obtuse", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Chisel.Angle }, Limit: ChiselAngleLimit, OfWays: WantsChisel,
		Work: "180 - psi", Read: func(r *Result) bool { return r.Chisel.AngleRead && !r.Chisel.AcuteRead }},
	{Key: "chisel_angle_acute_deg", Letter: "psi", Label: "chisel-edge angle, acute", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Chisel.Acute }, OfWays: WantsChisel,
		Works: func(r *Result) (work, source string) {
			if r.Chisel.AngleRead {
				return "180 - psi'", ""
			}
			return "asin(w / c)", ""
		}, Read: func(r *Result) bool { return r.Chisel.AcuteRead }},
	{Key: "chisel_length_mm", Letter: "c", Label: "chisel-edge length", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.Chisel.Length }, OfWays: WantsChisel,
		Work: "w / sin(psi)", Read: func(r *Result) bool { return r.Chisel.LengthRead }},
	{Key: "chisel_ratio", Letter: "q", Label: "chisel-edge length / D", Kind: quantity.Number,
		Value: func(r *Result) float64 { return r.Chisel.Ratio }, Limit: ChiselRatioLimit, Work: "c / D"},
}}

// Contradiction warns in s where three readings of the chisel edge disagree, and
// says where two of them tell a thinned point.
func (c *Chisel) Contradiction(s *sheet.Sheet) {
	if c.Behind > 0 {
		s.Find("thinned-point", sheet.Note, "the chisel edge, {}, is shorter than the web, {}: the point is thinned, and that is the web behind it", quantity.MM(c.Length), quantity.MM(c.Behind))
	}
	if c.Gap != 0 {
		s.Find("chisel-contradiction", sheet.Warn, "the three chisel readings contradict each other: web {} at {} makes an edge of {}, but {} was read ({} apart); measure again",
			quantity.MM(c.Web), quantity.Rad(c.Angle), quantity.MM(c.Length+c.Gap), quantity.MM(c.Length), quantity.MM(math.Abs(c.Gap)))
	}
}

// WantsChisel names what is missing of the chisel edge, of which two readings give
// the third.
func WantsChisel(r *Result) string {
	c := &r.Chisel
	switch {
	case known(c.Length, c.Acute):
		return ""
	case c.Behind > 0:
		return "chisel-angle"
	case c.WebRead:
		return "chisel-angle or chisel-length"
	case c.AngleRead:
		return "web or chisel-length"
	case c.LengthRead:
		return "web or chisel-angle"
	}
	return "two of web, chisel-angle, chisel-length"
}
