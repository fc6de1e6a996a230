package handbook

import "strconv"

// The diameters of numbered and lettered drills, in 0.0001 in.
var (
	numberDrills = [...]int{
		2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, // #1 to #10
		1910, 1890, 1850, 1820, 1800, 1770, 1730, 1695, 1660, 1610,
		1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285,
		1200, 1160, 1130, 1110, 1100, 1065, 1040, 1015, 995, 980,
		960, 935, 890, 860, 820, 810, 785, 760, 730, 700,
		670, 635, 595, 550, 520, 465, 430, 420, 410, 400,
		390, 380, 370, 360, 350, 330, 320, 310, 292, 280,
		260, 250, 240, 225, 210, 200, 180, 160, 145, 135, // #71 to #80
	}
	letterDrills = [...]int{
		2340, 2380, 2420, 2460, 2500, 2570, 2610, 2660, 2720, 2770, 2810, 2900, 2950, // A to M
		3020, 3160, 3230, 3320, 3390, 3480, 3580, 3680, 3770, 3860, 3970, 4040, 4130, // N to Z
	}
	wireSource = &Source{
		Label: Memory, Sureness: "high",
		Text: "the number and letter sizes of ASME B94.11M; two thirds of them compared with printed lists",
	}
	fractionSource = &Source{Label: Practice, Text: "the fraction sizes in which ASME B94.11M drills are commonly stocked"}
	metricSource   = &Source{Label: Practice, Text: "the metric steps of BS 328, 0.2 mm to 25 mm"}
	largeSource    = &Source{Label: Memory, Sureness: "medium", Text: "the metric steps over 25 mm in which drills are listed: 0.5 mm to 32 mm, then 1 mm"}
)

// stretch is a run of sizes with one step, both ends included.
type stretch struct{ from, to, step int }

// In 1/64 in.
var fractionStretches = []stretch{
	{1, 112, 1},
	{114, 144, 2},
	{148, 192, 4},
	{200, 208, 8},
	{224, 224, 0},
}

// In 0.01 mm. Below 1 mm the sizes end in 0, 2, 5 and 8, which takes four
// interleaved stretches.
var metricStretches = []stretch{
	{20, 90, 10},
	{22, 92, 10},
	{25, 95, 10},
	{28, 98, 10},
	{100, 295, 5},
	{300, 1390, 10},
	{1400, 2500, 25},
}

// In 0.01 mm, over 25 mm.
var largeStretches = []stretch{
	{2550, 3200, 50},
	{3300, 10000, 100},
}

func expand(stretches []stretch) []int {
	var out []int
	for _, s := range stretches {
		for v := s.from; v <= s.to; v += max(s.step, 1) {
			out = append(out, v)
		}
	}
	return out
}

// NumberDrill returns the diameter in millimetres of a numbered drill, 1 to
// 80; false for any other number. Source: from memory (high), the sizes of
// ASME B94.11M.
func NumberDrill(n int) (mm float64, ok bool) {
	if n < 1 || n > len(numberDrills) {
		return 0, false
	}
	return wireMM(numberDrills[n-1]), true
}

// LetterDrill returns the diameter in millimetres of a lettered drill, A to Z
// in either case; false for any other byte. Source: from memory (high), the
// sizes of ASME B94.11M.
func LetterDrill(letter byte) (mm float64, ok bool) {
	i := letter&^0x20 - 'A'
	if int(i) >= len(letterDrills) {
		return 0, false
	}
	return wireMM(letterDrills[i]), true
}

// wireMM is exact in its numerator, so the quotient is the nearest float64.
func wireMM(tenThousandths int) float64 { return float64(tenThousandths*254) / 100_000 }

// FractionDrills returns the ordinary fraction sizes in ascending order, in
// sixty-fourths of an inch: 1/64 to 1 3/4 by 1/64, to 2 1/4 by 1/32, to 3 by
// 1/16, to 3 1/4 by 1/8, then 3 1/2. Source: common practice.
func FractionDrills() []int { return expand(fractionStretches) }

// MetricDrills returns the ordinary metric sizes, in hundredths of a
// millimetre: 0.2 to 0.98 mm ending in 0, 2, 5 and 8, to 2.95 mm by 0.05, to
// 13.9 mm by 0.1, to 25 mm by 0.25, to 32 mm by 0.5, to 100 mm by 1. They are not
// in order below 1 mm. Source: common practice; over 25 mm from memory (medium).
func MetricDrills() []int { return append(expand(metricStretches), expand(largeStretches)...) }

// LargestOften is the end, mm, of the sizes that are commonly stocked: in inches
// 3-1/2, in millimetres 25. Source: common practice.
func LargestOften(inches bool) float64 {
	if inches {
		return float64(fractionStretches[len(fractionStretches)-1].to) * InchMM / 64
	}
	return float64(metricStretches[len(metricStretches)-1].to) / 100
}

// LargestListed is the largest drill, mm, that a list has: 100 mm. Source: from memory
// (medium).
func LargestListed() float64 { return float64(largeStretches[len(largeStretches)-1].to) / 100 }

// SizeTables returns the tables of drill sizes.
func SizeTables() []Table {
	return []Table{
		{"number-drills", "Number drill sizes", wireSource, []string{"number", "in"}, wireRows(numberDrills[:], func(i int) string { return "#" + strconv.Itoa(i+1) })},
		{"letter-drills", "Letter drill sizes", wireSource, []string{"letter", "in"}, wireRows(letterDrills[:], func(i int) string { return string(rune('A' + i)) })},
		{"fraction-drills", "Fraction drill sizes", fractionSource, []string{"from, in", "to, in", "step, in"}, stretchRows(fractionStretches, SixtyFourths)},
		{"metric-drills", "Metric drill sizes", metricSource, []string{"from, mm", "to, mm", "step, mm"}, stretchRows(metricStretches, hundredths)},
		{"metric-drills-large", "Metric drill sizes over 25 mm", largeSource, []string{"from, mm", "to, mm", "step, mm"}, stretchRows(largeStretches, hundredths)},
	}
}

func wireRows(sizes []int, name func(int) string) [][]string {
	rows := make([][]string, len(sizes))
	for i, s := range sizes {
		rows[i] = []string{name(i), strconv.FormatFloat(float64(s)/10_000, 'f', 4, 64)}
	}
	return rows
}

func stretchRows(stretches []stretch, write func(int) string) [][]string {
	return rows(stretches, func(s stretch) []string {
		if s.step == 0 {
			return []string{write(s.from), write(s.to), "-"}
		}
		return []string{write(s.from), write(s.to), write(s.step)}
	})
}

// SixtyFourths writes n/64 in lowest terms, n from 0: "3/8", "1-3/4", "3".
func SixtyFourths(n int) string {
	whole, top, bottom := n/64, n%64, 64
	if top == 0 {
		return strconv.Itoa(whole)
	}
	for top%2 == 0 {
		top, bottom = top/2, bottom/2
	}
	out := strconv.Itoa(top) + "/" + strconv.Itoa(bottom)
	if whole > 0 {
		out = strconv.Itoa(whole) + "-" + out
	}
	return out
}

func hundredths(n int) string { return strconv.FormatFloat(float64(n)/100, 'f', 2, 64) }
