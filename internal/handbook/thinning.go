package handbook

// Sources of the figures about thinning.
var (
	formSource        = &Source{Memory, "medium", "point forms of DIN 1412; the chisel lengths are trade rules, not the standard's"}
	formPickSource    = &Source{Own, "", "the form whose chisel length is nearest; N, which has no thinning, only where none is ground"}
	LeastWebSource    = &Source{Own, "", "not thinner than the thinnest web in the Machinery's Handbook's Table 7 (31st ed., in print): w/D 0.025, a split point"}
	LeastChiselSource = &Source{Practice, "", "chisel edge after good grinding 1/10 to 1/20 of the diameter; shorter is a split point's, for a machine to grind"}
)

// PointForm is a form of ground point of DIN 1412, and the band of c/D that it leaves.
type PointForm struct {
	Letter, Title string
	Chisel        Band
}

// pointForms are the forms that a chisel edge by itself can amount to.
var pointForms = [...]PointForm{
	{"N", "cone-surface relief, no thinning", Band{0.18, 0.20, formSource}},
	{"A", "web thinned at the chisel edge only", Band{0.08, 0.10, formSource}},
	{"C", "cross grind (split point), two new short lips", Band{0.03, 0.06, formSource}},
}

// FormOfChisel returns the form that a chisel edge of ratio c/D amounts to: N,
// A or C, whichever form's chisel lengths are nearest; the longer chisel where
// two are as near. A point that is thinned, however little, is not form N. ok is
// false when ratio is not in 0 to 1.
func FormOfChisel(ratio float64, thinned bool) (form PointForm, source *Source, ok bool) {
	if !(ratio >= 0 && ratio < 1) {
		return PointForm{}, nil, false
	}
	least := 2.0
	for _, f := range pointForms {
		if thinned && f.Letter == "N" {
			continue
		}
		if away := max(f.Chisel.Low-ratio, ratio-f.Chisel.High, 0); away < least-edge {
			form, least = f, away
		}
	}
	return form, formPickSource, true
}

// The limits of thinning: the thinnest web w/D, and the shortest chisel edge
// c/D of a good point that is not split.
const (
	LeastWebRatio    = 0.025
	LeastChiselRatio = 0.05
)

func thinningTables() []Table {
	return []Table{
		{"point-form-found", "Point form that a chisel edge amounts to", formPickSource, []string{"form", "when"}, [][]string{
			{"N", "not thinned, and its chisel length the nearest"}, {"A or C", "the one whose chisel length is nearest"},
		}},
		{"point-forms", "Point forms of DIN 1412 and the chisel edge each leaves, c/D", formSource, []string{"form", "what it is", "c/D"},
			rows(pointForms[:], func(f PointForm) []string { return []string{f.Letter, f.Title, f.Chisel.in(1)} })},
		{"least-web", "Thinnest web at the point, part of diameter", LeastWebSource, []string{"w/D"}, [][]string{row(LeastWebRatio)}},
		{"least-chisel", "Shortest chisel edge of a point that is not split, part of diameter", LeastChiselSource, []string{"c/D"}, [][]string{row(LeastChiselRatio)}},
	}
}
