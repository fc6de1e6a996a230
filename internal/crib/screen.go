package crib

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// What a person is shown of a crib: what is to be done, a line a drill.

// line begins the line of a drill: its id and its size.
func (d *Drill) line(cells ...quantity.Text) sheet.ListLine {
	return sheet.ListLine{System: d.Readings.System(), Cells: append([]quantity.Text{said(d.ID), said(d.size())}, cells...)}
}

// size returns the size as a person writes it: "12 mm".
func (d *Drill) size() string { return d.Readings.AsRead(drill.Size)[0].Spaced() }

// said is a word as a text.
func said(word string) quantity.Text { return quantity.Sayf("{}", quantity.Say(word)) }

func angle(label string) sheet.Column { return sheet.Column{Label: label, Kind: quantity.Angle} }

// drillsOf says how many drills there are.
func drillsOf(n int) string {
	if n == 1 {
		return "1 drill"
	}
	return strconv.Itoa(n) + " drills"
}

// picked says how many drills are shown of those that are there.
func (c *Crib) picked(n int) string {
	if all := len(c.there()); n < all {
		return fmt.Sprintf("%d of %s", n, drillsOf(all))
	}
	return drillsOf(n)
}

// empty says what there is to do about a crib without drills, and reports whether it
// is one.
func (c *Crib) empty(scr *sheet.Screen, shown int) bool {
	switch {
	case len(c.Drills) == 0:
		scr.Head, scr.About = quantity.Sayf("NO DRILLS YET"), ""
		scr.Say("Write them into {}, one below the other: an id, a size, and what was read of it.", quantity.Say(c.File))
	case len(c.there()) == 0 && shown == 0:
		scr.Head, scr.About = quantity.Sayf("NO DRILL IS LEFT"), ""
	case shown == 0:
		scr.Head, scr.About = quantity.Sayf("NO DRILL IS LIKE THAT"), "of "+drillsOf(len(c.Drills))
		scr.Next = append(scr.Next, sheet.Next{Command: "crib list", Says: "all of them"})
	default:
		return false
	}
	return true
}

// mostWarnings is how many of what a file leaves in doubt a screen tells.
const mostWarnings = 3

// foot adds to a screen what the file leaves in doubt, and how many drills are gone.
func (c *Crib) foot(scr *sheet.Screen, s *sheet.Sheet, more ...string) *sheet.Screen {
	warnings := 0
	for _, f := range s.Findings {
		if f.Severity == sheet.Note {
			continue
		}
		if warnings++; warnings <= mostWarnings {
			scr.Note("note", f.Text.Format, f.Text.Args...)
		}
	}
	if n := warnings - mostWarnings; n > 0 {
		scr.Note("note", "{} more with --full", quantity.Of(quantity.Count, float64(n)))
	}
	if n := c.gone(); n > 0 && s.Command != "crib list" {
		scr.Note("note", drillsOf(n)+" thrown away, counted nowhere")
	}
	for _, m := range more {
		scr.Note("more", m)
	}
	return scr
}

// listScreen shows the drills as they stand in the file.
func (c *Crib) listScreen(drills []*Drill, s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{Head: quantity.Sayf(strings.ToUpper(drillsOf(len(drills)))), About: c.Name}
	if c.empty(scr, len(drills)) {
		return c.foot(scr, s)
	}
	if n := len(c.Drills); len(drills) < n {
		scr.Head = quantity.Sayf(fmt.Sprintf("%d OF %d DRILLS", len(drills), n))
	}
	list := sheet.List{Columns: []sheet.Column{word("", "drill"), word("", "size"), word("", "series"), word("", "shank"), count("", "grinds"), word("", "note")}}
	var lines []sheet.ListLine
	for _, d := range drills {
		ground := ""
		if n, _ := d.Grinds(); n > 0 {
			ground = strconv.Itoa(n)
		}
		line := d.line(said(d.Series), said(d.Shank), said(ground))
		if day := d.Retired(); day != "" {
			line.Says = append(line.Says, said("thrown away "+day))
		}
		if d.Note != "" {
			line.Says = append(line.Says, said(d.Note))
		}
		lines = append(lines, line)
	}
	list.Groups = []sheet.ListGroup{{Lines: lines}}
	scr.Lists = append(scr.Lists, list)
	scr.Next = append(scr.Next, sheet.Next{Command: "crib audit", Says: "what each of them needs"})
	return c.foot(scr, s, "--full  the days of the last entries", "--format csv  every reading")
}

// auditScreen shows what each drill needs, the worst first, and of those that need
// nothing the names.
func (c *Crib) auditScreen(drills []Judged, s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: c.picked(len(drills))}
	if c.empty(scr, len(drills)) {
		return c.foot(scr, s)
	}
	var list sheet.List
	var heads []string
	for len(drills) > 0 {
		n := 1
		for n < len(drills) && drills[n].Word() == drills[0].Word() {
			n++
		}
		group := sheet.ListGroup{Word: judge.Shown(drills[0].Verdict), Flow: drills[0].Word() == "fit"}
		group.Lines = make([]sheet.ListLine, n)
		inParts(n, func(from, to int) {
			for i := from; i < to; i++ {
				group.Lines[i] = drills[i].auditLine()
			}
		})
		heads = append(heads, strconv.Itoa(n)+" "+group.Word)
		list.Groups = append(list.Groups, group)
		drills = drills[n:]
	}
	scr.Head = quantity.Sayf(strings.Join(heads, ", "))
	scr.Lists = append(scr.Lists, list)
	if len(list.Groups) > 1 || !list.Groups[0].Flow {
		scr.Next = append(scr.Next, sheet.Next{Command: "crib plan", Says: "the order to grind in, what to buy"})
	}
	scr.Foot = append(scr.Foot, command.AtBench.Foot())
	return c.foot(scr, s, "( ) is what is allowed", "--full  every reason", "--format csv  a sheet")
}

func (j *Judged) auditLine() sheet.ListLine {
	if j.Word() == "fit" {
		return sheet.ListLine{Cells: []quantity.Text{said(j.ID)}}
	}
	line := j.line()
	r := judge.Compute(j.Readings)
	line.Says = r.Brief(j.Verdict)
	return line
}

// planScreen shows what to take to the grinder and in what order, and below it what to
// throw away, to measure and to buy.
func (c *Crib) planScreen(day *Day, s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: c.picked(len(day.Tasks))}
	if len(day.Buy) == 0 && c.empty(scr, len(day.Tasks)) {
		return c.foot(scr, s)
	}
	grinder := sheet.List{Columns: []sheet.Column{count("", ""), word("", "drill"), word("", "size"), angle("lips"), angle("clear"), sheet.Lengths("", "off the end"), word("", "more off")}}
	grinder.Groups = make([]sheet.ListGroup, 1)
	below := []sheet.ListGroup{{Word: "RETIRE", Flow: true}, {Word: "MEASURE", Flow: true}, {Word: "BUY", Flow: true}}
	retire, measure, buy := &below[0], &below[1], &below[2]
	for i := range day.Tasks {
		t := &day.Tasks[i]
		name := sheet.ListLine{System: t.Readings.System(), Cells: []quantity.Text{said(t.ID)}}
		switch t.Do {
		case ToGrind, ToThin:
			grinder.Groups[0].Lines = append(grinder.Groups[0].Lines, t.grindLine(i+1))
		case ToRetire:
			name.Says = t.Plan.WhyRetired(t.Verdict)
			retire.Lines = append(retire.Lines, name)
		case ToMeasure:
			name.Says = t.Plan.Found.Brief(&sheet.Verdict{Finer: t.Finer})
			measure.Lines = append(measure.Lines, name)
		}
	}
	for _, p := range day.Buy {
		buy.Lines = append(buy.Lines, sheet.ListLine{Cells: []quantity.Text{quantity.Sayf(fmt.Sprintf("%d of {}", p.Count()), quantity.Say(p.Size.Spaced()))}})
	}
	if grinder.Groups[0].Lines != nil {
		scr.Lists = append(scr.Lists, grinder)
	}
	below = slices.DeleteFunc(below, func(g sheet.ListGroup) bool { return g.Lines == nil })
	scr.Lists = append(scr.Lists, sheet.List{Groups: below})
	day.head(scr)
	scr.Foot = append(scr.Foot, command.AtWheel.Foot())
	return c.foot(scr, s, "--full  at the web, why each", "--format csv  life left, all of it")
}

// head says how many drills want what, and what to type next.
func (d *Day) head(scr *sheet.Screen) {
	of := map[Do]int{}
	first := map[Do]string{}
	for i := range d.Tasks {
		t := &d.Tasks[i]
		if of[t.Do]++; of[t.Do] == 1 {
			first[t.Do] = t.ID
		}
	}
	for _, p := range d.Buy {
		of[ToBuy] += p.Count()
	}
	var heads []string
	for _, do := range []Do{ToGrind, ToThin, ToRetire, ToMeasure, ToBuy} {
		if of[do] > 0 {
			heads = append(heads, strings.ToUpper(string(do))+" "+strconv.Itoa(of[do]))
		}
	}
	if heads == nil {
		scr.Head = quantity.Sayf("NOTHING TO DO")
		scr.Say("Every drill is fit as far as it was read, and no size is short.")
		return
	}
	scr.Head = quantity.Sayf(strings.Join(heads, ", "))
	var next sheet.Next
	switch {
	case of[ToGrind]+of[ToThin] > 0:
		next = sheet.Next{Command: "regrind", Drill: d.Tasks[0].ID, Says: "the first, lip by lip"}
	case of[ToRetire] > 0:
		next = sheet.Next{Command: "crib record", Drill: first[ToRetire], Args: "--retired", Says: "once it is thrown away"}
	case of[ToMeasure] > 0:
		next = sheet.Next{Command: "inspect", Drill: first[ToMeasure], Args: "--ask", Says: "asks for what is missing"}
	default:
		return
	}
	scr.Next = append(scr.Next, next)
}

// grindLine is a drill at the grinder.
func (t *Task) grindLine(turn int) sheet.ListLine {
	lips, clear, off := quantity.Text{}, quantity.Text{}, quantity.Text{}
	if t.Do == ToGrind && t.Plan.Made {
		lips, clear, off = quantity.Sayf("{}", quantity.Set(t.halfAngle())), quantity.Sayf("{}", quantity.Set(t.Plan.Found.Clearance.Aim)), quantity.Sayf("{}", quantity.MM(t.Plan.Stock.Total))
	}
	line := t.line(lips, clear, off)
	line.Cells = append([]quantity.Text{said(strconv.Itoa(turn))}, line.Cells...)
	line.Says = t.Plan.Brief()
	return line
}

// screen shows what a record has changed, or would change, and what the drill wants now.
func (o *Outcome) screen(s *sheet.Sheet, dryRun bool, was, is *sheet.Verdict) *sheet.Screen {
	scr := &sheet.Screen{Head: quantity.Sayf("RECORDED, ")}
	if dryRun {
		scr.Head = quantity.Sayf("NOT WRITTEN, ")
	}
	switch o.Event.What {
	case Grind:
		scr.Head = quantity.Sayf(scr.Head.Format+"{} ground off", quantity.MM(o.Event.Stock))
	default:
		scr.Head.Format += map[What]string{Thinning: "web thinned", Readings: "read anew", Correction: "put right", Retired: "thrown away"}[o.Event.What]
	}
	scr.About = o.New.AsRead(drill.Size)[0].Spaced() + " drill, " + o.Event.Date
	for _, f := range s.Findings {
		if f.Severity != sheet.Note || f.Code == "retired" {
			scr.Says = append(scr.Says, f.Text)
		}
	}
	if o.Event.What == Retired {
		scr.Next = append(scr.Next, sheet.Next{Command: "crib plan", Says: "what is left to do, what to buy"})
		return scr
	}
	r := judge.Compute(o.New)
	r.Items(scr, is)
	if !dryRun {
		next := judge.Next(is.Word)
		next.Drill = o.ID
		scr.Next = append(scr.Next, next)
	}
	scr.Lists = append(scr.Lists, o.changes(judge.Shown(was), judge.Shown(is)))
	scr.Foot = append(scr.Foot, command.AtBench.Foot())
	if dryRun {
		scr.Note("more", "without --dry-run it is written")
	}
	scr.Note("more", "--full  each reading as it stands in the file")
	return scr
}

// changes lists the verdict and the readings as they were and as they are.
func (o *Outcome) changes(was, is string) sheet.List {
	lines := []sheet.ListLine{{Cells: []quantity.Text{said("verdict"), said(was), said(is)}}}
	for _, m := range o.Moves {
		now := reading(o.New, m.Reading)
		if m.To == "" {
			now = said("unread")
			switch m.Reading.Spec().Ground {
			case drill.WornAway, drill.TakenOff, drill.WearsOff:
				now = said("none")
			}
		}
		lines = append(lines, sheet.ListLine{Cells: []quantity.Text{said(strings.ReplaceAll(m.Reading.String(), "-", " ")), reading(o.Old, m.Reading), now}, Says: []quantity.Text{said(m.Why)}})
	}
	return sheet.List{Below: true, Columns: []sheet.Column{word("", ""), word("", "was"), word("", "is")}, Groups: []sheet.ListGroup{{Lines: lines}}}
}

// reading is a reading as a person is shown it, the unit of a pair once.
func reading(d *drill.Drill, r drill.Reading) quantity.Text {
	spec, values := r.Spec(), d.Values(r)
	if spec.Kind == quantity.Word || len(values) == 0 {
		return said(d.Written(r))
	}
	var text quantity.Text
	for i, v := range values {
		if i > 0 {
			text.Format += ", "
		}
		text.Format += "{}"
		text.Args = append(text.Args, quantity.Arg{Kind: spec.Kind, Gauge: spec.Gauge, Value: v, Bare: i < len(values)-1})
	}
	return text
}

// newScreen says that a crib's file was written, and how to go on.
func (c *Crib) newScreen(s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{Head: quantity.Sayf("WRITTEN"), About: c.File}
	next := sheet.Next{Command: "crib audit", Says: "what each of them needs"}
	if len(c.Drills) == 0 {
		scr.Say("No drill is in it yet: write them in, one below the other. The file shows how.")
		next.Says = "once there are drills in it"
	} else {
		scr.Say(drillsOf(len(c.Drills)) + " to try things on.")
	}
	scr.Next = append(scr.Next, next)
	for _, f := range s.Findings {
		scr.Note("note", f.Text.Format, f.Text.Args...)
	}
	return scr
}
