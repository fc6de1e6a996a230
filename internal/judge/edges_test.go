package judge

import (
	"math"
	"testing"

	"evenlip/internal/handbook"
	"evenlip/internal/sheet"
)

// A rule holds where a figure that it looks at is outside its limit on the rule's
// side, and on no other account.
func TestRulesAtTheirLimits(t *testing.T) {
	var sound [limits]sheet.Held
	for i := range sound {
		sound[i] = sheet.Held{Value: 0.5, Band: handbook.Band{Low: 0.2, High: 0.7}}
	}
	for x := range rules {
		u := &rules[x]
		if holds, near := u.holds(&sound); holds || near {
			t.Errorf("%s holds of a sound drill", u.code)
		}
		for _, l := range u.looks {
			if l.at == sheet.NoLimit {
				continue
			}
			for v, want := range map[float64]bool{
				0.2: false, 0.7: false, 0.199: l.side != sheet.High, 0.701: l.side != sheet.Low, math.NaN(): false,
			} {
				held := sound
				held[l.at].Value = v
				if got, near := u.holds(&held); got != want || near {
					t.Errorf("%s at %v: %v, near %v", u.code, v, got, near)
				}
				held[l.at].Give = 0.0011
				if got, near := u.holds(&held); got || near != want {
					t.Errorf("%s at %v, by less than a gauge tells: %v, near %v", u.code, v, got, near)
				}
			}
		}
	}
}

// Of what a sound drill has none of, the least is too much; and no clearance at
// all rubs.
func TestNoneAndPositive(t *testing.T) {
	tiny := math.SmallestNonzeroFloat64
	for _, c := range []struct {
		band handbook.Band
		v    float64
		want sheet.State
	}{{none, 0, sheet.Within}, {none, tiny, sheet.Over}, {positive, 0, sheet.Under}, {positive, tiny, sheet.Within}, {positive, -1, sheet.Under}} {
		h := sheet.Held{Value: c.v, Band: c.band}
		if got := h.State(); got != c.want {
			t.Errorf("%v: %s", c.v, got)
		}
	}
}
