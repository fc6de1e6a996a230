package plan

import (
	"math"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/figure"
	"evenlip/internal/inspect"
	"evenlip/internal/quantity"
	"evenlip/internal/reference"
	"evenlip/internal/regrind"
)

// Sheet is the plan of d's regrind: the stock and what governs it, the drill
// before and after, thinning, and its life grind by grind.
func Sheet(d *drill.Drill, explain bool) *figure.Sheet {
	p := Of(d)
	s := figure.New("regrind", explain)
	if !p.Found.Wear.Cracked {
		inspect.Plausible(d, s)
	}
	p.heights(s)
	p.answer(s)
	from := len(s.Sections)
	p.causes(s)
	p.ends(s)
	p.thinning(s)
	if p.Found.Verdict.Word == inspect.Retire { // nobody grinds it
		for i := range s.Sections[from:] {
			s.Sections[from+i].Quiet = true
		}
	}
	p.after(s)
	p.life(s)
	p.hinges(s)
	s.Grids = append(s.Grids, p.states())
	if len(p.Ahead.Grinds) > 0 {
		s.Grids = append(s.Grids, p.schedule())
	}
	p.remarks(s)
	p.inShort(s)
	s.Extra = append(s.Extra, &rules)
	return s
}

var rules = reference.Source{Label: reference.Own, Text: "how the plan is made, docs/regrind.md"}

// length makes a figure of a length read with a caliper.
func length(key, label string, v float64, wants string) figure.Figure {
	return figure.Figure{Key: key, Label: label, Value: v, Kind: quantity.Length, Gauge: quantity.Caliper, Wants: wants}
}

func word(key, label, w string) figure.Figure {
	return figure.Figure{Key: key, Label: label, Word: w, Value: math.NaN(), Kind: quantity.Word}
}

func ratio(key, label string, v float64, wants string) figure.Figure {
	return figure.Figure{Key: key, Label: label, Value: v, Kind: quantity.Number, Wants: wants}
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// made returns v where the plan was made, else NaN.
func (p *Plan) made(v float64) float64 {
	if p.Made {
		return v
	}
	return math.NaN()
}

// wants names the readings that a figure still waits for; nothing for a
// cracked drill, with which nothing more is to be done.
func (p *Plan) wants(needs ...figure.Need) string {
	if p.Found.Wear.Cracked || p.Fault != nil {
		return ""
	}
	return figure.Wanted(append([]figure.Need{{Reading: "size", Value: p.Found.Drill.D}}, needs...)...)
}

func (p *Plan) chisel() figure.Need {
	return figure.Need{Reading: "two of web, chisel-angle, chisel-length", Value: p.Found.Chisel.Length}
}

func (p *Plan) flute() figure.Need { return figure.Need{Reading: "flute", Value: p.Found.Wear.Flute} }

// answer is what a person at the wheel reads first.
func (p *Plan) answer(s *figure.Sheet) {
	s.Open("Plan")
	do := word("plan", "to do", p.Do.String())
	if p.Do == Leave && !p.Made {
		do.Word = ""
	}
	do.Wants = p.wants()
	s.Add(do)
	st := &p.Ahead.Stock
	s.Add(length("stock_mm", "take off the end", p.made(st.Total), p.wants()))
	s.Work(inspect.Geometry, "stock = the most that an end of a lip gives up, as worked below", "max(max({}, {}), max({}, {}))",
		figure.Len(st.Lip1.Inner), figure.Len(st.Lip1.Outer), figure.Len(st.Lip2.Inner), figure.Len(st.Lip2.Outer))
	reason := ""
	if p.Made {
		reason = st.Governs.String()
	}
	s.Add(word("stock_reason", "governed by", reason))
}

// remarks says in sentences what was decided and what was taken for granted.
func (p *Plan) remarks(s *figure.Sheet) {
	r := &p.Found
	for i, holds := range r.Verdict.Reasons {
		if holds {
			s.Findings = append(s.Findings, r.Finding(inspect.Reason(i)))
		}
	}
	if p.Fault != nil {
		s.Find("no-plan", figure.Warn, "no plan can be made of these readings: {} {}", figure.Say(p.Fault.Quantity), figure.Say(p.Fault.Why))
	}
	if !p.Made {
		return
	}
	p.stockRemarks(s)
	p.lifeRemarks(s)
	inspect.DigsIn(s, p.Found.Drill.Material)
	p.assumptions(s)
}

func (p *Plan) stockRemarks(s *figure.Sheet) {
	st := &p.Ahead.Would
	if p.Do == Leave && st.Total > 0 {
		s.Find("can-wait", figure.Note, "nothing measured is outside its limit: the grind can wait; it would take {} off the end, for {}", figure.Len(st.Total), figure.Say(st.Governs.String()))
	}
	if p.Do == Thin && st.Total > 0 {
		s.Find("can-wait", figure.Note, "the lips are within their limits: thin the web, and leave the grind; it would take {} off the end, for {}", figure.Len(st.Total), figure.Say(st.Governs.String()))
	}
	if v := &p.Found.Verdict; v.Word == inspect.Undecided {
		s.Find("not-all-measured", figure.Note, "not all was measured: inspect names the readings that are still wanted")
	}
	if st.By[regrind.Corner] > 0 && !figure.Known(st.By[regrind.Margin]) && p.Do != Retire {
		s.Find("corner-bound", figure.Note, "a rounded corner tells only the least: go on until it is sharp, or give margin-wear, which says how far up it reaches")
	}
	if p.Do == Regrind {
		p.grindTo(s)
	}
	if d := p.Found.Drill.D; p.Do != Retire && d <= reference.SeldomReground {
		s.Find("small-drill", figure.Note, "drills up to {} are seldom reground by hand: weigh the time against a new one", figure.Of(quantity.Size, reference.SeldomReground))
		s.Extra = append(s.Extra, reference.SeldomRegroundSource())
	}
	if p.Remove < st.Total-1e-9 {
		s.Find("remove-too-little", figure.Warn, "the {} meant to come off are not enough: a grind takes {}", figure.Len(p.Remove), figure.Len(st.Total))
	}
	if p.ChiselMoved {
		s.Find("chisel-put-right", figure.Note, "the chisel edge is reckoned at {} after the grind, the middle of its limit: measure it then", figure.Deg(math.Pi-p.Job.Body.ChiselAfter))
	}
	if k := p.Found.Point.K(); p.Do != Regrind && figure.Known(k) && (math.Abs(p.Job.Lips.Target-k) > 1e-9 || p.Found.Point.Asked) {
		s.Find("trued-to", figure.Note, "a grind leaves both lips at {} to the axis", figure.Set(p.Job.Lips.Target))
	}
}

// grindTo says what the point is ground to, and how the lips are told apart.
func (p *Plan) grindTo(s *figure.Sheet) {
	r, st := &p.Found, &p.Ahead.Stock
	limit := r.Chisel.AngleLimit
	s.Find("grind-to", figure.Note, "grind both lips to {} to the axis with {} of clearance at the corner, the chisel edge between {} and {}{}",
		figure.Set(p.Job.Lips.Target), figure.Set(r.Clearance.Aim), figure.Deg(limit.Low), figure.Deg(limit.High), p.ofShop())
	if p.AngleKept > 0 {
		s.Find("angle-kept", figure.Note, "the lips keep their angle, {} off; the {} of point that the work wants would take {}: --point-angle asks for it",
			figure.Len(st.Total), figure.Deg(r.Point.Wanted), figure.Len(p.AngleKept))
	}
	if p.thinAgain() {
		s.Find("thin-again", figure.Note, "the point was thinned, and the grind takes that off in part or whole: thin it again to the {} it has now, or by machine where it was split; the web and thrust below are those of a point left unthinned",
			figure.Len(p.Ahead.Now.Web))
	}
	if !st.LipsAlike() && !p.nearlyAlike() {
		s.Find("mark-lip-1", figure.Note, "the lips give up different amounts: mark lip 1 before the drill leaves the indicator")
	}
}

// ofShop ends the remark on what to grind to: it says what of that the shop has set.
func (p *Plan) ofShop() figure.Arg {
	r := &p.Found
	var own []string
	for _, x := range [...]struct {
		what string
		set  bool
	}{
		{"angle", !r.Point.Asked && math.Abs(p.Job.Lips.Target-r.Point.Wanted/2) < 1e-9 && r.Drill.PointSource().OfShop()},
		{"clearance", r.Clearance.Recommended.Source.OfShop()}, {"chisel edge", r.Chisel.AngleLimit.Source.OfShop()},
	} {
		if x.set {
			own = append(own, x.what)
		}
	}
	if own == nil {
		return figure.Say("")
	}
	return figure.Say("; the shop has set the " + strings.Join(own, " and the "))
}

func (p *Plan) lifeRemarks(s *figure.Sheet) {
	p.lifeHangs(s)
	if p.Do != Retire || p.Found.Verdict.Word == inspect.Retire {
		return
	}
	b, g := &p.Job.Body, &p.Ahead.Ground
	switch p.Ahead.End {
	case regrind.FluteShort:
		s.Find("not-worth-grinding", figure.Stop, "this grind would leave {} of flute where the job takes {}: retire it, or keep it for shallower holes", figure.Len(g.Flute), figure.Len(b.LeastFlute))
	case regrind.WebSpent:
		s.Find("not-worth-grinding", figure.Stop, "this grind would bring the web to {} of the diameter, more than thinning can answer: retire it", figure.Num(g.Body/b.D))
	case regrind.DiameterLow:
		s.Find("not-worth-grinding", figure.Stop, "this grind would leave a diameter of {} where {} is the least: retire it",
			figure.Of(quantity.Size, g.Diameter), figure.Of(quantity.Size, b.LeastDiameter))
	}
}

// lifeHangs says what the life would be with other habits, so that nobody takes
// one count for a promise.
func (p *Plan) lifeHangs(s *figure.Sheet) {
	if figure.Known(p.Job.Every) && !p.EveryPast || len(p.Ahead.Grinds) < 2 {
		return
	}
	usual, wear := p.Ahead.Usual, p.Ahead.Would.Wear()
	switch {
	case p.EveryPast:
		s.Find("usual-of-history", figure.Note, "the grinds after this one are counted at {} each, the mean of those in its history; at {} each there would be {}; --every sets what is usual",
			figure.Len(usual), figure.Len(2*usual), p.leftAt(2*usual))
	case p.Mishap():
		deep := wear + p.Ahead.Would.CleanUp
		s.Find("wear-counted-once", figure.Note, "wear {} deep is taken for a mishap: the grinds after this one are counted at {} each; at {} each there would be {}; --every sets what is usual",
			figure.Len(wear), figure.Len(usual), figure.Len(deep), p.leftAt(deep))
	case usual > p.Job.Least:
		s.Find("life-hangs-on-stock", figure.Note, "the grinds left are counted at {} each; at {} each there would be {}, at {} each {}; --every sets what is usual",
			figure.Len(usual), figure.Len(p.Job.Least), p.leftAt(p.Job.Least), figure.Len(2*usual), p.leftAt(2*usual))
	default:
		s.Find("life-hangs-on-stock", figure.Note, "the grinds left are counted at {} each; at {} each there would be {}; --every sets what is usual",
			figure.Len(usual), figure.Len(2*usual), p.leftAt(2*usual))
	}
}

// leftAt counts the grinds that are left when each after this one takes every.
func (p *Plan) leftAt(every float64) figure.Arg {
	grinds, _, _ := p.Job.Body.Life(p.first(), every) // the plan's own life was counted, so there is one
	return figure.Of(quantity.Count, float64(len(grinds)))
}

// assumptions tells what was taken for want of a reading.
func (p *Plan) assumptions(s *figure.Sheet) {
	r, b := &p.Found, &p.Job.Body
	if p.LandAimed {
		s.Find("clearance-aimed", figure.Note, "the land is reckoned at {}, {}: none was read that it could be ground at", figure.Deg(p.Job.Wear.Clearance),
			figure.Say(r.Clearance.Recommended.Source.How("the clearance to aim for")))
	}
	if p.HeightTaken {
		s.Find("lips-taken-even", figure.Note, "the lips are taken to stand even: no lip-height was read")
	}
	if p.AngleTaken {
		s.Find("lip-angle-taken", figure.Note, "the lips are taken to stand at {} to the axis: no lip-angle was read", figure.Deg(p.Job.Wear.HalfAngle))
	}
	if b.Thinned > 0 && p.Do != Retire {
		r.ThinnedBefore(s)
	}
	if p.DepthTaken && figure.Known(b.Flute) {
		s.Find("depth-missing", figure.Note, "no depth was given: the drill is counted on until {} of flute is left", figure.Len(b.LeastFlute))
	}
	if p.NoBackTaper {
		s.Find("back-taper-missing", figure.Warn, "least-diameter wants back-taper: how fast the drill gets smaller")
	}
	if r.Web.Origin == inspect.TaperDefault && figure.Known(b.Web) {
		s.Find("web-taper-assumed", figure.Note, "web taper taken as {}; two measured webs would give this drill's own", figure.Of(quantity.Taper, b.Taper))
	}
	r.Contradictions(s)
	r.Drill.FeedAssumption(s)
	if r.Drill.Material != nil && !r.Drill.Given {
		s.Find("material-assumed", figure.Note, "no material was given: {} is taken", figure.Say(r.Drill.Material.Name))
	}
}
