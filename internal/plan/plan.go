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

// The answers. Leave is a drill that may go on as it is.
const (
	Leave Do = iota
	Thin
	Regrind
	Retire
)

// String returns the word that is printed.
func (d Do) String() string { return [...]string{"leave", "thin", "regrind", "retire"}[d] }

// Plan is one drill's regrind.
type Plan struct {
	Found judge.Result
	Job
	Forecast
	Made   bool // there is a forecast; false for a cracked drill, or one of no size
	Fault  *point.DomainError
	Do     Do
	Reason string // why the drill is retired, now or when the grinds are used up

	LandAimed   bool             // the land was read, but no clearance that it could be ground at
	HeightTaken bool             // the lips were taken as even, for want of a reading
	AngleTaken  bool             // the lips were taken to stand at the angle wanted
	DepthTaken  bool             // the flute needed is chip room only, for want of a depth
	NoBackTaper bool             // a least diameter was asked for, but the back taper is not known
	EveryPast   bool             // the usual stock is that of the drill's history
	EveryShop   bool             // the usual stock is what the shop has set
	CleanUpFrom *handbook.Source // nil for an allowance that was given
	ChiselMoved bool             // the chisel angle is put right by the grind
	AngleKept   float64          // what the angle that the work wants would take, where the lips keep their own; else 0
	Remove      float64
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

func (p *Plan) job(d *drill.Drill) {
	r := &p.Found
	p.Job = Job{
		Every: d.Value(drill.Every), Least: handbook.LeastUsualStock(r.Drill.D), Deepest: handbook.MostUsualWear(r.Drill.D),
		Reshape: r.Verdict.Reshapes(), Waits: r.Verdict.Word != judge.Regrind && r.Verdict.Word != judge.Retire,
	}
	p.allowance(d)
	p.wear()
	p.lips()
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

// wear takes the clearance of the lip that has more, since that asks for more
// stock. A land with no clearance behind it that could be ground at is reckoned
// at the one to aim for; and only a feed that was read counts.
func (p *Plan) wear() {
	r := &p.Found
	w := Wear{Land: r.Wear.Flank, Corner: r.Wear.Corner, Margin: r.Wear.Margin, Chip: r.Wear.Chip}
	w.Clearance = math.Max(r.Clearance.Lip1, r.Clearance.Lip2)
	if !r.Drill.FeedAssumed {
		w.FeedAngle = r.Clearance.FeedAngle
	}
	if !(w.Clearance > w.FeedAngle) {
		w.Clearance, w.FeedAngle, p.LandAimed = r.Clearance.Aim, 0, sheet.Known(w.Land)
	}
	w.Steep = Steep{Width: handbook.SteepFlank(r.Drill.D), Aim: r.Clearance.Aim, Lip1: math.NaN(), Lip2: math.NaN()}
	if r.Held[judge.Clearance1Limit].State().On(sheet.High) {
		w.Steep.Lip1 = r.Clearance.Lip1
	}
	if r.Held[judge.Clearance2Limit].State().On(sheet.High) {
		w.Steep.Lip2 = r.Clearance.Lip2
	}
	w.HalfAngle = r.Point.K()
	if !sheet.Known(w.HalfAngle) {
		w.HalfAngle = p.target()
	}
	p.Wear = w
}

func (p *Plan) lips() {
	r := &p.Found
	k1, k2, height := r.Point.K1, r.Point.K2, r.Lips.Height
	if !sheet.Known(k1, k2) {
		k1, k2, p.AngleTaken = p.target(), p.target(), true
	}
	if !sheet.Known(height) {
		height, p.HeightTaken = 0, true
	}
	p.Lips = Lips{
		Lip1: point.LipThrough(r.Lips.Outer, height, k1), Lip2: point.LipThrough(r.Lips.Outer, 0, k2),
		Inner: r.Lips.Inner, Outer: r.Lips.Outer, Target: p.target(),
	}
}

// target is the half angle that inspect trues the lips to; the one wanted where
// the lips' own are not known.
func (p *Plan) target() float64 {
	if t := p.Found.Target(); sheet.Known(t) {
		return t
	}
	return p.Found.Point.Wanted / 2
}

func (p *Plan) body(d *drill.Drill) {
	r := &p.Found
	b := Body{
		D: r.Drill.D, Web: r.Chisel.Web, Taper: r.Web.Taper, Chisel: r.Chisel.Acute, Feed: r.Drill.Feed,
		Flute: r.Wear.Flute, Length: d.Value(drill.Length), BackTaper: d.Value(drill.BackTaper),
		LeastFlute: r.Limit(judge.FluteLimit).Low, MostWeb: r.Limit(judge.WebLimit).High, MostChisel: r.Limit(judge.ChiselRatioLimit).High,
		NewChisel: handbook.NewChiselRatio(r.Drill.D), LeastDiameter: d.Value(drill.LeastDiameter),
	}
	if r.Web.Body > b.Web {
		b.Web, b.Thinned = r.Web.Body, b.Web
	}
	after := r.Chisel.Angle
	if limit := r.Limit(judge.ChiselAngleLimit); after < limit.Low-1e-9 || after > limit.High+1e-9 {
		after, p.ChiselMoved = (limit.Low+limit.High)/2, true
	}
	b.ChiselAfter = point.Acute(after)
	if !sheet.Known(b.LeastFlute) {
		b.LeastFlute, p.DepthTaken = r.Drill.Book.FluteNeeded(b.D, 0).Low, true
	}
	p.NoBackTaper = sheet.Known(b.LeastDiameter) && !sheet.Known(b.BackTaper)
	p.Body = b
}

// decide follows inspect's verdict, save that a drill which this grind would
// finish is retired and not ground. A reason to retire it names itself.
func (p *Plan) decide() {
	v := &p.Found.Verdict
	switch v.Word {
	case judge.Retire:
		p.Do = Retire
	case judge.Regrind:
		p.Do = Regrind
	case judge.Thin:
		p.Do = Thin
	}
	p.Reason = p.End.String()
	switch {
	case v.Word == judge.Retire:
		p.Left, p.Reason = 0, v.Why(judge.Retire)
	case p.Do == Regrind && p.Left == 0: // of no use after this grind
		p.Do = Retire
	}
}

// Schedule returns the drill after each of the grinds that are left.
func (p *Plan) Schedule() []State {
	if !(p.Left > 0) {
		return nil
	}
	return p.Body.Schedule(int(p.Left), p.First, p.Usual)
}
