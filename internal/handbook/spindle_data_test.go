package handbook

import (
	"cmp"
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

// Straight flutes for brass, lead, copper and most plastics; a high helix for deep
// holes; ordinary ones else.
func TestFluteFor(t *testing.T) {
	find := func(name string) *Material {
		m, _ := FindMaterial(name)
		return m
	}
	for _, c := range []struct {
		material string
		deep     bool
		want     Flute
	}{
		{"brass", false, StraightFlutes}, {"leaded-brass", true, StraightFlutes}, {"copper", false, StraightFlutes}, {"plastics", true, StraightFlutes},
		{"steel-200", false, OrdinaryHelix}, {"steel-200", true, HighHelix}, {"", true, HighHelix}, {"", false, OrdinaryHelix},
	} {
		got, source := FluteFor(find(c.material), c.deep)
		if source.Label != Practice {
			t.Errorf("%s, deep %v: %v", c.material, c.deep, source)
		}
		name := cmp.Or(c.material, "no material") + map[bool]string{true: ", deep"}[c.deep]
		testkit.Against(t, testkit.Trade, "flutes by material and depth").Says(name, flutes[got], flutes[c.want])
	}
	for _, name := range straightFor {
		if _, ok := FindMaterial(name); !ok {
			t.Errorf("%s is in no list", name)
		}
	}
}

// flutes are the flutes' names.
var flutes = map[Flute]string{StraightFlutes: "straight", OrdinaryHelix: "ordinary helix", HighHelix: "high helix"}

func TestSpeedPickIsTheMiddle(t *testing.T) {
	if v, source := SpeedPick(Band{Low: 20, High: 30}); v != 25 || source.Label != Own {
		t.Errorf("%g, %v", v, source)
	}
	if v, _ := SpeedPick(Band{Low: nan, High: nan}); !math.IsNaN(v) {
		t.Errorf("%g out of nothing", v)
	}
}
