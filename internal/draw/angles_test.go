package draw

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

// What stands beside an angle on the printed sheet has to be that angle: a
// protractor is laid on the axis and on the line that goes on from each lip, past
// the point where the two cross, and the label looked for between them.
func TestEachLipsAngleStandsAtItsOwnLine(t *testing.T) {
	testkit.Property(t, "on the printed sheet each lip's angle is written between the axis and that lip's line", func(t *rapid.T) {
		d := anyDrill(t)
		j := labelled(d)
		for i, l := range d.Lips {
			j.Labels.Lips[i] = fmt.Sprintf("lip %d: %.4f", i+1, l.HalfAngle/deg)
		}
		sheet, err := OnPaper(j, Scale{})
		if err != nil {
			t.Fatal(err)
		}
		_, elements := read(t, sheet.SVG())
		cross := crossing(byID(t, elements, "side-lip-1"), byID(t, elements, "side-lip-2"))
		for i := range d.Lips {
			name := fmt.Sprintf("lip %d: ", i+1)
			end := goesOn(t, elements, byID(t, elements, fmt.Sprintf("side-lip-%d", i+1))[1])
			made := math.Atan2(end.Y-cross.Y, cross.X-end.X) // downward is positive here
			middle, text := writtenAt(t, elements, name)
			stands := math.Atan2(middle.Y-cross.Y, cross.X-middle.X)
			if stands/made < 0 || stands/made > 1 {
				t.Fatalf("%q stands at %.1f degrees to the axis, its line at %.1f", text, stands/deg, made/deg)
			}
			var says float64
			if _, err := fmt.Sscanf(text, name+"%g", &says); err != nil || !near(math.Abs(made)/deg, says, 0.02) {
				t.Fatalf("%q is written where the line stands at %v (%v)", text, math.Abs(made)/deg, err)
			}
		}
	})
}

// crossing is where the lines through two lips cross.
func crossing(a, b []Pt) Pt {
	u, v := Pt{a[1].X - a[0].X, a[1].Y - a[0].Y}, Pt{b[1].X - b[0].X, b[1].Y - b[0].Y}
	t := ((b[0].X-a[0].X)*v.Y - (b[0].Y-a[0].Y)*v.X) / (u.X*v.Y - u.Y*v.X)
	return a[0].plus(u, t)
}

// goesOn is the end of the line without a name that begins at a place.
func goesOn(t fataler, elements []element, from Pt) Pt {
	t.Helper()
	for _, e := range elements {
		if e.ID != "" || e.D == "" || strings.HasSuffix(e.D, "Z") {
			continue
		}
		if line := coordinates(t, e.D); len(line) == 2 && line[0] == from {
			return line[1]
		}
	}
	t.Fatalf("no line goes on from %v", from)
	return Pt{}
}

// writtenAt is the middle of the end of a text that begins so, and the text.
func writtenAt(t fataler, elements []element, begins string) (Pt, string) {
	t.Helper()
	for _, e := range elements {
		if strings.HasPrefix(e.Text, begins) {
			return Pt{e.At.X, e.At.Y - capital*textSize/2}, strings.TrimSpace(e.Text)
		}
	}
	t.Fatalf("nothing says %q", begins)
	return Pt{}, ""
}

// The lips' numbers in the side view stand beside their own lips, and there is
// room for them on nearly every sheet.
func TestLipsAreNumberedInTheSideView(t *testing.T) {
	sheets, numbered := 0, 0
	testkit.Property(t, "in the side view each lip's number stands beside that lip", func(t *rapid.T) {
		d := anyDrill(t)
		sheet, err := OnPaper(labelled(d), Scale{})
		if err != nil {
			t.Fatal(err)
		}
		sheets++
		lips := [2][]Pt{named(t, &sheet, "side-lip-1"), named(t, &sheet, "side-lip-2")}
		for _, x := range sheet.Texts {
			own := strings.Index("12", x.Text)
			if !x.Bold || len(x.Text) != 1 || x.At.X < lips[0][1].X-25 { // the end view's
				continue
			}
			numbered++
			at := Pt{x.At.X, x.At.Y + capital*textSize/2}
			if a, b := away(at, lips[own]), away(at, lips[1-own]); a > b || a > 12 {
				t.Fatalf("%q is %.1f from its own lip and %.1f from the other", x.Text, a, b)
			}
		}
	})
	if numbered < sheets*3/2 {
		t.Errorf("%d numbers on %d sheets", numbered, sheets)
	}
}

// away is how far a place is from a line of two points.
func away(q Pt, line []Pt) float64 {
	least := math.Inf(1)
	for _, t := range steps(0, 1, 0.01) {
		p := line[0].plus(Pt{line[1].X - line[0].X, line[1].Y - line[0].Y}, t)
		least = math.Min(least, math.Hypot(q.X-p.X, q.Y-p.Y))
	}
	return least
}

// The arrow that names a lip's clearance touches the rim behind that lip.
func TestClearancesPointAtTheirOwnFlanks(t *testing.T) {
	testkit.Property(t, "the arrow that names a lip's clearance touches the rim behind that lip", func(t *rapid.T) {
		d := anyDrill(t)
		j := Job{Drill: d, Labels: Labels{Clearance: [2]string{"clearance of lip 1", "clearance of lip 2"}}}
		if rapid.Bool().Draw(t, "ground") {
			before := d
			for i := range before.Lips {
				before.Lips[i].Corner += 0.1 * d.D
			}
			j.Before, j.Labels.Remove = &before, "1.00"
		}
		sheet, err := OnPaper(j, Scale{2, 1})
		if err != nil {
			t.Skip("larger than any paper")
		}
		corner := named(t, &sheet, "side-lip-1")[0]
		for i := range d.Lips {
			k := d.flank(i)
			touched := math.Inf(1)
			for _, v := range k.rim(k.heel) {
				from, to := fromSide(d.lip(0)[0]), fromSide(v.half(i))
				at := Pt{corner.X + 2*(to.X-from.X), corner.Y + 2*(to.Y-from.Y)}
				for _, a := range sheet.Arrows {
					touched = math.Min(touched, math.Hypot(a[0].X-at.X, a[0].Y-at.Y))
				}
			}
			if touched > 0.02*d.D {
				t.Fatalf("no arrow is nearer to the rim behind lip %d than %v", i+1, touched)
			}
		}
	})
}
