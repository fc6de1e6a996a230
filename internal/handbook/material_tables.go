package handbook

import "strings"

// Sources of the figures by work material.
var (
	kdSource        = Source{Memory, "high", "Machinery's Handbook, work-material factor Kd, sharp drill; not read again"}
	kdFewSource     = Source{Memory, "high", "Machinery's Handbook, work-material factor Kd, sharp drill, from few tests; not read again"}
	kdDerivedSource = Source{Derived, "", "Kd = 120 x HB, in the proportion of the handbook's 24 000 at 200 HB (from memory)"}
	printSource     = Source{InPrint, "", "Fundamentals of Machining Processes, CRC Press, Table 5.4, in part"}
	courseSource    = Source{InPrint, "", "trade course that repeats handbook figures; larger drills to the low end, small ones to the high end, under 1/4 in up to 24 degrees"}
	tradeSource     = Source{Practice, "", "point, helix and lip clearance by work material, bands over all drill sizes"}
	bookSource      = Source{Memory, "medium-high", "geometry of high-speed-steel drills by work material, manufacturing textbooks after the metals handbooks"}
	apartSource     = Source{Memory, "low", "work that takes another point than others of its kind"}
	hardenSource    = Source{Practice, "", "work that hardens where the drill rubs: keep it feeding, and neither dwell nor let it rub"}
)

// forceRow is one row of the work-material factors.
type forceRow struct {
	work           string
	torque, thrust float64
	source         *Source
}

// The rows of the work-material factors; row 0 stands for none.
const (
	force1117 = iota + 1
	forceSteel150
	forceSteel200
	forceSteel300
	forceSteel400
	forceCastIron
	forceAluminium
	forceMagnesium
	forceBrass
	forceLeadedBrass
	forceStainless
	forceTitanium
	forceSuperalloy
	forceNickelMolybdenum
)

var forceRows = [...]forceRow{
	force1117:             {"AISI 1117, resulfurized free-machining mild steel", 12000, 12000, &kdSource},
	forceSteel150:         {"steel, 150 HB", 18000, 18000, &kdDerivedSource},
	forceSteel200:         {"steel, 200 HB", 24000, 24000, &kdSource},
	forceSteel300:         {"steel, 300 HB", 31000, 31000, &kdSource},
	forceSteel400:         {"steel, 400 HB", 34000, 34000, &kdSource},
	forceCastIron:         {"cast iron, 150 HB", 14000, 14000, &kdSource},
	forceAluminium:        {"most aluminium alloys", 7000, 7000, &kdSource},
	forceMagnesium:        {"most magnesium alloys", 4000, 4000, &kdSource},
	forceBrass:            {"most brasses", 14000, 14000, &kdSource},
	forceLeadedBrass:      {"leaded brass", 7000, 7000, &kdSource},
	forceStainless:        {"austenitic stainless steel (type 316)", 24000, 35000, &kdFewSource},
	forceTitanium:         {"titanium alloy Ti-6Al-4V, 40 HRC", 18000, 29000, &kdFewSource},
	forceSuperalloy:       {"nickel superalloy, 40 HRC: at least, rises fast with wear", 40000, 40000, &kdFewSource},
	forceNickelMolybdenum: {"nickel-molybdenum-chromium alloy", 30000, 37000, &kdFewSource},
}

// geometryRow is one row of a table of drill geometry by work material,
// degrees; speed in m/min.
type geometryRow struct {
	work                         string
	point, relief, chisel, helix span
	speed                        span
	note                         string
}

// The rows of the printed table; row 0 stands for none.
const (
	printStainless = iota + 1
	printToolSteel
	printTitanium
	printTitaniumAlloy
	printTitaniumBeta
	printZinc
)

var printRows = [...]geometryRow{
	printStainless:     {"stainless, precipitation-hardened, 150-200 HB", span{118, 135}, span{}, span{}, span{25, 35}, span{15, 15}, "HSS-Co"},
	printToolSteel:     {"tool steel, 196-241 HB", span{118, 118}, span{}, span{}, span{25, 35}, span{15, 18}, "HSS; 18 at 196 HB, 15 at 241 HB"},
	printTitanium:      {"titanium, pure, 110-200 HB", span{135, 135}, span{}, span{}, span{30, 38}, span{30, 30}, "HSS"},
	printTitaniumAlloy: {"titanium alpha, alpha-beta, 300-360 HB", span{135, 135}, span{}, span{}, span{30, 38}, span{12, 12}, "HSS-Co"},
	printTitaniumBeta:  {"titanium beta, 275-350 HB", span{135, 135}, span{}, span{}, span{30, 38}, span{7.6, 7.6}, "HSS-Co"},
	printZinc:          {"zinc alloys, 80-100 HB", span{118, 118}, span{}, span{}, span{32, 42}, span{76, 76}, "HSS"},
}

// The rows of the trade course's lip clearances; row 0 stands for none.
const (
	courseLowCarbon = iota + 1
	courseHighCarbon
)

var courseRows = [...]geometryRow{
	courseLowCarbon:  {work: "low and medium-carbon steel", relief: span{10, 15}},
	courseHighCarbon: {work: "high-carbon steel", relief: span{7, 12}},
}

// The rows of the trade's bands; row 0 stands for none.
const (
	tradeAluminium = iota + 1
	tradeBrass
	tradeCastIron
	tradeMildSteel
	tradeStainless
	tradePlastics
	tradeHighCarbon
)

var tradeRows = [...]geometryRow{
	tradeAluminium:  {work: "aluminium", point: span{90, 135}, relief: span{12, 26}, helix: span{32, 48}},
	tradeBrass:      {work: "brass", point: span{90, 118}, relief: span{12, 26}, helix: span{0, 20}},
	tradeCastIron:   {work: "cast iron", point: span{90, 118}, relief: span{7, 20}, helix: span{24, 32}},
	tradeMildSteel:  {work: "mild steel", point: span{118, 135}, relief: span{7, 24}, helix: span{24, 32}},
	tradeStainless:  {work: "stainless steel", point: span{118, 135}, relief: span{7, 24}, helix: span{24, 32}},
	tradePlastics:   {work: "plastics", point: span{60, 90}, relief: span{12, 26}, helix: span{0, 20}},
	tradeHighCarbon: {work: "high-carbon steel", point: span{118, 135}, helix: span{24, 32}},
}

// The rows of work that takes another point than its kind; row 0 stands for none.
const apartNylon = 1

var apartRows = [...]geometryRow{
	apartNylon: {work: "nylon and acetal", point: span{118, 118}, note: "other plastics 60 to 90"},
}

// The rows of the textbook's table; row 0 stands for none.
const (
	bookAluminium = iota + 1
	bookMagnesium
	bookCopper
	bookSteel
	bookStrongSteel
	bookStainless
	bookStrongStainless
	bookHighTemperature
	bookRefractory
	bookTitanium
	bookCastIron
	bookPlastics
)

var bookRows = [...]geometryRow{
	bookAluminium:       {"aluminium alloys", span{90, 118}, span{12, 15}, span{125, 135}, span{24, 48}, span{}, "standard"},
	bookMagnesium:       {"magnesium alloys", span{70, 118}, span{12, 15}, span{120, 135}, span{30, 45}, span{}, "standard"},
	bookCopper:          {"copper alloys", span{118, 118}, span{12, 15}, span{125, 135}, span{10, 30}, span{}, "standard"},
	bookSteel:           {"steels", span{118, 118}, span{10, 15}, span{125, 135}, span{24, 32}, span{}, "standard"},
	bookStrongSteel:     {"high-strength steels", span{118, 135}, span{7, 10}, span{125, 135}, span{24, 32}, span{}, "crankshaft"},
	bookStainless:       {"stainless, low strength", span{118, 118}, span{10, 12}, span{125, 135}, span{24, 32}, span{}, "standard"},
	bookStrongStainless: {"stainless, high strength", span{118, 135}, span{7, 10}, span{120, 130}, span{24, 32}, span{}, "crankshaft"},
	bookHighTemperature: {"high-temperature alloys", span{118, 135}, span{9, 12}, span{125, 135}, span{15, 30}, span{}, "crankshaft"},
	bookRefractory:      {"refractory alloys", span{118, 118}, span{7, 10}, span{125, 135}, span{24, 32}, span{}, "standard"},
	bookTitanium:        {"titanium alloys", span{118, 135}, span{7, 10}, span{125, 135}, span{15, 32}, span{}, "crankshaft"},
	bookCastIron:        {"cast irons", span{118, 118}, span{8, 12}, span{125, 135}, span{24, 32}, span{}, "standard"},
	bookPlastics:        {"plastics", span{60, 90}, span{7, 7}, span{120, 135}, span{29, 29}, span{}, "standard"},
}

// The kinds of work that harden where the drill rubs; row 0 stands for none.
const (
	hardenStainless = iota + 1
	hardenTitanium
	hardenHighTemperature
)

var hardenRows = [...]string{
	hardenStainless:       "stainless steel, austenitic and precipitation-hardened",
	hardenTitanium:        "titanium and its alloys",
	hardenHighTemperature: "nickel and high-temperature alloys",
}

// HardenSource is where it is said which work hardens.
func HardenSource() *Source { return &hardenSource }

// MaterialTables returns the tables of figures by work material.
func MaterialTables() []Table {
	return []Table{
		{"work-material-factors", "Work-material factor Kd", kdSource,
			[]string{"work", "torque", "thrust", "source"}, func() [][]string {
				var rows [][]string
				for _, r := range forceRows[1:] {
					rows = append(rows, []string{r.work, cell(r.torque), cell(r.thrust), r.source.String()})
				}
				return rows
			}},
		{"drill-geometry-print", "Drill geometry by work material, degrees; speeds in m/min", printSource,
			geometryHead, geometryCells(printRows[1:])},
		{"lip-clearance-course", "Lip clearance by work material, degrees", courseSource,
			geometryHead, geometryCells(courseRows[1:])},
		{"drill-geometry-trade", "Drill geometry by work material, degrees", tradeSource,
			geometryHead, geometryCells(tradeRows[1:])},
		{"drill-geometry-apart", "Point angle of work that differs from its kind, degrees", apartSource,
			geometryHead, geometryCells(apartRows[1:])},
		{"drill-geometry-textbook", "Drill geometry by work material, degrees", bookSource,
			geometryHead, geometryCells(bookRows[1:])},
		{"work-hardening", "Work that hardens where the drill rubs", hardenSource,
			[]string{"work", "of the list"}, func() [][]string {
				rows := make([][]string, len(hardenRows)-1)
				for i, work := range hardenRows[1:] {
					rows[i] = []string{work, hardening(i + 1)}
				}
				return rows
			}},
		{"point-aim", "Point angle to grind, degrees", aimSource,
			[]string{"general-purpose", "hard work"}, func() [][]string { return [][]string{{cell(generalPoint), "the most that is published"}} }},
		{"materials", "Materials of the list and the class of work each is", choiceSource,
			[]string{"name", "material", "class", "point", "feed"}, func() [][]string {
				var rows [][]string
				for _, m := range materials() {
					rows = append(rows, []string{m.Name, m.Title, m.Relief.String(), wholeDegrees(m.PointAim), m.FeedEnd.String()})
				}
				return rows
			}},
	}
}

// hardening names the materials of the list that are of that kind.
func hardening(row int) string {
	var names []string
	for _, c := range choices {
		if c.rows.harden == row {
			names = append(names, c.name)
		}
	}
	return strings.Join(names, ", ")
}

var geometryHead = []string{"work", "point", "lip clearance", "chisel edge", "helix", "m/min", "note"}

func geometryCells(rows []geometryRow) func() [][]string {
	return func() [][]string {
		var out [][]string
		for _, r := range rows {
			out = append(out, []string{r.work, r.point.String(), r.relief.String(), r.chisel.String(), r.helix.String(), r.speed.String(), r.note})
		}
		return out
	}
}
