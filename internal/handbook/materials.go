package handbook

import "sync"

// Sources of the figures by work material.
var (
	kdSource         = &Source{Memory, "high", "Machinery's Handbook, work-material factor Kd, sharp drill; not read again"}
	kdFewSource      = &Source{Memory, "high", "Machinery's Handbook, work-material factor Kd, sharp drill, from few tests; not read again"}
	kdDerivedSource  = &Source{Derived, "", "Kd = 120 x HB, in the proportion of the handbook's 24 000 at 200 HB (from memory)"}
	printSource      = &Source{InPrint, "", "Fundamentals of Machining Processes, CRC Press, Table 5.4, in part"}
	courseSource     = &Source{InPrint, "", "trade course that repeats handbook figures; larger drills to the low end, small ones to the high end, under 1/4 in up to 24 degrees"}
	tradeSource      = &Source{Practice, "", "point, helix and lip clearance by work material, bands over all drill sizes"}
	bookSource       = &Source{Memory, "medium-high", "geometry of high-speed-steel drills by work material, manufacturing textbooks after the metals handbooks"}
	apartSource      = &Source{Memory, "low", "work that takes another point than others of its kind"}
	navySource       = &Source{InPrint, "", "US Navy training course Machinery Repairman, cutting speeds of high-speed-steel twist drills"}
	tradeSpeedSource = &Source{Practice, "", "trade chart of cutting speeds of high-speed-steel twist drills"}
	speedPickSource  = &Source{Own, "", "the middle of the published cutting speeds"}

	choiceSource = &Source{Own, "", "which published figures describe a material; of two that differ, the one read in print, then common practice, then the remembered one"}
	aimSource    = &Source{Own, "", "of the published band: the end for hard work (trade guide: 130 to 150 for hard materials), else the angle nearest 118, the general-purpose point (common practice)"}

	ForceConstantSource = &Source{Practice, "", "drilling force with a material constant K: thrust 570 K D f^0.85 N, torque K D^2 (0.630 + 16.84 f)/100 N m; a second way beside the handbook's"}
	HardenSource        = &Source{Practice, "", "work that hardens where the drill rubs: keep it feeding, and neither dwell nor let it rub"}
	FireSource          = &Source{Practice, "", "fine chips and grinding dust of magnesium and titanium burn, and water feeds a magnesium fire"}
	FluteSource         = &Source{Practice, "", "ordinary helix for most work; high helix for deep holes and powdery chips, as of grey cast iron; straight flutes for brass, lead, copper and most plastics"}
)

const footM = 0.3048 // m, exactly

// degrees, feet and metres are published bands: of an angle, and of a cutting speed in
// feet or metres a minute.
func degrees(low, high float64, source *Source) Band { return Band{low * deg, high * deg, source} }
func feet(low, high float64, source *Source) Band    { return Band{low * footM, high * footM, source} }
func metres(low, high float64, source *Source) Band  { return Band{low, high, source} }

// published is the list of materials. A figure that a row leaves out is not published; a
// point angle to grind that it leaves out follows from the band by the rule of aim.
func published() []Material {
	return []Material{
		{Name: "free-cutting-steel", Title: "Free-cutting steel (AISI 1117)", Also: []string{"free-machining-steel"}, Relief: Soft,
			Point: degrees(118, 135, tradeSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(24, 32, tradeSource),
			Clearance: degrees(7, 24, tradeSource), WorkClearance: degrees(10, 15, bookSource), Speed: feet(80, 110, navySource),
			KdTorque: 12000, KdThrust: 12000, KdTorqueSource: kdSource, KdThrustSource: kdSource, ForceConstant: 1.42,
		},
		{Name: "steel-150", Title: "Steel, 150 HB (mild steel)", Also: []string{"mild-steel", "low-carbon-steel", "1018", "aisi-1018"}, Relief: General,
			Point: degrees(118, 135, tradeSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(24, 32, tradeSource),
			Clearance: degrees(7, 24, tradeSource), WorkClearance: degrees(10, 15, bookSource), Speed: feet(80, 110, navySource),
			KdTorque: 18000, KdThrust: 18000, KdTorqueSource: kdDerivedSource, KdThrustSource: kdDerivedSource, ForceConstant: 2.22,
		},
		{Name: "steel-200", Title: "Steel, 200 HB", Also: []string{"medium-carbon-steel"}, Relief: General,
			Point: degrees(118, 135, tradeSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(24, 32, tradeSource),
			Clearance: degrees(7, 24, tradeSource), WorkClearance: degrees(10, 15, bookSource), Speed: feet(70, 80, navySource),
			KdTorque: 24000, KdThrust: 24000, KdTorqueSource: kdSource, KdThrustSource: kdSource, ForceConstant: 2.22,
		},
		{Name: "steel-300", Title: "Steel, 300 HB", Also: []string{"alloy-steel"}, Relief: Hard,
			Point: degrees(118, 135, bookSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(24, 32, bookSource),
			Clearance: degrees(7, 10, bookSource), WorkClearance: degrees(7, 10, bookSource), Speed: feet(50, 70, navySource),
			KdTorque: 31000, KdThrust: 31000, KdTorqueSource: kdSource, KdThrustSource: kdSource, ForceConstant: 2.41,
		},
		{Name: "steel-400", Title: "Steel, 400 HB", Relief: Hard,
			Point: degrees(118, 135, bookSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(24, 32, bookSource),
			Clearance: degrees(7, 10, bookSource), WorkClearance: degrees(7, 10, bookSource), Speed: feet(25, 35, tradeSpeedSource),
			KdTorque: 34000, KdThrust: 34000, KdTorqueSource: kdSource, KdThrustSource: kdSource, ForceConstant: 3.44,
		},
		{Name: "tool-steel", Title: "Tool steel, annealed, 196-241 HB", Also: []string{"high-carbon-steel"}, Relief: Hard,
			Point: degrees(118, 135, tradeSource), PointAim: 118 * deg, PointSource: printSource, Chisel: degrees(125, 135, bookSource), Helix: degrees(25, 35, printSource),
			Clearance: degrees(7, 12, courseSource), WorkClearance: degrees(7, 12, courseSource), Speed: metres(15, 18, printSource),
		},
		{Name: "stainless-316", Title: "Stainless steel, austenitic (type 316)", Also: []string{"stainless", "stainless-steel"}, Relief: Hard,
			Point: degrees(118, 135, tradeSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(24, 32, tradeSource),
			Clearance: degrees(7, 24, tradeSource), WorkClearance: degrees(10, 12, bookSource), Speed: feet(30, 40, navySource),
			KdTorque: 24000, KdThrust: 35000, KdTorqueSource: kdFewSource, KdThrustSource: kdFewSource, Hardens: true,
		},
		{Name: "stainless-ph", Title: "Stainless steel, precipitation hardened, 150-200 HB", Relief: Hard,
			Point: degrees(118, 135, printSource), Chisel: degrees(120, 130, bookSource), Helix: degrees(25, 35, printSource),
			Clearance: degrees(7, 24, tradeSource), WorkClearance: degrees(7, 10, bookSource), Speed: metres(15, 15, printSource),
			Hardens: true,
		},
		{Name: "cast-iron-150", Title: "Cast iron, 150 HB", Also: []string{"cast-iron", "grey-cast-iron", "gray-cast-iron"}, Relief: General,
			Point: degrees(90, 118, tradeSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(24, 32, tradeSource),
			Clearance: degrees(7, 20, tradeSource), WorkClearance: degrees(8, 12, bookSource), Speed: feet(70, 150, navySource),
			KdTorque: 14000, KdThrust: 14000, KdTorqueSource: kdSource, KdThrustSource: kdSource, KdHigh: true, ForceConstant: 1, PowderyChips: true,
		},
		{Name: "malleable-iron", Title: "Malleable iron", Relief: General,
			Point: degrees(90, 118, tradeSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(24, 32, tradeSource),
			Clearance: degrees(7, 20, tradeSource), WorkClearance: degrees(8, 12, bookSource), Speed: feet(80, 90, tradeSpeedSource),
		},
		{Name: "aluminium", Title: "Aluminium alloys", Also: []string{"aluminum"}, Relief: Soft,
			Point: degrees(90, 135, tradeSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(32, 48, tradeSource),
			Clearance: degrees(12, 26, tradeSource), WorkClearance: degrees(12, 15, bookSource), Speed: feet(200, 300, navySource),
			KdTorque: 7000, KdThrust: 7000, KdTorqueSource: kdSource, KdThrustSource: kdSource, ForceConstant: 1.01,
		},
		{Name: "magnesium", Title: "Magnesium alloys", Relief: Soft,
			Point: degrees(70, 118, bookSource), Chisel: degrees(120, 135, bookSource), Helix: degrees(30, 45, bookSource),
			Clearance: degrees(12, 15, bookSource), WorkClearance: degrees(12, 15, bookSource), Speed: feet(250, 400, tradeSpeedSource),
			KdTorque: 4000, KdThrust: 4000, KdTorqueSource: kdSource, KdThrustSource: kdSource, Burns: true,
		},
		{Name: "copper", Title: "Copper", Relief: Soft,
			Point: degrees(118, 118, bookSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(10, 30, bookSource),
			Clearance: degrees(12, 15, bookSource), WorkClearance: degrees(12, 15, bookSource),
			StraightFlutes: true,
		},
		{Name: "brass", Title: "Brass", Relief: Soft,
			Point: degrees(90, 118, tradeSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(0, 20, tradeSource),
			Clearance: degrees(12, 26, tradeSource), WorkClearance: degrees(12, 15, bookSource), Speed: feet(200, 300, navySource),
			KdTorque: 14000, KdThrust: 14000, KdTorqueSource: kdSource, KdThrustSource: kdSource, StraightFlutes: true,
		},
		{Name: "leaded-brass", Title: "Leaded brass", Also: []string{"free-cutting-brass"}, Relief: Soft,
			Point: degrees(90, 118, tradeSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(0, 20, tradeSource),
			Clearance: degrees(12, 26, tradeSource), WorkClearance: degrees(12, 15, bookSource), Speed: feet(200, 300, navySource),
			KdTorque: 7000, KdThrust: 7000, KdTorqueSource: kdSource, KdThrustSource: kdSource, StraightFlutes: true,
		},
		{Name: "bronze", Title: "Bronze", Relief: General,
			Point: degrees(118, 118, bookSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(10, 30, bookSource),
			Clearance: degrees(12, 15, bookSource), WorkClearance: degrees(12, 15, bookSource), Speed: feet(200, 300, navySource),
		},
		{Name: "zinc", Title: "Zinc alloys, 80-100 HB", Also: []string{"zinc-alloy"}, Relief: Soft,
			Point: degrees(118, 118, printSource), Helix: degrees(32, 42, printSource),
			Speed: metres(76, 76, printSource),
		},
		{Name: "titanium", Title: "Titanium alloy Ti-6Al-4V, 40 HRC", Also: []string{"titanium-alloy", "ti-6al-4v"}, Relief: Hard,
			Point: degrees(135, 135, printSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(30, 38, printSource),
			Clearance: degrees(7, 10, bookSource), WorkClearance: degrees(7, 10, bookSource), Speed: metres(12, 12, printSource),
			KdTorque: 18000, KdThrust: 29000, KdTorqueSource: kdFewSource, KdThrustSource: kdFewSource, Hardens: true, Burns: true,
		},
		{Name: "titanium-pure", Title: "Titanium, pure, 110-200 HB", Relief: Hard,
			Point: degrees(135, 135, printSource), Helix: degrees(30, 38, printSource),
			Speed:   metres(30, 30, printSource),
			Hardens: true, Burns: true,
		},
		{Name: "nickel-alloy", Title: "Nickel alloys, nickel-copper (Monel)", Also: []string{"monel"}, Relief: Hard,
			Point: degrees(118, 135, bookSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(15, 30, bookSource),
			Clearance: degrees(9, 12, bookSource), WorkClearance: degrees(9, 12, bookSource), Speed: feet(40, 50, navySource),
			Hardens: true,
		},
		{Name: "nickel-molybdenum", Title: "Nickel-molybdenum-chromium alloy", Relief: Hard,
			Point: degrees(118, 135, bookSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(15, 30, bookSource),
			Clearance: degrees(9, 12, bookSource), WorkClearance: degrees(9, 12, bookSource),
			KdTorque: 30000, KdThrust: 37000, KdTorqueSource: kdFewSource, KdThrustSource: kdFewSource, Hardens: true,
		},
		{Name: "high-temperature-alloy", Title: "Nickel superalloy, 40 HRC", Also: []string{"superalloy", "heat-resistant-alloy"}, Relief: Hard,
			Point: degrees(118, 135, bookSource), Chisel: degrees(125, 135, bookSource), Helix: degrees(15, 30, bookSource),
			Clearance: degrees(9, 12, bookSource), WorkClearance: degrees(9, 12, bookSource),
			KdTorque: 40000, KdThrust: 40000, KdTorqueSource: kdFewSource, KdThrustSource: kdFewSource, Hardens: true,
		},
		{Name: "plastics", Title: "Plastics", Also: []string{"plastic"}, Relief: Soft,
			Point: degrees(60, 90, tradeSource), Chisel: degrees(120, 135, bookSource), Helix: degrees(0, 20, tradeSource),
			Clearance: degrees(12, 26, tradeSource), WorkClearance: degrees(7, 7, bookSource), Speed: feet(100, 300, tradeSpeedSource),
			StraightFlutes: true,
		},
		{Name: "nylon", Title: "Nylon, acetal", Also: []string{"acetal", "polyamide"}, Relief: Soft,
			Point: degrees(118, 118, apartSource), Chisel: degrees(120, 135, bookSource), Helix: degrees(0, 20, tradeSource),
			Clearance: degrees(12, 26, tradeSource), WorkClearance: degrees(7, 7, bookSource), Speed: feet(100, 300, tradeSpeedSource),
			StraightFlutes: true,
		},
	}
}

// materials completes the list once, when it is first asked for.
var materials = sync.OnceValue(func() []Material {
	list := published()
	for i := range list {
		m := &list[i]
		if m.PointSource == nil {
			m.PointAim, m.PointSource = aim(m.Point, m.Relief)
		}
		if m.KdThrustSource == nil {
			m.KdThrust, m.KdTorque = nan, nan
		}
		for _, b := range [...]*Band{&m.Chisel, &m.Helix, &m.Clearance, &m.WorkClearance, &m.Speed} {
			if b.Source == nil {
				*b = unpublished
			}
		}
	}
	return list
})

// generalPoint is the general-purpose point angle, degrees.
const generalPoint = 118.0

// aim returns the point angle to grind, out of the published band.
func aim(point Band, relief Relief) (float64, *Source) {
	switch {
	case point.Low == point.High:
		return point.Low, point.Source
	case relief == Hard:
		return point.High, aimSource
	}
	return min(max(generalPoint*deg, point.Low), point.High), aimSource
}

// SpeedPick returns the cutting speed, m/min, that is taken out of a published
// band, and where the rule comes from; NaN when nothing is published.
func SpeedPick(b Band) (float64, *Source) { return (b.Low + b.High) / 2, speedPickSource }

// MaterialTables returns the tables of figures by work material.
func MaterialTables() []Table {
	forces := Table{"work-material-factors", "Work-material factor Kd", kdSource, []string{"material", "torque", "thrust", "source"}, nil}
	constants := Table{"force-constants", "Material constant K of the second force form", ForceConstantSource, []string{"material", "K"}, nil}
	hardens := Table{"work-hardening", "Work that hardens where the drill rubs", HardenSource, []string{"material"}, nil}
	fire := Table{"fire", "Materials whose chips and dust burn", FireSource, []string{"material"}, nil}
	flutes := Table{"flutes", "Work that wants other flutes than an ordinary helix", FluteSource, []string{"material", "flutes"}, nil}
	all := Table{"materials", "Materials of the list and the class of work each is", choiceSource, []string{"name", "material", "class", "point", "feed"}, nil}
	add := func(t *Table, holds bool, cells ...string) {
		if holds {
			t.Rows = append(t.Rows, cells)
		}
	}
	for _, m := range materials() {
		if m.KdThrustSource != nil {
			add(&forces, true, m.Name, cell(m.KdTorque), cell(m.KdThrust), m.KdThrustSource.String())
		}
		add(&constants, m.ForceConstant > 0, m.Name, cell(m.ForceConstant))
		add(&hardens, m.Hardens, m.Name)
		add(&fire, m.Burns, m.Name)
		add(&flutes, m.StraightFlutes, m.Name, "straight")
		add(&flutes, m.PowderyChips, m.Name, "high helix, where the chips pack")
		add(&all, true, m.Name, m.Title, m.Relief.String(), Band{m.PointAim, m.PointAim, nil}.in(deg), m.Relief.FeedEnd().String())
	}
	return []Table{
		forces, constants,
		geometry("drill-geometry-print", printSource), geometry("lip-clearance-course", courseSource), geometry("drill-geometry-trade", tradeSource),
		geometry("drill-geometry-apart", apartSource), geometry("drill-geometry-textbook", bookSource),
		speeds("cutting-speeds-course", navySource), speeds("cutting-speeds-trade", tradeSpeedSource),
		{"speed-taken", "Cutting speed taken", speedPickSource, []string{"rule"}, [][]string{{"middle of the band"}}},
		hardens, fire, flutes,
		{"point-aim", "Point angle to grind, degrees", aimSource, []string{"general-purpose", "hard work"}, [][]string{{cell(generalPoint), "the most that is published"}}},
		all,
	}
}

// geometry is the table of what one source says of the drill by work material.
func geometry(name string, source *Source) Table {
	t := Table{name, "Drill geometry by work material, degrees; speeds in m/min", source,
		[]string{"material", "point", "lip clearance", "chisel edge", "helix", "m/min"}, nil}
	for _, m := range materials() {
		clearance := m.Clearance
		if clearance.Source != source {
			clearance = m.WorkClearance
		}
		cells, known := []string{m.Name}, false
		for i, b := range [...]Band{m.Point, clearance, m.Chisel, m.Helix, m.Speed} {
			unit := deg
			if i == 4 {
				unit = 1
			}
			if b.Source != source {
				b = unpublished
			}
			cells, known = append(cells, b.in(unit)), known || b.Source != nil
		}
		if known {
			t.Rows = append(t.Rows, cells)
		}
	}
	return t
}

// speeds is the table of the cutting speeds of one source.
func speeds(name string, source *Source) Table {
	t := Table{name, "Cutting speeds of high-speed-steel drills, ft/min", source, []string{"material", "ft/min"}, nil}
	for _, m := range materials() {
		if m.Speed.Source == source {
			t.Rows = append(t.Rows, []string{m.Name, m.Speed.in(footM)})
		}
	}
	return t
}
