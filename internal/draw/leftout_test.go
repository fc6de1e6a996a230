package draw

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

// Whatever is asked of a drawing is on the sheet, or is said to be left out; what is
// there is not.
func TestWhatIsLeftOutIsTold(t *testing.T) {
	dropped := 0
	testkit.Property(t, "all that a drawing was asked for is on the sheet or told as left out", func(t *rapid.T) {
		j, scale := anyDrawing(t)
		if j.Drill.Check() != nil {
			t.Skip("not to be drawn")
		}
		s, err := OnPaper(j, scale)
		if err != nil {
			t.Skip("larger than any paper")
		}
		dropped += len(s.LeftOut)
		written := func(text string) int {
			n := 0
			for _, x := range s.Texts {
				if strings.Contains(x.Text, text) {
					n++
				}
			}
			return n
		}
		either := func(there, wanted bool, name string) {
			if told := slices.Contains(s.LeftOut, name); wanted && there == told || !wanted && told {
				t.Fatalf("%s: wanted %v, drawn %v, told as left out %v", name, wanted, there, told)
			}
		}
		l := &j.Labels
		for i, name := range lipNames {
			title := "): lip " + name + " from outside"
			either(written(title) > 0, l.Clearance[i] != "", "the detail of lip "+name+"'s clearance")
			numbers := 0
			for _, x := range s.Texts {
				if x.Bold && x.Text == name {
					numbers++
				}
			}
			either(numbers > 1, l.Lips[i] == "", "lip "+name+"'s number in the side view")
		}
		either(says(&s, l.Offset), l.Offset != "", "how far the point is off the axis")
		always := []string{l.Diameter, l.Web, l.ChiselLength, l.ChiselAngle, l.PointAngle, l.Lips[0], l.Lips[1], l.Height, l.Clearance[0], l.Clearance[1]}
		if j.Before != nil {
			always = append(always, l.Remove)
		}
		for _, label := range always {
			if written(label) == 0 {
				t.Fatalf("%q is nowhere", label)
			}
		}
	})
	if dropped == 0 {
		t.Error("nothing was ever left out")
	}
}
