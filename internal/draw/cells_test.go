package draw

import (
	"flag"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

var update = flag.Bool("update", false, "rewrite the pictures under testdata")

func TestPictures(t *testing.T) {
	uneven, before := usual(), usual()
	uneven.Lips[0], uneven.Offset = Lip{HalfAngle: 62 * deg, Corner: 0.6, Clearance: 12 * deg}, 0.3
	ground := usual()
	for i := range ground.Lips {
		ground.Lips[i].Corner -= 1
	}
	for _, c := range []struct {
		name      string
		d, before *Drill
		columns   int
		ascii     bool
	}{
		{"uneven-60.txt", &uneven, nil, 60, false},
		{"uneven-ascii-60.txt", &uneven, nil, 60, true},
		{"ground-40.txt", &ground, &before, 40, false},
	} {
		p := InCells(c.d, c.before, c.columns, c.ascii)
		got := strings.Join(p.Lines, "\n") + "\n"
		if *update {
			if err := os.WriteFile("testdata/"+c.name, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile("testdata/" + c.name)
		if err != nil {
			t.Fatal(err)
		}
		if off := apartFrom(got, string(want)); off > rounded {
			t.Errorf("%s differs in %d places and is now\n%s", c.name, off, got)
		}
	}
}

// rounded is in how many cells another processor's rounding may show.
const rounded = 3

// apartFrom counts the letters in which two pictures differ; all of them where
// they are not of one shape.
func apartFrom(a, b string) int {
	x, y := []rune(a), []rune(b)
	if len(x) != len(y) {
		return len(x) + len(y)
	}
	n := 0
	for i := range x {
		if x[i] != y[i] {
			n++
		}
	}
	return n
}

// dot reports whether a dot of a picture is set.
func dot(lines []string, x, y int) bool {
	if y/dotsDown >= len(lines) {
		return false
	}
	row := []rune(lines[y/dotsDown])
	if x/dotsAcross >= len(row) || row[x/dotsAcross] < 0x2800 {
		return false
	}
	return uint8(row[x/dotsAcross]-0x2800)&brailleDot[y%dotsDown][x%dotsAcross] != 0
}

func field(columns, rows int, dot float64, letters bool) grid {
	n := columns * rows
	return grid{columns: columns, rows: rows, letters: letters, dot: dot, dots: make([]uint8, n), seen: make([]bool, n), marks: make([]rune, n)}
}

// In letters a level line of dashes keeps its gaps, wherever in a cell it runs,
// and no two kinds of line look alike.
func TestDashesInLetters(t *testing.T) {
	testkit.Property(t, "in letters the gaps of a line are cells", func(t *rapid.T) {
		y := rapid.Float64Range(0, 0.7).Draw(t, "y")
		for l, want := range map[Line]string{Dashed: "- - - - - - - - - - - -", Chain: "--- - --- - --- - --- -"} {
			g := field(24, 2, 0.1, true)
			g.view(&View{Paths: []Path{{Line: l, Points: []Pt{{0, -y}, {1.9, -y}, {4.7, -y}}}}}, Pt{})
			if got := strings.TrimSpace(strings.Join(g.lines(), "")); got != want {
				t.Fatalf("%q, not %q", got, want)
			}
		}
		x := rapid.Float64Range(0, 0.1).Draw(t, "x")
		g := field(1, 12, 0.1, true)
		g.view(&View{Paths: []Path{{Line: Dashed, Points: []Pt{{x, 0}, {x, -4.7}}}}}, Pt{})
		if got := strings.Join(g.lines(), "."); got != strings.Repeat("|..", 5)+"|." {
			t.Fatalf("upright %q", got)
		}
	})
}

// A visible edge is not blurred by what lies under it: in letters it has its
// cells for itself.
func TestEdgesStayCleanInLetters(t *testing.T) {
	edge := Path{Line: Wide, Points: []Pt{{0, -0.1}, {2.3, -0.1}}}
	under := Path{Line: Chain, Points: []Pt{{0.5, 0}, {0.5, -1.1}}}
	alone, both := field(12, 3, 0.1, true), field(12, 3, 0.1, true)
	alone.view(&View{Paths: []Path{edge}}, Pt{})
	both.view(&View{Paths: []Path{under, edge}}, Pt{})
	if got, want := both.lines(), alone.lines(); got[0] != want[0] || got[1] == want[1] {
		t.Errorf("%q, the edge alone %q", got, want)
	}
}

// The number of a lip stands on no line where a cell beside it is free.
func TestMarksKeepOffLines(t *testing.T) {
	g := field(5, 3, 0.1, false)
	g.view(&View{Paths: []Path{{Line: Dashed, Points: []Pt{{0.4, 0}, {0.4, -1.1}}}}, Marks: []Mark{{Pt{0.4, -0.5}, "1"}}}, Pt{})
	if got := []rune(g.lines()[1]); got[1] != '1' || got[2] < 0x2800 {
		t.Errorf("%q", string(got))
	}
	g = field(1, 1, 0.1, false)
	g.view(&View{Paths: []Path{{Line: Wide, Points: []Pt{{0, 0}, {0.1, 0}}}}, Marks: []Mark{{Pt{0, 0}, "2"}}}, Pt{})
	if got := g.lines()[0]; got != "2" {
		t.Errorf("with no room left: %q", got)
	}
}

// Counted in dots, the drill is as high as it is wide, and as large as the dot
// says.
func TestDotsAreSquare(t *testing.T) {
	d := usual()
	g := field(60, 30, 0.1, false)
	var circle View
	end := End(&d, nil)
	circle.addNamed("circle", Wide, end.named("circle"))
	g.view(&circle, Pt{5.95, -5.95})
	lines := g.lines()
	left, right, top, bottom := 999, -1, 999, -1
	for y := range 120 {
		for x := range 120 {
			if dot(lines, x, y) {
				left, right, top, bottom = min(left, x), max(right, x), min(top, y), max(bottom, y)
			}
		}
	}
	if right-left < 118 || right-left > 120 || bottom-top < 118 || bottom-top > 120 {
		t.Errorf("the circle is %d dots wide and %d high, not 119 or 120", right-left, bottom-top)
	}
}

func TestPictureFits(t *testing.T) {
	testkit.Property(t, "a picture in cells keeps to the width asked for", func(t *rapid.T) {
		d := anyDrill(t)
		columns := rapid.IntRange(30, 140).Draw(t, "columns")
		ascii := rapid.Bool().Draw(t, "ascii")
		p := InCells(&d, nil, columns, ascii)
		widest := 0
		for _, line := range p.Lines {
			widest = max(widest, utf8.RuneCountInString(line))
			for _, r := range line {
				if ascii && r > 126 {
					t.Fatalf("%q is no ASCII", r)
				}
			}
		}
		if widest > columns || widest < columns-2 {
			t.Fatalf("%d of %d columns", widest, columns)
		}
		text := strings.Join(p.Lines, "\n")
		if strings.Count(text, "1") < 2 || strings.Count(text, "2") < 2 {
			t.Fatalf("a lip's number is missing:\n%s", text)
		}
	})
}

// A letter stands exactly where there are dots.
func TestLettersStandForDots(t *testing.T) {
	for i := 1; i < 256; i++ {
		if r := letter(uint8(i)); r == ' ' || r > 126 {
			t.Errorf("dots %08b are %q", i, r)
		}
	}
	for _, c := range []struct {
		rows [dotsDown]string
		want rune
	}{
		{[...]string{"xx", "xx", "xx", "xx"}, '#'}, {[...]string{" x", " x", " x", " x"}, '|'},
		{[...]string{"  ", "  ", "  ", "xx"}, '_'}, {[...]string{" x", " x", "x ", "x "}, '/'},
		{[...]string{"x ", "x ", " x", " x"}, '\\'},
	} {
		s := shape{rows: c.rows}
		if got := letter(s.dots()); got != c.want {
			t.Errorf("%v is %q, not %q", c.rows, got, c.want)
		}
	}
}
