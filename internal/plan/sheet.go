package plan

import (
	"slices"
	"strconv"

	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Figures adds the figures of the plan to s: the stock and what governs it, the drill
// before and after, thinning, and its life; and what was found, with its limits.
func Figures(p *Plan, s *sheet.Sheet) {
	if p.Made {
		sheet.Put(s, p, nil, &letters, &steps)
		sheet.Letters(s, &p.Found, &judge.ThrustLetters, &judge.ChiselEdge, &judge.LipPlace, &judge.CornerClearance, &judge.WearFigures)
	}
	s.Found = sheet.New(s.Command, false)
	s.Found.Drawing = s.Drawing
	judge.HeldFigures(&p.Found, s.Found)
	sheet.Put(s, p, nil, &answer, &causes, &ends, &thinning, &flattening, &after, &life)
	for i := range s.Sections {
		p.heading(&s.Sections[i])
	}
}

// heading says over figures that nothing comes off now, and keeps out of a table what
// nobody does with the drill.
func (p *Plan) heading(sec *sheet.Section) {
	scrap := p.Found.Verdict.Word == judge.Retire
	switch sec.Title {
	case causes.Title:
		sec.Quiet = scrap
		if p.Waits {
			sec.Title = "What a grind would take, by cause"
		}
	case ends.Title:
		sec.Quiet = scrap || p.Waits
	case thinning.Title:
		sec.Quiet = scrap
		if p.Waits {
			sec.Title = "Web thinning, without a grind"
		}
	}
}

// Rest adds the drill before and after, its life grind by grind, and what there is to
// be said.
func Rest(p *Plan, s *sheet.Sheet) {
	s.Unfit = p.Found.Verdict.Word != judge.Fit
	s.Grids = append(s.Grids, p.states())
	if p.Left > 0 {
		s.Grids = append(s.Grids, p.schedule())
	}
	p.remarks(s)
	p.inShort(s)
	s.Extra = append(s.Extra, &rules)
}

var rules = handbook.Source{Label: handbook.Own, Text: "how the plan is made, docs/regrind.md"}

func plain(key, label string) sheet.Column {
	return sheet.Column{Key: key, Label: label, Kind: quantity.Number}
}

// Declares adds to a declaration the lists of a plan, and the limits of the drill as it
// was found.
func Declares(s *sheet.Sheet) {
	s.Grids = append(s.Grids, statesList(), scheduleList())
	s.Wants = []string{}
	s.Found = &sheet.Sheet{Drawing: true, Declaring: true}
	judge.Figures(new(judge.Result), s.Found)
}

// statesList is the list of the drill before and after, without its rows.
func statesList() sheet.Grid {
	return sheet.Grid{Key: "states", Title: "Before and after", Turned: true, Columns: []sheet.Column{
		{Key: "state", Label: "state", Kind: quantity.Word},
		sheet.Lengths("length_mm", "overall length"), sheet.Lengths("flute_mm", "usable flute"),
		sheet.Lengths("point_length_mm", "point length"),
		{Key: "lip_height_difference_mm", Label: "lip 1 over lip 2", Kind: quantity.Length, Gauge: quantity.Indicator},
		sheet.Lengths("web_mm", "web"), sheet.Lengths("chisel_length_mm", "chisel edge"), plain("chisel_ratio", "chisel edge / D"),
		{Key: "thrust_n", Label: "thrust, sharp", Kind: quantity.Force}, plain("thrust_ratio", "thrust / now"),
	}}
}

// states is the drill before and after: as it is, ground, and thinned.
func (p *Plan) states() sheet.Grid {
	g := statesList()
	if !p.Made {
		return g
	}
	row := func(name string, s *State, point, apart float64) {
		g.Rows = append(g.Rows, []sheet.Cell{sheet.W(name), sheet.V(s.Length), sheet.V(s.Flute), sheet.V(point), sheet.V(apart),
			sheet.V(s.Web), sheet.V(s.Chisel), sheet.V(s.Ratio), sheet.V(p.thrust(s)), sheet.V(p.Body.ThrustRatio(s))})
	}
	row("now", &p.Now, p.Found.Point.Length, p.Found.Lips.Height)
	length, apart := p.Found.Point.Length, p.Found.Lips.Height
	if p.Stock.Total > 0 {
		length, apart = p.pointLength(), 0
		row("ground", &p.Ground, length, apart)
	}
	if p.Done.Thinned {
		row("thinned", &p.Done, length, apart)
	}
	return g
}

// The rows of a schedule that a table shows: the first few, the last, and
// where thinning starts.
const (
	firstShown = 5
	mostShown  = 12
)

// scheduleList is the list of the drill after each grind, without its rows.
func scheduleList() sheet.Grid {
	return sheet.Grid{Key: "schedule", Title: "Grind by grind", Columns: []sheet.Column{
		{Key: "grind", Label: "grind", Kind: quantity.Count},
		sheet.Lengths("removed_mm", "off"), sheet.Lengths("flute_mm", "flute"), sheet.Lengths("web_unthinned_mm", "body"),
		sheet.Lengths("web_mm", "web"), sheet.Lengths("chisel_length_mm", "chisel"), plain("chisel_ratio", "c/D"),
		{Key: "thinned", Label: "thin", Kind: quantity.Switch}, plain("thrust_ratio", "thrust /now"),
		{Key: "diameter_mm", Label: "dia", Kind: quantity.Size, Sometimes: true},
	}}
}

// schedule is the drill after each grind, to the last.
func (p *Plan) schedule() sheet.Grid {
	g := scheduleList()
	tapers := sheet.Known(p.Body.BackTaper)
	if !tapers {
		g.Columns = g.Columns[:len(g.Columns)-1] // the diameter stays
	}
	states := p.Schedule()
	for i := range states {
		s := &states[i]
		row := []sheet.Cell{sheet.V(float64(i + 1)), sheet.V(s.Removed), sheet.V(s.Flute), sheet.V(s.Body),
			sheet.V(s.Web), sheet.V(s.Chisel), sheet.V(s.Ratio), sheet.W(thinned(s)), sheet.V(p.Body.ThrustRatio(s))}
		if tapers {
			row = append(row, sheet.V(s.Diameter))
		}
		g.Rows = append(g.Rows, row)
	}
	shorten(&g, states)
	return g
}

// shorten keeps a long schedule to what a person reads in a table.
func shorten(g *sheet.Grid, states []State) {
	n := len(g.Rows)
	if n <= mostShown {
		return
	}
	thins := slices.IndexFunc(states, func(s State) bool { return s.Thinned })
	step := (n + firstShown - 1) / firstShown
	for i := range n {
		if i < firstShown || thins >= 0 && (i == thins-1 || i == thins) || (i+1)%step == 0 || i == n-1 {
			g.Brief = append(g.Brief, i)
		}
	}
	g.Note = strconv.Itoa(len(g.Brief)) + " of " + strconv.Itoa(n) + " grinds; --format plain or json has them all"
}
