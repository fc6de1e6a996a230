package crib

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/command/point"
	"evenlip/internal/command/regrind"
	"evenlip/internal/testkit"
)

// --check of inspect, of regrind and of a crib's plan say one thing of one drill: it
// passes where it is fit, and there is then nothing to do with a crib of it.
func TestChecksAgreeOnOneDrill(t *testing.T) {
	testkit.Property(t, "--check of inspect, regrind and crib plan agree on one drill", func(t *rapid.T) {
		text := "version: 1\ndrills:\n  - id: A1\n"
		add := func(often int, name, format string, low, high float64) {
			if rapid.IntRange(0, often).Draw(t, name+" read") > 0 {
				text += fmt.Sprintf("    "+name+": "+format+"\n", rapid.Float64Range(low, high).Draw(t, name))
			}
		}
		add(20, "size", "%.2fmm", 11, 13)
		add(20, "web", "%.3fmm", 1.6, 2.5)
		add(20, "chisel-angle", "%.1f", 118, 137)
		add(20, "lip-height", "%.3fmm", -0.12, 0.12)
		angle := rapid.Float64Range(58, 60)
		if rapid.IntRange(0, 20).Draw(t, "lip-angle read") > 0 {
			text += fmt.Sprintf("    lip-angle: [%.2f, %.2f]\n", angle.Draw(t, "lip 1"), angle.Draw(t, "lip 2"))
		}
		add(20, "clearance", "%.1f", 7, 17)
		add(1, "flank-wear", "%.3fmm", 0, 0.4)
		add(1, "flute", "%.1fmm", 20, 200)
		add(1, "depth", "%.1fmm", 5, 50)
		if rapid.IntRange(0, 9).Draw(t, "cracked") == 0 {
			text += "    cracked: true\n"
		}
		c, errs := Read("crib.yaml", []byte(text), nil)
		if len(errs) > 0 {
			t.Skip("no such drill")
		}
		d := c.Drills[0].Readings
		inspect, regrind := point.Inspect.Sheet(d, false), regrind.Command.Sheet(d, false)
		day := c.Day()
		idle := day.Idle()
		fit := inspect.Verdict.Word == "fit"
		if inspect.Outside() == fit || regrind.Outside() == fit || idle != fit {
			t.Fatalf("%q: inspect fails %v, regrind fails %v, a crib of it is idle %v\n%s", inspect.Verdict.Word, inspect.Outside(), regrind.Outside(), idle, text)
		}
	})
}
