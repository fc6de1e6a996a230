package handbook

var (
	restGapSource   = Source{InPrint, "", "29 CFR 1910.215(a)(4): work rest no more than 1/8 in from the wheel (as quoted in OSHA directive STD 01-12-008); 29 CFR 1926.303(c)(2) says the same"}
	tongueGapSource = Source{InPrint, "", "29 CFR 1910.215(b)(9): adjustable tongue never more than 1/4 in from the wheel"}
	markedSource    = Source{InPrint, "", "29 CFR 1910.215(d)(1): the spindle must not run faster than the speed marked on the wheel"}
)

const restGapMost, tongueGapMost = 0.125, 0.25 // in

// RestGap and TongueGap are the bands of the gaps to the wheel, mm.
var (
	RestGap   = Band{0, restGapMost * InchMM, &restGapSource}
	TongueGap = Band{0, tongueGapMost * InchMM, &tongueGapSource}
)

// MarkedSpeedSource is where it is said that a wheel's marking governs.
func MarkedSpeedSource() *Source { return &markedSource }

// grinderTables returns the tables of this file.
func grinderTables() []Table {
	return []Table{
		{"rest-gap", "Largest gap between work rest and wheel, inches", restGapSource,
			[]string{"in"}, func() [][]string { return [][]string{{cell(restGapMost)}} }},
		{"tongue-gap", "Largest gap between tongue and wheel, inches", tongueGapSource,
			[]string{"in"}, func() [][]string { return [][]string{{cell(tongueGapMost)}} }},
		{"marked-speed", "Which speed governs", markedSource,
			[]string{"rule"}, func() [][]string { return [][]string{{"the wheel's own marking"}} }},
	}
}
