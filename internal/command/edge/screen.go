package edge

import (
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// screen is the rake from the margin to the chisel edge, and where it is none.
func (r *Result) screen(s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: s.Drill, Told: "flank-rubs"}
	if scr.Want(s, "corner_normal_rake_deg") {
		return scr
	}
	rake := s.Lookup("corner_normal_rake_deg")
	scr.Head = quantity.Sayf("RAKE {} AT THE CORNER", quantity.Rad(rake.Value))
	if none := s.Lookup("rake_zero_ratio"); none != nil && none.Known() {
		scr.Head = quantity.Sayf("RAKE {} AT THE CORNER, NONE {} OF THE WAY OUT", quantity.Rad(rake.Value), quantity.Arg{Kind: quantity.Share, Value: none.Value})
	}
	least, feed := quantity.Rad(r.least), quantity.Of(quantity.Feed, r.Drill.Feed)
	switch {
	case r.Held[leastLimit].Outside():
		scr.Item(quantity.Sayf("heel drags {} of the way out", quantity.Of(quantity.Share, r.leastAt/r.outer)), quantity.Sayf("at {} a turn: feed less, or grind more clearance", feed))
	case sheet.Known(r.least) && r.leastAt > 0.995*r.outer:
		scr.Say("Of the clearance {} is left at {} a turn where it is least, at the corner.", least, feed)
	case sheet.Known(r.least):
		scr.Say("Of the clearance {} is left at {} a turn where it is least, {} of the way out.", least, feed, quantity.Of(quantity.Share, r.leastAt/r.outer))
	}
	scr.Tables = append(scr.Tables, r.lipTable())
	if chisel := s.Lookup("chisel_rake_deg"); chisel != nil && chisel.Known() {
		scr.Show(s.Row("rake of the chisel", "chisel_rake_deg").Saying("it scrapes"))
		scr.Show(s.Row("only pushes within", "indentation_radius_mm").Saying("of the axis"))
	}
	return scr
}

// lipTable is what a class looks at of each place along the lip.
func (r *Result) lipTable() sheet.Grid {
	all := r.rows(r.places())
	g := sheet.Grid{}
	var keep []int
	for i, c := range all.Columns {
		switch c.Key {
		case "radius_ratio":
			c.Label = "part of radius"
		case "normal_rake_deg":
			c.Label = "rake"
		case "lip_clearance_deg":
			c.Label = "clearance"
		case "working_clearance_deg":
			c.Label, c.Plot = "while cutting", false
		case "cutting_speed_m_min":
			c.Label = "speed"
		default:
			continue
		}
		keep = append(keep, i)
		g.Columns = append(g.Columns, c)
	}
	for _, row := range all.Rows {
		var cells []sheet.Cell
		for _, i := range keep {
			cells = append(cells, row[i])
		}
		g.Rows = append(g.Rows, cells)
	}
	return g
}
