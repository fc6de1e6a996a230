package crib

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
)

const steady = "version: 1\ndrills:\n  - id: a\n    size: 12mm\n    web: 2mm\n    chisel-angle: 125\n    flute: 70mm\n    length: 140mm\n    cracked: no\n    history:\n      - {date: 2026-01-02, what: grind}\n"

func with(what What, readings map[drill.Reading]string) Change {
	ch := Change{Date: "2026-11-25", What: what, Readings: readings}
	if what == Grind {
		ch.Stock = "1mm"
	}
	return ch
}

type given = map[drill.Reading]string

// A reading that does not follow from the drill is refused, with a way out, and
// as a correction it stands.
func TestSlips(t *testing.T) {
	for _, c := range []struct {
		what     What
		readings given
		want     string // "" where it is taken
	}{
		{Readings, given{drill.Flute: "71mm"}, ""},
		{Readings, given{drill.Flute: "71.1mm"}, "--flute: 71.1mm cannot be: it was 70mm, and no drill grows longer"},
		{Readings, given{drill.Length: "1140mm"}, "--length: 1140mm cannot be: it was 140mm"},
		{Grind, given{drill.Flute: "75mm"}, "--flute: 75mm cannot be"},
		{Readings, given{drill.Web: "1.81mm"}, ""},
		{Readings, given{drill.Web: "1.79mm"}, "--web: 1.79mm cannot be: it was 2mm, and no web grows thinner"},
		{Readings, given{drill.Web: "2.19mm"}, ""},
		{Readings, given{drill.Web: "2.21mm"}, "--web: 2.21mm cannot be: it was 2mm, and a web grows by little"},
		{Readings, given{drill.Web: "2.5mm", drill.Flute: "65mm"}, ""}, // it was ground, and nobody recorded it
		{Readings, given{drill.Web: "2.8mm", drill.Flute: "65mm"}, "--web: 2.8mm cannot be"},
		{Grind, given{drill.Web: "2.29mm"}, ""},
		{Grind, given{drill.Web: "2.31mm"}, "--web: 2.31mm cannot be"},
		{Grind, given{drill.Web: "0.2mm"}, "--web: 0.2mm cannot be"},
		{Thinning, given{drill.Web: "1.5mm"}, ""},
		{Thinning, given{drill.Web: "2mm"}, "--web: 2mm cannot be: it was 2mm before, and thinning leaves less"},
		{Thinning, given{drill.ChiselLength: "2.4mm"}, ""},
		{Thinning, given{drill.ChiselLength: "2.5mm"}, "--chisel-length: 2.5mm cannot be: it was 2.442mm before, and thinning leaves less"},
		{Readings, given{drill.Cracked: "yes"}, ""},
		{Readings, given{drill.FlankWear: "0.1mm", drill.LipAngle: "50,40"}, ""},
	} {
		_, _, err := Rewrite("crib.yaml", []byte(steady), "a", with(c.what, c.readings), nil)
		var r *fault.Fault
		switch {
		case c.want == "" && err != nil:
			t.Errorf("%s %v: %v", c.what, c.readings, err)
		case c.want == "":
			continue
		case !errors.As(err, &r) || !strings.HasPrefix(r.Text, c.want) || !strings.Contains(r.Hint, "--correction"):
			t.Errorf("%s %v: %v, not %s", c.what, c.readings, err, c.want)
		}
		ch := with(Correction, c.readings)
		d := find(t, read(t, rewritten(t, steady, "a", ch)), "a")
		for r, text := range c.readings {
			e := d.History[1]
			was := find(t, read(t, steady), "a").Readings.Written(r)
			told := was == "" || was == text || slices.Contains(e.Before, Was{r, was})
			if d.Readings.Written(r) != text || e.What != Correction || !told {
				t.Errorf("corrected %s: %q, %+v", r, d.Readings.Written(r), e)
			}
		}
	}
}

// What is under a thinning nobody has measured: the web read after the next
// grind may be any.
func TestWebUnderAThinning(t *testing.T) {
	thin := rewritten(t, steady, "a", with(Thinning, given{drill.Web: "1mm"}))
	d := find(t, read(t, rewritten(t, thin, "a", with(Grind, given{drill.Web: "2.2mm"}))), "a")
	if d.Readings.Written(drill.Web) != "2.2mm" {
		t.Errorf("%q", d.Readings.Written(drill.Web))
	}
}

// A crack never heals, unless it never was one.
func TestCracksStay(t *testing.T) {
	cracked := rewritten(t, steady, "a", with(Readings, given{drill.Cracked: "yes"}))
	healed := given{drill.Cracked: "no"}
	if _, _, err := Rewrite("crib.yaml", []byte(cracked), "a", with(Readings, healed), nil); err == nil || !strings.Contains(err.Error(), "no crack heals") {
		t.Errorf("%v", err)
	}
	if d := find(t, read(t, rewritten(t, cracked, "a", with(Correction, healed))), "a"); d.Readings.Has(drill.Cracked) {
		t.Error("the correction was not taken")
	}
}

// The history goes forward and ends today, give or take a day for whoever lives
// where it is tomorrow.
func TestDays(t *testing.T) {
	now := time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)
	for date, want := range map[string]string{
		"2026-01-01": `--date: 2026-01-01 is before the last entry of "a", 2026-01-02`, "2026-01-02": "", "2026-11-25": "", "2026-11-26": "",
		"2026-11-27": "--date: 2026-11-27 is still to come", "2062-11-25": "--date: 2062-11-25 is still to come",
	} {
		for _, what := range []What{Readings, Correction} {
			ch := with(what, given{drill.Flute: "69mm"})
			ch.Date, ch.Today = date, now
			_, _, err := Rewrite("crib.yaml", []byte(steady), "a", ch, nil)
			var r *fault.Fault
			if want == "" && err != nil || want != "" && (!errors.As(err, &r) || r.Text != want || r.Hint == "") {
				t.Errorf("%s: %v", date, err)
			}
		}
	}
}

// Honest readings of one drill, whose web grows by a taper as drills have it and
// is read to a twentieth, are never refused.
func TestHonestReadingsAreTaken(t *testing.T) {
	testkit.Property(t, "honest readings of one drill are never refused", func(rt *rapid.T) {
		taper := rapid.Float64Range(0, 0.04).Draw(rt, "taper")
		text, web, flute := steady, 2.0, 70.0
		for range rapid.IntRange(1, 6).Draw(rt, "grinds") {
			stock := rapid.Float64Range(0.1, 3).Draw(rt, "stock")
			web, flute = web+taper*stock, flute-stock
			m := mover{d: &Drill{Readings: new(drill.Drill)}}
			read := m.written(drill.Web, web*rapid.Float64Range(0.955, 1.045).Draw(rt, "scatter"))
			ch := with(rapid.SampledFrom([]What{Grind, Readings}).Draw(rt, "what"), given{drill.Web: read, drill.Flute: m.written(drill.Flute, flute+rapid.Float64Range(-0.4, 0.4).Draw(rt, "rule"))})
			if ch.What == Grind {
				ch.Stock = m.written(drill.Flute, stock)
			}
			_, next, err := Rewrite("crib.yaml", []byte(text), "a", ch, nil)
			if err != nil {
				rt.Fatal(err)
			}
			text = string(next)
		}
	})
}

// A grind of more than a quarter of the diameter is written and remarked on.
func TestMuchStock(t *testing.T) {
	for stock, want := range map[string]bool{"3mm": false, "3.1mm": true} {
		out, _, err := Rewrite("crib.yaml", []byte(steady), "a", ground(stock), nil)
		if err != nil {
			t.Fatal(err)
		}
		told := false
		for _, f := range out.Sheet("crib.yaml", false, quantity.Gauges{}).Findings {
			told = told || f.Code == "much-stock" && f.Severity == sheet.Warn
		}
		if told != want {
			t.Errorf("%s: told %v", stock, told)
		}
	}
}
