// Package drawing turns the readings of one drill into what a picture of its
// point shows, in a terminal or on paper. The lines themselves are draw's.
package drawing

import (
	"errors"
	"math"
	"strings"

	"evenlip/internal/command"
	"evenlip/internal/draw"
	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Command is evenlip draw, as far as it is a calculation: the figures beside the
// picture.
var Command = command.Of[Result]{Info: command.Info{
	Name: "draw", Safety: &command.AtBench, Short: "the point to scale, from the end and from the side",
	Long: `The point of one drill to scale, seen from the end and from the side: both lips
as measured, uneven ones too, the web, the chisel edge at its angle, margins and
flutes. In the terminal, or with --svg as a dimensioned drawing that prints true
to scale. With --remove the drill before the grind lies dashed under the one
after. Size and lip-angle have to be read; what else was not is drawn as usual,
and the remarks say so. A picture is of one drill: no ranges.
Readings come from flags, from a YAML file whose keys are the flags' names (- is
standard input), or from --sample.`,
	Examples: `  evenlip draw --size 12mm --lip-angle 59,58 --web 2mm --chisel-angle 126
  evenlip draw --sample --svg sample.svg
  evenlip draw --size 1/2 --lip-angle 59 --remove 1/16in --svg half.svg --scale 5:1`,
	Readings: []drill.Reading{
		drill.Size, drill.Material, drill.Web, drill.SecondWeb, drill.SecondWebAt, drill.WebTaper, drill.ChiselAngle, drill.ChiselLength,
		drill.PointAngle, drill.LipAngle, drill.LipLength, drill.LipHeight, drill.Clearance, drill.HeelDrop, drill.HeelTurn, drill.Helix, drill.FlutePoint, drill.LipFlat, drill.Remove,
	},
}, Cannot: Check, Compute: Compute, Figures: Figures, Rest: Rest, Declares: declares}

// Result is a drill to be drawn.
type Result struct {
	judge.Result
	Now    draw.Drill
	Before *draw.Drill // nil where nothing comes off

	read    *drill.Drill
	trued   bool          // the grind made both lips one line
	most    float64       // what has to come off for that
	err     error         // why there is nothing to draw
	helixes handbook.Band // usual

	// What was not read and is drawn as usual.
	webUsual, chiselUsual, clearanceUsual, helixUsual, heightUsual, flutePointUsual bool
}

// Missing says what of d has to be read before it can be drawn, "" for nothing, and
// what to do.
func Missing(d *drill.Drill) (wants, hint string) {
	var missing []string
	if !d.Has(drill.Size) {
		missing = append(missing, "--"+drill.Size.String())
	}
	for _, v := range d.AsRead(drill.LipAngle) {
		if v.V >= math.Pi/2 {
			half := quantity.Format{}.Number(quantity.Angle, quantity.Protractor, v.V/2)
			return "each lip's angle to the axis", "if " + v.Text + " is the whole point angle, write --lip-angle " + half
		}
	}
	if !d.Has(drill.LipAngle) {
		missing = append(missing, "--"+drill.LipAngle.String())
	}
	return strings.Join(missing, " and "), "size and lip-angle give the outline; what else was not read is drawn as usual. --sample shows one"
}

// Check returns what cannot be drawn, of the drill as it was read or as the grind
// leaves it. Of a drill that wants readings it says nothing.
func Check(d *drill.Drill) fault.List {
	if wants, _ := Missing(d); wants != "" {
		return nil
	}
	if found := judge.Cannot(d); len(found) > 0 {
		return found
	}
	r := Compute(d)
	var domain *point.DomainError
	switch {
	case r.err == nil:
		return nil
	case !errors.As(r.err, &domain):
		return fault.List{d.Refuse(drill.Size, "", "{}", quantity.Say(r.err.Error()))}
	}
	reading, known := drill.Find(domain.Quantity)
	value := quantity.MM(domain.Value)
	if known && reading.Spec().Kind == quantity.Angle {
		value = quantity.Rad(domain.Value)
	}
	const hint = "evenlip inspect works out what cannot be drawn"
	switch {
	case r.Before != nil:
		return fault.List{d.Refuse(drill.Remove, "take less off", "{} leaves what cannot be drawn: "+domain.Quantity+" {}: it "+domain.Why, quantity.Say(d.Written(drill.Remove)), value)}
	case known && d.Has(reading):
		return fault.List{d.Refuse(reading, hint, "cannot draw {}: it "+domain.Why, value)}
	}
	return fault.List{d.Refuse(drill.Size, hint, "cannot draw "+domain.Quantity+" {}: it "+domain.Why, value)}
}

// Compute takes the drill as it was read and, where there is no reading, as is
// usual, and grinds off what is to be removed.
func Compute(d *drill.Drill) Result {
	r := Result{Result: judge.Compute(d), read: d}
	r.asRead()
	r.err = r.Now.Check()
	if remove := r.Web.Remove; r.err == nil && remove > 0 {
		before := r.Now
		r.Before = &before
		r.err = r.grind(remove)
	}
	return r
}

func (r *Result) asRead() {
	now := &r.Now
	now.D = r.Drill.D
	now.Web, r.webUsual = judge.OrUsual(r.Chisel.Web, handbook.NewWeb(now.D))
	chisel := r.Limit(judge.ChiselAngleLimit)
	now.Chisel, r.chiselUsual = judge.OrUsual(r.Chisel.Acute, math.Pi-(chisel.Low+chisel.High)/2)
	// Beyond the sizes for which a helix is published that of the nearest is usual.
	r.helixes, _, _ = handbook.Helix(math.Max(1, math.Min(50, now.D)))
	now.Helix, r.helixUsual = judge.OrUsual(r.Face.Helix, (r.helixes.Low+r.helixes.High)/2)
	made, usual := judge.OrUsual(r.Face.FlutePoint, handbook.FlutePoint)
	now.Made, r.flutePointUsual = made/2, usual
	now.Flat, _ = judge.OrUsual(r.Face.Flat, 0)
	one, two := &now.Lips[0], &now.Lips[1]
	one.HalfAngle, two.HalfAngle = r.Point.K1, r.Point.K2
	one.Corner, r.heightUsual = judge.OrUsual(r.Lips.Height, 0)
	one.Clearance, r.clearanceUsual = judge.OrUsual(r.Clearance.Lip1, r.Clearance.Aim)
	two.Clearance, _ = judge.OrUsual(r.Clearance.Lip2, r.Clearance.Aim)
	now.Offset = offAxis(now) + r.Lips.OfClearance
	now.Land = draw.Land{Margin: handbook.MarginPart * now.D, Body: handbook.BodyPart, Flute: handbook.FluteAngle}
}

// offAxis returns how far from the axis the lips of d meet, toward lip 1: where
// they stand decides it, read or taken as usual; what unequal clearances move comes on
// top.
func offAxis(d *draw.Drill) float64 {
	lips := &d.Lips
	return point.OffsetOfCorners(lips[0].Corner-lips[1].Corner, point.AlongLip(d.D/2, d.Web), lips[0].HalfAngle, lips[1].HalfAngle)
}

// grind makes the drill after remove has come off what the one before was. Both
// lips become one line at the angle wanted, if remove reaches that far; if not,
// both are lowered as they are.
func (r *Result) grind(remove float64) error {
	before, now := r.Before, &r.Now
	now.Web = point.WebAfter(r.grownFrom(), r.Web.Taper, remove)
	now.Flat = math.Max(0, before.Flat-remove)
	outer := point.AlongLip(before.D/2, before.Web)
	inner := math.Max(0, point.ChiselCorner(before.Web, before.Chisel))
	var lips [2]point.Lip
	for i, l := range before.Lips {
		lips[i] = point.LipThrough(outer, l.Corner, l.HalfAngle)
		now.Lips[i].Corner -= remove
	}
	plan, err := point.Truing(lips[0], lips[1], inner, outer, r.Target())
	if err != nil {
		return err
	}
	const rounding = 1e-9
	r.most = plan.Most()
	if r.trued = r.most <= remove+rounding; !r.trued {
		now.Offset = offAxis(now) + r.Lips.OfClearance
		return now.Check()
	}
	now.Offset = 0
	for i := range now.Lips {
		now.Lips[i].HalfAngle = r.Target()
		now.Lips[i].Corner = plan.Line.At(outer) - (remove - r.most)
	}
	return now.Check()
}

// grownFrom is the web that a grind brings forth: behind a point that was thinned
// the thicker one.
func (r *Result) grownFrom() float64 {
	from, _ := judge.OrUsual(r.Web.From, r.first().Web)
	return from
}

// first is the drill as it was measured.
func (r *Result) first() *draw.Drill {
	if r.Before != nil {
		return r.Before
	}
	return &r.Now
}

// Figures puts the figures of r into s: none of a drill that cannot be drawn.
func Figures(r *Result, s *sheet.Sheet) {
	if r.err != nil {
		return
	}
	sheet.Put(s, r, nil, &letters, &drawnFigures)
	if r.Before != nil {
		s.Sections[0].Title += ", after the grind"
	}
}
