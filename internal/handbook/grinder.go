package handbook

// Sources of the figures about the grinder.
var (
	restGapSource       = &Source{InPrint, "", "29 CFR 1910.215(a)(4): work rest no more than 1/8 in from the wheel (as quoted in OSHA directive STD 01-12-008); 29 CFR 1926.303(c)(2) says the same"}
	tongueGapSource     = &Source{InPrint, "", "29 CFR 1910.215(b)(9): adjustable tongue never more than 1/4 in from the wheel"}
	MarkedSpeedSource   = &Source{InPrint, "", "29 CFR 1910.215(d)(1): the spindle must not run faster than the speed marked on the wheel"}
	OrdinaryWheelSource = &Source{Memory, "high", "ordinary vitrified straight wheels, 6500 ft/min (33 m/s) in ANSI B7.1; the wheel's own marking governs"}
)

const (
	restGapMost, tongueGapMost = 0.125, 0.25 // in
	ordinaryWheelFeet          = 6500        // ft/min
)

// RestGap and TongueGap are the bands of the gaps to the wheel, mm.
var (
	RestGap   = Band{0, restGapMost * InchMM, restGapSource}
	TongueGap = Band{0, tongueGapMost * InchMM, tongueGapSource}
)

// The surface speed, m/s, up to which an ordinary vitrified straight wheel
// commonly runs, as published in either system. The wheel's own marking governs.
const (
	OrdinaryWheelMetric = 33.0
	OrdinaryWheelInch   = ordinaryWheelFeet * footM / 60
)

func grinderTables() []Table {
	return []Table{
		{"rest-gap", "Largest gap between work rest and wheel, inches", restGapSource, []string{"in"}, [][]string{row(restGapMost)}},
		{"tongue-gap", "Largest gap between tongue and wheel, inches", tongueGapSource, []string{"in"}, [][]string{row(tongueGapMost)}},
		{"marked-speed", "Which speed governs", MarkedSpeedSource, []string{"rule"}, [][]string{{"the wheel's own marking"}}},
		{"wheel-speed", "Surface speed of an ordinary vitrified straight wheel", OrdinaryWheelSource, []string{"m/s", "ft/min"}, [][]string{row(OrdinaryWheelMetric, ordinaryWheelFeet)}},
	}
}
