package crib

import (
	"fmt"
	"math"
	"slices"

	"evenlip/internal/plan"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Plan returns the sheet of the day's plan: for people a list for each thing to
// do, for scripts one list of it all.
func (c *Crib) Plan(day *Day, to Audience) *sheet.Sheet {
	s := c.sheet("crib plan")
	if to == Scripts {
		s.Grids = []sheet.Grid{day.all()}
	} else {
		s.Grids = []sheet.Grid{day.grinder(), day.those("to_retire", "To retire", ToRetire, (*Task).retiredFor), day.those("to_measure", "To measure", ToMeasure, (*Task).because), day.shopping()}
	}
	s.Find("counts", sheet.Note, "{}", quantity.Say(day.counts()+c.andGone()))
	tellDoubts(s, c.there())
	s.Cautions = sheet.Cautions
	s.Screen = func() *sheet.Screen { return c.planScreen(day, s) }
	return s
}

func (d *Day) counts() string {
	of := map[Do]int{}
	for _, t := range d.Tasks {
		of[t.Do]++
	}
	buy := 0
	for _, p := range d.Buy {
		buy += p.Count()
	}
	return fmt.Sprintf("%d to grind, %d to thin, %d to retire, %d to measure, %d to leave as they are; %d to buy",
		of[ToGrind], of[ToThin], of[ToRetire], of[ToMeasure], of[ToLeave], buy)
}

func grindColumns() []sheet.Column {
	return []sheet.Column{
		{Key: "lip_angle_deg", Label: "lips at", Kind: quantity.Angle, Gauge: quantity.Setting},
		sheet.Lengths("take_1_inner_mm", "1 inner"), sheet.Lengths("take_1_outer_mm", "1 outer"),
		sheet.Lengths("take_2_inner_mm", "2 inner"), sheet.Lengths("take_2_outer_mm", "2 outer"),
		sheet.Lengths("web_target_mm", "thin to"),
	}
}

// clearance is what the flanks are ground to.
var clearance = sheet.Column{Key: "clearance_deg", Label: "clear", Kind: quantity.Angle, Gauge: quantity.Setting}

func (t *Task) clearanceCell() sheet.Cell {
	if t.Do == ToGrind && t.Plan.Made {
		return sheet.V(t.Plan.Found.Clearance.Aim)
	}
	return sheet.V(math.NaN())
}

// causes names in a word what a grind is for.
var causes = map[plan.Cause]string{plan.FlankLand: "land", plan.Corner: "corner", plan.Margin: "margin", plan.LipChip: "chip",
	plan.Truing: "truing", plan.Reshaping: "shape"}

// purpose is what a drill is taken to the grinder for.
func (t *Task) purpose() string {
	if t.Do == ToGrind {
		return causes[t.Plan.Stock.Governs]
	}
	return string(t.Do)
}

func (t *Task) grindCells(to Audience) []sheet.Cell {
	none := math.NaN()
	angle, one, two, web := none, plan.Ends{Inner: none, Outer: none}, plan.Ends{Inner: none, Outer: none}, none
	if t.atGrinder() && t.Plan.Made {
		angle = t.halfAngle()
		if t.Plan.Done.Thinned {
			web = t.Plan.Done.Web
		}
	}
	if t.Do == ToGrind && t.Plan.Made || to == Scripts && t.keeps() {
		one, two = t.Plan.Stock.Lip1, t.Plan.Stock.Lip2
	}
	return []sheet.Cell{sheet.V(angle), sheet.V(one.Inner), sheet.V(one.Outer), sheet.V(two.Inner), sheet.V(two.Outer), sheet.V(web)}
}

// keeps reports whether it is planned that nothing comes off the drill's end.
func (t *Task) keeps() bool { return t.Plan.Made && (t.Do == ToThin || t.Do == ToLeave) }

// grinder is what to take to the grinder, in its order.
func (d *Day) grinder() sheet.Grid {
	g := sheet.Grid{Key: "grinder", Title: "To the grinder, in this order", Note: "for: what governs the stock, or thinning alone; 1, 2: stock off that lip at either end",
		Columns: append([]sheet.Column{count("turn", ""), word("id", "id"), word("size", "size"), word("purpose", "for"), clearance}, grindColumns()...)}
	for i := range d.Tasks {
		t := &d.Tasks[i]
		if t.atGrinder() {
			g.Rows = append(g.Rows, append([]sheet.Cell{sheet.V(float64(i + 1)), sheet.W(t.ID), sheet.W(t.sizeText()), sheet.W(t.purpose()), t.clearanceCell()}, t.grindCells(People)...))
		}
	}
	return g
}

func (d *Day) those(key, title string, do Do, why func(*Task) string) sheet.Grid {
	g := sheet.Grid{Key: key, Title: title, Columns: []sheet.Column{word("id", "id"), word("size", "size"), word("reasons", "because")}}
	for i := range d.Tasks {
		if t := &d.Tasks[i]; t.Do == do {
			g.Rows = append(g.Rows, []sheet.Cell{sheet.W(t.ID), sheet.W(t.sizeText()), sheet.W(why(t))})
		}
	}
	return g
}

func (d *Day) shopping() sheet.Grid {
	g := sheet.Grid{Key: "to_buy", Title: "To buy", Columns: []sheet.Column{word("size", "size"), count("count", "buy"), count("wanted", "to be there"), count("usable", "usable")}}
	for _, p := range d.Buy {
		g.Rows = append(g.Rows, []sheet.Cell{sheet.W(p.Size.Echo()), sheet.V(float64(p.Count())), sheet.V(float64(p.Wanted)), sheet.V(float64(p.Usable))})
	}
	return g
}

// all is one row a drill, and one for each size to buy.
func (d *Day) all() sheet.Grid {
	g := rows(append([]sheet.Column{word("do", "do"), count("turn", "turn"), word("id", "id"), word("size", "size"),
		{Key: "size_mm", Label: "size", Kind: quantity.Size}}, slices.Concat(verdictColumns(), []sheet.Column{word("stock_reason", "stock for"),
		sheet.Lengths("stock_mm", "stock"), count("regrinds_left", "grinds left"), word("retire_reason", "retired for"), count("count", "count")}, grindColumns(), []sheet.Column{clearance})...))
	none := sheet.V(math.NaN())
	for i := range d.Tasks {
		t := &d.Tasks[i]
		turn, stock, cause := none, none, ""
		if t.atGrinder() {
			turn = sheet.V(float64(i + 1))
		}
		if t.Plan.Made && t.Do == ToGrind || t.keeps() {
			stock, cause = sheet.V(t.Plan.Stock.Total), t.Plan.Stock.Governs.String()
		}
		g.Rows = append(g.Rows, slices.Concat([]sheet.Cell{sheet.W(string(t.Do)), turn, sheet.W(t.ID), sheet.W(t.sizeText()), sheet.V(t.Size())}, verdictCells(t.Verdict),
			[]sheet.Cell{sheet.W(cause), stock, sheet.V(t.Plan.Left), sheet.W(t.Plan.Reason), none}, t.grindCells(Scripts), []sheet.Cell{t.clearanceCell()}))
	}
	for _, p := range d.Buy {
		row := slices.Repeat([]sheet.Cell{none}, len(g.Columns))
		for i, c := range g.Columns {
			switch c.Key {
			case "do":
				row[i] = sheet.W(string(ToBuy))
			case "size":
				row[i] = sheet.W(p.Size.Echo())
			case "size_mm":
				row[i] = sheet.V(p.Size.V)
			case "count":
				row[i] = sheet.V(float64(p.Count()))
			}
		}
		g.Rows = append(g.Rows, row)
	}
	return g
}
