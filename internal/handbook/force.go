package handbook

// Sources of the drilling-force method.
var (
	ForceSource    = &Source{InPrint, "", "Machinery's Handbook, 31st ed., section Machining Power, pp. 1152-1153, equations (1) to (7)"}
	toolWearSource = &Source{Memory, "high", "Machinery's Handbook, tool-wear factor W, not read again"}
	driveSource    = &Source{Memory, "high", "Machinery's Handbook, machine efficiency E, not read again"}
)

// ForceConstant returns K of the second way for a work, which may be nil; NaN where
// none is published.
func ForceConstant(m *Material) float64 {
	if m == nil || m.ForceConstant == 0 {
		return nan
	}
	return m.ForceConstant
}

// Factor is a named factor of the force method: a tool's condition or a
// machine's drive. Low and High are the ends of what is published.
type Factor struct {
	Name, Title string
	Low, High   float64
	Source      *Source
}

// Mid returns the middle of the published range.
func (f Factor) Mid() float64 { return (f.Low + f.High) / 2 }

// WearFactors are the tool-wear factors W, least first.
var WearFactors = [...]Factor{
	{"sharp", "any operation, sharp tool", 1.00, 1.00, toolWearSource},
	NormalWear,
	{"dull", "drilling hard-to-machine material, or with a very dull drill", 1.50, 1.50, toolWearSource},
}

// NormalWear is the tool-wear factor of a drill in normal use.
var NormalWear = Factor{"normal", "drilling, normal", 1.30, 1.30, toolWearSource}

// DriveFactors are the efficiencies E of the drives.
var DriveFactors = [...]Factor{
	{"belt", "direct belt", 0.90, 0.90, driveSource},
	{"back-gear", "back gear", 0.75, 0.75, driveSource},
	{"geared-head", "geared head", 0.70, 0.80, driveSource},
	{"hydraulic", "oil-hydraulic", 0.60, 0.90, driveSource},
}

// DriveFactor returns the efficiency E of a drive: belt, back-gear,
// geared-head or hydraulic.
func DriveFactor(name string) (Factor, bool) {
	for _, f := range DriveFactors {
		if f.Name == name {
			return f, true
		}
	}
	return Factor{}, false
}

func forceTables() []Table {
	factor := func(f Factor) []string { return []string{f.Name, f.Title, Band{f.Low, f.High, nil}.in(1)} }
	return []Table{
		{"force-equations", "What thrust, torque and power are made of", ForceSource, []string{"figure", "made of"}, [][]string{
			{"thrust", "Kd Ff FT B W for the lips, Kd D^2 J W for the chisel edge"}, {"torque", "Kd Ff FM A W"},
			{"power at the cutter", "torque and spindle speed"}, {"power at the motor", "power at the cutter, efficiency E"},
		}},
		{"tool-wear-factors", "Tool-wear factor W", toolWearSource, []string{"name", "condition", "W"}, rows(WearFactors[:], factor)},
		{"drive-efficiency", "Machine efficiency E", driveSource, []string{"name", "drive", "E"}, rows(DriveFactors[:], factor)},
	}
}
