package spindle

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"evenlip/internal/cutting"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// What a person at the spindle is shown first.

// load prints a range of forces or torques: "4.8 to 5.7 kN".
func between(kind quantity.Kind, low, high float64) quantity.Text {
	if !(high-low > 0.005*high) {
		return quantity.Sayf("{}", quantity.Of(kind, high))
	}
	return quantity.Sayf("{} to {}", quantity.Arg{Kind: kind, Value: low, Bare: true}, quantity.Of(kind, high))
}

// join puts texts one behind the other.
func join(texts ...quantity.Text) quantity.Text {
	var out quantity.Text
	for _, t := range texts {
		out.Format += t.Format
		out.Args = append(out.Args, t.Args...)
	}
	return out
}

func (w *work) thrustScreen(s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: w.Found.About(s, true)}
	if scr.Want(s, "thrust_n") {
		return scr
	}
	low, high := w.force.Thrust, w.force.Thrust
	if sheet.Known(w.second) {
		low, high = math.Min(low, w.second), math.Max(high, w.second)
	}
	scr.Head = join(quantity.Sayf("PUSH "), between(quantity.Force, low, high), quantity.Sayf(", TORQUE {}", quantity.Of(quantity.Torque, w.force.Torque)))
	ways := "By the handbook's way, which knows the chisel edge"
	if sheet.Known(w.second) {
		ways = "By two published ways"
	}
	switch {
	case sheet.Known(w.land):
		scr.Say(ways+", for a wear land of {} at {} a turn.", quantity.MM(w.land), quantity.Of(quantity.Feed, w.load.Feed))
	case w.wearTaken:
		scr.Say(ways+", for a drill in normal use at {} a turn.", quantity.Of(quantity.Feed, w.load.Feed))
	default:
		scr.Say(ways+", worn by a factor of {}, at {} a turn.", quantity.Num(w.load.Wear), quantity.Of(quantity.Feed, w.load.Feed))
	}
	if w.held[chiselLimit].Outside() {
		scr.Item(quantity.Sayf("chisel edge {} long", quantity.MM(w.edge.length)), quantity.Sayf("it takes {} of the push: thin the web", quantity.Of(quantity.Share, w.force.ChiselShare)))
		scr.Told = "chisel-long"
		scr.Next = append(scr.Next, sheet.Next{Command: "thin", Says: "how deep a notch, and the push it saves"})
	} else {
		scr.Next = append(scr.Next, sheet.Next{Command: "pilot", Says: "a pilot takes the chisel edge out of the cut"})
	}
	scr.Tables = append(scr.Tables, w.loads())
	edge := s.Row("chisel edge", "chisel_length_mm").HeldAs(s, "chisel_ratio", w.load.D)
	scr.Show(edge)
	if sheet.Known(w.force.ChiselShare) {
		scr.Show(s.Row("it takes", "chisel_share").Saying("of the push"))
	}
	if sheet.Known(w.load.Rpm) {
		scr.Show(s.Row("power at the motor", "power_motor_kw"))
	} else {
		scr.Note("unread", "rpm, for the power")
	}
	return scr
}

// loads sets this drill, sharp and as worn as it is, and a new one side by side, by both
// ways.
func (w *work) loads() sheet.Grid {
	g := sheet.Grid{Columns: []sheet.Column{
		{Label: "", Kind: quantity.Word}, {Label: "push, sharp", Kind: quantity.Force}, {Label: "worn", Kind: quantity.Force, Bare: true},
		{Label: "torque, sharp", Kind: quantity.Torque}, {Label: "worn", Kind: quantity.Torque, Bare: true},
	}}
	sharp := w.load
	sharp.Wear, sharp.WearTorque = 1, 0
	row := func(name string, factors cutting.Factors) {
		a, b := sharp.With(factors), w.load.With(factors)
		g.Rows = append(g.Rows, []sheet.Cell{sheet.W(name), sheet.V(a.Thrust), sheet.V(b.Thrust), sheet.V(a.Torque), sheet.V(b.Torque)})
	}
	row("by chisel edge and web", w.force.Factors)
	if sheet.Known(w.second) {
		g.Rows = append(g.Rows, []sheet.Cell{sheet.W("by one figure"), sheet.V(w.second / w.load.Wear), sheet.V(w.second), sheet.V(math.NaN()), sheet.V(math.NaN())})
	}
	row("a new drill", cutting.FactorsOf(w.newRatio()))
	return g
}

func (t *thinning) screen(s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: s.Drill, Told: "core-weak chisel-short web-spent chisel-angle-first"}
	if scr.Want(s, "web_target_mm") {
		return scr
	}
	web, notch := quantity.MM(t.WebTarget), quantity.MM(t.NotchDepth)
	switch {
	case t.is(spentLimit):
		scr.Verdict = "RETIRE"
		scr.Item(quantity.Sayf("web {} thick", quantity.MM(t.edge.web)), quantity.Sayf("more than thinning can answer"))
		scr.Next = append(scr.Next, sheet.Next{Command: "crib record", Args: "--retired", Says: "takes it out of audit and plan"})
	case !t.Needed:
		scr.Head = quantity.Sayf("TAKE NOTHING OFF")
		scr.Say("The web, {}, is no thicker than what was asked for would leave.", quantity.MM(t.edge.web))
	case t.is(coreLimit):
		scr.Head = quantity.Sayf("DO NOT THIN SO FAR")
		scr.Item(quantity.Sayf("a web of {}", web), quantity.Sayf("too weak a core: the point splits"))
	default:
		scr.Head = quantity.Sayf("THIN THE WEB TO {}", web)
		t.steps(scr, notch)
	}
	if now := &t.held[chiselLimit]; t.Needed && now.State() == sheet.Within {
		scr.Say("As it is the chisel edge is within its limit: thinning can wait.")
	}
	scr.Show(s.Row("chisel edge now", "chisel_length_mm").HeldTo(t.held[chiselLimit], t.load.D))
	if t.Needed {
		scr.Show(s.Row("chisel edge, thinned", "chisel_length_after_mm").HeldAs(s, "chisel_ratio_after", t.load.D))
		scr.Show(s.Row("web, thinned", "web_target_mm").Saying("now {}; a new one about {}", quantity.MM(t.edge.web), quantity.MM(handbook.NewWeb(t.load.D))))
		push := s.Row("push, thinned", "thrust_after_n")
		if before := t.at(t.RatioBefore).Thrust; sheet.Known(before) {
			push = push.Saying("now {}: {} less", quantity.Of(quantity.Force, before), quantity.Of(quantity.Share, 1-t.ThrustRatio))
		}
		scr.Show(push)
	}
	return scr
}

// steps says how a web is thinned, and what to look at then.
func (t *thinning) steps(scr *sheet.Screen, notch quantity.Arg) {
	if a := &t.Found.Held[judge.ChiselAngleLimit]; a.Outside() {
		scr.Item(quantity.Sayf("chisel edge at {}", quantity.Rad(a.Value)), quantity.Sayf("grind the point right first, then measure again"))
	}
	how := "along each lip, both sides alike"
	if t.is(splitLimit) {
		how = "a split point's: on a machine, not by hand"
	}
	scr.Item(quantity.Sayf("a notch {} deep", notch), quantity.Sayf(how))
	most := t.held[chiselLimit].High * t.load.D
	scr.Item(quantity.Sayf("then measure the chisel edge"), quantity.Sayf("{} is right, {} the most", quantity.MM(t.ChiselAfter), quantity.MM(most)))
	scr.Next = append(scr.Next, sheet.Next{Command: "crib record", Args: "--thinning", Says: "when it is done"})
}

func (p *piloted) screen(s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: p.Found.About(s, true), Told: "pilot-wider-than-chisel pilot-narrower-than-web pilot-deep pilot-over-wide"}
	if scr.Want(s, "pilot_mm") {
		return scr
	}
	bore := quantity.MM(p.bore)
	name := quantity.Sayf("{}", bore)
	if p.use.Name != "" && !p.given {
		name = quantity.Sayf("{}", quantity.Say(p.use.Name))
	}
	falls := sheet.Known(p.over.Thrust, p.force.Thrust) && !p.narrow() && !p.wide()
	switch {
	case p.narrow():
		scr.Head = quantity.Sayf("PILOT {} HELPS NOTHING", bore)
		scr.Item(quantity.Sayf("narrower than the web, {}", quantity.MM(p.low)), quantity.Sayf("drill it {} to {}", quantity.MM(p.low), quantity.MM(p.high)))
		falls = false
	case p.wide():
		scr.Head = quantity.Sayf("PILOT {} IS TOO WIDE", bore)
		scr.Item(quantity.Sayf("over the chisel edge, {}", quantity.MM(p.high)), quantity.Sayf("the drill pulls itself in: power feed, or hold it back"))
	case p.small():
		scr.Head = quantity.Sayf("NO PILOT")
		scr.Say("Spot the hole and start: a drill of up to {} wants none.", p.smallestSize())
		falls = false
	case !p.given && len(p.sizes) == 0:
		scr.Head = join(quantity.Sayf("PILOT "), quantity.Sayf("{} to {}", quantity.MM(p.low), quantity.MM(p.high)))
		scr.Say("No ordinary size lies between the web and the chisel edge.")
	default:
		scr.Head = join(quantity.Sayf("PILOT "), name)
	}
	if falls {
		scr.Say("Push falls from about {} to {}, as deep as the pilot goes.", quantity.Of(quantity.Force, p.force.Thrust), quantity.Of(quantity.Force, p.over.Thrust))
		deep := p.depth / p.bore
		switch {
		case sheet.Known(p.depth) && deep > handbook.DeepestPecked:
			scr.Say("A diameter or two deep it only places the hole; {} is {} diameters of it: peck.", quantity.MM(p.depth), diameters(deep))
		default:
			scr.Say("A diameter or two deep it only places the hole.")
		}
		if !p.given && p.use.Name != "" {
			scr.Next = append(scr.Next, sheet.Next{Command: "speed", Bare: true, Says: "rpm and feed for it",
				Args: "--size " + typed(p.use.Name) + materialFlag(&p.Found) + p.depthFlag()})
		}
	}
	row := s.Row("pilot", "pilot_mm")
	if sheet.Known(p.low, p.high) {
		row.Band = &handbook.Band{Low: p.low, High: p.high, Source: p.held[pilotLimit].Source}
	}
	scr.Show(row)
	if row.Band != nil {
		scr.Show(sheet.Row{Label: quantity.Sayf("between"), Kind: quantity.Word, Text: quantity.Sayf("under the web no help; over the chisel edge it grabs")})
	}
	if names := p.sizeNames(); names != "" {
		scr.Show(sheet.Row{Label: quantity.Sayf("sizes that serve"), Kind: quantity.Word, Text: quantity.Sayf("{}", quantity.Say(names))})
	}
	return scr
}

// typed is a size's name as a command line takes it: 2.5mm, '#43'.
func typed(name string) string {
	name = strings.ReplaceAll(name, " ", "")
	if strings.HasPrefix(name, "#") {
		return "'" + name + "'"
	}
	return name
}

// materialFlag names the work on a command line, where it was given.
func materialFlag(r *judge.Result) string {
	if r.Drill.Material == nil || !r.Drill.Given {
		return ""
	}
	return " --material " + r.Drill.Material.Name
}

func (p *piloted) depthFlag() string {
	if !sheet.Known(p.depth) {
		return ""
	}
	if p.inch() {
		return " --depth " + strconv.FormatFloat(p.depth/25.4, 'g', 4, 64) + "in"
	}
	return " --depth " + strconv.FormatFloat(p.depth, 'g', 4, 64) + "mm"
}

// sizeNames lists the likeliest sizes.
func (p *piloted) sizeNames() string {
	names := ""
	grid := p.grid()
	for i := range grid.Rows {
		if len(grid.Brief) > 0 && !slices.Contains(grid.Brief, i) {
			continue
		}
		if names != "" {
			names += ", "
		}
		names += grid.Rows[i][0].Word
	}
	return names
}

func (r *running) screen(s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: r.Found.About(s, false), Told: "flank-rubs speed-high feed-heavy feed-light hole-very-deep shank-overloaded"}
	if m := r.Found.Drill.Material; m != nil {
		scr.About += " in " + m.Name
	}
	if sheet.Known(r.depth) {
		scr.About += ", " + quantity.Format{System: r.load.System, Screen: true}.Text(quantity.Length, quantity.Caliper, r.depth) + " deep"
	}
	if scr.Want(s, "rpm") {
		return scr
	}
	head := quantity.Sayf("{}, {} A TURN", r.turns(), r.feed())
	pecks := r.pecks()
	if n := len(pecks.Rows); n > 1 {
		head = join(head, quantity.Sayf(", {} PECKS", quantity.Of(quantity.Count, float64(n))))
	}
	scr.Head = head
	r.faults(scr)
	if r.cut.Speed > 0 || r.cut.Feed > 0 {
		scr.Say("{} diameters is deep: speed {} and feed {} under what is published.", diameters(r.depthRatio), quantity.Of(quantity.Share, r.cut.Speed), quantity.Of(quantity.Share, r.cut.Feed))
	}
	if time := cutting.HoleTime(r.depth, r.pointLength, r.load.Feed, r.load.Rpm); sheet.Known(time) {
		scr.Say("About {} in the cut. Ease the feed where it breaks through.", quantity.Of(quantity.Duration, time))
	} else {
		scr.Say("Ease the feed where the drill breaks through.")
	}
	if n := len(pecks.Rows); n > 1 {
		depths := quantity.Text{}
		for i, row := range pecks.Rows {
			if i > 0 {
				depths.Format += ", "
			}
			depths.Format += "{}"
			depths.Args = append(depths.Args, quantity.Arg{Kind: quantity.Length, Gauge: quantity.Caliper, Value: row[0].Value, Bare: i < n-1})
		}
		scr.Show(sheet.Row{Label: quantity.Sayf("clear the chips at"), Kind: quantity.Word, Text: depths})
	}
	scr.Show(s.Row("spindle", "rpm"))
	feed := s.Row("feed a turn", "feed_mm")
	if low, high := r.row.Low, r.row.High; feed.Band == nil && sheet.Known(low, high) {
		feed = feed.Saying("published {} to {}", quantity.Of(quantity.Feed, low), quantity.Of(quantity.Feed, high))
	}
	scr.Show(feed)
	scr.Show(s.Row("depth / diameter", "depth_ratio"))
	scr.Show(s.Row("flute", "flute_mm"))
	if sheet.Known(r.force.Thrust) && r.edge.from != asNew {
		push := s.Row("push, about", "thrust_n")
		if sheet.Known(r.force.ChiselShare) {
			push = push.Saying("{} by the chisel edge; torque {}", quantity.Of(quantity.Share, r.force.ChiselShare), quantity.Of(quantity.Torque, r.force.Torque))
		}
		scr.Show(push)
	}
	if usual := handbook.UsualOversize(r.load.D); usual.High > 0 {
		row := s.Row("hole over size by", "usual_oversize_mean_mm")
		scr.Show(row.Saying("usual for the size: {} to {}", quantity.MM(usual.Low), quantity.MM(usual.High)))
	}
	scr.Show(s.Row("stress in the shank", "shank_stress_mpa"))
	return scr
}

// faults numbers what is wrong with a speed, a feed or a depth that was given.
func (r *running) faults(scr *sheet.Screen) {
	if r.rubs() {
		scr.Item(quantity.Sayf("heel drags at {} a turn", r.feed()), quantity.Sayf("feed less, or grind more clearance"))
	}
	if r.is(shankLimit) {
		scr.Item(quantity.Sayf("shank twisted to {}", r.shankShare()), quantity.Sayf("of what it carries: less feed, a pilot, or {} of shank", quantity.MM(r.leastShank())))
	}
	if r.tooFast() {
		scr.Item(quantity.Sayf("too fast for the work"), quantity.Sayf("the corners wear: {} is the most", quantity.Arg{Kind: quantity.Rpm, Gauge: quantity.Setting, Value: cutting.Rpm(r.top, r.load.D)}))
	}
	switch {
	case r.state(feedLimit) == sheet.Over:
		scr.Item(quantity.Sayf("feed far too heavy"), quantity.Sayf("lips chip: {} is published", quantity.Of(quantity.Feed, r.row.High)))
	case r.state(feedLimit) == sheet.Under:
		scr.Item(quantity.Sayf("feed too light"), quantity.Sayf("it rubs more than it cuts: {} or more", quantity.Of(quantity.Feed, r.row.Low)))
	}
	if r.is(depthLimit) {
		scr.Item(quantity.Sayf("{} diameters deep", diameters(r.depthRatio)), quantity.Sayf("past what pecks serve: deep-hole tooling, or great care"))
	}
}
