package handbook

// Sources of the figures about thinning.
var (
	formSource     = Source{Memory, "medium", "point forms of DIN 1412; the chisel lengths are trade rules, not the standard's"}
	formPickSource = Source{Own, "", "the form whose chisel length is nearest; N, which has no thinning, only where none is ground"}
	coreWebSource  = Source{Own, "", "not thinner than the thinnest web in the Machinery's Handbook's Table 7 (31st ed., in print): w/D 0.025, a split point"}
	coreEdgeSource = Source{Practice, "", "chisel edge after good grinding 1/10 to 1/20 of the diameter; shorter is a split point's, for a machine to grind"}
	shareSource    = Source{InPrint, "", "Modern Machining Technology (2011), p. 145: chisel edge 50 to 60 % of the axial force, lips 30 to 40 %, margins about 10 %; 29.5 mm high-speed-steel drill, work of 200 HB"}
)

// PointForm is a form of ground point of DIN 1412.
type PointForm struct {
	Letter, Title, Use string
	// Chisel is the band of c/D that it leaves; both ends NaN where the form
	// has no such figure.
	Chisel Band
}

var pointForms = [...]struct {
	letter, title, use string
	chisel             span
}{
	{"N", "cone-surface relief, no thinning", "general", span{0.18, 0.20}},
	{"A", "web thinned at the chisel edge only", "drills over roughly 10 to 14 mm, high-tensile work", span{0.08, 0.10}},
	{"B", "thinned as A and main lip corrected, rake often to about 10 degrees", "hard or high-strength steel, manganese steel, brass with flat rake", span{0.10, 0.10}},
	{"C", "cross grind (split point), two new short lips", "deep holes, thick webs, tough alloys", span{0.03, 0.06}},
	{"D", "thinned, and corners with a second point angle of about 90 degrees", "grey cast iron", span{0.10, 0.10}},
	{"E", "centre spur with flat lips (180 degrees)", "sheet, thin work, soft material", span{}},
}

// PointForms returns the forms of DIN 1412.
func PointForms() []PointForm {
	out := make([]PointForm, len(pointForms))
	for i, f := range pointForms {
		out[i] = PointForm{f.letter, f.title, f.use, f.chisel.band(1, &formSource)}
	}
	return out
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
	for _, f := range PointForms() {
		if f.Letter != "A" && f.Letter != "C" && (thinned || f.Letter != "N") {
			continue
		}
		if away := max(f.Chisel.Low-ratio, ratio-f.Chisel.High, 0); away < least-edge {
			form, least = f, away
		}
	}
	return form, &formPickSource, true
}

// The limits of thinning: the thinnest web w/D, and the shortest chisel edge
// c/D of a good point that is not split.
const (
	LeastWebRatio    = 0.025
	LeastChiselRatio = 0.05
)

// ThinningSources returns where LeastWebRatio and LeastChiselRatio come from.
func ThinningSources() [2]*Source { return [2]*Source{&coreWebSource, &coreEdgeSource} }

// ThinningTables returns the tables about thinning.
func ThinningTables() []Table {
	return []Table{
		{"point-form-found", "Point form that a chisel edge amounts to", formPickSource,
			[]string{"form", "when"}, func() [][]string {
				return [][]string{{"N", "not thinned, and its chisel length the nearest"}, {"A or C", "the one whose chisel length is nearest"}}
			}},
		{"point-forms", "Point forms of DIN 1412 and the chisel edge each leaves, c/D", formSource,
			[]string{"form", "what it is", "use", "c/D"}, func() [][]string {
				var rows [][]string
				for _, f := range pointForms {
					rows = append(rows, []string{f.letter, f.title, f.use, f.chisel.String()})
				}
				return rows
			}},
		{"least-web", "Thinnest web at the point, part of diameter", coreWebSource,
			[]string{"w/D"}, func() [][]string { return [][]string{{cell(LeastWebRatio)}} }},
		{"least-chisel", "Shortest chisel edge of a point that is not split, part of diameter", coreEdgeSource,
			[]string{"c/D"}, func() [][]string { return [][]string{{cell(LeastChiselRatio)}} }},
		{"thrust-shares", "Measured shares of the thrust, percent", shareSource,
			[]string{"chisel edge", "lips", "margins"}, func() [][]string { return [][]string{{"50-60", "30-40", "about 10"}} }},
	}
}
