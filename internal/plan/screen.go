package plan

import (
	"math"
	"strings"

	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// leastOffHand is the stock, mm, under which it is told as finely as it is measured.
const leastOffHand = 0.1

// off is what comes off by hand, as finely as a hand takes it.
func off(mm float64) quantity.Arg {
	if mm < leastOffHand {
		return quantity.MM(mm)
	}
	return quantity.Arg{Kind: quantity.Length, Gauge: quantity.OffHand, Value: mm}
}

// Screen is what a person at the wheel is shown of the plan.
func (p *Plan) Screen(s *sheet.Sheet) *sheet.Screen {
	r := &p.Found
	scr := &sheet.Screen{About: s.Drill}
	for i, holds := range r.Verdict.Reasons {
		if holds {
			scr.Told += " " + judge.Reason(i).Code()
		}
	}
	if do := s.Lookup("plan"); do != nil && do.Doubt != nil && do.Doubt.Unsure {
		scr.Verdict, scr.About, scr.Told = "MEASURE", r.About(s, true)+": too close to call", scr.Told+" plan-in-doubt"
		scr.Item(quantity.Sayf("{}?", quantity.Say(strings.Join(do.Doubt.Words, ", or "))), quantity.Sayf("read {}", quantity.Say(do.Doubt.Finer)))
		scr.Next = append(scr.Next, sheet.Next{Command: "inspect", Says: "each figure with its doubt"})
		return scr
	}
	switch p.Do {
	case Regrind:
		p.regrindScreen(s, scr)
	case Thin:
		p.thinScreen(s, scr)
	case Retire:
		p.retireScreen(s, scr)
	case Leave:
		scr.Verdict, scr.About = "FIT", r.About(s, true)
		scr.Say("Nothing read is outside its limit: leave it off the wheel.")
		scr.Next = append(scr.Next, sheet.Next{Command: "inspect", Says: "each figure beside its limit"})
	default:
		p.lookScreen(s, scr)
	}
	if p.Do != Retire {
		p.lifeRow(s, scr)
	}
	return scr
}

// regrindScreen says what comes off which lip, and what is ground besides.
func (p *Plan) regrindScreen(s *sheet.Sheet, scr *sheet.Screen) {
	r, st := &p.Found, &p.Stock
	scr.Verdict = "REGRIND"
	scr.Next = append(scr.Next, sheet.Next{Command: "inspect", Says: "each reading beside its limit"})
	if !p.Made {
		r.Items(scr, r.Judgement())
		if !sheet.Known(p.Body.D) {
			scr.Item(quantity.Sayf("size not read"), quantity.Sayf("how much comes off depends on it: give size"))
		}
		return
	}
	switch {
	case p.cutOff():
		scr.Head = quantity.Sayf(", {} to cut off", quantity.MM(st.Total))
	case st.Total > 0:
		scr.Head = quantity.Sayf(", about {} off the end", off(st.Total))
	}
	reshaped := r.ReshapeItem(scr)
	p.lipItems(scr)
	if limit := r.Limit(judge.ChiselAngleLimit); !reshaped {
		scr.Item(quantity.Sayf("clearance {}", quantity.Set(r.Clearance.Aim)), quantity.Sayf("chisel edge then between {} and {}", quantity.Rad(limit.Low), quantity.Rad(limit.High)))
	}
	p.flattenItem(scr)
	switch {
	case p.Done.Thinned:
		scr.Item(quantity.Sayf("thin the web to {}", quantity.MM(p.Done.Web)), quantity.Sayf("a notch {} deep along each lip, both sides alike", quantity.MM((p.Ground.Web-p.Done.Web)/2)))
	case p.thinAgain():
		scr.Item(quantity.Sayf("thin the point again"), quantity.Sayf("to {}, as it is now", quantity.MM(p.Now.Web)))
	}
	if !st.EndsAlike() {
		scr.Tables = append(scr.Tables, p.lipTable())
	}
	if text := p.because(); text.Format != "" {
		scr.Show(sheet.Row{Label: quantity.Sayf("because of"), Kind: quantity.Word, Text: text})
	}
	p.afterRows(s, scr)
	p.told(scr, s)
}

// told are remarks that belong on the screen.
func (p *Plan) told(scr *sheet.Screen, s *sheet.Sheet) {
	for _, f := range s.Findings {
		switch f.Code {
		case "small-drill", "angle-kept", "chisel-put-right":
			scr.Note("note", f.Text.Format, f.Text.Args...)
		}
	}
}

// lipItems says in the order of work what comes off both lips, and what more off one.
func (p *Plan) lipItems(scr *sheet.Screen) {
	st := &p.Stock
	to := quantity.Sayf("to {}{}", quantity.Set(p.Lips.Target), quantity.Say(p.until()))
	base := min(st.Lip1.Inner, st.Lip1.Outer, st.Lip2.Inner, st.Lip2.Outer)
	switch {
	case p.cutOff():
		scr.Item(quantity.Sayf("cut {} off the end", quantity.MM(st.Total)), quantity.Sayf("then grind a new point, {} each lip", quantity.Set(p.Lips.Target)))
		return
	case st.Total == 0:
		return
	case st.EndsAlike() || p.nearlyAlike():
		scr.Item(quantity.Sayf("both lips back {}", quantity.MM(st.Total)), to)
		return
	case base > leastTold:
		scr.Item(quantity.Sayf("both lips back {}", quantity.MM(base)), to)
	case p.offTarget():
		scr.Item(quantity.Sayf("grind both to {}", quantity.Set(p.Lips.Target)), quantity.Sayf("lip by lip, as below"))
	}
	more := "more"
	if base <= leastTold {
		more = "off"
	}
	p.moreOff(scr, "lip 1", more, p.Found.Lips.High() == 1, st.Lip1.Inner-base, st.Lip1.Outer-base)
	p.moreOff(scr, "lip 2", more, p.Found.Lips.High() == 2, st.Lip2.Inner-base, st.Lip2.Outer-base)
}

// leastTold is the least stock, mm, that is told by itself.
const leastTold = 0.005

// offTarget reports whether a lip stands at another angle than it is ground to, by more
// than a gauge leaves open.
func (p *Plan) offTarget() bool {
	const least = 0.25 * math.Pi / 180
	return math.Abs(p.Lips.Lip1.HalfAngle-p.Lips.Target) > least || math.Abs(p.Lips.Lip2.HalfAngle-p.Lips.Target) > least
}

// moreOff says what more comes off a lip than off both.
func (p *Plan) moreOff(scr *sheet.Screen, lip, more string, high bool, inner, outer float64) {
	const nothing = leastTold
	name := lip
	if high {
		name += ", the high one"
	}
	switch {
	case inner < nothing && outer < nothing:
	case math.Abs(inner-outer) < nothing:
		scr.Item(quantity.Sayf(name), quantity.Sayf("{} "+more+", all along; chalk it first", quantity.MM(outer)))
	case inner < nothing:
		scr.Item(quantity.Sayf(name), quantity.Sayf("{} "+more+" at the corner; chalk it first", quantity.MM(outer)))
	case outer < nothing:
		scr.Item(quantity.Sayf(name), quantity.Sayf("{} "+more+" at the web; chalk it first", quantity.MM(inner)))
	default:
		scr.Item(quantity.Sayf(name), quantity.Sayf("{} "+more+" at the web, {} at the corner", quantity.MM(inner), quantity.MM(outer)))
	}
}

// until says how a grind for the wear that governs is known to be done.
func (p *Plan) until() string {
	switch p.Stock.Governs {
	case Corner, Margin:
		return ", until the corners are sharp"
	case FlankLand:
		return ", until the land is gone"
	case LipChip:
		return ", until the chip is out"
	}
	return ", both alike"
}

// flattenItem tells of lips that are to be flattened.
func (p *Plan) flattenItem(scr *sheet.Screen) {
	if land := p.flat(); sheet.Known(land.Low) {
		scr.Item(quantity.Sayf("flatten the lips"), quantity.Sayf("a land of {} to {} along each: in {} a helix digs in",
			quantity.MM(land.Low), quantity.MM(land.High), quantity.Say(p.Found.Drill.Material.Name)))
	}
}

// because lists what asks for the stock, the most first, and the clean-up last.
func (p *Plan) because() quantity.Text {
	st := &p.Stock
	names := [Causes]string{FlankLand: "wear land", Corner: "corners", Margin: "margin", LipChip: "chip", Truing: "evening the lips", Reshaping: "clearance"}
	var text quantity.Text
	add := func(name string, mm float64) {
		if text.Format != "" {
			text.Format += ", "
		}
		text.Format += name + " {}"
		text.Args = append(text.Args, quantity.MM(mm))
	}
	for c, name := range names {
		if name != "" && st.By[c] > 0.005 && !(Cause(c) == Reshaping && st.By[c] <= st.CleanUp) {
			add(name, st.By[c])
		}
	}
	if st.CleanUp > 0 {
		add("clean-up", st.CleanUp)
	}
	return text
}

// lipTable is what comes off each lip at either end.
func (p *Plan) lipTable() sheet.Grid {
	st := &p.Stock
	g := sheet.Grid{Columns: []sheet.Column{{Label: "off", Kind: quantity.Word}, sheet.Lengths("", "at the web"), sheet.Lengths("", "at the corner")}}
	g.Rows = [][]sheet.Cell{
		{sheet.W("lip 1"), sheet.V(st.Lip1.Inner), sheet.V(st.Lip1.Outer)},
		{sheet.W("lip 2"), sheet.V(st.Lip2.Inner), sheet.V(st.Lip2.Outer)},
	}
	return g
}

// afterRows shows the drill when it is done.
func (p *Plan) afterRows(s *sheet.Sheet, scr *sheet.Screen) {
	edge := s.Row("chisel edge after", "chisel_length_after_mm")
	edge.Band = p.chiselBand()
	scr.Show(edge)
	flute := s.Row("flute after", "flute_after_mm")
	if !p.DepthTaken {
		flute.Band = p.Found.Limit(judge.FluteLimit)
	}
	scr.Show(flute)
	web := s.Row("web after", "web_after_mm")
	if !p.Done.Thinned {
		web = web.Saying("no thinning yet")
	}
	scr.Show(web)
}

// lifeRow shows the grinds that are left, and what ends them.
func (p *Plan) lifeRow(s *sheet.Sheet, scr *sheet.Screen) {
	row := s.Row("grinds left, about", "regrinds_left")
	if !p.Waits && p.Do == Regrind {
		row = row.Called("grinds left, with this")
	}
	switch p.End {
	case FluteShort:
		if p.DepthTaken {
			row = row.Saying("then the flute is too short for the chips")
		} else {
			row = row.Saying("then too short for a hole {} deep", quantity.MM(p.Found.Wear.Depth))
		}
	case WebSpent:
		row = row.Saying("then the web is too thick to thin")
	case DiameterLow:
		row = row.Saying("then under the least diameter")
	}
	scr.Show(row)
	if len(row.Marks) > 0 {
		scr.Note("usual", "{} a grind", quantity.MM(p.Usual))
	}
}

// chiselBand is how long the chisel edge may be before the web is thinned.
func (p *Plan) chiselBand() *handbook.Band {
	limit := p.Found.Limit(judge.ChiselRatioLimit)
	if !sheet.Known(limit.High) || math.IsInf(limit.High, 1) {
		return nil
	}
	return &handbook.Band{Low: 0, High: limit.High * p.Body.D, Source: limit.Source}
}

func (p *Plan) thinScreen(s *sheet.Sheet, scr *sheet.Screen) {
	r := &p.Found
	scr.Verdict, scr.Head = "THIN", quantity.Sayf(", no grind")
	scr.Item(quantity.Sayf("web from {} to {}", quantity.MM(p.Ground.Web), quantity.MM(p.Done.Web)),
		quantity.Sayf("a notch {} deep, both sides alike", quantity.MM((p.Ground.Web-p.Done.Web)/2)))
	if sheet.Known(r.Lips.Height) {
		scr.Item(quantity.Sayf("leave the lips alone"), quantity.Sayf("level within {}, {} is allowed", quantity.MM(math.Abs(r.Lips.Height)), quantity.MM(r.Limit(judge.LipHeightLimit).High)))
	} else {
		scr.Item(quantity.Sayf("leave the lips alone"), quantity.Sayf("nothing read of them is outside its limit"))
	}
	scr.Next = append(scr.Next, sheet.Next{Command: "thin", Says: "the notch, and the push it saves"})
	now := sheet.Row{Label: quantity.Sayf("chisel edge now"), Kind: quantity.Length, Gauge: quantity.Caliper, Band: p.chiselBand(),
		Marks: []sheet.Mark{{Value: p.Now.Chisel, Low: math.NaN(), High: math.NaN(), State: sheet.Over}}}
	scr.Show(now)
	done := s.Row("chisel edge, thinned", "chisel_length_after_mm")
	done.Band = p.chiselBand()
	scr.Show(done)
	if ratio := s.Lookup("thrust_ratio"); ratio != nil && ratio.Known() {
		scr.Show(sheet.Row{Label: quantity.Sayf("push, thinned"), Kind: quantity.Word,
			Text: quantity.Sayf("{} less than it takes now", quantity.Of(quantity.Share, 1-ratio.Value))})
	}
}

func (p *Plan) retireScreen(s *sheet.Sheet, scr *sheet.Screen) {
	r := &p.Found
	scr.Verdict, scr.Scrap = "RETIRE", r.Wear.Cracked
	if r.Verdict.Word == judge.Retire {
		r.Items(scr, r.Judgement())
	}
	for _, f := range s.Findings {
		if f.Code == "not-worth-grinding" {
			scr.Say(f.Text.Format, f.Text.Args...)
			scr.Told += " " + f.Code
		}
	}
	scr.Next = append(scr.Next, sheet.Next{Command: "crib record", Args: "--retired", Says: "takes it out of audit and plan"})
	if !r.Wear.Cracked {
		flute := s.Row("flute left", "flute_mm")
		if s.Found != nil {
			flute = s.Found.Row("flute left", "flute_mm")
		}
		scr.Show(flute)
		judge.ServesRow(scr, p.serves())
	}
}

// lookScreen is shown where too little was read.
func (p *Plan) lookScreen(s *sheet.Sheet, scr *sheet.Screen) {
	r := &p.Found
	scr.Verdict, scr.About = "MEASURE", r.About(s, true)+": nothing read is outside its limit"
	if p.Fault != nil {
		scr.About = r.About(s, true)
	}
	if st := &p.Stock; st.Total > 0 {
		scr.Item(quantity.Sayf("if it only wants a touch-up"), quantity.Sayf("about {} off both lips alike, to {}", quantity.MM(st.Total), quantity.Set(p.Lips.Target)))
	}
	r.Items(scr, r.Judgement())
	scr.Next = append(scr.Next, sheet.Next{Command: "inspect", Args: "--ask", Says: "asks for them"})
	p.told(scr, s)
}
