package spindle

import (
	"math"
	"testing"

	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
)

// The lips alone over a wide pilot, worked again from the handbook's equations
// with the chisel's terms left out: second computation.
func TestLipsOverAWidePilot(t *testing.T) {
	s := Pilot.Sheet(drilltest.Read(t, "size 20mm; material steel-200; web 3mm; chisel-angle 125; feed 0.3mm; wear-factor 1; pilot 8mm"), false)
	const q = 8.0 / 20
	lips := (1 - q) / math.Pow(1+q, 0.2)
	ft, fm := math.Pow(0.3*20, 0.8), math.Pow(0.3, 0.8)*math.Pow(20, 1.8)
	apart := testkit.Against(t, testkit.Derived, "20 mm drill over a pilot of 8 mm, by the equations without the chisel's terms")
	apart.Within("thrust", drilltest.Value(t, s, "thrust_with_pilot_n"), 0.05*24000*ft*lips, 1e-6, "N")
	apart.Within("torque", drilltest.Value(t, s, "torque_with_pilot_nm"), 24000*fm*(1-q*q)/math.Pow(1+q, 0.2)/40000, 1e-9, "N m")
}

// A new drill of an inch and over has a web of 12 % of the diameter: that is what
// a thick one is thinned to when that is asked for.
func TestThinnedToANewWeb(t *testing.T) {
	s := Thin.Sheet(drilltest.Read(t, "size 1-1/4in; web 0.25; chisel-angle 125; to-web new"), false)
	checks := testkit.Against(t, testkit.OldToolHandbook, "1-1/4 in drill with a web of 0.25 in, thinned to a new one's")
	checks.Within("web to leave", drilltest.Value(t, s, "web_target_mm")/25.4, 0.15, 1e-9, "in")
	checks.Within("notch", drilltest.Value(t, s, "notch_depth_mm")/25.4, 0.05, 1e-9, "in")
}

// Five diameters deep the speed is cut by 30 % and the feed by 20 %.
func TestDeepHoleIsDrilledSlower(t *testing.T) {
	shallow := Speed.Sheet(drilltest.Read(t, "size 10mm; depth 10mm; web 1.5mm; efficiency 0.8"), false)
	deep := Speed.Sheet(drilltest.Read(t, "size 10mm; depth 50mm; web 1.5mm; efficiency 0.8"), false)
	trade := testkit.Against(t, testkit.Trade, "five diameters deep, over one")
	trade.Within("speed", drilltest.Value(t, deep, "rpm")/drilltest.Value(t, shallow, "rpm"), 0.7, 1e-9, "")
	trade.Within("feed", drilltest.Value(t, deep, "feed_mm")/drilltest.Value(t, shallow, "feed_mm"), 0.8, 1e-9, "")
	if ratio, lips := drilltest.Value(t, deep, "thrust_n")/drilltest.Value(t, shallow, "thrust_n"), math.Pow(0.8, 0.8); !(ratio > lips && ratio < 1) {
		t.Errorf("the thrust falls to %g of itself: the lips' part falls to %g, the indenting does not", ratio, lips)
	}
	watts := drilltest.Value(t, deep, "torque_nm") * drilltest.Value(t, deep, "rpm") * 2 * math.Pi / 60
	near(t, "power at the motor", drilltest.Value(t, deep, "power_motor_kw"), watts/800, 1e-3*watts/800)
}

// The clearance left at the feed that is taken is the one that inspect gives at
// that feed.
func TestClearanceAtTheFeedTaken(t *testing.T) {
	s := Speed.Sheet(drilltest.Read(t, "size 10mm; clearance 12; depth 50mm"), false)
	left := 12 - math.Atan(drilltest.Value(t, s, "feed_mm")/(math.Pi*10))*180/math.Pi
	near(t, "clearance left", drilltest.Value(t, s, "working_clearance_deg")*180/math.Pi, left, 1e-9)
}
