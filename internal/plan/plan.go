// Package plan plans the regrinding of one drill: how much stock to take and why,
// whether to thin, and what the drill will be grind by grind until it is retired.
//
// The arithmetic (stock.go, life.go, forecast.go) is pure: lengths in millimetres,
// angles in radians, every limit and allowance handed in by the caller. The rest
// goes from the readings to it, and from what comes back to words and figures.
package plan

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/sheet"
)

// Do is what is to be done with a drill.
type Do uint8

// The answers. Leave is a drill that is fit and may go on as it is; Undecided is
// none, for too little was read.
const (
	Undecided Do = iota
	Leave
	Thin
	Regrind
	Retire
)

// String returns the word that is printed; "" while undecided.
func (d Do) String() string { return [...]string{"", "leave", "thin", "regrind", "retire"}[d] }

// Plan is one drill's regrind.
type Plan struct {
	Found judge.Result
	Job
	Forecast
	Made   bool // there is a forecast; false for a cracked drill, or one of no size
	Fault  *point.DomainError
	Do     Do
	Reason string // why the drill is retired, now or when the grinds are used up
	Remove float64

	LandAimed   bool             // no clearance was read that the land could be ground at
	AngleTaken  bool             // the lips are taken to stand at the angle wanted, for want of a reading
	HeightTaken bool             // the lips are taken as even, likewise
	DepthTaken  bool             // the flute needed is chip room only, likewise
	ChiselMoved bool             // the chisel angle is put right by the grind
	EveryPast   bool             // the usual stock is that of the drill's history
	EveryShop   bool             // the usual stock is what the shop has set
	CleanUpFrom *handbook.Source // nil for an allowance that was given
	AngleKept   float64          // what the angle that the work wants would take, where the lips keep their own; else 0
}

// Of plans the regrind of d, whose readings must be possible.
func Of(d *drill.Drill) Plan {
	p := Plan{Found: judge.Compute(d), Forecast: unknown(), Remove: d.Value(drill.Remove)}
	p.job(d)
	if !p.Found.Wear.Cracked && sheet.Known(p.Body.D) {
		p.foretell()
	}
	p.decide()
	return p
}

// foretell plans with the lips' own angle and with the one wanted: the angle that the
// gauge stands at is worth a clean-up's metal. What that one would take where it is
// not chosen is kept to be told.
func (p *Plan) foretell() {
	own, err := ForecastOf(&p.Job)
	p.Forecast, p.Made = own, err == nil
	p.Fault, _ = err.(*point.DomainError)
	wanted := p.Found.Point.Wanted / 2
	if !p.Made || math.Abs(p.Lips.Target-wanted) < 1e-9 {
		return
	}
	job := p.Job
	job.Lips.Target = wanted
	other, err := ForecastOf(&job)
	switch {
	case err != nil:
	case other.Would.Total <= own.Would.Total+handbook.CleanUp:
		p.Job, p.Forecast = job, other
	case !p.Found.Drill.Book.PointAngle(2 * wanted).Holds(2 * p.Lips.Target):
		p.AngleKept = other.Would.Total
	}
}

// job takes the readings for a forecast, and for what is missing what is usual.
func (p *Plan) job(d *drill.Drill) {
	r := &p.Found
	p.Job = Job{
		Every: d.Value(drill.Every), Least: handbook.LeastUsualStock(r.Drill.D), Deepest: handbook.MostUsualWear(r.Drill.D),
		Waits: r.Verdict.Word != judge.Undecided && r.Verdict.Word != judge.Regrind,
	}
	switch {
	case r.Verdict.Reshapes():
		p.Asks = Reshaping
	case r.Verdict.Word == judge.Undecided: // what a plain touch-up takes is told all the same
		p.Asks = TouchUp
	}
	p.allowance(d)
	p.lips()
	p.wear()
	p.body(d)
}

// allowance takes the clean-up and the usual stock: what was given, else what the
// drill's history tells, else the shop's.
func (p *Plan) allowance(d *drill.Drill) {
	p.CleanUp, p.CleanUpFrom = d.Book.Allowance()
	if v, ok := d.Get(drill.CleanUp); ok {
		p.CleanUp, p.CleanUpFrom = v, nil
	}
	switch usual := d.Book.UsualStock(); {
	case d.Has(drill.Every):
	case d.Past.Usual > 0:
		p.Every, p.EveryPast = d.Past.Usual, true
	case sheet.Known(usual):
		p.Every, p.EveryShop = usual, true
	}
}

// lips are ground to the half angle that inspect trues them to; to the one wanted
// where their own are not known.
func (p *Plan) lips() {
	r := &p.Found
	k1, k2, height, target := r.Point.K1, r.Point.K2, r.Lips.Height, r.Target()
	if !sheet.Known(target) {
		target = r.Point.Wanted / 2
	}
	if p.AngleTaken = !sheet.Known(k1, k2); p.AngleTaken {
		k1, k2 = target, target
	}
	if p.HeightTaken = !sheet.Known(height); p.HeightTaken {
		height = 0
	}
	p.Lips = Lips{
		Lip1: point.LipThrough(r.Lips.Outer, height, k1), Lip2: point.LipThrough(r.Lips.Outer, 0, k2),
		Inner: r.Lips.Inner, Outer: r.Lips.Outer, Target: target,
	}
}

// wear takes the clearance of the lip that has more, since that asks for more
// stock. A land with no clearance behind it that could be ground at is reckoned
// at the one to aim for; and only a feed that was read counts.
func (p *Plan) wear() {
	r, c := &p.Found, &p.Found.Clearance
	p.Wear = Wear{
		Land: r.Wear.Flank, Clearance: math.Max(c.Lip1, c.Lip2), FeedAngle: c.FeedAngle,
		Corner: r.Wear.Corner, HalfAngle: (p.Lips.Lip1.HalfAngle + p.Lips.Lip2.HalfAngle) / 2, Margin: r.Wear.Margin, Chip: r.Wear.Chip,
		Steep: Steep{Width: handbook.SteepFlank(r.Drill.D), Aim: c.Aim},
	}
	p.Wear.Steep.Lip1, p.Wear.Steep.Lip2 = r.Steep()
	if r.Drill.FeedAssumed {
		p.Wear.FeedAngle = 0
	}
	if p.LandAimed = !(p.Wear.Clearance > p.Wear.FeedAngle); p.LandAimed {
		p.Wear.Clearance, p.Wear.FeedAngle = c.Aim, 0
	}
}

func (p *Plan) body(d *drill.Drill) {
	r := &p.Found
	p.Body = Body{
		D: r.Drill.D, Web: r.Chisel.Web, Taper: r.Web.Taper, Chisel: r.Chisel.Acute, ChiselAfter: r.Chisel.Acute, Feed: r.Drill.Feed, System: r.Drill.System,
		Flute: r.Wear.Flute, Length: d.Value(drill.Length), BackTaper: d.Value(drill.BackTaper),
		LeastFlute: r.Limit(judge.FluteLimit).Low, MostWeb: r.Limit(judge.WebSpentLimit).High, MostChisel: r.Limit(judge.ChiselRatioLimit).High,
		Give:      r.Held[judge.ChiselRatioLimit].Give * r.Drill.D,
		NewChisel: handbook.NewChiselRatio(r.Drill.D), LeastDiameter: d.Value(drill.LeastDiameter),
	}
	b := &p.Body
	if r.Web.Body > b.Web {
		b.Web, b.Thinned = r.Web.Body, b.Web
	}
	if p.ChiselMoved = r.Outside(judge.ChiselAngleLimit); p.ChiselMoved {
		limit := r.Limit(judge.ChiselAngleLimit)
		b.ChiselAfter = point.Acute((limit.Low + limit.High) / 2)
	}
	if p.DepthTaken = !sheet.Known(b.LeastFlute); p.DepthTaken {
		b.LeastFlute = d.Book.FluteNeeded(b.D, 0).Low
	}
}

// decide follows inspect's verdict, save that a drill which this grind would
// finish is retired and not ground. A reason to retire it names itself.
func (p *Plan) decide() {
	v := &p.Found.Verdict
	p.Do = [...]Do{judge.Fit: Leave, judge.Thin: Thin, judge.Regrind: Regrind, judge.Retire: Retire}[v.Word]
	p.Reason = p.End.String()
	switch {
	case v.Word == judge.Retire:
		p.Left, p.Reason = 0, v.Why(judge.Retire)
	case p.Do == Regrind && p.Left == 0: // of no use after this grind
		p.Do = Retire
	}
}

// serves returns how deep a hole the drill still serves for where nothing but a flute
// too short for the one asked for retires it: as it is, or after the grind that it
// wants. NaN elsewhere.
func (p *Plan) serves() float64 {
	r := &p.Found
	switch {
	case r.Verdict.Word != judge.Retire && p.Do == Retire && p.End == FluteShort:
		return r.Serves(p.Ground.Flute)
	case r.Verdict.Only(judge.Retire, judge.FluteShort):
		return r.Serves(r.Wear.Flute)
	}
	return math.NaN()
}

// Schedule returns the drill after each of the grinds that are left.
func (p *Plan) Schedule() []State { return p.Body.Schedule(p.Left, p.First, p.Usual) }
