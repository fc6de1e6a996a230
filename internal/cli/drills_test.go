package cli_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"sync"

	"pgregory.net/rapid"

	"evenlip/internal/cli"
)

// explained are the commands that compute from readings, each with a reading
// without which it has nothing to do.
var explained = func() map[string]string {
	out := map[string]string{}
	for _, command := range cli.Calculations() {
		out[command] = "size"
	}
	out["wheel"], out["cone"] = "wheel", "semi-angle"
	return out
}()

// takes lists the readings that each command takes, as its help tells.
var takes = sync.OnceValue(func() map[string][]string {
	out := map[string][]string{}
	for command := range explained {
		_, help, _ := strings.Cut(run("", command, "--help").out, "\nFlags:\n")
		help, _, _ = strings.Cut(help, "\n\n")
		for _, m := range valueFlag.FindAllStringSubmatch(help, -1) {
			out[command] = append(out[command], m[1])
		}
	}
	return out
})

var valueFlag = regexp.MustCompile(`(?m)^ +--([a-z-]+) value`)

// readings is a drill as typed.
type readings map[string]string

func (r readings) args(command string) []string {
	args := []string{command}
	for _, name := range takes()[command] {
		if text, ok := r[name]; ok {
			args = append(args, "--"+name, text)
		}
	}
	return args
}

// bench are drills as they come to a bench, and wheels and fixtures.
var bench = map[string]readings{
	"metric": {"size": "12mm", "web": "2.1mm", "chisel-angle": "126", "lip-angle": "59,59", "lip-height": "0.12mm",
		"clearance": "11", "remove": "0.8mm", "feed": "0.2mm", "flank-wear": "0.2mm", "corner-wear": "0.4mm", "margin-wear": "1mm", "flute": "78mm", "depth": "30mm"},
	"inches":             {"size": "1/2", "web": "0.085", "chisel-length": "0.104", "lip-angle": "59", "lip-height": "0.001", "clearance": "12", "remove": "0.03", "feed": "0.006"},
	"acute chisel":       {"size": "12mm", "web": "2.1mm", "chisel-angle": "54", "remove": "1mm"},
	"web of the chisel":  {"size": "12mm", "chisel-length": "2.6mm", "chisel-angle": "126", "remove": "1mm", "clearance": "11", "lip-angle": "59"},
	"uneven lips":        {"size": "20mm", "web": "3mm", "chisel-angle": "125", "lip-angle": "62,57", "lip-height": "-0.21mm,0.04mm", "clearance": "8,13"},
	"heel drop":          {"size": "12mm", "web": "2mm", "chisel-angle": "125", "lip-angle": "59", "heel-drop": "0.64mm,0.55mm", "heel-turn": "30", "feed": "0.2mm"},
	"one that can wait":  {"size": "12mm", "lip-angle": "59,59", "lip-height": "0.03mm", "clearance": "12", "web": "2mm", "chisel-angle": "125", "flank-wear": "0.2mm"},
	"heel drop, inches":  {"size": "#7", "heel-drop": "0.011in", "heel-turn": "30"},
	"from lip lengths":   {"size": "1/2", "lip-angle": "60,58", "lip-length": "0.245,0.25", "web": "0.08"},
	"two webs":           {"size": "12mm", "web": "1.8mm", "second-web": "2.2mm", "second-web-at": "25mm", "chisel-angle": "125", "remove": "6mm"},
	"taper given":        {"size": "12mm", "web": "1.8mm", "web-taper": "0.018", "chisel-angle": "125", "remove": "6mm", "feed": "0.008in"},
	"other point wanted": {"size": "10mm", "material": "steel-400", "point-angle": "135", "lip-angle": "59,60", "lip-height": "0.05mm"},
	"negative clearance": {"size": "10mm", "web": "1.5mm", "chisel-angle": "130", "lip-angle": "59", "clearance": "-2"},
	"rubbing feed":       {"size": "3mm", "web": "0.45mm", "chisel-angle": "130", "lip-angle": "59", "clearance": "2", "feed": "0.5mm"},
	"all three":          {"size": "12mm", "web": "2mm", "chisel-angle": "126", "chisel-length": "3mm", "remove": "1mm"},
	"a small thick web":  {"size": "1mm", "chisel-length": "0.69mm"},
	"size only":          {"size": "F"},
	"at work": {"size": "12mm", "material": "steel-300", "web": "2mm", "chisel-angle": "125", "lip-angle": "59", "clearance": "11", "feed": "0.2mm",
		"rpm": "600", "depth": "50mm", "helix": "30", "pilot": "4mm", "wear-factor": "1.3", "efficiency": "0.8", "shank-diameter": "10mm", "to-web": "1.6mm"},
	"at work, inches":      {"size": "1/2", "material": "cast-iron-150", "web": "0.08", "chisel-length": "0.1", "feed": "0.008", "rpm": "700", "depth": "2", "to-chisel-ratio": "0.12"},
	"a wheel":              {"wheel": "200mm", "worn-to": "160mm", "wheel-rpm": "2850", "marked-speed": "35m/s", "rest-gap": "2mm", "tongue-gap": "5mm"},
	"a wheel, inches":      {"wheel": "8in", "worn-to": "6-1/2in", "wheel-rpm": "3450", "marked-rpm": "3600", "rest-gap": "1/8", "tongue-gap": "1/4"},
	"a fixture, to be set": {"size": "10mm", "web": "1.5mm", "point-angle": "118", "clearance": "12", "chisel-angle": "126.5", "semi-angle": "30"},
	"a fixture, half set":  {"size": "10mm", "web": "1.5mm", "point-angle": "118", "clearance": "12", "semi-angle": "30", "vertex": "4.808mm"},
	"a fixture, as set":    {"size": "10mm", "web": "1.5mm", "semi-angle": "30", "axis-angle": "29.28", "axis-offset": "1.264mm", "vertex": "4.808mm"},
}

// drawer draws the readings of a drill that could lie on one, some missing.
type drawer struct {
	t    *rapid.T
	inch bool
	r    readings
}

func (b *drawer) number(name string, low, high float64) float64 {
	return rapid.Float64Range(low, high).Draw(b.t, name)
}

func (b *drawer) length(mm float64) string {
	if b.inch {
		return fmt.Sprintf("%.4fin", mm/25.4)
	}
	return fmt.Sprintf("%.3fmm", mm)
}

// set writes a reading down, or leaves it out.
func (b *drawer) set(name, text string) {
	if rapid.Bool().Draw(b.t, name+" read") {
		b.r[name] = text
	}
}

// setLength writes a length down that is drawn as a part of the whole.
func (b *drawer) setLength(name string, low, high, whole float64) {
	b.set(name, b.length(b.number(name, low, high)*whole))
}

// setNumber writes a number down with so many decimals.
func (b *drawer) setNumber(name string, low, high float64, decimals int) {
	b.set(name, fmt.Sprintf("%.*f", decimals, b.number(name, low, high)))
}

func anyDrill(t *rapid.T) readings {
	b := &drawer{t: t, inch: rapid.Bool().Draw(t, "inch"), r: readings{}}
	d := b.number("size", 1, 60)
	b.r["size"] = b.length(d)
	b.set("material", rapid.SampledFrom([]string{"steel-200", "steel-400", "stainless-316", "aluminium", "cast-iron-150", "plastics", "titanium", "copper"}).Draw(t, "material"))
	b.lips(d, b.chisel(d))
	b.wear(d)
	b.work(d)
	return b.r
}

// chisel draws the web and the chisel edge, which hang on each other. It returns how
// far they leave a lip to reach, seen from the end.
func (b *drawer) chisel(d float64) float64 {
	web := b.number("web", 0.08, 0.34) * d
	acute := b.number("acute", 30, 80)
	b.set("web", b.length(web))
	angle := acute
	if rapid.Bool().Draw(b.t, "obtuse") {
		angle = 180 - acute
	}
	b.set("chisel-angle", fmt.Sprintf("%.2f", angle))
	b.set("chisel-length", b.length(math.Min(web/math.Sin(acute*math.Pi/180)+0.01, 0.9*d)))
	b.setLength("second-web", 1.05, 1.5, web)
	b.setLength("second-web-at", 10, 50, 1)
	b.setNumber("web-taper", 0, 0.05, 4)
	return math.Sqrt(d*d-web*web)/2 - web/2/math.Tan(acute*math.Pi/180)
}

// lips draws what is read off the lips and behind them.
func (b *drawer) lips(d, reach float64) {
	k1, k2 := b.number("lip angle 1", 45, 75), b.number("lip angle 2", 45, 75)
	if rapid.Bool().Draw(b.t, "alike") {
		k2 = k1
	}
	b.set("lip-angle", fmt.Sprintf("%.2f,%.2f", k1, k2))
	b.setLength("lip-height", -0.02, 0.02, d)
	lip := func(name string, k float64) string {
		return b.length(b.number(name, 0.9, 1) * reach / math.Sin(k*math.Pi/180))
	}
	b.set("lip-length", lip("lip length 1", k1)+","+lip("lip length 2", k2))
	b.set("clearance", fmt.Sprintf("%.2f,%.2f", b.number("clearance 1", -3, 30), b.number("clearance 2", -3, 30)))
	b.setLength("heel-drop", 0.001, 0.06, d)
	b.setNumber("heel-turn", 5, 60, 1)
	b.setNumber("point-angle", 90, 140, 1)
	b.setNumber("helix", 5, 45, 1)
}

// wear draws what is worn, what is to come off and what is left.
func (b *drawer) wear(d float64) {
	b.setLength("remove", 0, 0.5, d)
	b.set("flute", b.length(d*4+50))
	b.set("length", b.length(d*8+100))
	b.setLength("margin-wear", 0, 1, d)
	b.setLength("flank-wear", 0, 0.05, d)
	b.setLength("corner-wear", 0, 0.2, d)
	b.setLength("lip-chip", 0, 0.2, d)
	b.setLength("clean-up", 0, 0.2, 1)
	b.setLength("every", 0.3, 2, 1)
	b.setNumber("back-taper", 0, 0.001, 5)
	b.set("least-diameter", b.length(0.999*d))
}

// work draws what the drill is to do.
func (b *drawer) work(d float64) {
	b.set("feed", b.length(b.number("feed", 0.005, 0.03)*d+0.01))
	b.setLength("depth", 0.5, 6, d)
	b.setNumber("rpm", 20, 5000, 0)
	b.setNumber("wear-factor", 1, 2, 2)
	b.setNumber("efficiency", 0.5, 1, 2)
	b.setLength("shank-diameter", 0.3, 1, d)
	b.setLength("pilot", 0.05, 0.7, d)
	b.setLength("to-web", 0.05, 0.3, d)
	b.setNumber("to-chisel-ratio", 0.06, 0.3, 3)
}
