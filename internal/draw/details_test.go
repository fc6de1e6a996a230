package draw

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

func named(t fataler, s *Sheet, name string) []Pt {
	t.Helper()
	at := slices.IndexFunc(s.Paths, func(p Path) bool { return p.Name == name })
	if at < 0 {
		t.Fatalf("nothing is called %s", name)
	}
	return s.Paths[at].Points
}

func says(s *Sheet, text string) bool {
	return slices.ContainsFunc(s.Texts, func(x Text) bool { return x.Text == text })
}

// On the sheet of a drill whose clearances were read, the corners stand larger,
// and a protractor reads the clearances there.
func TestCornerShowsTheClearance(t *testing.T) {
	testkit.Property(t, "a protractor laid on the corner's detail reads the clearance", func(t *rapid.T) {
		d := usual()
		j := labelled(d)
		j.Labels.Clearance = [2]string{"clearance", "clearance of lip 2"}
		for i := range j.Drill.Lips {
			j.Drill.Lips[i].Clearance = rapid.Float64Range(-8, 24).Draw(t, "clearance") * deg
		}
		s, err := OnPaper(j, Scale{5, 1})
		if err != nil {
			t.Fatal(err)
		}
		for i, l := range j.Drill.Lips {
			flank, face := named(t, &s, "corner-"+lipNames[i]+"-flank"), named(t, &s, "corner-"+lipNames[i]+"-face")
			if got := math.Atan2(flank[1].Y-flank[0].Y, flank[1].X-flank[0].X); !near(got, l.Clearance, 0.01) {
				t.Fatalf("lip %d's flank rises by %v, not %v", i+1, got/deg, l.Clearance/deg)
			}
			if got := math.Atan2(face[1].X-face[0].X, face[1].Y-face[0].Y); !near(got, d.Helix, 1e-9) {
				t.Fatalf("lip %d's face leans by %v, not %v", i+1, got/deg, d.Helix/deg)
			}
		}
		for _, text := range []string{"12.0°", "14.0°", "A: clearance", "B: clearance of lip 2"} {
			if !says(&s, text) {
				t.Fatalf("nothing says %q", text)
			}
		}
	})
}

// A flattened lip's face stands along the axis as far as the flat reaches, in the
// corner's detail and in the side view, true to scale.
func TestFlatIsTrueToScale(t *testing.T) {
	d := usual()
	d.Flat = 0.6
	j := labelled(d)
	j.Labels.Clearance[0], j.Labels.Flat = "clearance", "flat 0.60"
	s, err := OnPaper(j, Scale{5, 1})
	if err != nil {
		t.Fatal(err)
	}
	if !says(&s, "A (20:1): lip 1 from outside, point down") || !says(&s, "flat 0.60") {
		t.Fatal("no detail of the corner at 20:1")
	}
	face := named(t, &s, "corner-1-face")
	if len(face) != 3 || face[1].X != face[0].X || !near(face[1].Y-face[0].Y, 20*0.6, 1e-9) {
		t.Errorf("the face runs along %v", face)
	}
	if got := math.Atan2(face[2].X-face[1].X, face[2].Y-face[1].Y); !near(got, d.Helix, 1e-9) {
		t.Errorf("beyond the flat the face leans by %v", got/deg)
	}
	lip, flat := named(t, &s, "side-lip-2"), named(t, &s, "side-flat")
	for i := range lip {
		if !near(flat[i].X-lip[i].X, 5*0.6, 1e-9) || flat[i].Y != lip[i].Y {
			t.Errorf("in the side view the flat ends at %v, the lip is at %v", flat[i], lip[i])
		}
	}
	j.Drill.Flat = 2
	if err := j.Drill.Check(); err == nil {
		t.Error("a flat of 2 mm on a drill of 12 is drawn")
	}
}

// How far the point is off the axis is dimensioned true to scale.
func TestOffsetIsDimensioned(t *testing.T) {
	d := usual()
	d.Offset = 0.4
	j := labelled(d)
	j.Labels = Labels{Offset: "0.40"}
	with, err := OnPaper(j, Scale{5, 1})
	if err != nil {
		t.Fatal(err)
	}
	j.Labels.Offset = ""
	without, err := OnPaper(j, Scale{5, 1})
	if err != nil {
		t.Fatal(err)
	}
	if n := len(with.Arrows); n != len(without.Arrows)+2 {
		t.Fatalf("%d arrows, %d without", n, len(without.Arrows))
	}
	var tips []float64
	for _, a := range with.Arrows {
		if x := with.Texts[slices.IndexFunc(with.Texts, func(x Text) bool { return x.Text == "0.40" })].At.X; near(a[0].X, x+clear, 1e-9) {
			tips = append(tips, a[0].Y)
		}
	}
	if len(tips) != 2 || !near(math.Abs(tips[0]-tips[1]), 5*0.4, 1e-9) {
		t.Errorf("arrows at %v", tips)
	}
}
