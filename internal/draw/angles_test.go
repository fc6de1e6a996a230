package draw

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

// Each lip's angle is written on the half of the side view where that lip is drawn,
// and the arrow that leads from there touches that lip, before a grind and after.
func TestEachLipsAngleStandsOnItsOwnHalf(t *testing.T) {
	testkit.Property(t, "on the printed sheet each lip's angle is written on that lip's side of the axis, and points at that lip", func(t *rapid.T) {
		d := anyDrill(t)
		j := labelled(d)
		for i, l := range d.Lips {
			j.Labels.Lips[i] = fmt.Sprintf("lip %d: %.4f", i+1, l.HalfAngle/deg)
		}
		if rapid.Bool().Draw(t, "ground") {
			before := d
			for i := range before.Lips {
				before.Lips[i].Corner += 0.1 * d.D
			}
			j.Before, j.Labels.Remove = &before, "1.00"
		}
		sheet, err := OnPaper(j, Scale{})
		if err != nil {
			t.Fatal(err)
		}
		_, elements := read(t, sheet.SVG())
		lips := [2][]Pt{byID(t, elements, "side-lip-1"), byID(t, elements, "side-lip-2")}
		chords := [2][]Pt{bothEnds(lips[0]), bothEnds(lips[1])}
		shift, _ := d.apex()
		axis := crossing(chords[0], chords[1]).Y + shift*sheet.Scale.Factor() // downward is positive here
		for i := range d.Lips {
			name := fmt.Sprintf("lip %d: ", i+1)
			at, text := writtenAt(t, elements, name)
			if below := at.Y > axis; below != (i == 1) {
				t.Fatalf("%q stands at %.1f, the axis at %.1f", text, at.Y, axis)
			}
			var says float64
			lip := chords[i]
			made := math.Atan2(math.Abs(lip[0].Y-lip[1].Y), lip[0].X-lip[1].X) / deg
			if _, err := fmt.Sscanf(text, name+"%g", &says); err != nil || !near(made, says, 0.1) {
				t.Fatalf("%q is written where the lip stands at %v (%v)", text, made, err)
			}
			if tip := leadsFrom(t, elements, at); away(tip, lips[i]) > 0.01 {
				t.Fatalf("%q points at %v, %.2f mm from its lip", text, tip, away(tip, lips[i]))
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

// leadsFrom is the far end of the line that runs on under a text from its end.
func leadsFrom(t fataler, elements []element, text Pt) Pt {
	t.Helper()
	foot := text.Y + capital*textSize/2 + clear
	for _, e := range elements {
		if e.ID != "" || e.D == "" || strings.HasSuffix(e.D, "Z") {
			continue
		}
		if line := coordinates(t, e.D); len(line) == 3 && near(line[1].X, text.X+1, 0.002) && near(line[1].Y, foot, 0.002) {
			return line[0]
		}
	}
	t.Fatalf("no line leads from the text at %v", text)
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

// In a terminal the numbers name the lips: each stands on its own lip's half of
// either view.
func TestLipsAreNumberedInTheTerminal(t *testing.T) {
	testkit.Property(t, "in a terminal each lip's number stands on that lip's half of both views", func(t *rapid.T) {
		d := anyDrill(t)
		ascii := rapid.Bool().Draw(t, "ascii")
		p := InCells(&d, nil, rapid.IntRange(fewColumns, 200).Draw(t, "columns"), ascii)
		end := End(&d, nil)
		low, high := end.Bounds()
		axis := high.Y / p.Dot / dotsDown // in rows
		found := [2]int{}
		for row, line := range p.Lines {
			for i, name := range lipNames {
				n := strings.Count(line, name)
				found[i] += n
				if n > 0 && (float64(row)+0.5 > axis) != (i == 1) {
					t.Fatalf("%s stands in row %d, the axis in %.1f of %.1f", name, row, axis, (high.Y-low.Y)/p.Dot/dotsDown)
				}
			}
		}
		if found != [2]int{2, 2} {
			t.Fatalf("the lips are numbered %v times", found)
		}
	})
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
			if !x.Bold || len(x.Text) != 1 || x.At.X < lips[0][len(lips[0])-1].X-25 { // the end view's
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

// away is how far a place is from a line.
func away(q Pt, line []Pt) float64 {
	least := math.Inf(1)
	for n := 1; n < len(line); n++ {
		a, u := line[n-1], Pt{line[n].X - line[n-1].X, line[n].Y - line[n-1].Y}
		square := u.X*u.X + u.Y*u.Y
		p := a.plus(u, math.Max(0, math.Min(1, ((q.X-a.X)*u.X+(q.Y-a.Y)*u.Y)/square)))
		least = math.Min(least, math.Hypot(q.X-p.X, q.Y-p.Y))
	}
	return least
}

// bothEnds is the straight line between the ends of a line.
func bothEnds(line []Pt) []Pt { return []Pt{line[0], line[len(line)-1]} }

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
