package judge

import (
	"math"
	"slices"
	"strings"

	"evenlip/internal/handbook"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// What a person is shown of a point. Which reasons hold, and how a figure stands to its
// limit, is what the finished sheet has of it: gauges may have taken some back.

// Screen shows the whole point.
func (r *Result) Screen(s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{Verdict: Shown(s.Verdict), About: r.About(s, true)}
	if r.Wear.Cracked {
		r.Items(scr, s.Verdict)
		scr.Say("No other reading was judged: none makes a cracked drill good.")
		scr.Next, scr.Scrap = append(scr.Next, retireIt), true
		return scr
	}
	r.Items(scr, s.Verdict)
	if s.Verdict.Word == Fit.String() {
		scr.Say("Nothing read is outside its limit: leave it off the wheel.")
		if !known(r.Wear.Flank) || !known(r.Wear.Corner) {
			scr.Say("Look for a bright line on the lips and a rounded corner: {} not read.", quantity.Say(r.wearUnread()))
		}
	}
	if next := Next(s.Verdict.Word); next.Command != "speed" || known(r.Wear.Depth) {
		scr.Next = append(scr.Next, next)
	}
	r.WearRows(s, scr)
	r.LipRows(s, scr)
	r.PointRow(s, scr)
	r.ClearanceRows(s, scr)
	r.ChiselRows(s, scr)
	scr.Show(s.Row("wear land", "flank_wear_mm"))
	scr.Show(s.Row("flute left", "flute_mm"))
	if r.Verdict.Only(Retire, FluteShort) {
		ServesRow(scr, r.Serves(r.Wear.Flute))
	}
	r.WebRow(s, scr)
	r.read(scr)
	r.unread(s, scr)
	return scr
}

// Next is what to type after a verdict, for what it asks for.
func Next(verdict string) sheet.Next {
	switch verdict {
	case "fit":
		return sheet.Next{Command: "speed", Says: "rpm and feed for its hole"}
	case "regrind":
		return sheet.Next{Command: "regrind", Says: "how much comes off which lip"}
	case "thin":
		return sheet.Next{Command: "thin", Says: "how deep a notch, and the push it saves"}
	case "retire":
		return retireIt
	}
	return sheet.Next{Command: "inspect", Args: "--ask", Says: "asks for them"}
}

var retireIt = sheet.Next{Command: "crib record", Args: "--retired", Says: "takes it out of audit and plan"}

// Shown is a verdict as it stands in front of an answer.
func Shown(v *sheet.Verdict) string {
	if v.Word == "" {
		return "MEASURE"
	}
	return strings.ToUpper(v.Word)
}

// About names the drill, and the work where asked for.
func (r *Result) About(s *sheet.Sheet, work bool) string {
	about := s.Drill
	if work && r.Drill.Material != nil {
		about += ", " + r.Drill.Material.Name
	}
	return about
}

// mostItems is how many reasons are numbered: more nobody keeps in mind.
const mostItems = 5

// Items numbers the reasons of a verdict with their cures, those that decide it first,
// and what is still to be read.
func (r *Result) Items(scr *sheet.Screen, v *sheet.Verdict) {
	told, others := ruled(v)
	if v.Word != Retire.String() { // the cure of a drill that is thrown away helps nobody
		told, others = append(told, others...), nil
	}
	if len(told) > mostItems {
		told, others = told[:mostItems], told[mostItems:]
	}
	for _, u := range told {
		scr.Item(u.fault(r), u.cure(r))
	}
	if n := len(others); n > 0 {
		scr.Say("And {} more that {} wrong: --full tells all.", quantity.Of(quantity.Count, float64(n)), quantity.Say(map[bool]string{true: "is", false: "are"}[n == 1]))
	}
	if v.Word != "" {
		return
	}
	if v.Finer != "" {
		scr.Item(quantity.Sayf("too close to call"), quantity.Sayf("read {}", quantity.Say(v.Finer)))
	}
	for _, u := range r.Verdict.Missing.unread() {
		scr.Item(quantity.Sayf(u.name+" not read"), quantity.Sayf(u.how))
	}
}

// unread is a result that could not be had, and what is to be read for it.
type unread struct{ name, how string }

func (m Missing) unread() []unread {
	var out []unread
	for _, x := range [...]struct {
		missing bool
		unread
	}{
		{m.Lips, unread{"lip height", "indicator, or both lip lengths: lip-length A,B"}},
		{m.Point, unread{"both lip angles", "gauge on each lip: lip-angle A,B"}},
		{m.Clearance, unread{"clearance", "heel below the lip? clearance A,B or heel-drop"}},
		{m.Chisel, unread{"chisel edge", "two of web, chisel-angle, chisel-length"}},
	} {
		if x.missing {
			out = append(out, x.unread)
		}
	}
	return out
}

// ruled returns the rules behind the reasons of a verdict: those that decide it, and
// the others.
func ruled(v *sheet.Verdict) (deciding, others []*rule) {
	for _, code := range v.Reasons {
		switch u := ruleOf(code); {
		case u.fault == nil:
		case u.verdict.String() == v.Word:
			deciding = append(deciding, u)
		default:
			others = append(others, u)
		}
	}
	return deciding, others
}

// ruleOf returns the rule of that code.
func ruleOf(code string) *rule {
	i := slices.IndexFunc(rules[:], func(u rule) bool { return u.code == code && code != "" })
	return &rules[max(i, 0)]
}

// ServesRow shows how deep a hole a drill still serves for that is too short for the one
// asked for.
func ServesRow(scr *sheet.Screen, depth float64) {
	if depth > 0 {
		scr.Show(sheet.Row{Label: quantity.Sayf("good for holes to"), Kind: quantity.Word, Text: quantity.Sayf("{} deep, if the crib wants to keep it", quantity.MM(depth))})
	}
}

// WearRows shows the wear that was read and has to be ground out.
func (r *Result) WearRows(s *sheet.Sheet, scr *sheet.Screen) {
	for _, x := range [...]struct {
		label, key string
		worn       float64
	}{{"lip chipped", "lip_chip_mm", r.Wear.Chip}, {"corner rounded", "corner_wear_mm", r.Wear.Corner}, {"margin worn up", "margin_wear_mm", r.Wear.Margin}} {
		if x.worn > 0 {
			scr.Show(s.Row(x.label, x.key))
		}
	}
}

// LipRows shows how the lips stand to each other.
func (r *Result) LipRows(s *sheet.Sheet, scr *sheet.Screen) {
	row := s.Row(highBy(r.Lips.Height), "lip_height_difference_mm").Size()
	row.Gauge = quantity.Indicator
	if r.Lips.TakenLevel {
		row.Marks = nil
	}
	if known(r.Lips.Height) && r.Lips.High() == 0 {
		row = level(row)
	}
	scr.Show(row)
	if r.Outside(MidLipLimit) && !r.Outside(LipHeightLimit) {
		mid := s.Row(highBy(r.Lips.MidLip), "lip_height_mid_lip_mm").Size()
		mid.Text = quantity.Sayf("half way in")
		scr.Show(mid)
	}
	if r.Outside(AngleDifferenceLimit) {
		scr.Show(s.Row("lips apart", "lip_angle_difference_deg").Size())
	}
}

// level shows lips that stand even.
func level(row sheet.Row) sheet.Row {
	row.Label, row.Word, row.Band = quantity.Sayf("lips"), "level", nil
	return row
}

// highBy says which lip is the high one.
func highBy(height float64) string { return higher(height) + " is high by" }

func higher(height float64) string {
	if height < 0 {
		return "lip 2"
	}
	return "lip 1"
}

// PointRow shows each lip's angle beside half the point's band. The sum is what is held
// to it.
func (r *Result) PointRow(s *sheet.Sheet, scr *sheet.Screen) {
	sum := s.Row("", "point_angle_deg")
	if len(sum.Marks) == 0 {
		return
	}
	row := sheet.Row{Label: quantity.Sayf("point angle {}", quantity.Rad(r.Point.Angle)), Kind: quantity.Angle, Gauge: quantity.Protractor}
	row.Marks = []sheet.Mark{lipAngle(r.Point.K1)}
	if r.Point.Both {
		row.Marks = append(row.Marks, lipAngle(r.Point.K2))
	} else {
		half := sum.Marks[0]
		row.Marks[0].Low, row.Marks[0].High = half.Low/2, half.High/2
	}
	row = row.HeldAs(s, "point_angle_deg", 0.5)
	if band := row.Band; band != nil && len(row.Marks) == 2 && row.Outside() { // which lip, where it is one
		for i, k := range [...]float64{r.Point.K1, r.Point.K2} {
			if k >= band.Low && k <= band.High {
				row.Marks[i].State = sheet.Within
			}
		}
	}
	scr.Show(row)
}

func lipAngle(k float64) sheet.Mark { return sheet.Mark{Value: k, Low: math.NaN(), High: math.NaN()} }

// ClearanceRows shows each lip's clearance, and how far they are apart where that
// matters.
func (r *Result) ClearanceRows(s *sheet.Sheet, scr *sheet.Screen) {
	keys := []string{"lip_clearance_1_deg", "lip_clearance_2_deg"}
	if !r.Clearance.Both {
		keys = keys[:1]
	}
	scr.Show(s.Row("lip clearance", keys...))
	if r.Outside(ClearanceDifferenceLimit) {
		scr.Show(s.Row("clearances apart", "clearance_difference_deg").Size())
	}
	if r.Outside(WorkingLimit) || r.Outside(LeastWorkingLimit) {
		scr.Show(s.Row("heel drags above", "feed_limit_mm").Saying("a turn; {} was asked for", quantity.Of(quantity.Feed, r.Drill.Feed)))
	}
}

// ChiselRows shows the chisel edge, or the web alone where that is all there is of it.
func (r *Result) ChiselRows(s *sheet.Sheet, scr *sheet.Screen) {
	scr.Show(s.Row("chisel-edge angle", "chisel_angle_deg"))
	edge := s.Row("chisel edge", "chisel_length_mm").HeldAs(s, "chisel_ratio", r.Drill.D)
	scr.Show(edge)
	if len(edge.Marks) == 0 {
		scr.Show(s.Row("web", "web_mm").HeldAs(s, "web_ratio", r.Drill.D))
	}
}

// WebRow shows the web after what is to come off.
func (r *Result) WebRow(s *sheet.Sheet, scr *sheet.Screen) {
	if !(r.Web.Remove > 0) {
		return
	}
	row := s.Row("", "web_after_mm").Called("web, {} off", quantity.MM(r.Web.Remove))
	if known(r.Web.ChiselAfter) {
		scr.Show(row.Saying("now {}; chisel edge then {}", quantity.MM(r.Chisel.Web), quantity.MM(r.Web.ChiselAfter)))
		return
	}
	scr.Show(row.Saying("now {}", quantity.MM(r.Chisel.Web)))
}

// read tells of readings that show nowhere else.
func (r *Result) read(scr *sheet.Screen) {
	if known(r.Drill.Feed) && !r.Drill.FeedAssumed {
		scr.Note("read", "feed {} a turn", quantity.Of(quantity.Feed, r.Drill.Feed))
	}
	if known(r.Wear.Depth) {
		scr.Note("read", "hole {} deep", quantity.MM(r.Wear.Depth))
	}
}

// unread tells what was not looked at, and would matter.
func (r *Result) unread(s *sheet.Sheet, scr *sheet.Screen) {
	var names []string
	if s.Verdict.Word != "" {
		for _, u := range r.Verdict.Missing.unread() {
			names = append(names, u.name)
		}
	}
	if wear := r.wearUnread(); wear != "" && s.Verdict.Word != "fit" {
		names = append(names, wear)
	}
	if !known(r.Wear.Flute) {
		names = append(names, "flute")
	}
	if names != nil {
		scr.Note("unread", strings.Join(names, ", "))
	}
}

// wearUnread names the kinds of wear that were not read.
func (r *Result) wearUnread() string {
	var names []string
	for _, x := range [...]struct {
		worn float64
		name string
	}{{r.Wear.Flank, "wear land"}, {r.Wear.Corner, "corners"}, {r.Wear.Margin, "margin"}} {
		if !known(x.worn) {
			names = append(names, x.name)
		}
	}
	return strings.Join(names, ", ")
}

// evenUp says what evening the lips up takes more off the high one than off the other.
func (r *Result) evenUp() quantity.Text {
	plan, ok := r.Evening()
	if !ok {
		return quantity.Sayf("even them up")
	}
	outer, inner := plan.Stock1Outer-plan.Stock2Outer, plan.Stock1Inner-plan.Stock2Inner
	where := " at the corner"
	more := outer
	switch {
	case math.Abs(outer-inner) < handbook.CleanUp/10:
		where = ""
	case math.Abs(inner) > math.Abs(outer):
		where, more = " at the web", inner
	}
	return quantity.Sayf("take {} more off {}"+where, quantity.MM(math.Abs(more)), quantity.Say(higher(more)))
}

// LipItems says what evening the lips up takes off each, where it takes anything.
func (r *Result) LipItems(scr *sheet.Screen) {
	plan, ok := r.Evening()
	if ok && plan.Most() < 0.005 {
		return
	}
	target := r.Target()
	for i, x := range [...]struct{ k, inner, outer float64 }{
		{r.Point.K1, plan.Stock1Inner, plan.Stock1Outer}, {r.Point.K2, plan.Stock2Inner, plan.Stock2Outer},
	} {
		lip := quantity.Sayf("lip {}", quantity.Of(quantity.Count, float64(i+1)))
		switch off := x.k - target; {
		case off > benchAngle/2:
			lip = quantity.Sayf("lip {} is {} too blunt", quantity.Of(quantity.Count, float64(i+1)), quantity.Rad(off))
		case off < -benchAngle/2:
			lip = quantity.Sayf("lip {} is {} too sharp", quantity.Of(quantity.Count, float64(i+1)), quantity.Rad(-off))
		}
		switch {
		case ok:
			scr.Item(lip, ends(x.inner, x.outer))
		case math.Abs(x.k-target) > benchAngle/2:
			scr.Item(lip, quantity.Sayf("grind it to {}", quantity.Rad(target)))
		}
	}
}

// ends says what comes off a lip at the web and at the corner.
func ends(inner, outer float64) quantity.Text {
	const nothing = 0.005
	switch {
	case inner < nothing && outer < nothing:
		return quantity.Sayf("leave it alone")
	case inner < nothing:
		return quantity.Sayf("{} off it at the corner, none at the web", quantity.MM(outer))
	case outer < nothing:
		return quantity.Sayf("{} off it at the web, none at the corner", quantity.MM(inner))
	case math.Abs(inner-outer) < nothing:
		return quantity.Sayf("{} off it, all along", quantity.MM(outer))
	}
	return quantity.Sayf("{} off it at the web, {} at the corner", quantity.MM(inner), quantity.MM(outer))
}

// HeelRow shows the heel drops that were read beside those that the limits of the
// clearance make.
func (r *Result) HeelRow(scr *sheet.Screen) {
	c := &r.Clearance
	row := sheet.Row{Label: quantity.Sayf("heel drop over {}", quantity.Rad(c.Turn)), Kind: quantity.Length, Gauge: quantity.Indicator, Marks: []sheet.Mark{{Value: c.Drop1, Low: math.NaN(), High: math.NaN()}}}
	if c.Both {
		row.Marks = append(row.Marks, sheet.Mark{Value: c.Drop2, Low: math.NaN(), High: math.NaN()})
	}
	limit := r.Limit(Clearance1Limit)
	row.Band = &handbook.Band{Low: point.DropOfClearance(limit.Low, r.Drill.D, c.Turn), High: point.DropOfClearance(limit.High, r.Drill.D, c.Turn), Source: limit.Source}
	for i := range row.Marks {
		row.Marks[i].State = r.Held[Clearance1Limit+sheet.Limit(i)].State()
	}
	scr.Show(row)
}

// CloseCalls tells of what is past its limit by less than a bench gauge can tell.
func (r *Result) CloseCalls(scr *sheet.Screen) {
	for i, near := range r.Verdict.Borderline {
		if near && rules[i].fault != nil {
			fault := rules[i].fault(r)
			scr.Note("note", fault.Format+": past its limit by less than a bench gauge tells; read it again", fault.Args...)
			return
		}
	}
}

func (c *Clearance) lowLip(r *Result) string {
	return lipsWith(c, func(v float64) bool { return v < r.Limit(Clearance1Limit).Low })
}

func (c *Clearance) highLip(r *Result) string {
	return lipsWith(c, func(v float64) bool { return v > r.Limit(Clearance1Limit).High })
}

// lipsWith names the lips whose clearance is so: "lip 1 has", "both lips have".
// Outside names the lips that have too little or too much: "LIP 1", "BOTH LIPS".
func (c *Clearance) Outside(r *Result) string {
	names := map[string]string{"the lips have": "BOTH LIPS", "lip 1 has": "LIP 1", "lip 2 has": "LIP 2"}
	if r.Verdict.Reasons[ClearanceLow] {
		return names[c.lowLip(r)]
	}
	return names[c.highLip(r)]
}

func lipsWith(c *Clearance, so func(float64) bool) string {
	switch one, two := so(c.Lip1), so(c.Lip2); {
	case !c.Both || one && two:
		return "the lips have"
	case one:
		return "lip 1 has"
	default:
		return "lip 2 has"
	}
}
