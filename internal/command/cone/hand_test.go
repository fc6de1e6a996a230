package cone

import (
	"math"
	"testing"

	"evenlip/internal/drill"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit/drilltest"
)

// A hand's faults move clearance and chisel the way the trade says: the sign
// facts are common practice, but for the two that grow together, which is read
// in print (Machinery Repairman, NAVEDTRA 12204-A).
func TestFaultsOfTheHandMoveTheRightWay(t *testing.T) {
	const clearance, read, chisel = 1, 2, 3
	hand := drilltest.Grid(t, Command.Sheet(read10(t, nil), false), "hand")
	row := map[string][]sheet.Cell{}
	for _, r := range hand.Rows {
		row[r[0].Word] = r
	}
	none := row["none"]
	for _, c := range []struct {
		fault  string
		column int
		sign   float64
	}{
		{"shank 2° too low", clearance, 1}, {"shank 2° too low", chisel, 1},
		{"shank 2° too high", clearance, -1}, {"shank 2° too high", chisel, -1},
		{"1/4 too much drop", read, 1}, {"1/5 too little drop", read, -1},
		{"rolled 5° too soon", clearance, -1}, {"rolled 5° too soon", read, -1},
	} {
		if moved := row[c.fault][c.column].Value - none[c.column].Value; !(moved*c.sign > degree/10) {
			t.Errorf("%s moves %s by %v degrees", c.fault, hand.Columns[c.column].Label, moved/degree)
		}
	}
	if got := none[clearance].Value; math.Abs(got-12*degree) > 1e-9 || row["rolled 5° too soon"][clearance].Value != 0 {
		t.Errorf("without a fault %v, and rolled too soon %v", got, row["rolled 5° too soon"][clearance].Value)
	}
	// The chisel's corners are the lips' inner ends: c sin(psi) = w in every row.
	const length = 4
	for fault, r := range row {
		if got := r[length].Value * math.Sin(r[chisel].Value); math.Abs(got-1.5) > 1e-9 {
			t.Errorf("%s: a chisel of %v at %v lies over a web of %v", fault, r[length].Value, r[chisel].Value/degree, got)
		}
	}
	if len(hand.Rows) != 6 {
		t.Errorf("%d rows", len(hand.Rows))
	}
}

func read10(t drilltest.Tester, more readings) *drill.Drill {
	t.Helper()
	return plain.With(readings{drill.ChiselAngle: "126"}).With(more).Drill(t)
}

// common practice: about 59 degrees to the face for a point of 118, the shank
// slightly under the point.
func TestHandHoldsAsTheTradeDoes(t *testing.T) {
	s := Command.Sheet(read10(t, nil), false)
	if got := drilltest.Value(t, s, "hand_face_angle_deg") / degree; math.Abs(got-59) > 0.5 {
		t.Errorf("to the wheel's face at %v", got)
	}
	if got := drilltest.Value(t, s, "hand_shank_low_deg") / degree; !(got > 1 && got < 15) {
		t.Errorf("the shank is %v low", got)
	}
	if got := drilltest.Value(t, s, "hand_pivot_mm"); !(got > 0 && got < 10) {
		t.Errorf("the pivot lies %v behind the point of a 10 mm drill", got)
	}
}

// Toward the lip the clearance at the heel is the lip's own, and a heel beyond
// the cone is said to be gone.
func TestHeel(t *testing.T) {
	near := Command.Sheet(read10(t, readings{drill.HeelTurn: "0.01"}), false)
	if got := drilltest.Value(t, near, "heel_clearance_deg") / degree; math.Abs(got-12) > 0.01 {
		t.Errorf("close behind the lip it is %v", got)
	}
	s := Command.Sheet(read10(t, nil), false)
	if got := drilltest.Value(t, s, "heel_turn_deg") / degree; math.Abs(got-72) > 1e-9 {
		t.Errorf("the heel is %v behind", got)
	}
	drop, clearance := drilltest.Value(t, s, "heel_drop_mm"), drilltest.Value(t, s, "heel_clearance_deg")
	if got := math.Atan(drop * 360 / (math.Pi * 10 * 72)); math.Abs(got-clearance) > 1e-12 || !(clearance > 12*degree) {
		t.Errorf("a drop of %v is %v, not %v", drop, got/degree, clearance/degree)
	}
	gone := Command.Sheet(read10(t, readings{drill.SemiAngle: "13"}), false)
	if gone.Lookup("heel_drop_mm").Known() || !drilltest.Found(gone, "heel-gone") || drilltest.Found(s, "heel-gone") {
		t.Error("a heel that the cone takes away is not told from one that it leaves")
	}
}

// A knob's step reads as inches where inches are printed, and means the same.
func TestKnobStepsInInches(t *testing.T) {
	per := drilltest.Grid(t, Command.Sheet(read10(t, nil), false), "knobs").Rows[2][1]
	if per.In(quantity.Metric) != "0.1 mm" || per.In(quantity.Inch) != "0.0039 in" || per.Word != "0.1 mm" {
		t.Errorf("%+v", per)
	}
}

// The cross products that the working names for the chisel edge, done.
func TestChiselRunsAlongTheNormalsProduct(t *testing.T) {
	r := Compute(read10(t, nil))
	across := func(n1, n2 point.Vec) float64 {
		p := n1.Cross(n2)
		return math.Atan(p.Y / p.X)
	}
	m, g := 1/math.Tan(halfAngle(r.cone)), slope(r.cone)
	if got, want := across(point.Vec{X: m, Y: -g, Z: 1}, point.Vec{X: -m, Y: g, Z: 1}), facetChisel(r.cone); math.Abs(got-want) > 1e-12 {
		t.Errorf("the facets meet at %v, not %v", got/degree, want/degree)
	}
	hx, hy := r.cone.Slope(0, 0)
	if got, want := across(point.Vec{X: -hx, Y: -hy, Z: 1}, point.Vec{X: hx, Y: hy, Z: 1}), r.cone.ChiselTangent(); math.Abs(got-want) > 1e-12 {
		t.Errorf("the flanks meet at %v, not %v", got/degree, want/degree)
	}
}
