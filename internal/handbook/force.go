package handbook

import "sync"

// Sources of the drilling-force method.
var (
	chiselFactorSource   = Source{InPrint, "", "Machinery's Handbook, 31st ed., Table 7, p. 1152"}
	feedFactorSource     = Source{InPrint, "", "Machinery's Handbook, 31st ed., Table 8, p. 1153; every entry is feed^0.8"}
	diameterFactorSource = Source{InPrint, "", "Machinery's Handbook, 31st ed., Table 9, p. 1153; FT is D^0.8, FM is D^1.8"}
	forceSource          = Source{InPrint, "", "Machinery's Handbook, 31st ed., section Machining Power, pp. 1152-1153, equations (1) to (7)"}
	toolWearSource       = Source{Memory, "high", "Machinery's Handbook, tool-wear factor W, not read again"}
	driveSource          = Source{Memory, "high", "Machinery's Handbook, machine efficiency E, not read again"}
	forceKSource         = Source{Practice, "", "drilling force with a material constant K: thrust 570 K D f^0.85 N, torque K D^2 (0.630 + 16.84 f)/100 N m; a second way beside the handbook's"}
)

// forceConstantRow is the work of [forceConstants], and its HB, that a material's K of
// the second way is read from: itself or one like it.
var forceConstantRow = map[string][2]string{
	"free-cutting-steel": {"free-cutting steel", "183"},
	"steel-150":          {"low-carbon steel (0.2 C)", "160"},
	"steel-200":          {"low-carbon steel (0.2 C)", "160"},
	"steel-300":          {"Cr-Mo steel (0.4 C)", "269"},
	"steel-400":          {"Ni-Cr-Mo steel", "390"},
	"cast-iron-150":      {"cast iron", "177"},
	"aluminium":          {"aluminium", "100"},
}

var publishedConstants = sync.OnceValue(func() map[[2]string]float64 {
	out := map[[2]string]float64{}
	for _, row := range published(forceConstants)() {
		out[[2]string{row[0], row[2]}] = figureOf(row[3])
	}
	return out
})

// ForceConstant returns K of the second way for a work, which may be nil; NaN where
// none is published.
func ForceConstant(m *Material) float64 {
	if m == nil {
		return nan
	}
	if row, ok := forceConstantRow[m.Name]; ok {
		return publishedConstants()[row]
	}
	return nan
}

// ForceConstantSource is where the second way to a thrust comes from.
func ForceConstantSource() *Source { return &forceKSource }

// ForceSource is where the equations of thrust, torque and power come from.
func ForceSource() *Source { return &forceSource }

// Factor is a named factor of the force method: a tool's condition or a
// machine's drive. Low and High are the ends of what is published.
type Factor struct {
	Name, Title string
	Low, High   float64
	Source      *Source
}

// Mid returns the middle of the published range.
func (f Factor) Mid() float64 { return (f.Low + f.High) / 2 }

var wearFactors = [...]Factor{
	{"sharp", "any operation, sharp tool", 1.00, 1.00, &toolWearSource},
	{"normal", "drilling, normal", 1.30, 1.30, &toolWearSource},
	{"dull", "drilling hard-to-machine material, or with a very dull drill", 1.50, 1.50, &toolWearSource},
}

var driveFactors = [...]Factor{
	{"belt", "direct belt", 0.90, 0.90, &driveSource},
	{"back-gear", "back gear", 0.75, 0.75, &driveSource},
	{"geared-head", "geared head", 0.70, 0.80, &driveSource},
	{"hydraulic", "oil-hydraulic", 0.60, 0.90, &driveSource},
}

// WearFactor returns the tool-wear factor W of a tool that is sharp, normal or
// dull.
func WearFactor(name string) (Factor, bool) { return findFactor(wearFactors[:], name) }

// WearFactors returns the tool-wear factors, least first.
func WearFactors() []Factor { return append([]Factor(nil), wearFactors[:]...) }

// DriveFactor returns the efficiency E of a drive: belt, back-gear,
// geared-head or hydraulic.
func DriveFactor(name string) (Factor, bool) { return findFactor(driveFactors[:], name) }

// DriveFactors returns the efficiencies of the drives.
func DriveFactors() []Factor { return append([]Factor(nil), driveFactors[:]...) }

func findFactor(factors []Factor, name string) (Factor, bool) {
	for _, f := range factors {
		if f.Name == name {
			return f, true
		}
	}
	return Factor{}, false
}

func factorRows(factors []Factor) func() [][]string {
	return func() [][]string {
		var rows [][]string
		for _, f := range factors {
			rows = append(rows, []string{f.Name, f.Title, span{f.Low, f.High}.String()})
		}
		return rows
	}
}

// ForceTables returns the tables behind thrust, torque and power, as printed.
func ForceTables() []Table {
	return []Table{
		{"force-equations", "What thrust, torque and power are made of", forceSource,
			[]string{"figure", "made of"}, func() [][]string {
				return [][]string{
					{"thrust", "Kd Ff FT B W for the lips, Kd D^2 J W for the chisel edge"}, {"torque", "Kd Ff FM A W"},
					{"power at the cutter", "torque and spindle speed"}, {"power at the motor", "power at the cutter, efficiency E"},
				}
			}},
		{"chisel-edge-factors", "Chisel-edge factors A, B and J by chisel-edge length (Table 7)", chiselFactorSource,
			[]string{"c/D", "w/D", "A", "B", "J", "note"}, published(chiselFactors)},
		{"feed-factors-inch", "Feed factor Ff, inch (Table 8)", feedFactorSource,
			[]string{"feed in/rev", "Ff"}, published(feedFactorsInch)},
		{"feed-factors-metric", "Feed factor Ff, metric (Table 8)", feedFactorSource,
			[]string{"feed mm/rev", "Ff"}, published(feedFactorsMetric)},
		{"diameter-factors-inch", "Diameter factors FT and FM, inch (Table 9)", diameterFactorSource,
			[]string{"D in", "FT", "FM", "note"}, published(diameterFactorsInch)},
		{"diameter-factors-metric", "Diameter factors FT and FM, metric (Table 9)", diameterFactorSource,
			[]string{"D mm", "FT", "FM", "note"}, published(diameterFactorsMetric)},
		{"tool-wear-factors", "Tool-wear factor W", toolWearSource,
			[]string{"name", "condition", "W"}, factorRows(wearFactors[:])},
		{"drive-efficiency", "Machine efficiency E", driveSource,
			[]string{"name", "drive", "E"}, factorRows(driveFactors[:])},
		{"force-constants", "Material constant K of the second force form", forceKSource,
			[]string{"work", "tensile MPa", "HB", "K"}, published(forceConstants)},
	}
}
