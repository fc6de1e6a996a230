package handbook

import (
	"slices"
	"strings"

	"evenlip/internal/near"
)

// Material is a work material and what is published about drilling it with a
// high-speed-steel drill. Figures that nobody has published are NaN, with no
// source.
type Material struct {
	Name  string   // "steel-200": kind and hardness
	Title string   // "Steel, 200 HB"
	Also  []string // other names that find it

	// KdThrust and KdTorque are the handbook's work-material factor for a
	// sharp drill, the same number for inch and metric equations; each has its
	// source, since a shop may set one of them alone.
	KdThrust, KdTorque             float64
	KdThrustSource, KdTorqueSource *Source
	KdHigh                         bool // thrusts by it lie a third and more over two other published ways

	// Point is the band of point angles that are published, PointAim the one
	// to grind, radians. The tolerance of a ground point comes on top.
	Point       Band
	PointAim    float64
	PointSource *Source // of the aim

	Chisel Band // obtuse chisel-edge angle, radians
	Helix  Band // radians
	Relief Relief
	// Clearance is the band of the lip clearance over all drill sizes, radians;
	// Relief picks the column of the finer table by size.
	Clearance Band
	// WorkClearance is the band published for the work without regard to size; NaN
	// where none is.
	WorkClearance Band

	Speed Band // cutting speed, m/min

	ForceConstant float64 // K of the second way to a thrust; 0 where none is published

	Hardens        bool // where the drill rubs
	Burns          bool // as chips and dust
	StraightFlutes bool // is what it wants
	PowderyChips   bool
}

// HasForce reports whether thrust and torque can be computed for the material.
func (m *Material) HasForce() bool { return m.KdThrust > 0 && m.KdTorque > 0 }

// HasSpeed reports whether a cutting speed is published for the material.
func (m *Material) HasSpeed() bool { return m.Speed.Low > 0 }

// Materials returns every material, in the order of the list.
func Materials() []Material { return slices.Clone(materials()) }

// FindMaterial returns the material of that name, for reading only. Case, spaces and
// underscores do not matter; other common names are taken too.
func FindMaterial(name string) (*Material, bool) {
	name = plainName(name)
	list := materials()
	for i := range list {
		if m := &list[i]; m.Name == name || slices.Contains(m.Also, name) {
			return m, true
		}
	}
	return nil, false
}

// SuggestMaterial returns the material's name that was most likely meant: one
// that begins with what was typed, else the nearest by edit distance if at most
// a third of its letters differ. It returns "" when nothing is near.
func SuggestMaterial(name string) string {
	name = plainName(name)
	if name == "" {
		return ""
	}
	var names []string
	for _, m := range materials() {
		for _, known := range append([]string{m.Name}, m.Also...) {
			if strings.HasPrefix(known, name) {
				return m.Name
			}
			names = append(names, known)
		}
	}
	if m, ok := FindMaterial(near.Name(name, names...)); ok {
		return m.Name
	}
	return ""
}

// instead is what to take for work that is in none of the lists by that name.
var instead = [...]struct {
	names []string
	take  string
}{
	{[]string{"304", "304l", "aisi-304", "stainless-304", "18-8"}, "take stainless-316: 304 is austenitic as it is"},
	{[]string{"steel", "carbon-steel", "1045", "4130", "4140", "4340"}, "take a steel by its Brinell hardness: steel-150 (mild steel), steel-200, steel-300 or steel-400"},
	{[]string{"hard-steel", "hardened-steel"}, "take steel-300, steel-400 or tool-steel, by its hardness"},
	{[]string{"acrylic", "polycarbonate", "pvc"}, "take plastics"},
}

// MaterialHint says what may be meant by a name of no material: the materials nearest
// to the work it names, or to its letters, or where they are listed.
func MaterialHint(name string) string {
	plain := plainName(name)
	for _, other := range instead {
		if slices.Contains(other.names, plain) {
			return other.take
		}
	}
	if near := SuggestMaterial(name); near != "" {
		return "did you mean " + near + "?"
	}
	return "evenlip material lists them"
}

// SameName reports whether two names are one material's, however they are spelled.
func SameName(a, b string) bool { return plainName(a) == plainName(b) }

// plainName returns a name as the list spells it.
func plainName(name string) string {
	return strings.Map(func(r rune) rune {
		if r == ' ' || r == '_' {
			return '-'
		}
		return r
	}, strings.ToLower(strings.TrimSpace(name)))
}
