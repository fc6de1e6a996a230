package spindle

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
)

func near(t drilltest.Tester, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Fatalf("%s is %.9g, not %.9g within %g", what, got, want, within)
	}
}

const handbookExample = "size 7/8; material steel-200; chisel-length 0.1575in; feed 0.008in; rpm 350; wear-factor 1.3; efficiency 0.8"

// The handbook's worked example: size, work, efficiency and rpm read in print;
// feed, W and the answers from memory.
func TestHandbookExample(t *testing.T) {
	s := Thrust.Sheet(drilltest.Read(t, handbookExample), false)
	answers := testkit.Against(t, testkit.MachinerysHandbook.Recalled("high"), "pp. 1152-1153, the worked example, from the command's readings").Because("J is printed as 0.030 where the formula has 0.0324")
	// The table is rounded: the closed forms behind it come within 3 %.
	answers.Part("thrust", drilltest.Value(t, s, "thrust_n")/cutting.PoundForce, 2313, 0.03, "lb")
	answers.Part("torque", drilltest.Value(t, s, "torque_nm")/inchPound, 559, 0.005, "in lb")
	answers.Within("power at the cutter", drilltest.Value(t, s, "power_cutter_kw")/horsepower, 3.1, 0.05, "hp")
	answers.Within("power at the motor", drilltest.Value(t, s, "power_motor_kw")/horsepower, 3.9, 0.05, "hp")
}

// The chisel edge takes 50 to 60 % of the axial force of a 29.5 mm drill in work
// of 200 HB, and the margins, which the method leaves out, about 10 %: 56 to 67 %
// of the rest.
func TestChiselShareAsMeasured(t *testing.T) {
	share := drilltest.Value(t, Thrust.Sheet(drilltest.Read(t, "size 29.5mm; material steel-200; feed 0.3mm"), false), "chisel_share")
	measured := testkit.Against(t, testkit.ModernMachining, "p. 145, the chisel edge's share of the thrust without the margins' part")
	measured.Between("29.5 mm drill, work of 200 HB", 100*share, 56, 67, "%")
}

// A drill read in inches and the same in millimetres differ by the handbook's
// two sets of rounded constants and no more.
func TestInchesAndMillimetres(t *testing.T) {
	testkit.Property(t, "a drill in inches and in millimetres differ by the handbook's rounded constants and no more", func(t *rapid.T) {
		d := rapid.Float64Range(0.1, 2).Draw(t, "D, in")
		w := d * rapid.Float64Range(0.1, 0.3).Draw(t, "w/D")
		f := rapid.Float64Range(0.001, 0.02).Draw(t, "feed, in")
		text := func(v float64, unit string) string { return trim(v) + unit }
		in := Thrust.Sheet(drilltest.Read(t, "size "+text(d, "in")+"; web "+text(w, "in")+"; chisel-angle 125; feed "+text(f, "in")+"; rpm 300; efficiency 0.8"), false)
		mm := Thrust.Sheet(drilltest.Read(t, "size "+text(d*25.4, "mm")+"; web "+text(w*25.4, "mm")+"; chisel-angle 125; feed "+text(f*25.4, "mm")+"; rpm 300; efficiency 0.8"), false)
		for _, key := range []string{"thrust_n", "torque_nm", "power_cutter_kw", "power_motor_kw", "chisel_share", "thrust_over_new"} {
			a, b := drilltest.Value(t, in, key), drilltest.Value(t, mm, key)
			near(t, key, a, b, 0.015*b)
		}
		for _, key := range []string{"chisel_ratio", "factor_a", "factor_b", "factor_j"} {
			a, b := drilltest.Value(t, in, key), drilltest.Value(t, mm, key)
			near(t, key, a, b, 1e-6*b)
		}
		for _, s := range []*sheet.Sheet{in, mm} {
			ratio := drilltest.Value(t, s, "thrust_n") / drilltest.Value(t, s, "new_thrust_n")
			near(t, "thrust_over_new of the two thrusts", drilltest.Value(t, s, "thrust_over_new"), ratio, 1e-9*ratio)
		}
	})
}

// Each step up in wear costs its factor and nothing else.
func TestSharpAndDull(t *testing.T) {
	s := Thrust.Sheet(drilltest.Read(t, handbookExample), false)
	rows := drilltest.Grid(t, s, "conditions").Rows
	for _, r := range rows {
		near(t, r[0].Word, r[2].Value/rows[0][2].Value, r[1].Value, 1e-9)
		near(t, r[0].Word, r[3].Value/rows[0][3].Value, r[1].Value, 1e-9)
	}
	if len(rows) != 3 || rows[1][2].Value != drilltest.Value(t, s, "thrust_n") {
		t.Errorf("%d rows", len(rows))
	}
}

// Power is torque times angular speed: a second way to the same figure.
func TestPowerIsTorqueTimesSpeed(t *testing.T) {
	for _, size := range []string{"7/8", "22mm"} {
		s := Thrust.Sheet(drilltest.Read(t, "size "+size+"; rpm 350; drive belt"), false)
		watts := drilltest.Value(t, s, "torque_nm") * 350 * 2 * math.Pi / 60
		near(t, "power", drilltest.Value(t, s, "power_cutter_kw"), watts/1000, 1e-4*watts/1000)
		near(t, "power at the motor", drilltest.Value(t, s, "power_motor_kw"), watts/1000/0.9, 1e-4*watts/1000)
	}
}

// What cannot be is refused by name.
func TestChecks(t *testing.T) {
	for reading, text := range map[string]string{
		"wear-factor": "wear-factor 0.9", "drive": "drive chain", "efficiency": "efficiency 0",
		"pilot": "size 5mm; pilot 5mm", "to-web": "size 5mm; to-web 6mm", "web": "size 5mm; web 4.9mm",
		"depth": "size 5mm; depth 1200mm", "chisel-ratio": "chisel-ratio 1", "thrust": "size 20mm; web 4mm; thrust 10N",
		"worn-to": "wheel 200mm; worn-to 201mm", "wheel": "wheel 0mm", "marked-speed": "marked-speed 0m/s",
	} {
		d := drilltest.Read(t, text)
		im := append(d.Possible(), cannot(d)...)
		if len(im) != 1 || drilltest.About(im[0]) != reading {
			t.Errorf("%v: %v", text, im)
		}
	}
	if im := cannot(drilltest.Read(t, "size 20mm; web 4mm; to-web 3mm; thrust 10kN")); len(im) != 1 || !strings.Contains(im[0].Text, "one target") {
		t.Errorf("two targets: %v", im)
	}
	if im := cannot(drilltest.Read(t, handbookExample)); im != nil {
		t.Errorf("the handbook's example cannot be: %v", im)
	}
	if im := cannot(drilltest.Read(t, "size 20mm; thrust 10N")); im != nil {
		t.Errorf("a thrust on a drill not measured: %v", im)
	}
}

// A reading that is missing makes no number of what depends on it, and no sheet
// changes its figures' names for it.
func TestMissingReadings(t *testing.T) {
	for name, make := range map[string]func(*drill.Drill, bool) *sheet.Sheet{"thrust": Thrust.Sheet, "thin": Thin.Sheet, "pilot": Pilot.Sheet, "speed": Speed.Sheet} {
		full := make(drilltest.Read(t, "size 12mm; web 2mm; chisel-angle 125; feed 0.2mm; rpm 500; depth 20mm"), false)
		none := make(drilltest.Read(t, "feed 0.2mm"), true)
		if names(full) != names(none) {
			t.Errorf("%s: %s\nbut with nothing read %s", name, names(full), names(none))
		}
		none.Each(func(f *sheet.Figure) {
			if f.Known() && f.Kind != quantity.Cutting && f.Key != "wear_factor_thrust" && f.Key != "wear_factor_torque" && f.Key != "feed_mm" && f.Key != "kd_thrust" && f.Key != "kd_torque" {
				t.Errorf("%s without a size has %s = %g", name, f.Key, f.Value)
			}
			if !f.Known() && none.Missing(f) == "" {
				t.Errorf("%s: %s is not known and wants nothing", name, f.Key)
			}
		})
	}
}

func names(s *sheet.Sheet) string {
	out := ""
	s.Each(func(f *sheet.Figure) { out += f.Key + " " })
	return out
}
