package handbook

import "math"

// Relief is the class of work that the lip clearance is chosen for.
type Relief uint8

// The classes, as the columns of the table by size.
const (
	General Relief = iota
	Hard
	Soft
)

// String returns the class in words.
func (r Relief) String() string {
	return [...]string{"general work", "hard or tough work", "soft or free-cutting work"}[r]
}

type clearanceRow struct {
	name                string
	from, to            float64 // in
	general, hard, soft float64 // degrees
}

var clearanceSource = &Source{Memory, "medium-high", "lip clearance at the outer corner by drill size, a US cutting-tool handbook"}

var clearanceRows = [...]clearanceRow{
	{"No. 80 to 61", 0.0135, 0.0390, 24, 20, 26},
	{"No. 60 to 41", 0.0400, 0.0960, 21, 18, 24},
	{"No. 40 to 31", 0.0980, 0.1200, 18, 16, 22},
	{"1/8 to 1/4", 0.1250, 0.2500, 16, 14, 20},
	{"F to 11/32", 0.2570, 0.3438, 14, 12, 18},
	{"S to 1/2", 0.3480, 0.5000, 12, 10, 16},
	{"33/64 to 3/4", 0.5156, 0.7500, 10, 8, 14},
	{"49/64 and up", 0.7656, math.Inf(1), 8, 7, 12},
}

// clearanceEdge widens the band where the table has no neighbouring column.
const (
	clearanceEdge  = 2.0 // degrees
	clearanceFloor = 6.0 // degrees; common practice: about 6 outside at the least
)

// Clearance returns the clearance to aim at and the acceptable band at the
// outer corner, in radians, for a drill of diameter d mm. A diameter that falls
// between two rows takes the row below it in size.
//
// The published table has one figure a class. The band is this program's
// reading of it: from the harder class's figure to the softer's, and two
// degrees past the table's outer columns, never under 6 degrees. All is NaN
// when d is not above zero.
func Clearance(d float64, r Relief) (aim float64, band Band) {
	if !(d > 0) {
		return nan, Band{nan, nan, clearanceSource}
	}
	row := clearanceRows[0]
	for _, c := range clearanceRows {
		if d >= (c.from-0.00005)*InchMM {
			row = c
		}
	}
	var low, high float64
	switch r {
	case Hard:
		aim, low, high = row.hard, math.Max(row.hard-clearanceEdge, clearanceFloor), row.general
	case Soft:
		aim, low, high = row.soft, row.general, row.soft+clearanceEdge
	default:
		aim, low, high = row.general, row.hard, row.soft
	}
	return aim * deg, Band{low * deg, high * deg, clearanceSource}
}

// clearanceSupplied is the least lip clearance that drills are sold with, degrees;
// the rest are parts: of where the band begins that small drills need, and over where
// it ends that a lip may go on with, more in work that hardens.
const (
	clearanceSupplied = 8.0
	clearanceLeast    = 2.0 / 3
	clearanceOver     = 1.0 / 3
	clearanceOverHard = 2.0 / 3
)

var (
	clearanceBandSource = &Source{Own, "", "the table gives one figure a class; the band runs from the harder class's figure to the softer's"}
	suppliedSource      = &Source{Practice, "", "least lip clearance as supplied, 8 degrees"}
	acceptedSource      = &Source{Own, "", "too little is under two thirds of where the band by size begins, or under the 8 degrees that drills are sold with at the least, whichever is more, though never over the band's own beginning; too much is a third over what is published for the size, between two rows a line from one to the next, and for the work, whichever is more; in work that hardens two thirds over, and too little is under the band"}
)

// AcceptedClearance returns the band outside which a lip of a drill in use has to
// be ground, in radians, of the one recommended for its diameter d, mm, and the work,
// which may be nil. It reaches down from the recommended band toward what drills are
// sold with, since a sharp lip that clears the work is none to grind, and a part over
// it: too much is for the next grind.
func AcceptedClearance(d float64, recommended Band, m *Material) Band {
	least := math.Min(recommended.Low, math.Max(clearanceSupplied*deg, clearanceLeast*recommended.Low))
	most, over := clearanceEnd(d, General), clearanceOver
	if m != nil {
		most = math.Max(clearanceEnd(d, m.Relief), m.WorkClearance.High)
		if m.Hardens {
			least, over = recommended.Low, clearanceOverHard
		}
	}
	return Band{least, most * (1 + over), acceptedSource}
}

// clearanceEnd is where the published clearance ends for a class of work at a
// diameter, mm, radians: between the middles of two rows of the table it goes in a
// line with the logarithm of the size, so that no two sizes a hair apart differ by a
// row.
func clearanceEnd(d float64, r Relief) float64 {
	end := func(c *clearanceRow) float64 {
		switch r {
		case Hard:
			return c.general * deg
		case Soft:
			return (c.soft + clearanceEdge) * deg
		}
		return c.soft * deg
	}
	middle := func(c *clearanceRow) float64 {
		if math.IsInf(c.to, 1) {
			return math.Log(InchMM)
		}
		return math.Log(math.Sqrt(c.from*c.to) * InchMM)
	}
	if !(d > 0) {
		return nan
	}
	at := math.Log(d)
	last := &clearanceRows[0]
	for i := range clearanceRows {
		c := &clearanceRows[i]
		if at <= middle(c) {
			if i == 0 {
				return end(c)
			}
			part := (at - middle(last)) / (middle(c) - middle(last))
			return end(last) + part*(end(c)-end(last))
		}
		last = c
	}
	return end(last)
}

func clearanceTables() []Table {
	return []Table{
		{"lip-clearance-by-size", "Lip clearance at the outer corner by drill size, degrees", clearanceSource,
			[]string{"size", "from in", "to in", "general", "hard", "soft"}, rows(clearanceRows[:], func(r clearanceRow) []string {
				to := cell(r.to)
				if math.IsInf(r.to, 1) {
					to = "up"
				}
				return []string{r.name, cell(r.from), to, cell(r.general), cell(r.hard), cell(r.soft)}
			})},
		{"lip-clearance-band", "How the band is read from the table by size, degrees", clearanceBandSource, []string{"rule", "degrees"}, [][]string{
			{"past the outer columns", cell(clearanceEdge)}, {"never under (common practice: about 6 outside)", cell(clearanceFloor)},
		}},
		{"lip-clearance-as-supplied", "Least lip clearance that drills are sold with, degrees", suppliedSource, []string{"degrees"}, [][]string{row(clearanceSupplied)}},
		{"lip-clearance-accepted", "Lip clearance outside which a lip is ground anew, degrees", acceptedSource, []string{"at least", "at most"},
			[][]string{{"2/3 of the band's beginning, or " + cell(clearanceSupplied), "the band's end"}}},
	}
}
