package lookup

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// about is how many sizes are shown on either side of one.
const about = 3

// sizeScreen is a size in both units with its neighbours, the nearest first on either
// side.
func sizeScreen(v quantity.Value, s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{}
	names := quantity.Called(v)
	name := v.Spaced()
	if v.System != quantity.Metric || len(names) > 0 && names[0].Name != name {
		name += " ="
	} else {
		name = ""
	}
	scr.Head = quantity.Sayf(strings.TrimSpace(name+" {} mm = {} in"), quantity.Say(quantity.Digits(v.V, 5)), quantity.Say(quantity.Digits(v.V/handbook.InchMM, 4)))
	var also []string
	for _, n := range names {
		if n.Name != v.Spaced() {
			also = append(also, n.Name)
		}
	}
	if also != nil {
		scr.Say("Also called {}.", quantity.Say(strings.Join(also, ", ")))
	}
	for _, f := range s.Findings {
		scr.Note("note", f.Text.Format, f.Text.Args...)
	}
	scr.Tables = append(scr.Tables, nearby(v, names))
	return scr
}

// nearby lists the ordinary sizes around one, and the size itself.
func nearby(v quantity.Value, own []quantity.SizeName) sheet.Grid {
	mm := v.V
	g := sheet.Grid{Columns: []sheet.Column{
		{Label: "", Kind: quantity.Word}, {Label: "mm", Kind: quantity.Word}, {Label: "in", Kind: quantity.Word}, {Label: "size", Kind: quantity.Word}, {Label: "", Kind: quantity.Word},
	}}
	var below, above []quantity.SizeName
	down, up := mm, mm
	for len(below) < about {
		n := quantity.NextDown(down)
		if n.Name == "" {
			break
		}
		below, down = append(below, n), n.MM
	}
	for len(above) < about {
		n := quantity.NextUp(up)
		if n.Name == "" {
			break
		}
		above, up = append(above, n), n.MM
	}
	slices.Reverse(below)
	row := func(mark string, n quantity.SizeName, off float64) {
		says := ""
		switch {
		case off < 0:
			says = apart(v.System, -off) + " under"
		case off > 0:
			says = apart(v.System, off) + " over"
		}
		g.Rows = append(g.Rows, []sheet.Cell{sheet.W(mark), sheet.W(fixed(n.MM, 3)), sheet.W(fixed(n.MM/handbook.InchMM, 4)), sheet.W(n.Name), sheet.W(says)})
	}
	for _, n := range below {
		row("", n, n.MM-mm)
	}
	var ownNames []string
	for _, n := range own {
		ownNames = append(ownNames, n.Name)
	}
	row(">", quantity.SizeName{MM: mm, Name: strings.Join(ownNames, ", ")}, 0)
	for _, n := range above {
		row("", n, n.MM-mm)
	}
	return g
}

// apart writes by how much two sizes differ, in the unit that one was given in.
func apart(system quantity.System, mm float64) string {
	if system == quantity.Inch {
		return fixed(mm/handbook.InchMM, 4) + " in"
	}
	return quantity.Digits(mm, 2) + " mm"
}

func fixed(v float64, decimals int) string { return strconv.FormatFloat(v, 'f', decimals, 64) }

// listScreen is the list of work materials in as few columns as tell what to grind.
func listScreen(book *handbook.Book, f quantity.Format) *sheet.Screen {
	all := book.Materials()
	scr := &sheet.Screen{Head: quantity.Sayf("{} work materials", quantity.Of(quantity.Count, float64(len(all)))),
		About: "point and lip clearance in degrees, cutting speed of high-speed steel"}
	head := " pt clear " + fmt.Sprintf("%6s", f.Unit(quantity.Cutting))
	g := sheet.Grid{Columns: []sheet.Column{word("", ""), word("", head), word("", ""), word("", head)}}
	half := (len(all) + 1) / 2
	cells := func(m *handbook.Material) []sheet.Cell {
		point := handbook.Band{Low: m.PointAim, High: m.PointAim, Source: m.PointSource}
		shop := m.PointSource.OfShop() || m.Clearance.Source.OfShop() || m.Speed.Source.OfShop()
		bare := func(b handbook.Band) string { return strings.TrimSuffix(inWords(f, quantity.Angle, b), "°") }
		figures := fmt.Sprintf("%3s %5s %6s", bare(point), bare(m.Clearance), inWords(f, quantity.Cutting, m.Speed))
		return []sheet.Cell{{Value: math.NaN(), Word: m.Name, Shop: shop}, sheet.W(figures)}
	}
	for i := range half {
		row := cells(&all[i])
		if half+i < len(all) {
			row = append(row, cells(&all[half+i])...)
		} else {
			row = append(row, sheet.W(""), sheet.W(""))
		}
		g.Rows = append(g.Rows, row)
	}
	scr.Tables = append(scr.Tables, g)
	scr.Note("more", "evenlip material steel-200 --size 12mm  one of them, at one size")
	scr.Note("more", "--full  what each is")
	return scr
}

// materialScreen is what to grind for one material, the bands with what to aim at.
func materialScreen(m *handbook.Material, at float64, size quantity.Value, book *handbook.Book, s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: m.Title, Told: "fire"}
	if at > 0 {
		scr.About += ", " + size.Spaced() + " drill"
	}
	scr.Head = quantity.Sayf("GRIND {}", quantity.Rad(m.PointAim))
	aim, recommended := judge.Recommended(at, m)
	if at > 0 && sheet.Known(aim) {
		scr.Head = quantity.Sayf("GRIND {}, CLEARANCE {}", quantity.Rad(m.PointAim), quantity.Rad(aim))
	}
	for _, f := range s.Findings {
		switch f.Code {
		case "work-hardens":
			scr.Item(quantity.Sayf("it hardens where a drill rubs"), quantity.Sayf("keep it feeding, do not dwell"))
		case "straight-flutes":
			scr.Item(quantity.Sayf("a helix digs in"), quantity.Sayf("flatten the lips, or use straight flutes"))
		case "fire":
			scr.Item(quantity.Sayf("its chips and dust burn"), quantity.Sayf("keep them swept and dry; no water on a fire"))
		case "no-speed", "no-force-factor":
			scr.Note("note", f.Text.Format, f.Text.Args...)
		}
	}
	if at > 0 {
		scr.Next = append(scr.Next, sheet.Next{Command: "speed", Bare: true, Args: "--size " + typed(size) + " --material " + m.Name, Says: "rpm and feed for a hole"})
	} else {
		scr.Next = append(scr.Next, sheet.Next{Command: "material", Bare: true, Args: m.Name + " --size 12mm", Says: "clearance, feed and rpm at a size"})
	}
	aimed := func(label string, kind quantity.Kind, gauge quantity.Gauge, v float64, band handbook.Band) {
		if !sheet.Known(v, band.Low, band.High) {
			return
		}
		row := sheet.Row{Label: quantity.Sayf(label), Kind: kind, Gauge: gauge, Marks: []sheet.Mark{{Value: v, Low: math.NaN(), High: math.NaN()}}}
		if band.High > band.Low {
			row.Band = &band
		}
		scr.Show(row)
	}
	aimed("point angle", quantity.Angle, quantity.Protractor, m.PointAim, judge.AcceptedPoint(book, m))
	if at > 0 {
		aimed("lip clearance", quantity.Angle, quantity.Protractor, aim, judge.AcceptedClearance(at, recommended, m))
	} else if sheet.Known(m.Clearance.Low) {
		scr.Show(span("lip clearance", quantity.Angle, quantity.Protractor, m.Clearance.Low, m.Clearance.High, ", over all sizes"))
	}
	chisel := book.ChiselAngle()
	if sheet.Known(m.Chisel.Low) {
		chisel = m.Chisel
	}
	scr.Show(span("chisel-edge angle", quantity.Angle, quantity.Protractor, chisel.Low, chisel.High, ""))
	if at > 0 {
		aimed("feed a turn", quantity.Feed, quantity.NoGauge, judge.UsualFeed(at, m), handbook.FeedBand(at))
		low, high := s.Row("", "rpm_low"), s.Row("", "rpm_high")
		if len(low.Marks) > 0 && len(high.Marks) > 0 {
			scr.Show(span("spindle", quantity.Rpm, quantity.Setting, low.Marks[0].Value, high.Marks[0].Value, ""))
		}
	}
	if sheet.Known(m.Speed.Low) {
		scr.Show(span("cutting speed", quantity.Cutting, quantity.NoGauge, m.Speed.Low, m.Speed.High, ""))
	}
	if sheet.Known(m.Helix.Low) {
		scr.Show(span("helix", quantity.Angle, quantity.Protractor, m.Helix.Low, m.Helix.High, ""))
	}
	scr.Note("more", "--full  the basis of each    the mark is what to aim at")
	return scr
}

// span is a row that says a band in words, one number where its ends are one.
func span(label string, kind quantity.Kind, gauge quantity.Gauge, low, high float64, more string) sheet.Row {
	top := quantity.Arg{Kind: kind, Gauge: gauge, Value: high}
	if !(high > low*(1+1e-9)) {
		return textRow(label, "{}"+more, top)
	}
	return textRow(label, "{} to {}"+more, quantity.Arg{Kind: kind, Gauge: gauge, Value: low, Bare: true}, top)
}

func textRow(label, format string, args ...quantity.Arg) sheet.Row {
	return sheet.Row{Label: quantity.Sayf(label), Kind: quantity.Word, Text: quantity.Sayf(format, args...)}
}

// typed is a size as a command line takes it: #7 in quotes.
func typed(v quantity.Value) string {
	text := strings.ReplaceAll(v.Text, " ", "")
	if strings.HasPrefix(text, "#") {
		return "'" + text + "'"
	}
	return text
}
