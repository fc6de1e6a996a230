package handbook

import (
	"math"
	"testing"

	"evenlip/internal/testkit"
)

func TestGapsToTheWheel(t *testing.T) {
	rule := testkit.Against(t, testkit.SafetyRule, "(a)(4) and (b)(9), gaps to the wheel")
	rule.Within("work rest, 1/8 in", RestGap.High, 3.175, 0, "mm")
	rule.Within("tongue, 1/4 in", TongueGap.High, 6.35, 0, "mm")
	if RestGap.Low != 0 || TongueGap.Low != 0 {
		t.Errorf("rest %v, tongue %v", RestGap, TongueGap)
	}
}

// Straight flutes for brass, lead, copper and most plastics; grey cast iron's chips
// are powdery.
func TestFlutes(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "flutes by material")
	for name, want := range map[string]string{
		"brass": "straight", "leaded-brass": "straight", "copper": "straight", "plastics": "straight", "nylon": "straight",
		"steel-200": "ordinary helix", "cast-iron-150": "high helix, where the chips pack",
	} {
		m, _ := FindMaterial(name)
		got := "ordinary helix"
		switch {
		case m.StraightFlutes:
			got = "straight"
		case m.PowderyChips:
			got = "high helix, where the chips pack"
		}
		trade.Says(name, got, want)
	}
}

func TestSpeedPickIsTheMiddle(t *testing.T) {
	if v, source := SpeedPick(Band{Low: 20, High: 30}); v != 25 || source.Label != Own {
		t.Errorf("%g, %v", v, source)
	}
	if v, _ := SpeedPick(Band{Low: nan, High: nan}); !math.IsNaN(v) {
		t.Errorf("%g out of nothing", v)
	}
}
