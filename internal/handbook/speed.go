package handbook

// Sources of speeds and feeds.
var (
	navySpeedSource  = Source{InPrint, "", "US Navy training course Machinery Repairman, cutting speeds of high-speed-steel twist drills"}
	tradeSpeedSource = Source{Practice, "", "trade chart of cutting speeds of high-speed-steel twist drills"}
	fdSource         = Source{InPrint, "", "Machinery's Handbook, 31st ed., Table 22, in part; base drill 0.60 in, 118 degrees, two flutes"}
	wheelSource      = Source{Memory, "high", "ordinary vitrified straight wheels, 6500 ft/min (33 m/s) in ANSI B7.1; the wheel's own marking governs"}
)

const footM = 0.3048 // m, exactly

// The surface speed, m/s, up to which an ordinary vitrified straight wheel
// commonly runs, as published in either system. The wheel's own marking governs.
const (
	OrdinaryWheelMetric = 33.0
	OrdinaryWheelInch   = ordinaryWheelFeet * footM / 60
)

const ordinaryWheelFeet = 6500 // ft/min

// OrdinaryWheelSource is where they come from.
func OrdinaryWheelSource() *Source { return &wheelSource }

// speedRow is one row of the cutting speeds, ft/min.
type speedRow struct {
	work        string
	navy, trade span
}

// The rows of the cutting speeds.
const (
	speedNone = iota
	speedLowCarbon
	speedMediumCarbon
	speedToolSteel
	speedForgings
	speedAlloySteel
	speed300HB
	speed35HRC
	speed40HRC
	speed45HRC
	speed50HRC
	speedStainless
	speedFreeStainless
	speedHardeningStainless
	speedCastIron
	speedSoftIron
	speedMediumIron
	speedChilledIron
	speedMalleable
	speedBrass
	speedBronze
	speedHardBronze
	speedNickel
	speedAluminium
	speedMagnesium
	speedZinc
	speedPlastics
)

var speedRows = [...]speedRow{
	speedNone:               {},
	speedLowCarbon:          {"low-carbon steel (0.2-0.3 C)", span{80, 110}, span{80, 110}},
	speedMediumCarbon:       {"medium-carbon steel (0.4-0.5 C)", span{70, 80}, span{70, 80}},
	speedToolSteel:          {"tool steel (1.2 C)", span{}, span{50, 60}},
	speedForgings:           {"steel forgings", span{}, span{40, 50}},
	speedAlloySteel:         {"alloy steel", span{50, 70}, span{}},
	speed300HB:              {"alloy steel, 300-400 HB", span{}, span{20, 30}},
	speed35HRC:              {"heat-treated, 35-40 HRC", span{}, span{30, 40}},
	speed40HRC:              {"heat-treated, 40-45 HRC", span{}, span{25, 35}},
	speed45HRC:              {"heat-treated, 45-50 HRC", span{}, span{15, 25}},
	speed50HRC:              {"heat-treated, 50-55 HRC", span{}, span{7, 15}},
	speedStainless:          {"stainless", span{30, 40}, span{}},
	speedFreeStainless:      {"stainless, free-machining", span{}, span{30, 80}},
	speedHardeningStainless: {"stainless, work-hardening", span{}, span{15, 50}},
	speedCastIron:           {"cast iron", span{70, 150}, span{}},
	speedSoftIron:           {"cast iron, soft", span{}, span{100, 150}},
	speedMediumIron:         {"cast iron, medium", span{}, span{70, 100}},
	speedChilledIron:        {"cast iron, chilled", span{}, span{30, 40}},
	speedMalleable:          {"malleable iron", span{}, span{80, 90}},
	speedBrass:              {"brass", span{200, 300}, span{150, 300}},
	speedBronze:             {"bronze", span{200, 300}, span{}},
	speedHardBronze:         {"bronze, high-tensile", span{}, span{70, 150}},
	speedNickel:             {"Monel / high nickel", span{40, 50}, span{30, 50}},
	speedAluminium:          {"aluminium", span{200, 300}, span{200, 300}},
	speedMagnesium:          {"magnesium", span{}, span{250, 400}},
	speedZinc:               {"zinc die castings", span{}, span{300, 400}},
	speedPlastics:           {"plastics (phenolic)", span{}, span{100, 300}},
}

// fdRow is one column of the diameter correction of the cutting speed.
type fdRow struct{ d, optimum, half float64 } // in; factor at feed ratio 1.00 and 0.50

var fdRows = [...]fdRow{
	{0.08, 0.30, 0.47}, {0.15, 0.44, 0.60}, {0.25, 0.56, 0.71},
	{0.40, 0.78, 0.87}, {0.60, 1.00, 1.00}, {1.00, 1.32, 1.15},
	{2.00, 1.81, 1.30}, {3.00, 2.11, 1.34}, {4.00, 2.29, 1.94},
}

// SpeedTables returns the tables of cutting speeds.
func SpeedTables() []Table {
	return []Table{
		{"cutting-speeds-course", "Cutting speeds of high-speed-steel drills, ft/min", navySpeedSource,
			[]string{"work", "ft/min"}, speedColumn(func(r speedRow) span { return r.navy })},
		{"cutting-speeds-trade", "Cutting speeds of high-speed-steel drills, ft/min, trade chart", tradeSpeedSource,
			[]string{"work", "ft/min"}, speedColumn(func(r speedRow) span { return r.trade })},
		{"speed-diameter-correction", "Diameter correction Fd of the cutting speed", fdSource,
			[]string{"D in", "Fd", "Fd at half feed", "note"}, func() [][]string {
				var rows [][]string
				for _, r := range fdRows {
					rows = append(rows, []string{cell(r.d), cell(r.optimum), cell(r.half), ""})
				}
				rows[len(rows)-1][3] = "half feed: printed so, suspect; not used"
				return rows
			}},
		{"wheel-speed", "Surface speed of an ordinary vitrified straight wheel, m/s", wheelSource,
			[]string{"m/s", "ft/min"}, func() [][]string { return [][]string{{cell(OrdinaryWheelMetric), cell(ordinaryWheelFeet)}} }},
	}
}

// speedColumn returns the rows of one of the two columns of speeds.
func speedColumn(column func(speedRow) span) func() [][]string {
	return func() [][]string {
		var rows [][]string
		for _, r := range speedRows {
			if s := column(r); s.given() {
				rows = append(rows, []string{r.work, s.String()})
			}
		}
		return rows
	}
}
