package handbook

// choice says which published rows a material of the list is made of.
type choice struct {
	name, title string
	also        []string
	relief      Relief
	rows        rows
}

// rows are indices into the published tables; 0 is the row of none.
type rows struct{ force, print, course, apart, trade, book, speed, harden int }

var (
	choiceSource = Source{Own, "", "which published rows describe a material; of two that differ, the one read in print, then common practice, then the remembered one"}
	aimSource    = Source{Own, "", "of the published band: the end for hard work (trade guide: 130 to 150 for hard materials), else the angle nearest 118, the general-purpose point (common practice)"}
)

// generalPoint is the general-purpose point angle, degrees.
const generalPoint = 118.0

var choices = [...]choice{
	{"free-cutting-steel", "Free-cutting steel (AISI 1117)", []string{"free-machining-steel"}, Soft, rows{force: force1117, trade: tradeMildSteel, book: bookSteel, speed: speedLowCarbon}},
	{"steel-150", "Steel, 150 HB (mild steel)", []string{"mild-steel", "low-carbon-steel", "1018", "aisi-1018"}, General, rows{force: forceSteel150, trade: tradeMildSteel, book: bookSteel, speed: speedLowCarbon}},
	{"steel-200", "Steel, 200 HB", []string{"medium-carbon-steel"}, General, rows{force: forceSteel200, trade: tradeMildSteel, book: bookSteel, speed: speedMediumCarbon}},
	{"steel-300", "Steel, 300 HB", []string{"alloy-steel"}, Hard, rows{force: forceSteel300, book: bookStrongSteel, speed: speedAlloySteel}},
	{"steel-400", "Steel, 400 HB", nil, Hard, rows{force: forceSteel400, book: bookStrongSteel, speed: speed40HRC}},
	{"tool-steel", "Tool steel, annealed, 196-241 HB", []string{"high-carbon-steel"}, Hard, rows{print: printToolSteel, course: courseHighCarbon, trade: tradeHighCarbon, book: bookSteel}},
	{"stainless-316", "Stainless steel, austenitic (type 316)", []string{"stainless", "stainless-steel"}, Hard, rows{force: forceStainless, trade: tradeStainless, book: bookStainless, speed: speedStainless, harden: hardenStainless}},
	{"stainless-ph", "Stainless steel, precipitation hardened, 150-200 HB", nil, Hard, rows{print: printStainless, trade: tradeStainless, book: bookStrongStainless, harden: hardenStainless}},
	{"cast-iron-150", "Cast iron, 150 HB", []string{"cast-iron", "grey-cast-iron", "gray-cast-iron"}, General, rows{force: forceCastIron, trade: tradeCastIron, book: bookCastIron, speed: speedCastIron}},
	{"malleable-iron", "Malleable iron", nil, General, rows{trade: tradeCastIron, book: bookCastIron, speed: speedMalleable}},
	{"aluminium", "Aluminium alloys", []string{"aluminum"}, Soft, rows{force: forceAluminium, trade: tradeAluminium, book: bookAluminium, speed: speedAluminium}},
	{"magnesium", "Magnesium alloys", nil, Soft, rows{force: forceMagnesium, book: bookMagnesium, speed: speedMagnesium}},
	{"copper", "Copper", nil, Soft, rows{book: bookCopper}},
	{"brass", "Brass", nil, Soft, rows{force: forceBrass, trade: tradeBrass, book: bookCopper, speed: speedBrass}},
	{"leaded-brass", "Leaded brass", []string{"free-cutting-brass"}, Soft, rows{force: forceLeadedBrass, trade: tradeBrass, book: bookCopper, speed: speedBrass}},
	{"bronze", "Bronze", nil, General, rows{book: bookCopper, speed: speedBronze}},
	{"zinc", "Zinc alloys, 80-100 HB", []string{"zinc-alloy"}, Soft, rows{print: printZinc, speed: speedZinc}},
	{"titanium", "Titanium alloy Ti-6Al-4V, 40 HRC", []string{"titanium-alloy", "ti-6al-4v"}, Hard, rows{force: forceTitanium, print: printTitaniumAlloy, book: bookTitanium, harden: hardenTitanium}},
	{"titanium-pure", "Titanium, pure, 110-200 HB", nil, Hard, rows{print: printTitanium, harden: hardenTitanium}},
	{"nickel-alloy", "Nickel alloys, nickel-copper (Monel)", []string{"monel"}, Hard, rows{book: bookHighTemperature, speed: speedNickel, harden: hardenHighTemperature}},
	{"nickel-molybdenum", "Nickel-molybdenum-chromium alloy", nil, Hard, rows{force: forceNickelMolybdenum, book: bookHighTemperature, harden: hardenHighTemperature}},
	{"high-temperature-alloy", "Nickel superalloy, 40 HRC", []string{"superalloy", "heat-resistant-alloy"}, Hard, rows{force: forceSuperalloy, book: bookHighTemperature, harden: hardenHighTemperature}},
	{"plastics", "Plastics", []string{"plastic"}, Soft, rows{trade: tradePlastics, book: bookPlastics, speed: speedPlastics}},
	{"nylon", "Nylon, acetal", []string{"acetal", "polyamide"}, Soft, rows{apart: apartNylon, trade: tradePlastics, book: bookPlastics, speed: speedPlastics}},
}

// material assembles the published rows.
func (c choice) material() Material {
	force, inPrint, trade, book := forceRows[c.rows.force], printRows[c.rows.print], tradeRows[c.rows.trade], bookRows[c.rows.book]
	m := Material{
		Name: c.name, Title: c.title, Also: c.also, Kin: c.name, Relief: c.relief, FeedEnd: c.feedEnd(),
		KdThrust: nan, KdTorque: nan,
		Point:         pick(inPrint.point, &printSource, trade.point, book.point),
		Helix:         pick(inPrint.helix, &printSource, trade.helix, book.helix),
		Clearance:     pick(courseRows[c.rows.course].relief, &courseSource, trade.relief, book.relief),
		WorkClearance: pick(courseRows[c.rows.course].relief, &courseSource, span{}, book.relief),
		Chisel:        book.chisel.band(deg, &bookSource),
		Speed:         c.cuttingSpeed(),
		Hardens:       c.rows.harden > 0,
	}
	if force.thrust > 0 {
		m.KdThrust, m.KdTorque = force.thrust, force.torque
		m.KdThrustSource, m.KdTorqueSource = force.source, force.source
	}
	if apart := apartRows[c.rows.apart]; apart.point.given() {
		m.Point = apart.point.band(deg, &apartSource)
	}
	m.PointAim, m.PointSource = aim(m.Point, c.relief)
	if inPrint.point.given() && trade.point.given() { // a drill may keep what the trade grinds, beside the one in print
		m.Point = widened(m.Point, trade.point.band(deg, &tradeSource))
	}
	return m
}

// pick returns the most trustworthy of the published bands of an angle.
func pick(inPrint span, source *Source, trade, book span) Band {
	switch {
	case inPrint.given():
		return inPrint.band(deg, source)
	case trade.given():
		return trade.band(deg, &tradeSource)
	}
	return book.band(deg, &bookSource)
}

// widened returns b widened to hold all of the other band, which is then its source.
func widened(b, other Band) Band {
	if b.Holds(other.Low) && b.Holds(other.High) {
		return b
	}
	return Band{min(b.Low, other.Low), max(b.High, other.High), other.Source}
}

// aim returns the point angle to grind, out of the published band.
func aim(point Band, relief Relief) (float64, *Source) {
	switch {
	case point.Low == point.High:
		return point.Low, point.Source
	case relief == Hard:
		return point.High, &aimSource
	}
	return min(max(generalPoint*deg, point.Low), point.High), &aimSource
}

// cuttingSpeed returns the most trustworthy of the published speeds, m/min.
func (c choice) cuttingSpeed() Band {
	row := speedRows[c.rows.speed]
	switch inPrint := printRows[c.rows.print].speed; {
	case inPrint.given():
		return inPrint.band(1, &printSource)
	case row.navy.given():
		return row.navy.band(footM, &navySpeedSource)
	}
	return row.trade.band(footM, &tradeSpeedSource)
}

// feedEnd follows the class: the low end for hard work is in print.
func (c choice) feedEnd() FeedEnd {
	switch c.relief {
	case Hard:
		return FeedLow
	case Soft:
		return FeedHigh
	}
	return FeedMid
}
