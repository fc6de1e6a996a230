package handbook

// Sources of the drilling-force method.
var (
	forceSource    = Source{InPrint, "", "Machinery's Handbook, 31st ed., section Machining Power, pp. 1152-1153, equations (1) to (7)"}
	toolWearSource = Source{Memory, "high", "Machinery's Handbook, tool-wear factor W, not read again"}
	driveSource    = Source{Memory, "high", "Machinery's Handbook, machine efficiency E, not read again"}
	forceKSource   = Source{Practice, "", "drilling force with a material constant K: thrust 570 K D f^0.85 N, torque K D^2 (0.630 + 16.84 f)/100 N m; a second way beside the handbook's"}
)

// forceConstants are K of the second way for the materials of the list that it is
// published for, or for work like them.
var forceConstants = [...]struct {
	material, work string
	k              float64
}{
	{"free-cutting-steel", "free-cutting steel, 620 MPa, 183 HB", 1.42},
	{"steel-150", "low-carbon steel (0.2 C), 550 MPa, 160 HB", 2.22},
	{"steel-200", "low-carbon steel (0.2 C), 550 MPa, 160 HB", 2.22},
	{"steel-300", "Cr-Mo steel (0.4 C), 940 MPa, 269 HB", 2.41},
	{"steel-400", "Ni-Cr-Mo steel, 1400 MPa, 390 HB", 3.44},
	{"cast-iron-150", "cast iron, 210 MPa, 177 HB", 1.00},
	{"aluminium", "aluminium, 250 MPa, 100 HB", 1.01},
}

// ForceConstant returns K of the second way for a work, which may be nil; NaN where
// none is published.
func ForceConstant(m *Material) float64 {
	for _, c := range forceConstants {
		if m != nil && m.Name == c.material {
			return c.k
		}
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

// ForceTables returns the tables behind thrust, torque and power.
func ForceTables() []Table {
	return []Table{
		{"force-equations", "What thrust, torque and power are made of", forceSource,
			[]string{"figure", "made of"}, func() [][]string {
				return [][]string{
					{"thrust", "Kd Ff FT B W for the lips, Kd D^2 J W for the chisel edge"}, {"torque", "Kd Ff FM A W"},
					{"power at the cutter", "torque and spindle speed"}, {"power at the motor", "power at the cutter, efficiency E"},
				}
			}},
		{"tool-wear-factors", "Tool-wear factor W", toolWearSource,
			[]string{"name", "condition", "W"}, factorRows(wearFactors[:])},
		{"drive-efficiency", "Machine efficiency E", driveSource,
			[]string{"name", "drive", "E"}, factorRows(driveFactors[:])},
		{"force-constants", "Material constant K of the second force form", forceKSource,
			[]string{"material", "published for", "K"}, func() [][]string {
				var rows [][]string
				for _, c := range forceConstants {
					rows = append(rows, []string{c.material, c.work, cell(c.k)})
				}
				return rows
			}},
	}
}
