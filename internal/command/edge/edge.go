// Package edge turns the readings of one drill into the angles along its lip:
// inclination, rake, clearance and wedge from the chisel's corner to the
// margin, and what happens on the chisel edge. The formulas are point's.
package edge

import (
	"math"
	"strings"

	"evenlip/internal/command"
	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Command is evenlip edge.
var Command = command.Of[Result]{Info: command.Info{
	Name: "edge", Safety: &command.AtBench, Short: "rake, clearance and inclination along the lip and the chisel edge",
	Long: `The angles along the lip, place by place from the margin to the chisel's
corner: inclination, rake, clearance, wedge, what a feed leaves of the
clearance, and the cutting speed; where the rake passes through zero and where
the clearance left is least; and the chisel edge, which scrapes and near the
axis cuts nothing at all. What was not read is taken from a usual drill of the
size, and said.`,
	Examples: `  evenlip edge --size 10mm --web 1.5mm --point-angle 118 --helix 30 --clearance 12 --feed 0.2mm
  evenlip edge --size 1/2 --at 1,0.8,0.6,0.4 --rpm 800
  evenlip edge --size 10mm --at 1 --helix "20..40 by 5"`,
	Readings: []drill.Reading{drill.Size, drill.Material, drill.Web, drill.ChiselAngle, drill.ChiselLength, drill.PointAngle, drill.LipAngle,
		drill.Clearance, drill.HeelDrop, drill.HeelTurn, drill.Helix, drill.FlutePoint, drill.LipFlat, drill.Feed, drill.Rpm, drill.At},
}, Cannot: Check, Compute: Compute, Figures: Figures, Rest: Rest, Declares: declares, Screen: (*Result).screen}

// Result is one lip of a drill at work.
type Result struct {
	judge.Result
	Held [limits]sheet.Held

	k, web, chisel   float64 // half point angle, web, acute chisel-edge angle
	flutePoint       float64 // point angle that the flutes were made for
	lean             float64 // of the face at the periphery: the helix, or none on a flattened lip
	clearance, helix float64 // at the outer corner
	rpm              float64
	inner, outer     float64 // the radii between which the lip lies
	least, leastAt   float64 // working clearance along the lip, and at what radius
	flank            point.Flank
	edge             point.Edge
	at               string  // the places asked for, as written; "" for the usual ones
	place            float64 // where the working is shown, as a part of the outer radius

	// What was not read and is taken.
	kTaken, webTaken, chiselTaken, clearanceTaken, helixTaken, flutePointTaken, rpmTaken bool
}

// The limits that the lip is held against.
const (
	_ sheet.Limit = iota
	leastLimit
	limits
)

// Compute works out the lip of d: its own angles and web, or what a drill of this
// size and for this work usually has.
func Compute(d *drill.Drill) Result {
	r := Result{Result: judge.Compute(d), rpm: d.Value(drill.Rpm), at: d.Written(drill.At), place: 1}
	size := r.Drill.D
	r.k, r.kTaken = judge.OrUsual(r.Point.K(), r.Point.Wanted/2)
	r.kTaken = r.kTaken && !r.Point.Asked
	r.web, r.webTaken = judge.OrUsual(r.Chisel.Web, handbook.NewWeb(size))
	r.chisel, r.chiselTaken = judge.OrUsual(r.Chisel.Acute, handbook.HandbookChiselAngle)
	r.clearance, r.clearanceTaken = judge.OrUsual(r.Clearance.Corner(), r.Clearance.Aim)
	r.helix = r.Face.Helix
	if band, _, ok := handbook.Helix(size); ok {
		r.helix, r.helixTaken = judge.OrUsual(r.helix, (band.Low+band.High)/2)
	}
	r.flutePoint, r.flutePointTaken = judge.OrUsual(r.Face.FlutePoint, handbook.FlutePoint)
	if m := r.Drill.Material; m != nil {
		v, _ := handbook.SpeedPick(m.Speed)
		r.rpm, r.rpmTaken = judge.OrUsual(r.rpm, cutting.Rpm(v, size))
	}
	r.inner, r.outer = point.ChiselLength(r.web, r.chisel)/2, size/2
	r.flank = point.NewFlank(size, r.web, r.k, r.clearance)
	if r.lean = r.helix; r.flattened() {
		r.lean = 0
	}
	r.edge = point.NewEdge(r.flank, r.lean)
	r.leastAt, r.least = r.flank.LeastWorking(r.Drill.Feed, r.inner, r.outer)
	r.Held[leastLimit] = sheet.Held{Value: r.least, Band: *r.Limit(judge.LeastWorkingLimit)}
	return r
}

// flattened reports whether a land parallel to the axis runs along the lips.
func (r *Result) flattened() bool { return sheet.Known(r.Face.Flat) }

// speed returns the cutting speed, m/min, at radius at.
func (r *Result) speed(at float64) float64 { return cutting.CuttingSpeed(r.rpm, 2*at) }

// wedge returns the angle of metal left between rake face and flank in the
// plane square to the lip: 90 degrees less rake and clearance.
func (r *Result) wedge(at float64) float64 {
	return math.Pi/2 - r.edge.NormalRake(at) - r.edge.NormalClearance(at)
}

// Figures puts the figures of r into s.
func Figures(r *Result, s *sheet.Sheet) {
	sheet.Put(s, r, r.Held[:], &letters, &placeFigures, &vectorFigures, &alongFigures, &chiselFigures)
}

// Rest adds the angles place by place, and the remarks.
func Rest(r *Result, s *sheet.Sheet) {
	places := r.places()
	s.Grids = append(s.Grids, r.rows(places))
	if s.Explaining && r.at != "" && places[0] != 1 {
		s.First = r.explained(places[0])
	}
	if sheet.Known(r.outer, r.helix) && math.IsNaN(r.rakeZero()) {
		s.Find("rake-one-sign", sheet.Note, "the rake keeps its sign over the whole lip")
	}
	if r.Held[leastLimit].Outside() {
		s.Find("flank-rubs", sheet.Warn, "at this feed the flank rubs where r/R is {}: nothing is left of the clearance", quantity.Num(r.leastAt/r.outer))
	}
	if r.flattened() {
		s.Find("lips-flattened", sheet.Note, "the lips are flattened: over {} their face is parallel to the axis, and the rake is that of a straight flute", quantity.MM(r.Face.Flat))
		s.Extra = append(s.Extra, handbook.LipFlat.Source)
	}
	if bow := r.bow(); math.Abs(bow) >= leastBow {
		judge.Curved(s, bow, r.flutePoint, r.flutePointTaken)
		s.Find("as-straight", sheet.Note, "the angles along the lip are those of a straight one")
	}
	if pushed := r.pushed(); pushed < r.inner && sheet.Known(r.rpm) {
		s.Find("chisel-pushes", sheet.Note, "on the chisel edge the cutting speed falls from {} at its corner to nothing on the axis; within {} of the axis it cuts no chip and only pushes the metal aside",
			quantity.Of(quantity.Cutting, r.speed(r.inner)), quantity.MM(pushed))
	}
	if span, err := readSpan(r.at); quantity.IsRange(r.at) && err == nil {
		s.StopsShort(drill.At.String(), span, quantity.Number, quantity.NoGauge)
	}
	if sheet.Known(r.outer) {
		r.assumptions(s)
	}
}

// leastBow is the bow, mm, from which a lip is called curved.
const leastBow = 0.005

// bow is how far the lip stands ahead of the straight line between its ends.
func (r *Result) bow() float64 {
	return point.NewBentLip(r.flank, r.flutePoint/2, r.helix).Bow(math.Max(0, point.ChiselCorner(r.web, r.chisel)))
}

// explained is the sheet of another place than the outer corner, for its working;
// the vectors are steps on the way there.
func (r *Result) explained(place float64) *sheet.Sheet {
	at, s := *r, sheet.New("edge", true)
	at.place = place
	sheet.Put(s, &at, r.Held[:], &letters, &placeFigures, &alongFigures, &chiselFigures)
	sheet.Letters(s, &at, &vectorFigures)
	where := quantity.Sayf("r/R {}", quantity.Num(place)).In(quantity.Format{})
	s.Each(func(f *sheet.Figure) {
		if key, ok := strings.CutPrefix(f.Key, "corner_"); ok {
			f.Key, f.Label = key, strings.Replace(f.Label, "outer corner", where, 1)
		}
	})
	return s
}

// rowsList is the list of the figures of a place, without its rows, and these figures.
func rowsList() (g sheet.Grid, figures []*def) {
	g = sheet.Grid{Key: "rows", Title: "Along the lip, margin to chisel corner", Main: true, Lead: 1,
		Columns: []sheet.Column{{Key: "radius_ratio", Label: "r/R", Kind: quantity.Number}}}
	for i := range placeFigures.Figures {
		d := &placeFigures.Figures[i]
		if key, ok := strings.CutPrefix(d.Key, "corner_"); ok {
			figures = append(figures, d)
			g.Columns = append(g.Columns, sheet.Column{Key: key, Label: strings.TrimSuffix(d.Label, ", outer corner"), Kind: d.Kind, Gauge: d.Gauge,
				Plot: key == "normal_rake_deg" || key == "working_clearance_deg"})
		}
	}
	return g, figures
}

func declares(s *sheet.Sheet) {
	g, _ := rowsList()
	s.Grids = append(s.Grids, g)
}

// rows is the list of the figures of a place, at each place.
func (r *Result) rows(places []float64) sheet.Grid {
	g, figures := rowsList()
	if !sheet.Known(r.outer) {
		return g
	}
	at := *r
	for _, at.place = range places {
		row := []sheet.Cell{sheet.V(at.place)}
		for _, d := range figures {
			row = append(row, sheet.V(d.Value(&at)))
		}
		g.Rows = append(g.Rows, row)
	}
	return g
}

// assumptions says what was taken for want of a reading.
func (r *Result) assumptions(s *sheet.Sheet) {
	b := &r.Drill
	note := func(taken bool, code, format string, arg quantity.Arg, src *handbook.Source, usual string) {
		if taken && sheet.Known(arg.Value) {
			s.Find(code, sheet.Note, format, arg, quantity.Say(src.How(usual)))
			s.Extra = append(s.Extra, src)
		}
	}
	note(r.kTaken, "point-angle-assumed", "no point or lip angle was given: {} is taken, {}", quantity.Rad(2*r.k), b.PointSource(), "as the work wants")
	r.Point.MeanTaken(s)
	r.Point.WantedUnused(s)
	note(r.webTaken, "web-assumed", "no web was read: {} is taken, {}", quantity.MM(r.web), handbook.NewWebSource, "as on a new drill")
	note(r.chiselTaken, "chisel-angle-assumed", "no chisel-edge angle was read: {} is taken, {}", quantity.Rad(math.Pi-r.chisel), handbook.HandbookChiselSource, "as the handbook's table does")
	note(r.clearanceTaken, "clearance-assumed", "no clearance was read: {} is taken, {}", quantity.Rad(r.clearance), r.Clearance.Recommended.Source, "as recommended for the size")
	r.Clearance.LesserTaken(s)
	r.Clearance.Contradiction(s)
	r.Chisel.Contradiction(s)
	helix, _, _ := handbook.Helix(b.D)
	note(r.helixTaken, "helix-assumed", "no helix was given: {} is taken, {}", quantity.Rad(r.helix), helix.Source, "the middle for general work at this size")
	b.FeedAssumption(s)
	note(r.rpmTaken, "rpm-assumed", "no rpm was given: {} is taken, from the work material's cutting speed, {}", quantity.Of(quantity.Rpm, r.rpm), r.speedSource(), "as published")
	if r.rpmTaken && !b.Given {
		s.Find("material-assumed", sheet.Note, "no material was given: {} is taken", quantity.Say(b.Material.Name))
	}
}

func (r *Result) speedSource() *handbook.Source {
	if m := r.Drill.Material; m != nil {
		return m.Speed.Source
	}
	return nil
}
