// Package edge turns the readings of one drill into the angles along its lip:
// inclination, rake, clearance and wedge from the chisel's corner to the
// margin, and what happens on the chisel edge. The formulas are point's.
package edge

import (
	"math"

	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// lip is one lip of a drill at work. What was not read is taken, and said.
type lip struct {
	judge.Result
	k, web, chisel   float64 // half point angle, web, acute chisel-edge angle
	clearance, helix float64 // at the outer corner
	rpm              float64
	inch             bool // how the reader's table is printed
	taken            taken
	flank            point.Flank
	edge             point.Edge
}

// taken says what was not read and is therefore assumed.
type taken struct {
	k, web, chisel, clearance, helix, rpm bool
}

func lipOf(d *drill.Drill) *lip {
	l := &lip{Result: judge.Compute(d), inch: d.System() == quantity.Inch}
	l.shape()
	l.helix = d.Value(drill.Helix)
	if !d.Has(drill.Helix) {
		l.helix, l.taken.helix = math.NaN(), true
		if band, ok := handbook.Helix(l.Drill.D, handbook.TypeN); ok {
			l.helix = (band.Low + band.High) / 2
		}
	}
	l.rpm = d.Value(drill.Rpm)
	if m := l.Drill.Material; !d.Has(drill.Rpm) && m != nil {
		v, _ := handbook.SpeedPick(m.Speed)
		l.rpm, l.taken.rpm = cutting.Rpm(v, l.Drill.D), true
	}
	l.flank = point.NewFlank(l.Drill.D, l.web, l.k, l.clearance)
	l.edge = point.NewEdge(l.flank, l.helix)
	return l
}

// shape takes the point's own angles and web, or what a drill of this size and
// for this work usually has.
func (l *lip) shape() {
	l.k, l.web, l.chisel, l.clearance = l.Point.K(), l.Chisel.Web, l.Chisel.Acute, l.Clearance.Corner()
	take := func(v *float64, usual float64, taken *bool) {
		if math.IsNaN(*v) {
			*v, *taken = usual, true
		}
	}
	take(&l.k, l.Point.Wanted/2, &l.taken.k)
	l.taken.k = l.taken.k && !l.Point.Asked
	take(&l.web, handbook.NewWeb(l.Drill.D), &l.taken.web)
	take(&l.chisel, handbook.HandbookChiselAngle, &l.taken.chisel)
	take(&l.clearance, l.Clearance.Aim, &l.taken.clearance)
}

// ends returns the radii at which the lip begins and ends.
func (l *lip) ends() (inner, outer float64) {
	return point.ChiselLength(l.web, l.chisel) / 2, l.Drill.D / 2
}

// wants names what is still missing.
func (l *lip) wants() string {
	return sheet.Wanted(sheet.Need{Reading: "size", Value: l.Drill.D})
}

// wantsHelix adds the helix, which is published for usual sizes only.
func (l *lip) wantsHelix() string {
	return sheet.Wanted(sheet.Need{Reading: "size", Value: l.Drill.D}, sheet.Need{Reading: "helix", Value: l.helix})
}

// speed returns the cutting speed, m/min, at radius r.
func (l *lip) speed(r float64) float64 { return cutting.CuttingSpeed(l.rpm, 2*r) }

// wedge returns the angle of metal left between rake face and flank in the
// plane square to the lip: 90 degrees less rake and clearance.
func wedge(a point.EdgeAngles) float64 { return math.Pi/2 - a.NormalRake - a.NormalClearance }
