package draw

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

func labelled(d Drill) Job {
	return Job{Drill: d, Title: "12 mm drill", Units: "millimetres", Notes: []string{"a note"}, Labels: Labels{
		Diameter: "Ø12", Web: "2.00", ChiselLength: "chisel edge 2.47", ChiselAngle: "126.0°", PointAngle: "118.0°",
		Lips: [2]string{"lip 1: 59.0°", "lip 2: 59.0°"}, Height: "lip 1 higher 0.10", ClearanceAngle: [2]string{"12.0°", "14.0°"}}}
}

// element is what a test sees of an SVG.
type element struct {
	ID, D string
	At    Pt // of a text
	Text  string
}

// read takes an SVG apart with the standard library's XML reader.
func read(t fataler, svg []byte) (root map[string]string, elements []element) {
	t.Helper()
	root = map[string]string{}
	dec := xml.NewDecoder(bytes.NewReader(svg))
	for {
		token, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return root, elements
		}
		if err != nil {
			t.Fatalf("%v", err)
		}
		switch e := token.(type) {
		case xml.StartElement:
			var el element
			for _, a := range e.Attr {
				switch {
				case e.Name.Local == "svg":
					root[a.Name.Local] = a.Value
				case a.Name.Local == "id":
					el.ID = a.Value
				case a.Name.Local == "d":
					el.D = a.Value
				case e.Name.Local == "text" && a.Name.Local == "x":
					el.At.X, _ = strconv.ParseFloat(a.Value, 64)
				case e.Name.Local == "text" && a.Name.Local == "y":
					el.At.Y, _ = strconv.ParseFloat(a.Value, 64)
				}
			}
			elements = append(elements, el)
		case xml.CharData:
			if len(elements) > 0 {
				elements[len(elements)-1].Text += string(e)
			}
		}
	}
}

type fataler interface {
	Helper()
	Fatalf(format string, args ...any)
}

// coordinates reads a path of M and L.
func coordinates(t fataler, d string) []Pt {
	t.Helper()
	var out []Pt
	for _, part := range strings.FieldsFunc(d, func(r rune) bool { return r == 'M' || r == 'L' || r == 'Z' }) {
		var q Pt
		if _, err := fmt.Sscan(part, &q.X, &q.Y); err != nil {
			t.Fatalf("%q: %v", part, err)
		}
		out = append(out, q)
	}
	return out
}

func byID(t fataler, elements []element, id string) []Pt {
	t.Helper()
	for _, e := range elements {
		if e.ID == id {
			return coordinates(t, e.D)
		}
	}
	t.Fatalf("nothing is called %s", id)
	return nil
}

// What a rule and a protractor read off the printed sheet, times the scale, has
// to be the drill: coordinates carry three decimals of a millimetre.
func TestMeasuredOffThePrint(t *testing.T) {
	testkit.Property(t, "what a rule and a protractor read off the printed sheet, times the scale, is the drill", func(t *rapid.T) {
		d := anyDrill(t)
		sheet, err := OnPaper(labelled(d), Scale{})
		if err != nil {
			t.Fatal(err)
		}
		root, elements := read(t, sheet.SVG())
		if want := number(sheet.Width) + "mm"; root["width"] != want || root["viewBox"] != "0 0 "+number(sheet.Width)+" "+number(sheet.Height) {
			t.Fatalf("width %s, viewBox %s", root["width"], root["viewBox"])
		}
		low, high := Pt{math.Inf(1), math.Inf(1)}, Pt{math.Inf(-1), math.Inf(-1)}
		for _, q := range byID(t, elements, "circle") {
			low, high = Pt{math.Min(low.X, q.X), math.Min(low.Y, q.Y)}, Pt{math.Max(high.X, q.X), math.Max(high.Y, q.Y)}
		}
		real := d.D * sheet.Scale.Factor()
		if !near(high.X-low.X, real, 0.0021) || !near(high.Y-low.Y, real, 0.0021) {
			t.Fatalf("the diameter is %v by %v on paper, not %v at %s", high.X-low.X, high.Y-low.Y, real, sheet.Scale)
		}
		angle := func(id string) float64 {
			lip := bothEnds(byID(t, elements, id))
			return math.Atan2(math.Abs(lip[0].Y-lip[1].Y), lip[0].X-lip[1].X)
		}
		length := real / 4
		if got, want := angle("side-lip-1")+angle("side-lip-2"), d.Lips[0].HalfAngle+d.Lips[1].HalfAngle; !near(got, want, 0.004/length) {
			t.Fatalf("the point angle is %v on paper, not %v", got/deg, want/deg)
		}
	})
}

func TestAllIsOnThePaper(t *testing.T) {
	testkit.Property(t, "everything drawn is on the sheet", func(t *rapid.T) {
		d := anyDrill(t)
		j := labelled(d)
		before := d
		for i := range before.Lips {
			before.Lips[i].Corner += 0.05 * d.D
		}
		j.Before, j.Labels.Remove, j.Labels.Clearance = &before, "0.80", [2]string{"lip 1 clearance 12.0°", "lip 2 clearance 12.0°"}
		sheet, err := OnPaper(j, Scale{})
		if err != nil {
			t.Fatal(err)
		}
		if sheet.Paper != "A4" {
			t.Fatalf("the paper is %s", sheet.Paper)
		}
		inside := func(what string, q Pt) {
			if !(q.X >= border-1e-9 && q.Y >= border-1e-9 && q.X <= sheet.Width-border+1e-9 && q.Y <= sheet.Height-border+1e-9) {
				t.Fatalf("%s at %v at %s", what, q, sheet.Scale)
			}
		}
		for _, p := range sheet.Paths {
			for _, q := range p.Points {
				inside("a line", q)
			}
		}
		for _, a := range sheet.Arrows {
			inside("an arrow", a[0])
		}
		for _, x := range sheet.Texts {
			b := x.box()
			inside(x.Text, b.low)
			inside(x.Text, b.high)
		}
	})
}

func TestScaleChosenIsTheLargestThatFits(t *testing.T) {
	for _, c := range []struct {
		d    float64
		want string
	}{{1, "50:1"}, {3.175, "20:1"}, {12, "5:1"}, {60, "1:1"}, {90, "1:2"}} {
		d := usual()
		by := c.d / d.D
		d.D, d.Web, d.Land.Margin = c.d, d.Web*by, d.Land.Margin*by
		sheet, err := OnPaper(labelled(d), Scale{})
		if err != nil || sheet.Scale.String() != c.want || sheet.Paper != "A4" {
			t.Errorf("%v mm: scale %s on %s, not %s (%v)", c.d, sheet.Scale, sheet.Paper, c.want, err)
		}
	}
}

func TestPaperGrowsWithTheScale(t *testing.T) {
	j := labelled(usual())
	for scale, want := range map[float64]string{1: "A4", 8: "A3", 12: "A2", 18: "A1", 25: "A0"} {
		sheet, err := OnPaper(j, Scale{scale, 1})
		if err != nil || sheet.Paper != want {
			t.Errorf("at %v:1 the paper is %s, not %s (%v)", scale, sheet.Paper, want, err)
		}
	}
	if _, err := OnPaper(j, Scale{50, 1}); !errors.Is(err, ErrPaper) {
		t.Errorf("at 50:1: %v", err)
	}
}

func TestDimensionsNotGivenAreLeftOut(t *testing.T) {
	j := labelled(usual())
	count := func() int {
		sheet, err := OnPaper(j, Scale{})
		if err != nil {
			t.Fatal(err)
		}
		return len(sheet.Arrows)
	}
	all := count()
	j.Labels.Height = ""
	if got := count(); got != all-2 {
		t.Errorf("%d arrows without the lip height, %d with it", got, all)
	}
	j.Labels.Remove = "0.80"
	if got := count(); got != all-2 {
		t.Errorf("%d arrows with nothing before, %d with it", got, all)
	}
}

// What comes off is dimensioned where it is most, and the dimension spans it.
func TestRemovedIsDimensionedTrueToScale(t *testing.T) {
	for _, off := range [][2]float64{{0.9, 0.4}, {0.4, 0.9}} {
		d, before := usual(), usual()
		for i := range d.Lips {
			d.Lips[i].Corner -= off[i]
		}
		j := labelled(d)
		j.Before, j.Labels = &before, Labels{Remove: "off"}
		sheet, err := OnPaper(j, Scale{5, 1})
		if err != nil {
			t.Fatal(err)
		}
		n := len(sheet.Arrows)
		if got := sheet.Arrows[n-1][0].X - sheet.Arrows[n-2][0].X; !near(got, 5*0.9, 1e-9) {
			t.Errorf("%v is dimensioned on paper, not 4.5", got)
		}
	}
}

// Where the point angle fits into the point of the drill before, it stands there
// and no line leads to it through that drill's lips; else left of them.
func TestPointAngleInsideTheDrillBefore(t *testing.T) {
	for off, inside := range map[float64]bool{3: false, 6: false, 20: true, 30: true} {
		d, before := usual(), usual()
		for i := range before.Lips {
			before.Lips[i].Corner += off
		}
		j := labelled(d)
		j.Before, j.Labels.Lips = &before, [2]string{}
		sheet, err := OnPaper(j, Scale{2, 1})
		if err != nil {
			t.Fatal(err)
		}
		tip, left := 0.0, 0.0
		for _, p := range sheet.Paths {
			if p.Name == "side-before-chisel" {
				tip = p.Points[0].X
			}
		}
		for _, text := range sheet.Texts {
			if text.Text == j.Labels.PointAngle {
				left = text.box().low.X
			}
		}
		if left > tip != inside {
			t.Errorf("%v mm off: begins at %.1f, the drill before at %.1f", off, left, tip)
		}
	}
}

// The white around letters does not reach the line that they stand over.
func TestHaloKeepsOffTheLine(t *testing.T) {
	width := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v / 2
	}
	if foot := descender*textSize + width(halo); foot >= clear-width(narrowWidth) {
		t.Errorf("letters reach %v under their foot, the line is at %v", foot, clear)
	}
}

func TestTitleIsEscaped(t *testing.T) {
	j := labelled(usual())
	j.Title, j.Notes = `<b>&"`, []string{"a\x00b " + strings.Repeat("long words ", 20)}
	sheet, err := OnPaper(j, Scale{})
	if err != nil {
		t.Fatal(err)
	}
	svg := sheet.SVG()
	_, elements := read(t, svg)
	found := false
	for _, e := range elements {
		found = found || e.Text == `<b>&"`+"\n" || e.Text == `<b>&"`
	}
	if !found {
		t.Error("the title is not there as it was given")
	}
	if !IsOurs(svg) || IsOurs([]byte("<svg/>")) {
		t.Error("a drawing of ours is not told from others")
	}
	for _, x := range sheet.Texts {
		if n := len([]rune(x.Text)); n > noteLetters {
			t.Errorf("a line of %d letters", n)
		}
	}
}

func TestParseScale(t *testing.T) {
	for text, want := range map[string]string{"5:1": "5:1", " 1 : 2 ": "1:2", "2.5:1": "2.5:1", "10:1": "10:1"} {
		if s, err := ParseScale(text); err != nil || s.String() != want {
			t.Errorf("%q: %v, %v", text, s, err)
		}
	}
	for _, text := range []string{"", "5", ":", "5:", ":1", "0:1", "1:0", "-5:1", "5:1:1", "NaN:1", "1e3:1", "inf:1", "2000:1", "0.0001:10", "0x5:1", "1_0:1", "1..2:1"} {
		if s, err := ParseScale(text); err == nil {
			t.Errorf("%q is read as %v", text, s)
		}
	}
}

func FuzzParseScale(f *testing.F) {
	for _, text := range []string{"5:1", "1:2", "2.5:1", ":", "1:0", "NaN:1"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ParseScale(text)
		if err != nil {
			return
		}
		if factor := s.Factor(); !(factor >= 1.0/largestScale && factor <= largestScale) {
			t.Fatalf("%q scales by %v", text, factor)
		}
		if again, err := ParseScale(s.String()); err != nil || again != s {
			t.Fatalf("%q is %v, printed %s, read again %v (%v)", text, s, s, again, err)
		}
	})
}
