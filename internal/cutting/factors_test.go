package cutting_test

import (
	"fmt"
	"math"
	"testing"

	"evenlip/internal/cutting"
	"evenlip/internal/handbook"
	"evenlip/internal/testkit"

	"pgregory.net/rapid"
)

// All twelve rows.
func TestFactorsAreTheHandbooksTable7(t *testing.T) {
	checks := testkit.Against(t, testkit.MachinerysHandbook, "p. 1152, Table 7, chisel-edge factors").Because("the formulas behind the table; J is printed to a thousandth, and 1.080 is taken for a misprint")
	rows := printed(t, "chisel-edge-factors", nil)
	if len(rows) != 12 {
		t.Fatalf("%d rows, want 12", len(rows))
	}
	for _, row := range rows {
		q, a, b, j := row[0], row[2], row[3], row[4]
		f := cutting.FactorsOf(q)
		if q == 0.15 {
			// Suspected misprint: the printed run 1.040, 1.080, 1.085 is uneven
			// where the bracket runs 1.041, 1.056, 1.082.
			checks.Within("A at c/D 0.15, suspected misprint", f.A, a, 0.025, "")
		} else {
			checks.Within(fmt.Sprintf("A at c/D %.2f", q), f.A, a, 0.006, "")
		}
		checks.Within(fmt.Sprintf("B at c/D %.2f", q), f.B, b, 0.015, "")
		checks.Within(fmt.Sprintf("J at c/D %.2f", q), f.J, j, 0.003, "")
	}
	if last := rows[len(rows)-1][0]; last != cutting.PrintedRatio {
		t.Errorf("the table ends at %v, PrintedRatio is %v", last, cutting.PrintedRatio)
	}
}

// The angle taken where none was read: w/c over the rows of Table 7 is the sine of it.
func TestHandbookChiselAngle(t *testing.T) {
	checks := testkit.Against(t, testkit.MachinerysHandbook, "p. 1152, Table 7, web over chisel edge is the sine of 60°").Because("the webs are printed to 0.005 D")
	want := math.Sin(handbook.HandbookChiselAngle)
	rows := printed(t, "chisel-edge-factors", nil)
	for _, row := range rows {
		checks.Within(fmt.Sprintf("c/D %.2f", row[0]), want, row[1]/row[0], 0.04*want, "")
	}
	checks.Within("the thinnest web, w/D", handbook.LeastWebRatio, rows[0][1], 0, "")
}

// Without a chisel edge the brackets are those of lips that reach the axis.
func TestFactorsWithoutAChiselEdge(t *testing.T) {
	if f := cutting.FactorsOf(0); f != (cutting.Factors{A: 1, B: 1, J: 0, Lips: 1}) {
		t.Errorf("got %+v", f)
	}
}

func TestFactorsOutsideTheDomainAreNaN(t *testing.T) {
	for _, q := range []float64{-1e-9, 1, 1.5, math.Inf(1), math.Inf(-1), math.NaN()} {
		for _, f := range []cutting.Factors{cutting.FactorsOf(q), cutting.FactorsOverPilot(q)} {
			if !(math.IsNaN(f.A) && math.IsNaN(f.B) && math.IsNaN(f.J) && math.IsNaN(f.Lips)) {
				t.Errorf("q = %v: got %+v", q, f)
			}
		}
	}
}

// A hole of the same size instead of the chisel edge takes the chisel's part
// away from each factor and leaves the lips' alone.
func TestFactorsOverAPilotAreTheLipsPart(t *testing.T) {
	testkit.Property(t, "a pilot as wide as the chisel edge leaves the factors the lips' part and nothing else", func(t *rapid.T) {
		q := rapid.Float64Range(1e-6, 0.999).Draw(t, "q")
		full, lips := cutting.FactorsOf(q), cutting.FactorsOverPilot(q)
		if !(lips.A < full.A && lips.B < full.B && lips.J == 0 && lips.B == full.Lips && lips.Lips == lips.B) {
			t.Fatalf("q = %v: %+v over a pilot, %+v without", q, lips, full)
		}
	})
}

func TestFactorsRiseWithTheChisel(t *testing.T) {
	testkit.Property(t, "B and J rise with c/D, and A from c/D 0.03 on", func(t *rapid.T) {
		q := rapid.Float64Range(0, 0.99).Draw(t, "q")
		f, g := cutting.FactorsOf(q), cutting.FactorsOf(q+0.005)
		// A dips by a thousandth below q = 0.03, as lips of no radius cut no torque.
		if !(g.B > f.B && g.J > f.J && (g.A > f.A || q < 0.03)) {
			t.Fatalf("q = %v: %+v, then %+v", q, f, g)
		}
	})
}
