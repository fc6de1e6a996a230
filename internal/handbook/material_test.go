package handbook_test

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"evenlip/internal/handbook"
	"evenlip/internal/testkit"
)

// number1 reads one cell as a number.
func number1(t *testing.T, cell string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// found returns a material that must be in the list.
func found(t *testing.T, name string) *handbook.Material {
	t.Helper()
	m, ok := handbook.FindMaterial(name)
	if !ok {
		t.Fatalf("no material %q", name)
	}
	return m
}

func TestWorkMaterialFactors(t *testing.T) {
	checks := testkit.Against(t, testkit.MachinerysHandbook.Recalled("high"), "work-material factor Kd")
	for name, want := range map[string][2]float64{ // torque, thrust
		"free-cutting-steel": {12000, 12000}, "steel-200": {24000, 24000}, "steel-300": {31000, 31000}, "steel-400": {34000, 34000},
		"cast-iron-150": {14000, 14000}, "aluminium": {7000, 7000}, "magnesium": {4000, 4000}, "brass": {14000, 14000}, "leaded-brass": {7000, 7000},
		"stainless-316": {24000, 35000}, "titanium": {18000, 29000}, "high-temperature-alloy": {40000, 40000}, "nickel-molybdenum": {30000, 37000},
	} {
		m := found(t, name)
		checks.Within(name+", torque", m.KdTorque, want[0], 0, "")
		checks.Within(name+", thrust", m.KdThrust, want[1], 0, "")
		if !m.HasForce() || m.KdThrustSource.Label != handbook.Memory || m.KdTorqueSource != m.KdThrustSource {
			t.Errorf("%s: torque %v, thrust %v, %v", name, m.KdTorque, m.KdThrust, m.KdThrustSource)
		}
	}
	if m := found(t, "steel-150"); m.KdThrustSource.Label != handbook.Derived || m.KdThrust != 150*found(t, "steel-200").KdThrust/200 || m.KdTorque != m.KdThrust {
		t.Errorf("steel-150: %v, %v", m.KdThrust, m.KdThrustSource)
	}
}

// Cutting speeds: the Navy course where it has the material, else the trade's
// chart, in ft/min; m/min from a printed textbook table.
func TestCuttingSpeeds(t *testing.T) {
	unit := map[float64]string{footM: "ft/min", 1: "m/min"}
	for name, want := range map[string][3]float64{ // low, high, m/min in one unit
		"free-cutting-steel": {80, 110, footM}, "steel-200": {70, 80, footM}, "steel-300": {50, 70, footM}, "steel-400": {25, 35, footM},
		"stainless-316": {30, 40, footM}, "cast-iron-150": {70, 150, footM}, "aluminium": {200, 300, footM}, "brass": {200, 300, footM},
		"bronze": {200, 300, footM}, "magnesium": {250, 400, footM}, "plastics": {100, 300, footM}, "nickel-alloy": {40, 50, footM},
		"titanium": {12, 12, 1}, "titanium-pure": {30, 30, 1}, "zinc": {76, 76, 1}, "tool-steel": {15, 18, 1}, "stainless-ph": {15, 15, 1},
	} {
		m := found(t, name)
		source := testkit.Against(t, speedSource(m, want[2]), "cutting speed by material")
		source.Within(name+", from", m.Speed.Low/want[2], want[0], 1e-9/want[2], unit[want[2]])
		source.Within(name+", to", m.Speed.High/want[2], want[1], 1e-9/want[2], unit[want[2]])
	}
	for name, label := range map[string]handbook.Label{"steel-200": handbook.InPrint, "steel-400": handbook.Practice, "titanium": handbook.InPrint, "magnesium": handbook.Practice} {
		if m := found(t, name); m.Speed.Source.Label != label {
			t.Errorf("%s: speed %v", name, m.Speed.Source)
		}
	}
}

// speedSource is whose a speed is: the course's or the textbook's where it was
// read in print, else the trade's.
func speedSource(m *handbook.Material, unit float64) testkit.Source {
	switch {
	case m.Speed.Source.Label != handbook.InPrint:
		return testkit.Trade
	case unit == 1:
		return testkit.MachiningProcesses
	}
	return testkit.Navy
}

// Points by work material: common practice, textbooks (from memory), and one
// printed table.
func TestPointAngles(t *testing.T) {
	for name, want := range map[string][3]float64{ // low, high, aim
		"steel-200": {118, 135, 118}, "free-cutting-steel": {118, 135, 118}, "steel-400": {118, 135, 135}, "stainless-316": {118, 135, 135},
		"aluminium": {90, 135, 118}, "brass": {90, 118, 118}, "cast-iron-150": {90, 118, 118}, "plastics": {60, 90, 90},
		"magnesium": {70, 118, 118}, "titanium": {135, 135, 135}, "zinc": {118, 118, 118}, "tool-steel": {118, 135, 118}, "copper": {118, 118, 118},
	} {
		m := found(t, name)
		trade := testkit.Against(t, testkit.Trade, "point angle by material")
		if m.PointSource.Label == handbook.InPrint {
			trade = testkit.Against(t, testkit.MachiningProcesses, "Table 5.4, point angle by material")
		}
		trade.Within(name+", from", m.Point.Low/radian, want[0], 1e-12/radian, "°")
		trade.Within(name+", to", m.Point.High/radian, want[1], 1e-12/radian, "°")
		trade.Within(name+", aim", m.PointAim/radian, want[2], 1e-12/radian, "°")
	}
	m := found(t, "tool-steel")
	if m.Clearance.Source.Label != handbook.InPrint || m.PointSource.Label != handbook.InPrint {
		t.Errorf("tool steel: clearance %v, point %v", m.Clearance.Source, m.PointSource)
	}
	agrees(t, "tool steel's clearance, low", m.Clearance.Low, 7*radian, 1e-12)
	agrees(t, "tool steel's clearance, high", m.Clearance.High, 12*radian, 1e-12)
	agrees(t, "helix in brass, low", found(t, "brass").Helix.Low, 0, 0)
	agrees(t, "helix in aluminium, high", found(t, "aluminium").Helix.High, 48*radian, 1e-12)
}

// Everything that is published has a source, lies within what a drill can have,
// and what is not published is NaN without one.
func TestMaterialsMakeSense(t *testing.T) {
	names := map[string]string{}
	for _, m := range handbook.Materials() {
		for _, name := range append([]string{m.Name}, m.Also...) {
			if other := names[name]; other != "" {
				t.Errorf("%q names both %s and %s", name, other, m.Name)
			}
			names[name] = m.Name
		}
		for what, v := range map[string]struct {
			band      handbook.Band
			low, high float64
		}{
			"point": {m.Point, 60 * radian, 150 * radian}, "chisel": {m.Chisel, 120 * radian, 135 * radian}, "helix": {m.Helix, 0, 48 * radian},
			"clearance": {m.Clearance, 7 * radian, 26 * radian}, "speed": {m.Speed, 5, 130},
		} {
			given := v.band.Source != nil
			if given != !math.IsNaN(v.band.Low) || given != !math.IsNaN(v.band.High) {
				t.Errorf("%s: %s %+v", m.Name, what, v.band)
			}
			if given && !(v.band.Low <= v.band.High && v.band.Low >= v.low-1e-9 && v.band.High <= v.high+1e-9) {
				t.Errorf("%s: %s %v to %v", m.Name, what, v.band.Low, v.band.High)
			}
		}
		if !m.Point.Holds(m.PointAim) || m.PointSource == nil {
			t.Errorf("%s: aim %v outside its band", m.Name, m.PointAim/radian)
		}
		if m.HasForce() != (m.KdThrustSource != nil) || m.HasSpeed() != (m.Speed.Source != nil) || math.IsNaN(m.KdThrust) != math.IsNaN(m.KdTorque) {
			t.Errorf("%s: %+v", m.Name, m)
		}
		// The lower end for hard material (Navy course, in print).
		if (m.Relief == handbook.Hard) != (m.Relief.FeedEnd() == handbook.FeedLow) {
			t.Errorf("%s: %v, feed %v", m.Name, m.Relief, m.Relief.FeedEnd())
		}
	}
}

// Harder steel is drilled more slowly and with more thrust (common practice).
func TestHarderSteelIsHarder(t *testing.T) {
	steels := []string{"steel-150", "steel-200", "steel-300", "steel-400"}
	for i, name := range steels[1:] {
		soft, hard := found(t, steels[i]), found(t, name)
		if !(hard.KdThrust > soft.KdThrust && hard.Speed.High < soft.Speed.High && hard.Relief.FeedEnd() <= soft.Relief.FeedEnd()) {
			t.Errorf("%s after %s: %+v", name, steels[i], hard)
		}
	}
}

func TestFindMaterial(t *testing.T) {
	for typed, want := range map[string]string{
		"steel-200": "steel-200", "Steel 200": "steel-200", " STEEL_200 ": "steel-200", "aluminum": "aluminium",
		"mild steel": "steel-150", "Cast Iron": "cast-iron-150", "stainless": "stainless-316", "Monel": "nickel-alloy",
		"1018": "steel-150", "AISI 1018": "steel-150", "nylon": "nylon", "Acetal": "nylon",
	} {
		if m, ok := handbook.FindMaterial(typed); !ok || m.Name != want {
			t.Errorf("%q: got %v %v, want %s", typed, m, ok, want)
		}
	}
	for _, typed := range []string{"", "steel", "unobtainium", "steel-2000"} {
		if m, ok := handbook.FindMaterial(typed); ok {
			t.Errorf("%q: got %s", typed, m.Name)
		}
	}
}

func TestSuggestMaterial(t *testing.T) {
	for typed, want := range map[string]string{
		"steel-20": "steel-200", "stell-300": "steel-300", "alumnium": "aluminium", "alu": "aluminium", "braas": "brass",
		"titanum": "titanium", "stainles-316": "stainless-316", "steel": "steel-150", "Cast iron 15": "cast-iron-150", "aluminnum": "aluminium",
		"": "", "xyzzy": "", "oak": "", string(make([]byte, 65)): "",
	} {
		if got := handbook.SuggestMaterial(typed); got != want {
			t.Errorf("%q: got %q, want %q", typed, got, want)
		}
	}
}

// Work by a name that no list has is answered with what to take, or where to look.
func TestMaterialHint(t *testing.T) {
	for typed, want := range map[string]string{
		"304": "take stainless-316: 304 is austenitic as it is", "AISI 304": "take stainless-316: 304 is austenitic as it is",
		"Steel": "take a steel by its Brinell hardness: steel-150 (mild steel), steel-200, steel-300 or steel-400", "steel-15": "did you mean steel-150?",
		"hard steel": "take steel-300, steel-400 or tool-steel, by its hardness", "Acrylic": "take plastics",
		"steel-20": "did you mean steel-200?", "unobtainium": "evenlip material lists them",
	} {
		if got := handbook.MaterialHint(typed); got != want {
			t.Errorf("%q: %s, want %s", typed, got, want)
		}
	}
}

// From memory (low): nylon and acetal take the general point, other plastics less.
func TestNylonTakesAnotherPointThanPlastics(t *testing.T) {
	nylon, plastics := found(t, "nylon"), found(t, "plastics")
	agrees(t, "point for nylon", nylon.PointAim, 118*radian, 1e-12)
	agrees(t, "point for plastics", plastics.PointAim, 90*radian, 1e-12)
	if nylon.PointSource.Label != handbook.Memory || nylon.PointSource.Sureness != "low" {
		t.Errorf("%v", nylon.PointSource)
	}
	if nylon.Clearance != plastics.Clearance || nylon.Speed != plastics.Speed || nylon.HasForce() {
		t.Errorf("the rest of nylon is not as of plastics: %+v", nylon)
	}
}

// A caller may change the list that it is given.
func TestMaterialsAreCopies(t *testing.T) {
	list := handbook.Materials()
	i := slices.IndexFunc(list, func(m handbook.Material) bool { return m.Name == "steel-200" })
	list[i].KdTorque = 1
	if m := found(t, "steel-200"); m.KdTorque != 24000 {
		t.Errorf("a caller changed the list: %+v", m)
	}
}

// A shop that strikes out a figure leaves the force or the speed open.
func TestChangedMaterial(t *testing.T) {
	for _, v := range []float64{0, math.NaN()} {
		thrust, torque, speed := *found(t, "steel-200"), *found(t, "steel-200"), *found(t, "steel-200")
		thrust.KdThrust, torque.KdTorque, speed.Speed.Low = v, v, v
		if thrust.HasForce() || torque.HasForce() {
			t.Errorf("Kd %v is a force", v)
		}
		if speed.HasSpeed() {
			t.Errorf("%v m/min is a speed", v)
		}
	}
}

// Whatever is typed, a suggestion is a material of the list, and a name that is
// found is its own best suggestion.
func FuzzMaterialNames(f *testing.F) {
	for _, name := range []string{"steel-200", "mild steel", "", "-", "st\xffeel", "ALUMINIUM", "é"} {
		f.Add(name)
	}
	f.Fuzz(func(t *testing.T, name string) {
		suggested := handbook.SuggestMaterial(name)
		if suggested != "" {
			if m, ok := handbook.FindMaterial(suggested); !ok || m.Name != suggested {
				t.Errorf("%q: suggests %q, which is not in the list", name, suggested)
			}
		}
		if m, ok := handbook.FindMaterial(name); ok && suggested != m.Name {
			t.Errorf("%q is %s, yet suggests %q", name, m.Name, suggested)
		}
	})
}

// Stainless steel, titanium, nickel and high-temperature alloys harden where the
// drill rubs; carbon steel, iron and light metals do not as a rule.
func TestWorkThatHardens(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "work that hardens where the drill rubs")
	word := map[bool]string{true: "hardens", false: "does not, as a rule"}
	for name, want := range map[string]bool{
		"stainless-316": true, "stainless-ph": true, "titanium": true, "titanium-pure": true, "nickel-alloy": true, "nickel-molybdenum": true, "high-temperature-alloy": true,
		"steel-150": false, "steel-400": false, "free-cutting-steel": false, "cast-iron-150": false, "aluminium": false, "brass": false, "plastics": false,
	} {
		trade.Says(name, word[found(t, name).Hardens], word[want])
	}
}

// Magnesium and titanium burn, steel chips do not as a rule.
func TestBurns(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "metals that burn as chips")
	word := map[bool]string{true: "burns", false: "does not, as a rule"}
	for name, want := range map[string]bool{"magnesium": true, "titanium": true, "titanium-pure": true, "steel-200": false, "aluminium": false} {
		trade.Says(name, word[found(t, name).Burns], word[want])
	}
}
