package judge

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Chisel is the chisel edge: any two of web, angle and length give the third.
type Chisel struct {
	Web      float64
	Angle    float64 // obtuse, lip to chisel in the end view
	Acute    float64
	Length   float64
	Ratio    float64 // c/D
	WebRatio float64 // w/D
	// Gap is the length that web and angle make less the length read, where all
	// three were read and contradict each other; zero where they agree.
	Gap float64
	// Readings taken, as against figures computed.
	WebRead, AngleRead, LengthRead bool
	AcuteRead                      bool // the angle was read the acute way
	AngleLimit, RatioLimit         handbook.Band
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
	c.WebRatio = c.Web / b.D
	c.AngleLimit, c.RatioLimit = b.Book.ChiselAngle(), b.Book.ChiselRatio(b.D)
	return c
}

// ChiselSheet adds the chisel edge's figures to s.
func (r *Result) ChiselSheet(s *sheet.Sheet) {
	c := &r.Chisel
	s.Open("Chisel edge")
	two := c.wants()
	s.Add(sheet.Figure{Key: "web_mm", Label: "web at the point", Value: c.Web, Kind: quantity.Length, Gauge: quantity.Caliper, Wants: two})
	if c.WebRead {
		s.Work("as read", "w as read", "{}", quantity.MM(c.Web))
	} else {
		s.Work(geometry, "w = c * sin(psi)", "{} * sin({})", quantity.MM(c.Length), quantity.Rad(c.Acute))
	}
	s.Add(sheet.Figure{Key: "chisel_angle_deg", Label: "chisel-edge angle, obtuse", Value: c.Angle, Kind: quantity.Angle,
		Gauge: quantity.Protractor, Limit: &c.AngleLimit, Wants: two})
	if c.AngleRead && !c.AcuteRead {
		s.Work("as read", "psi' as read", "{}", quantity.Rad(c.Angle))
	} else {
		s.Work(geometry, "psi' = 180 - psi", "180 - {}", quantity.Rad(c.Acute))
	}
	s.Add(sheet.Figure{Key: "chisel_angle_acute_deg", Label: "chisel-edge angle, acute", Value: c.Acute, Kind: quantity.Angle,
		Gauge: quantity.Protractor, Wants: two})
	c.WorkAcute(s)
	s.Add(sheet.Figure{Key: "chisel_length_mm", Label: "chisel-edge length", Value: c.Length, Kind: quantity.Length,
		Gauge: quantity.Caliper, Wants: two})
	if !c.LengthRead {
		s.Work(geometry, "c = w / sin(psi)", "{} / sin({})", quantity.MM(c.Web), quantity.Rad(c.Acute))
	} else {
		s.Work("as read", "c as read", "{}", quantity.MM(c.Length))
	}
	s.Add(sheet.Figure{Key: "chisel_ratio", Label: "chisel-edge length / D", Value: c.Ratio, Kind: quantity.Number,
		Limit: limitIf(&c.RatioLimit, r.Drill.D), Wants: join(wants(on("size", r.Drill.D)), two)})
	s.Work(geometry, "q = c / D", "{} / {}", quantity.MM(c.Length), quantity.MM(r.Drill.D))
	c.Contradiction(s)
}

// Contradiction warns in s where three readings of the chisel edge disagree.
func (c *Chisel) Contradiction(s *sheet.Sheet) {
	if c.Gap != 0 {
		s.Find("chisel-contradiction", sheet.Warn, "the three chisel readings contradict each other: web {} at {} makes an edge of {}, but {} was read ({} apart); measure again",
			quantity.MM(c.Web), quantity.Rad(c.Angle), quantity.MM(c.Length+c.Gap), quantity.MM(c.Length), quantity.MM(math.Abs(c.Gap)))
	}
}

// WorkAcute leaves, with the figure added to s last, where the acute chisel-edge
// angle is from.
func (c *Chisel) WorkAcute(s *sheet.Sheet) {
	switch {
	case c.AcuteRead:
		s.Work("as read", "psi as read", "{}", quantity.Rad(c.Acute))
	case c.AngleRead:
		s.Work(geometry, "psi = 180 - psi'", "180 - {}", quantity.Rad(c.Angle))
	default:
		s.Work(geometry, "psi = asin(w / c)", "asin({} / {})", quantity.MM(c.Web), quantity.MM(c.Length))
	}
}

func (c *Chisel) wants() string {
	switch {
	case known(c.Length, c.Acute):
		return ""
	case c.WebRead:
		return "chisel-angle or chisel-length"
	case c.AngleRead:
		return "web or chisel-length"
	case c.LengthRead:
		return "web or chisel-angle"
	}
	return "two of web, chisel-angle, chisel-length"
}

func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + " and " + b
}

// limitIf withholds a limit that cannot be known.
func limitIf(l *handbook.Band, on float64) *handbook.Band {
	if math.IsNaN(on) {
		return nil
	}
	return l
}
