package judge_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/command/point"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
)

// Each line is refused on the reading named, and with the change made is not.
func TestImpossible(t *testing.T) {
	for _, c := range []struct{ reading, line, instead, says string }{
		{"material", "material unobtanium", "material steel-200", "no material is called"},
		{"material", "material steel-20", "material Steel 200", "no material is called"},
		{"lip-angle", "lip-angle 0,59", "lip-angle 0.1,59", "between 0 and 90"},
		{"lip-angle", "lip-angle 59,180", "lip-angle 59,179", "between 0 and 90"},
		{"point-angle", "point-angle 0", "point-angle 1", "between 0 and 180"},
		{"point-angle", "point-angle 180", "point-angle 179.9", "between 0 and 180"},
		{"chisel-angle", "chisel-angle 0", "chisel-angle 0.1", "between 0 and 180"},
		{"chisel-angle", "chisel-angle 180", "chisel-angle 179.9", "between 0 and 180"},
		{"clearance", "clearance 90", "clearance 89.9", "under 90"},
		{"clearance", "clearance 12,-90", "clearance 12,-89", "under 90"},
		{"heel-turn", "heel-turn 0", "heel-turn 0.1", "between 0 and 180"},
		{"heel-turn", "heel-turn 180", "heel-turn 179", "between 0 and 180"},
		{"helix", "helix 90", "helix 0", "under 90"},
		{"web", "web 0", "web 0.01mm", "cannot be zero"},
		{"second-web", "second-web 0", "second-web 1mm", "cannot be zero"},
		{"second-web-at", "second-web-at 0", "second-web-at 1mm", "cannot be zero"},
		{"chisel-length", "chisel-length 0", "chisel-length 1mm", "cannot be zero"},
		{"lip-length", "lip-length 5mm,0", "lip-length 5mm,1mm", "cannot be zero"},
		{"feed", "feed 0", "feed 0.001mm", "cannot be zero"},
		{"rpm", "rpm 0", "rpm 1", "cannot be zero"},
		{"flute", "flute 0", "flute 1mm", "cannot be zero"},
		{"depth", "depth 0", "depth 1mm", "cannot be zero"},
		{"web", "size 12mm; web 12mm", "web 11.9mm", "the drill itself is"},
		{"second-web", "size 12mm; second-web 12mm", "second-web 11.9mm", "the drill itself is"},
		{"chisel-length", "size 12mm; chisel-length 12mm", "chisel-length 11.9mm", "the drill itself is"},
		{"lip-length", "size 12mm; lip-length 5mm,12mm", "lip-length 5mm,11.9mm", "the drill itself is"},
		{"heel-drop", "size 12mm; heel-drop 12mm,1mm; heel-turn 30", "heel-drop 11mm,1mm", "the drill itself is"},
		{"heel-drop", "size 12mm; heel-drop -12mm; heel-turn 30", "heel-drop -11mm", "the drill itself is"},
		{"lip-height", "size 12mm; lip-height 12mm", "lip-height 11mm", "the drill itself is"},
		{"lip-height", "size 12mm; lip-height -12mm", "lip-height -11mm", "the drill itself is"},
		{"lip-height", "size 12mm; lip-height 20mm,8mm", "lip-height 20mm,19.9mm", "the drill itself is"},
		// what looks like a decimal comma, and no lips that anyone has ground
		{"lip-height", "size 20mm; lip-height 0,2mm", "size 20.1mm", "between the two lips"},
		{"lip-height", "size 12mm; lip-height -1,3mm", "lip-height -1mm,3mm", "between the two lips"},
		{"lip-length", "size 12mm; lip-length 6,4mm", "lip-length 6mm,4mm", "between the two lips"},
		{"lip-height", "size 1in; lip-height 0,125in", "lip-height 0.125in", "between the two lips"},
		// the point of 118° is 3.605 mm long, of 59 and 40° 7.15 mm
		{"lip-height", "size 12mm; lip-angle 59; lip-height 3.61mm", "lip-height 3.6mm", "the point itself is"},
		{"lip-height", "size 12mm; lip-angle 59,40; lip-height 7.2mm", "lip-height 7.1mm", "the point itself is"},
		// lips from the axis to the corner are 7.0 mm long; caliper and protractor leave 0.13 mm open
		{"lip-length", "size 12mm; lip-angle 59; lip-length 7.14mm", "lip-length 7.12mm", "room for"},
		{"lip-length", "size 12mm; lip-angle 59,59; lip-length 7.1mm,7.2mm", "lip-length 7.1mm,7.1mm", "room for"},
		// with web and chisel 6.19 mm each, reckoned from the corners' coordinates
		{"lip-length", "size 12mm; web 1.8mm; chisel-angle 125; lip-angle 59; lip-length 6.32mm", "lip-length 6.31mm", "room for"},
		{"lip-length", "size 12mm; web 1.8mm; chisel-length 2.2mm; lip-angle 59; lip-length 6.32mm", "lip-length 6.31mm", "room for"},
		{"remove", "size 12mm; web 3mm; remove 600mm", "remove 500mm", "the drill itself is"},
		{"web-taper", "size 12mm; web 3mm; web-taper 0.5; remove 20mm", "web-taper 0.4", "the drill itself is"},
		{"remove", "size 12mm; web 3mm; chisel-angle 150; remove 300mm", "remove 100mm", "the drill itself is"},
		{"web", "size 1/2; web 0.5", "web 0.49", "the drill itself is"},
		{"corner-wear", "size 12mm; corner-wear 6.01mm", "corner-wear 6mm", "no longer than"},
		{"remove", "remove 10mm; flute 9.9mm", "remove 9.9mm", "of flute is left"},
		{"chisel-angle", "size 12mm; web 6mm; chisel-angle 150", "chisel-angle 149", "longer than the drill is wide"},
		{"chisel-angle", "size 12mm; web 6mm; chisel-angle 29", "chisel-angle 31", "longer than the drill is wide"},
	} {
		found := check(of(c.line).Drill(t))
		if len(found) != 1 || drilltest.About(found[0]) != c.reading || !strings.Contains(found[0].Text, c.says) {
			t.Errorf("%s: %+v, want %s: %s", c.line, found, c.reading, c.says)
		}
		if better := check(of(c.line).With(of(c.instead)).Drill(t)); len(better) > 0 {
			t.Errorf("%s; %s: %+v", c.line, c.instead, better)
		}
	}
}

// Lips laid between the corners of a chisel edge and the outer corners, about
// a point off the axis, are believed as read with a caliper and a
// protractor; much longer they are not.
func TestLipsHaveRoom(t *testing.T) {
	testkit.Property(t, "lips that join a chisel edge to the outer corners can be, and longer ones cannot", func(t *rapid.T) {
		const deg = math.Pi / 180
		r := rapid.Float64Range(1, 40).Draw(t, "radius")
		web := rapid.Float64Range(0.1, 0.6).Draw(t, "web") * r
		psi := rapid.Float64Range(45, 60).Draw(t, "acute") * deg
		k1, k2 := rapid.Float64Range(50, 70).Draw(t, "k1")*deg, rapid.Float64Range(50, 70).Draw(t, "k2")*deg
		off := rapid.Float64Range(-0.05, 0.05).Draw(t, "off") * r
		corner := r*math.Cos(math.Asin(web/2/r)) - web/2/math.Tan(psi) // seen from the end
		p1, p2 := (corner-off)/math.Sin(k1), (corner+off)/math.Sin(k2)
		exact := func(v float64) string { return strconv.FormatFloat(v, 'f', 9, 64) }
		read := func(longer, turned float64) readings {
			return readings{
				drill.Size: exact(2*r) + "mm", drill.Web: exact(web) + "mm", drill.ChiselAngle: exact(180 - psi/deg),
				drill.LipAngle:  exact(k1/deg+turned) + "," + exact(k2/deg+turned),
				drill.LipLength: exact(p1+longer) + "mm," + exact(p2+longer) + "mm",
			}
		}
		longer, turned := rapid.Float64Range(-0.09, 0.09).Draw(t, "longer"), rapid.Float64Range(-0.4, 0.4).Draw(t, "turned")
		if found := check(read(longer, turned).Drill(t)); len(found) > 0 {
			t.Fatalf("read %v mm longer: %v", longer, found)
		}
		// what the protractor leaves open grows with the lip
		if found := check(read(0.2+0.02*r, 0).Drill(t)); len(found) != 1 || drilltest.About(found[0]) != "lip-length" {
			t.Fatalf("longer than there is room for: %v", found)
		}
	})
}

// Everything that cannot be is said at once, a value at a time.
func TestAllThatCannotBe(t *testing.T) {
	found := check(of("size 12mm; material nonsuch; web 13mm; chisel-angle 180; lip-angle 0,180; feed 0").Drill(t))
	var got []string
	for _, im := range found {
		got = append(got, drilltest.About(im))
	}
	slices.Sort(got)
	if want := []string{"chisel-angle", "feed", "lip-angle", "lip-angle", "material", "web"}; !slices.Equal(got, want) {
		t.Errorf("refused %v, want %v", got, want)
	}
}

// An empty drill, and one of which only words are known, is possible.
func TestNothingReadIsPossible(t *testing.T) {
	if found := check(&drill.Drill{}); len(found) > 0 {
		t.Errorf("%+v", found)
	}
}

// A near miss is suggested, a far one is not; what was typed is quoted.
func TestMaterialIsSuggested(t *testing.T) {
	for typed, hint := range map[string]string{"steel-20": "did you mean steel-200?", "alumnium": "did you mean aluminium?", "zzzzzz": "evenlip material lists them"} {
		if got := check(of("material " + typed).Drill(t))[0].Hint; got != hint {
			t.Errorf("%s: hint %q, want %q", typed, got, hint)
		}
	}
	if got := check(of("material \x1b[31mred\u202e").Drill(t))[0].Text; got != `no material is called "\x1b[31mred\u202e"` {
		t.Errorf("quoted as %s", got)
	}
}

// Each line is warned of by that code, and with the change made is not.
func TestPlausible(t *testing.T) {
	for _, c := range []struct{ code, line, instead string }{
		{"size-may-be-inches", "size 0.5", "size 0.5mm"},
		{"size-may-be-inches", "size 0.5", "size 0.5in"},
		{"size-may-be-inches", "size 0.25", "size 0.25in"},
		{"size-may-be-inches", "size 1", "size 2"},
		{"size-may-be-inches", "size 1.5", "size 1.51"},
		{"size-may-be-inches", "size 0.25", "size 0.125"}, // 0.125 mm: too small to guess at
		{"size-may-be-inches", "size 2; feed 0.01in", "size 2; feed 0.01"},
		{"size-may-be-inches", "size 2; feed 0.01in", "size 2mm"},
		{"size-may-be-inches", "size 2; feed 1/100; flank-wear 15thou", "flank-wear 0.3mm"}, // not all else
		{"size-may-be-inches", "size 3; margin-wear 1/32", "size 13"},                       // no drill is 13 in
		{"size-may-be-number", "size 43", "size 43mm"},
		{"size-may-be-number", "size 26", "size 25"},
		{"size-may-be-number", "size 80", "size 81"},
		{"size-large", "size 100.1mm", "size 100mm"},
		{"size-large", "size 4in", "size 3.9in"},
		{"flute-long", "size 3/8; flute 40in", "flute 5-5/8"},
		{"flute-long", "size 10mm; flute 150.1mm", "flute 150mm"},
		{"web-over-half", "size 12mm; web 6.01mm", "web 6mm"},
		{"web-very-thin", "size 12mm; web 0.59mm", "web 0.61mm"},
		{"lip-angle-whole", "lip-angle 118", "lip-angle 59"},
		{"lip-angle-whole", "lip-angle 90,59", "lip-angle 89.9,59"},
		{"lip-angle-odd", "lip-angle 24.9", "lip-angle 25"},
		{"lip-angle-odd", "lip-angle 59,80.1", "lip-angle 59,80"},
		{"lip-height-comma", "size 21mm; lip-height 0,2mm", "lip-height 0.2mm"},
		{"lip-length-comma", "size 12mm; lip-length 5,6mm", "lip-length 5.6mm"},
		{"clearance-comma", "clearance 11,5", "clearance 11,12"},
		{"lip-angle-comma", "lip-angle 59,5", "lip-angle 59.5"},
		{"clearance-odd", "clearance 35.1", "clearance 35"},
		{"clearance-odd", "clearance 12,40", "clearance 12,30"},
		{"web-taper-odd", "web-taper 0.11", "web-taper 0.1"},
		{"web-thins", "web 2mm; second-web 1.99mm; second-web-at 20mm", "second-web 2mm"},
		{"second-web-alone", "second-web 2mm", "second-web-at 20mm"},
		{"second-web-alone", "second-web-at 20mm", "second-web 2mm"},
		{"heel-turn-missing", "heel-drop 0.6mm", "heel-turn 30"},
		{"lip-length-odd", "size 12mm; lip-length 2.9mm,6mm", "lip-length 3mm,6mm"},
		{"lip-length-odd", "size 12mm; lip-length 6mm,9.1mm", "lip-length 6mm,9mm"},
	} {
		if got := warnings(t, of(c.line)); !slices.Contains(got, c.code) {
			t.Errorf("%s: warned of %v, want %s", c.line, got, c.code)
		}
		if got := warnings(t, of(c.line).With(of(c.instead))); slices.Contains(got, c.code) {
			t.Errorf("%s; %s: warned of %v", c.line, c.instead, got)
		}
	}
	if got := warnings(t, whole); len(got) > 0 {
		t.Errorf("an ordinary drill is warned of: %v", got)
	}
	for r, text := range whole {
		alone := r != drill.HeelDrop && r != drill.SecondWeb && r != drill.SecondWebAt
		if got := warnings(t, readings{r: text}); len(got) > 0 && alone {
			t.Errorf("%s %s alone is warned of: %v", r, text, got)
		}
	}
}

func warnings(t *testing.T, rs readings) []string {
	t.Helper()
	s := &sheet.Sheet{}
	judge.Plausible(possible(t, rs), s)
	noNaN(t, s)
	for _, f := range s.Findings {
		if f.Severity != sheet.Warn {
			t.Errorf("%s is no warning", f.Code)
		}
	}
	return drilltest.Codes(s)
}

// With --units in, a bare size past any drill was meant in millimetres.
func TestSizeMayBeMillimetres(t *testing.T) {
	for text, want := range map[string]bool{"7": true, "3.6": true, "3.5": false, "7in": false, "12mm": false} {
		var d drill.Read
		if errs := d.Resolve([]drill.Given{drill.Flag(drill.Size, text)}, drill.Options{Units: quantity.Inch}); len(errs) > 0 {
			t.Fatal(errs)
		}
		s := &sheet.Sheet{}
		judge.Plausible(&d.Drill, s)
		if got := drilltest.Found(s, "size-may-be-mm"); got != want {
			t.Errorf("%s: %v", text, drilltest.Codes(s))
		}
	}
}

// What a calculation says besides its figures, and when it does not.
func TestRemarks(t *testing.T) {
	for _, c := range []struct{ code, line, instead string }{
		{"feed-assumed", "size 12mm; clearance 12", "feed 0.2mm"},
		{"material-assumed", "size 12mm", "material steel-200"},
		{"chisel-contradiction", "size 12mm; web 2mm; chisel-angle 125; chisel-length 2.7mm", "chisel-length 2.5mm"},
		{"clearance-contradiction", "size 12mm; clearance 12; heel-drop 0.9mm; heel-turn 30", "heel-drop 0.64mm"},
		{"clearance-contradiction", "size 12mm; clearance 12; heel-drop 0.7862mm; heel-turn 30", "heel-drop 0.7803mm"}, // 14.05 and 13.95 degrees
		{"clearance-contradiction", "size 12mm; clearance 12,15; heel-drop 0.64mm,0.64mm; heel-turn 30", "clearance 12,13"},
		{"heel-turn-long", "size 12mm; heel-drop 0.4mm; heel-turn 10.5", "heel-turn 10"},
		{"heel-turn-long", "size 12mm; heel-drop 0.9mm; heel-turn 30", "clearance 12"},
		{"lip-web-assumed", "size 12mm; lip-angle 60,58; lip-height 0.06mm", "web 2mm"},
		{"web-taper-assumed", "web 2mm; remove 1mm", "web-taper 0.015"},
		{"web-taper-assumed", "web 2mm; remove 1mm", "second-web 2.5mm; second-web-at 30mm"},
		{"web-taper-contradiction", "web 2mm; second-web 2.2mm; second-web-at 20mm; web-taper 0.02", "web-taper 0.013"},
		{"lip-contradiction", "size 12mm; lip-angle 59,59; lip-height 0; lip-length 5.5mm,5.9mm", "lip-length 5.5mm,5.55mm"},
		{"one-lip-cuts", "size 12mm; lip-angle 59,59; feed 0.1mm; lip-height 0.06mm", "lip-height 0.04mm"},
		{"one-lip-cuts", "size 12mm; lip-angle 59,59; feed 0.1mm; lip-height -0.06mm", "feed 0.2mm"},
		{"one-lip-cuts", "size 6mm; lip-angle 59,59; lip-height 0.07mm", "lip-height 0.04mm"},
		// At a usual feed it is told unless the lips are told to be uneven, at the corner alone or half way along alone.
		{"one-lip-cuts", "size 6mm; lip-angle 60.3,59; lip-height 0.125mm; feed 0.087mm", "feed"},
		{"one-lip-cuts", "size 12mm; material steel-400; web 1.8mm; lip-angle 59,59.5; lip-height 0.085mm; feed 0.161mm", "feed"},
		{"thinned-point", "size 12mm; web 2mm; chisel-length 1.2mm", "chisel-length 2.4mm"},
		{"usual-oversize", "size 12mm; lip-angle 59,59; lip-height 0.05mm", "lip-height 0"},
		{"hole-may-exceed", "size 12mm; lip-angle 59,59; lip-height 0.1mm", "lip-height 0.09mm"},
		{"mean-saves", "size 12mm; web 2mm; lip-angle 58,58; lip-height 0.05mm", "lip-angle 59,59"},
		{"lips-taken-level", "size 12mm; lip-angle 59,58", "lip-height 0"},
		{"clearance-over-recommended", "size 12mm; clearance 18", "clearance 16"},
		{"stub-web", "size 12mm; web 2mm; remove 24.1mm", "remove 24mm"},
		{"trued-to", "size 12mm; web 2mm; lip-angle 61,61; lip-height 0.1mm", "lip-angle 59,59"},
	} {
		if s := point.Inspect.Sheet(possible(t, of(c.line)), true); !drilltest.Found(s, c.code) {
			t.Errorf("%s: %v, want %s", c.line, drilltest.Codes(s), c.code)
		}
		if s := point.Inspect.Sheet(possible(t, of(c.line).With(of(c.instead))), true); drilltest.Found(s, c.code) {
			t.Errorf("%s; %s: %v", c.line, c.instead, drilltest.Codes(s))
		}
	}
}

// A whole point angle typed for a lip's is not used as one.
func TestWholeAngleIsNotUsed(t *testing.T) {
	r := compute(t, "size 12mm; lip-angle 118,59")
	if r.Point.Both || r.Point.Angle == r.Point.Angle {
		t.Errorf("point angle %v", r.Point.Angle/deg)
	}
}

// What a warning or a refusal says is the number that was read, and what it may
// have been.
func TestWarningsSayTheNumbers(t *testing.T) {
	for _, c := range []struct {
		code, line string
		says       []float64
	}{
		{"lip-angle-whole", "lip-angle 118", []float64{118 * deg, 59 * deg}},
		{"lip-angle-odd", "lip-angle 20", []float64{20 * deg}},
		{"clearance-odd", "clearance 40", []float64{40 * deg}},
		{"web-over-half", "size 12mm; web 7mm", []float64{7}},
		{"web-thins", "web 2mm; second-web 1.5mm; second-web-at 20mm", []float64{1.5, 2}},
		{"lip-length-odd", "size 12mm; lip-length 2mm,6mm", []float64{2, 12}},
	} {
		s := &sheet.Sheet{}
		judge.Plausible(possible(t, of(c.line)), s)
		if len(s.Findings) != 1 || s.Findings[0].Code != c.code {
			t.Errorf("%s: %v", c.line, drilltest.Codes(s))
			continue
		}
		says(t, c.line, s.Findings[0].Text, c.says)
	}
	for line, want := range map[string]string{
		"size 12mm; web 13mm": "13.00 mm cannot be: the drill itself is 12.00 mm", "size 12mm; corner-wear 7mm": "7.00 mm cannot be: the lip is no longer than 6.00 mm",
		"remove 10mm; flute 9mm":              "10.00 mm cannot come off: only 9.00 mm of flute is left",
		"size 12mm; web 6mm; chisel-angle 30": "30.0° cannot be: with a web of 6.00 mm the chisel edge would be 12.00 mm, longer than the drill is wide",
		"size 12mm; lip-height 30mm,10mm":     "20.00 mm cannot be between the lips: the drill itself is 12.00 mm", "helix 95": "95.0° cannot be: a helix angle lies under 90°",
	} {
		if got := check(of(line).Drill(t))[0].Text; got != want {
			t.Errorf("%s: %s", line, got)
		}
	}
}

func says(t *testing.T, what string, text quantity.Text, want []float64) {
	t.Helper()
	if strings.Count(text.Format, "{}") != len(text.Args) || len(text.Args) != len(want) {
		t.Errorf("%s: %q with %d numbers", what, text.Format, len(text.Args))
		return
	}
	for i, a := range text.Args {
		within(t, what, a.Value, want[i], 1e-9)
	}
}
