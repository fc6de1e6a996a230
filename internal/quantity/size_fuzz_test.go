package quantity

import (
	"math"
	"testing"
)

// FuzzSize reads whatever is typed as a drill size: what is taken can be a
// drill, and the names that stand beside it are read as the sizes they name.
func FuzzSize(f *testing.F) {
	for _, w := range rows(f, "sizes.txt", "refused.txt") {
		if w.Kind == Size {
			f.Add(w.text, uint8(w.Bare))
		}
	}
	for _, text := range []string{"F", "z", "#80", "no.81", "1-63/64in", "3 1/2", "25mm", "Ø0.2", "½", "0", "1e-30", "99999999"} {
		f.Add(text, uint8(Unset))
	}
	f.Fuzz(func(t *testing.T, text string, bare uint8) {
		v, err := Parse(Size, text, System(bare))
		sound(t, Size, false, v, err)
		if err != nil {
			return
		}
		for _, series := range AllSeries {
			n := Nearest(v.V, series)
			for _, named := range []SizeName{n.Below, n.At, n.Above} {
				if named.Name == "" {
					continue
				}
				again, err := Parse(Size, named.Name, Unset)
				if err != nil || math.Abs(again.V-named.MM) > 1e-9 {
					t.Errorf("%q stands for %v mm and reads as %v: %v", named.Name, named.MM, again.V, err)
				}
			}
			if n.Below.Name != "" && !(n.Below.MM < v.V) || n.Above.Name != "" && !(n.Above.MM > v.V) {
				t.Errorf("%v mm is not between %v and %v", v.V, n.Below.MM, n.Above.MM)
			}
		}
	})
}
