package shop_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/handbook/shop"
	"evenlip/internal/judge"
)

const deg = math.Pi / 180

func yard(t *testing.T) *shop.Shop {
	t.Helper()
	text, err := os.ReadFile("../../../testdata/shop.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s, errs := shop.Read("shop.yaml", string(text))
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	return s
}

// What the shop has set holds and is marked as the shop's; the rest is as
// embedded.
func TestYardOverrides(t *testing.T) {
	s := yard(t)
	if math.Abs(s.Gauges.Caliper-0.02) > 1e-12 || math.Abs(s.Gauges.Protractor-deg) > 1e-12 || s.Gauges.Indicator != 0 {
		t.Errorf("gauges %+v", s.Gauges)
	}
	var d drill.Read
	if errs := d.Resolve(drill.Sample(), drill.Options{Book: s.Book}); len(errs) > 0 {
		t.Fatal(errs)
	}
	r := judge.Compute(&d.Drill)
	for _, c := range []struct {
		name      string
		got       handbook.Band
		low, high float64
		shop      bool
	}{
		{"lip height", *r.Limit(judge.LipHeightLimit), -0.04, 0.04, true},
		{"chisel angle", *r.Limit(judge.ChiselAngleLimit), 120 * deg, 132 * deg, true},
		{"clearance", *r.Limit(judge.Clearance1Limit), 9 * deg, 13 * deg, true},
		{"flank wear", *r.Limit(judge.FlankLimit), 0, 0.25, false},
	} {
		if math.Abs(c.got.Low-c.low) > 1e-12 || math.Abs(c.got.High-c.high) > 1e-12 {
			t.Errorf("%s: %g to %g, want %g to %g", c.name, c.got.Low, c.got.High, c.low, c.high)
		}
		if (c.got.Source.Label == handbook.Shop) != c.shop {
			t.Errorf("%s: source %q", c.name, c.got.Source)
		}
	}
	if math.Abs(r.Point.Wanted-120*deg) > 1e-12 || r.Web.Taper != 0.018 {
		t.Errorf("wanted %g, web taper %g", r.Point.Wanted/deg, r.Web.Taper)
	}
	if !strings.Contains(r.Limit(judge.Clearance1Limit).Source.String(), "the shop's: ferry yard, shop.yaml") {
		t.Errorf("source of a material's figure: %q", *r.Limit(judge.Clearance1Limit).Source)
	}
	if !strings.Contains(r.Limit(judge.LipHeightLimit).Source.String(), "the shop's: ferry yard, shop.yaml") {
		t.Errorf("source %q", *r.Limit(judge.LipHeightLimit).Source)
	}
}

// A new material starts from the one it is like.
func TestNewMaterial(t *testing.T) {
	b := yard(t).Book
	m, ok := b.Material("yard-bronze")
	brass, _ := handbook.FindMaterial("brass")
	if !ok || m.KdThrust != brass.KdThrust || m.Relief != brass.Relief || !m.StraightFlutes {
		t.Fatalf("yard-bronze is not like brass: %+v", m)
	}
	if math.Abs(m.PointAim-115*deg) > 1e-12 || m.PointSource.Label != handbook.Shop || m.KdThrustSource.Label == handbook.Shop {
		t.Errorf("aim %g, sources %v, %v", m.PointAim/deg, m.PointSource, m.KdThrustSource)
	}
	if got, want := len(b.Materials()), len(handbook.Materials())+1; got != want {
		t.Errorf("%d materials, want %d", got, want)
	}
	// The embedded list is not changed by a shop.
	if e, _ := handbook.FindMaterial("steel-200"); e.PointAim == 120*deg {
		t.Error("the shop changed the embedded material")
	}
}

// However a name is spelled, with capitals or blanks, it is found as it is listed;
// an embedded one changes the embedded material.
func TestNamesAreFoundHoweverSpelled(t *testing.T) {
	b := book(t, "materials:\n  Yard Bronze No_2:\n    like: brass\n  Mild Steel:\n    kd-thrust: 20000\n")
	for _, listed := range b.Materials() {
		if m, ok := b.Material(listed.Name); !ok || m.Name != listed.Name {
			t.Errorf("%s is listed and not found: %v", listed.Name, m)
		}
	}
	for _, name := range []string{"yard bronze no 2", "YARD-BRONZE_no-2"} {
		if m, ok := b.Material(name); !ok || m.Name != "Yard Bronze No_2" {
			t.Errorf("%s: %v", name, m)
		}
	}
	for _, name := range []string{"steel-150", "mild-steel", "Mild Steel"} {
		if m, ok := b.Material(name); !ok || m.KdThrust != 20000 || m.Name != "steel-150" {
			t.Errorf("%s: %+v", name, m)
		}
	}
	if got, want := len(b.Materials()), len(handbook.Materials())+1; got != want {
		t.Errorf("%d materials, want %d", got, want)
	}
}

// Nothing is credited to a shop that it did not set, and nothing that it did to
// anyone else: each figure has a source of its own.
func TestEachFigureHasItsSource(t *testing.T) {
	b := book(t, "materials:\n  steel-200:\n    kd-thrust: 20000\n")
	m, _ := b.Material("steel-200")
	if m.KdThrust != 20000 || !m.KdThrustSource.OfShop() || m.KdTorque != 24000 || m.KdTorqueSource.OfShop() {
		t.Errorf("thrust %g (%v), torque %g (%v)", m.KdThrust, m.KdThrustSource, m.KdTorque, m.KdTorqueSource)
	}
	m, _ = book(t, "materials:\n  steel-200:\n    kd-torque: 20000\n").Material("steel-200")
	if m.KdThrustSource.OfShop() || m.KdTorque != 20000 || !m.KdTorqueSource.OfShop() {
		t.Errorf("thrust %v, torque %g (%v)", m.KdThrustSource, m.KdTorque, m.KdTorqueSource)
	}
}

// A band about the point angle has two halves, and its source says whose each is.
// Where neither the drill nor the shop asks for one angle, all that is published for
// the work is accepted: 118 to 135 for this steel, and the tolerance either way.
func TestWhoseTheBandAboutThePointIs(t *testing.T) {
	aim, tolerance := "materials:\n  steel-200:\n    point-angle: 120deg\n", "limits:\n  point-angle: 2deg\n"
	for _, c := range []struct {
		text, asked string
		half        float64
		source      string
	}{
		{"name: x\n", "", 11.5, "from memory (medium): 118 ± 3 degrees in DIN 1414 / ISO 10899; taken for every wanted angle"},
		{aim, "", 3, "the shop's: the shop, shop.yaml, the angle wanted; about it, from memory (medium): 118 ± 3 degrees in DIN 1414 / ISO 10899; taken for every wanted angle"},
		{aim, "119", 3, "from memory (medium): 118 ± 3 degrees in DIN 1414 / ISO 10899; taken for every wanted angle"},
		{tolerance, "", 10.5, "the shop's: the shop, shop.yaml, the tolerance alone"},
		{aim + tolerance, "", 2, "the shop's: the shop, shop.yaml"},
		{aim + tolerance, "119", 2, "the shop's: the shop, shop.yaml, the tolerance alone"},
	} {
		var d drill.Read
		d.Resolve([]drill.Given{drill.Flag(drill.Size, "12mm"), drill.Flag(drill.PointAngle, c.asked)}, drill.Options{Book: book(t, c.text)})
		limit := pointLimit(&d.Drill)
		if got := (limit.High - limit.Low) / 2 / deg; math.Abs(got-c.half) > 1e-9 || limit.Source.String() != c.source {
			t.Errorf("%q, asked for %q: ± %g, %s", c.text, c.asked, got, limit.Source)
		}
	}
}

func book(t *testing.T, text string) *handbook.Book {
	t.Helper()
	s, errs := shop.Read("shop.yaml", text)
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	return s.Book
}

// Each fault is told with its line and column, and all of them.
func TestRefusals(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "the file is empty"},
		{"limits: 3\n", ":1:9: takes point-angle, chisel-angle"},
		{"limts:\n  lip-height: 1mm\n", `:1:1: nothing here is called "limts"`},
		{"limits:\n  lip-height: 59deg\n", `:2:15: cannot read "59deg"`},
		{"limits:\n  lip-height: 0mm\n", ":2:15: takes a value above zero"},
		{"limits:\n  lip-height: .nan\n", `:2:15: cannot read ".nan"`},
		{"limits:\n  chisel-angle: 135,120\n", ":2:17: takes two values, the lower first"},
		{"limits:\n  lip-height: 6\n", ":2:15: 6.00 mm is more than a shop would set: takes up to 1.00 mm"},
		{"limits:\n  point-angle: 45deg\n", ":2:16: 45.0° is more than a shop would set: takes up to 15.0°"},
		{"limits:\n  web-taper: 1.6\n", ":2:14: 1.6000 mm/mm is more than a shop would set"},
		{"limits:\n  flank-wear: 5mm\n", ":2:15: 5.00 mm is more"},
		{"limits:\n  chisel-angle: 45,60\n", ":2:17: takes the obtuse chisel-edge angle"},
		{"limits:\n  clean-up: 5mm\n", ":2:13: 5.00 mm is more than a shop would set: takes up to 2.00 mm"},
		{"limits:\n  clean-up: 0\n", ":2:13: takes a value above zero"},
		{"limits:\n  every: 1in\n", ":2:10: 25.40 mm is more than a shop would set: takes up to 10.00 mm"},
		{"limits:\n  every: -1mm\n", ":2:10: cannot read"},
		{"gauges:\n  protractor: 59deg\n", ":2:15: 59.0° is more"},
		{"limits:\n  chisel-ratio: 1.2\n", ":2:17: takes a part of the diameter"},
		{"limits:\n  lip-height: 1mm\n  lip-height: 2mm\n", `:3:3: "lip-height" stands twice`},
		{"gauges:\n  caliper: [1, 2]\n", ":2:12: takes one value"},
		{"materials: 3\n", ":1:12: takes a name a line"},
		{"materials:\n  mud: 3\n", ":2:8: mud takes what is set for it"},
		{"materials:\n  mud:\n    point-angle: 90\n", `:2:3: "mud" is new`},
		{"materials:\n  mud:\n    like: bras\n", `:3:11: no material is called "bras"`},
		{"materials:\n  brass:\n    colour: red\n", `:3:5: nothing here is called "colour"`},
		{"materials:\n  brass:\n    like: bronze\n", `:3:5: "brass" is known and starts from its own figures`},
		{"materials:\n  Mild Steel:\n    like: steel-200\n", `:3:5: "Mild Steel" is known and starts from its own figures`},
		{"materials:\n  Yard Bronze:\n    like: brass\n  yard-bronze:\n    like: brass\n", `:4:3: "yard-bronze" stands twice`},
		{"materials:\n  steel-150:\n    helix: 20,30\n  mild-steel:\n    helix: 20,30\n", `:4:3: "mild-steel" stands twice`},
		{"materials:\n  brass:\n    clearance: 13,9\n", ":3:16: takes two values, the lower first"},
		{"materials:\n  brass:\n    clearance: 9,90\n", ":3:16: takes angles from 0 to under 90°"},
		{"materials:\n  brass:\n    helix: 20,120\n", ":3:12: takes angles from 0 to under 90°"},
		{"materials:\n  brass:\n    chisel-angle: 45,60\n", ":3:19: takes the obtuse chisel-edge angle"},
		{"materials:\n  brass:\n    speed: 30,1200\n", ":3:12: 1200.0 m/min is more than a shop would set: takes up to 1000.0 m/min"},
		{"materials:\n  brass:\n    speed: 0,30\n", ":3:12: takes speeds above zero"},
		{"materials:\n  brass:\n    point-angle: 190\n", ":3:18: a point angle lies under 180°"},
		{"name: a\n---\nname: b\n", ":2:1: a second document"},
		{"name: &a x\n", "anchors and aliases"},
		{"name: [\n", "not YAML"},
	} {
		_, errs := shop.Read("shop.yaml", c.text)
		if len(errs) == 0 || !strings.Contains(errs[0].Error(), c.want) {
			t.Errorf("%q: %v, want %q", c.text, errs, c.want)
		}
	}
	_, errs := shop.Read("shop.yaml", "limits:\n  lip-height: x\n  flank-wear: y\n")
	if len(errs) != 2 {
		t.Errorf("%d errors, want both: %v", len(errs), errs)
	}
}

func FuzzRead(f *testing.F) {
	yard, err := os.ReadFile("../../../testdata/shop.yaml")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(string(yard))
	f.Add("limits:\n  chisel-angle: [120, 130]\n")
	f.Add("materials:\n  a: {like: brass, speed: '10,20'}\n")
	f.Fuzz(func(t *testing.T, text string) {
		s, errs := shop.Read("f", text)
		if (s == nil) != (len(errs) > 0) {
			t.Fatalf("a shop and errors, or neither: %v %v", s, errs)
		}
	})
}

func pointLimit(d *drill.Drill) handbook.Band {
	r := judge.Compute(d)
	return *r.Limit(judge.PointAngleLimit)
}
