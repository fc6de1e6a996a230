package plan

import (
	"math"
	"strings"

	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// remarks says in sentences what was decided and what was taken for granted.
func (p *Plan) remarks(s *sheet.Sheet) {
	r := &p.Found
	for i, holds := range r.Verdict.Reasons {
		if holds {
			s.Findings = append(s.Findings, r.Finding(judge.Reason(i)))
		}
	}
	if p.Fault != nil {
		s.Find("no-plan", sheet.Warn, "no plan can be made of these readings: {} {}", quantity.Say(p.Fault.Quantity), quantity.Say(p.Fault.Why))
	}
	if !p.Made {
		return
	}
	p.stockRemarks(s)
	p.lifeRemarks(s)
	p.Found.FlatRemarks(s)
	p.assumptions(s)
}

func (p *Plan) stockRemarks(s *sheet.Sheet) {
	st := &p.Would
	if p.Waits && p.Do != Retire && st.Total > 0 {
		can := "nothing measured is outside its limit: the grind can wait"
		if p.Do == Thin {
			can = "the lips are within their limits: thin the web, and leave the grind"
		}
		s.Find("can-wait", sheet.Note, can+"; it would take {} off the end, for {}", quantity.MM(st.Total), quantity.Say(st.Governs.String()))
	}
	if p.Found.Verdict.Word == judge.Undecided {
		s.Wants = p.Found.Judgement().Missing
		s.Find("not-all-measured", sheet.Note, "nothing read is outside its limit; not looked at: {}", quantity.Say(strings.Join(s.Wants, "; ")))
	}
	if st.By[Corner] > 0 && !sheet.Known(st.By[Margin]) && p.Do != Retire {
		s.Find("corner-bound", sheet.Note, "a corner that is rounded evenly is sharp again after about {}: go on until it is, or give margin-wear: how far up it is worn, or burnt blue", quantity.MM(st.By[Corner]))
	}
	if p.Do == Regrind {
		p.grindTo(s)
	}
	if d := p.Found.Drill.D; p.Do != Retire && d <= handbook.SeldomReground {
		s.Find("small-drill", sheet.Note, "drills up to {} are seldom reground by hand: weigh the time against a new one", quantity.Of(quantity.Size, handbook.SeldomReground))
		s.Extra = append(s.Extra, handbook.SeldomRegroundSource)
	}
	if p.Remove < st.Total-1e-9 {
		s.Find("remove-too-little", sheet.Warn, "the {} meant to come off are not enough: a grind takes {}", quantity.MM(p.Remove), quantity.MM(st.Total))
	}
	if p.ChiselMoved {
		s.Find("chisel-put-right", sheet.Note, "the chisel edge is reckoned at {} after the grind, the middle of its limit: measure it then", quantity.Rad(math.Pi-p.Body.ChiselAfter))
	}
	if k := p.Found.Point.K(); p.Do != Regrind && sheet.Known(k) && (math.Abs(p.Lips.Target-k) > 1e-9 || p.Found.Point.Asked) {
		s.Find("trued-to", sheet.Note, "a grind leaves both lips at {} to the axis", quantity.Set(p.Lips.Target))
	}
}

// grindTo says what the point is ground to, and how the lips are told apart.
func (p *Plan) grindTo(s *sheet.Sheet) {
	r, st := &p.Found, &p.Stock
	limit := r.Limit(judge.ChiselAngleLimit)
	s.Find("grind-to", sheet.Note, "grind both lips to {} to the axis with {} of clearance at the corner, the chisel edge between {} and {}{}",
		quantity.Set(p.Lips.Target), quantity.Set(r.Clearance.Aim), quantity.Rad(limit.Low), quantity.Rad(limit.High), p.ofShop())
	p.curved(s)
	if p.AngleKept > 0 {
		s.Find("angle-kept", sheet.Note, "the lips keep their angle, {} off; the {} of point that the work wants would take {}: --point-angle asks for it",
			quantity.MM(st.Total), quantity.Rad(r.Point.Wanted), quantity.MM(p.AngleKept))
	}
	if p.thinAgain() {
		s.Find("thin-again", sheet.Note, "the point was thinned, and the grind takes that off in part or whole: thin it again to the {} it has now, or by machine where it was split; the web and thrust below are those of a point left unthinned",
			quantity.MM(p.Now.Web))
	}
	if !st.LipsAlike() && !p.nearlyAlike() {
		s.Find("mark-lip-1", sheet.Note, "the lips give up different amounts: mark lip 1 before the drill is put down")
	}
}

// curved says that a grind to another point angle leaves curved lips.
func (p *Plan) curved(s *sheet.Sheet) {
	const leastChange = math.Pi / 180
	r, k := &p.Found, p.Lips.Target
	if sheet.Known(r.Face.FlutePoint) || math.Abs(k-r.Point.K()) >= leastChange {
		r.CurvedAt(s, k, r.Clearance.Aim, p.Body.Web, p.Body.ChiselAfter)
	}
}

// ofShop ends the remark on what to grind to: it says what of that the shop has set.
func (p *Plan) ofShop() quantity.Arg {
	r := &p.Found
	var own []string
	for _, x := range [...]struct {
		what string
		set  bool
	}{
		{"angle", !r.Point.Asked && math.Abs(p.Lips.Target-r.Point.Wanted/2) < 1e-9 && r.Drill.PointSource().OfShop()},
		{"clearance", r.Clearance.Recommended.Source.OfShop()}, {"chisel edge", r.Limit(judge.ChiselAngleLimit).Source.OfShop()},
	} {
		if x.set {
			own = append(own, x.what)
		}
	}
	if own == nil {
		return quantity.Say("")
	}
	return quantity.Say("; the shop has set the " + strings.Join(own, " and the "))
}

func (p *Plan) lifeRemarks(s *sheet.Sheet) {
	p.lifeHangs(s)
	if p.Do != Retire || p.Found.Verdict.Word == judge.Retire {
		return
	}
	b, g := &p.Body, &p.Ground
	switch p.End {
	case FluteShort:
		text := quantity.Sayf("this grind would leave {} of flute where the job takes {}: retire it", quantity.MM(g.Flute), quantity.MM(b.LeastFlute))
		if still := p.serves(); still > 0 {
			text.Format += ", or grind it for holes to {} deep"
			text.Args = append(text.Args, quantity.MM(still))
		}
		s.Find("not-worth-grinding", sheet.Stop, text.Format, text.Args...)
	case WebSpent:
		s.Find("not-worth-grinding", sheet.Stop, "this grind would bring the web to {} of the diameter, more than thinning can answer: retire it", quantity.Num(g.Body/b.D))
	case DiameterLow:
		s.Find("not-worth-grinding", sheet.Stop, "this grind would leave a diameter of {} where {} is the least: retire it",
			quantity.Of(quantity.Size, g.Diameter), quantity.Of(quantity.Size, b.LeastDiameter))
	}
}

// lifeHangs says what the life would be with other habits, so that nobody takes
// one count for a promise.
func (p *Plan) lifeHangs(s *sheet.Sheet) {
	if sheet.Known(p.Every) && !p.EveryPast || !(p.Left >= 2) {
		return
	}
	usual, wear := p.Usual, p.Would.Wear()
	switch {
	case p.EveryPast:
		s.Find("usual-of-history", sheet.Note, "the grinds after this one are counted at {} each, the mean of those in its history; at {} each there would be {}; --every sets what is usual",
			quantity.MM(usual), quantity.MM(2*usual), p.leftAt(2*usual))
	case p.mishap():
		deep := wear + p.Would.CleanUp
		s.Find("wear-counted-once", sheet.Note, "wear {} deep is counted as one-off damage: the grinds after this one are counted at {} each; at {} each there would be {}; --every sets what is usual",
			quantity.MM(wear), quantity.MM(usual), quantity.MM(deep), p.leftAt(deep))
	case usual > p.Least:
		s.Find("life-hangs-on-stock", sheet.Note, "the grinds left are counted at {} each; at {} each there would be {}, at {} each {}; --every sets what is usual",
			quantity.MM(usual), quantity.MM(p.Least), p.leftAt(p.Least), quantity.MM(2*usual), p.leftAt(2*usual))
	default:
		s.Find("life-hangs-on-stock", sheet.Note, "the grinds left are counted at {} each; at {} each there would be {}; --every sets what is usual",
			quantity.MM(usual), quantity.MM(2*usual), p.leftAt(2*usual))
	}
}

// leftAt counts the grinds that are left when each after this one takes every.
func (p *Plan) leftAt(every float64) quantity.Arg {
	n, _ := p.Body.Left(p.First, every)
	return quantity.Of(quantity.Count, n)
}

// assumptions tells what was taken for want of a reading.
func (p *Plan) assumptions(s *sheet.Sheet) {
	r, b := &p.Found, &p.Body
	if p.LandAimed && sheet.Known(p.Wear.Land) {
		s.Find("clearance-aimed", sheet.Note, "the land is reckoned at {}, {}: none was read that it could be ground at", quantity.Rad(p.Wear.Clearance),
			quantity.Say(r.Clearance.Recommended.Source.How("the clearance to aim for")))
	}
	if p.HeightTaken {
		s.Find("lips-taken-even", sheet.Note, "the lips are taken to stand even: no lip-height was read")
	}
	if p.AngleTaken {
		s.Find("lip-angle-taken", sheet.Note, "the lips are taken to stand at {} to the axis: no lip-angle was read", quantity.Rad(p.Wear.HalfAngle))
	}
	if b.Thinned > 0 && p.Do != Retire {
		r.ThinnedBefore(s)
	}
	if p.DepthTaken && sheet.Known(b.Flute) {
		s.Find("depth-missing", sheet.Note, "no depth was given: the drill is counted on until {} of flute is left", quantity.MM(b.LeastFlute))
	}
	if sheet.Known(b.LeastDiameter) && !sheet.Known(b.BackTaper) {
		s.Find("back-taper-missing", sheet.Warn, "least-diameter wants back-taper: how fast the drill gets smaller")
	}
	if r.Web.Origin == judge.TaperDefault && sheet.Known(b.Web) {
		s.Find("web-taper-assumed", sheet.Note, "web taper taken as {}; two measured webs would give this drill's own", quantity.Of(quantity.Taper, b.Taper))
	}
	r.Contradictions(s)
	r.Drill.FeedAssumption(s)
	if r.Drill.Material != nil && !r.Drill.Given {
		s.Find("material-assumed", sheet.Note, "no material was given: {} is taken", quantity.Say(r.Drill.Material.Name))
	}
}

// nearlyAlike reports whether the lips give up the same to within what they may
// differ by, at either end: there is nothing to true up.
func (p *Plan) nearlyAlike() bool {
	st, most := &p.Stock, p.Found.Limit(judge.LipHeightLimit).High
	low := min(st.Lip1.Inner, st.Lip1.Outer, st.Lip2.Inner, st.Lip2.Outer)
	return st.Total-low <= most
}

// cutOff reports whether so much comes off that it is cut and not ground: more than
// a diameter.
func (p *Plan) cutOff() bool { return p.Do == Regrind && p.Stock.Total > p.Body.D }

// thinAgain reports whether the grind takes off a thinning that the plan does not
// bring back.
func (p *Plan) thinAgain() bool {
	return p.Do == Regrind && p.Body.Thinned > 0 && !p.Done.Thinned
}

// inShort is the plan in one sentence.
func (p *Plan) inShort(s *sheet.Sheet) {
	switch st := &p.Stock; {
	case p.Do == Retire && p.serves() > 0:
		s.InShort("retire: too short for this hole, though it still serves for holes to {} deep", quantity.MM(p.serves()))
	case p.Do == Retire:
		s.InShort("retire")
	case !p.Made || p.Do == Leave:
	case p.Do == Undecided:
		s.InShort("nothing read is outside its limit, and not all was read; a plain touch-up takes {}", quantity.MM(st.Total))
	case p.Do == Thin && p.Done.Thinned:
		s.InShort("thin the web to {}", quantity.MM(p.Done.Web))
	case p.Do == Regrind:
		cures := p.Found.Cures()
		text := p.takeOff()
		if len(cures) > 0 && p.onlyCleans() {
			text, cures = quantity.Sayf("regrind"), append(cures, quantity.Sayf("just clean the lips, {} off both alike", quantity.MM(st.Total)))
		}
		if p.flattens() == yes {
			land, _ := p.Found.FlatWanted()
			cures = append(cures, quantity.Sayf("flatten the lips, a land of {} to {} along each", quantity.MM(land.Low), quantity.MM(land.High)))
		}
		if p.Done.Thinned {
			cures = append(cures, quantity.Sayf("thin the web to {}", quantity.MM(p.Done.Web)))
		} else if p.thinAgain() {
			cures = append(cures, quantity.Sayf("thin the point again to {}", quantity.MM(p.Now.Web)))
		}
		join := "; "
		if len(text.Args) == 0 {
			join = ": "
		}
		for _, cure := range cures {
			text.Format += join + cure.Format
			text.Args = append(text.Args, cure.Args...)
			join = "; "
		}
		s.InShort(text.Format, text.Args...)
	}
}

// onlyCleans reports whether no more comes off than cleans the lips up.
func (p *Plan) onlyCleans() bool { return p.Stock.Total <= p.Stock.CleanUp*(1+1e-9) }

// takeOff is what comes off the end, and off which lip.
func (p *Plan) takeOff() quantity.Text {
	switch st := &p.Stock; {
	case p.cutOff():
		return quantity.Sayf("cut {} off, then grind a new point", quantity.MM(st.Total))
	case st.EndsAlike():
		return quantity.Sayf("regrind, {} off both lips alike", quantity.MM(st.Total))
	case p.nearlyAlike():
		return quantity.Sayf("regrind, {} off both lips, which stand even to within their limit", quantity.MM(st.Total))
	default:
		return quantity.Sayf("regrind, {} off the end: lip 1 by {} at its inner end and {} at its outer, lip 2 by {} and {}", quantity.MM(st.Total),
			quantity.MM(st.Lip1.Inner), quantity.MM(st.Lip1.Outer), quantity.MM(st.Lip2.Inner), quantity.MM(st.Lip2.Outer))
	}
}
