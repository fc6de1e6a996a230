package judge_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit"
)

// rounding is what a conversion and a few steps of arithmetic may cost.
const rounding = 1e-9

// The same drill read in inches: every length is divided by 25.4, and only the
// units change.
func TestInchesAndMillimetresAgree(t *testing.T) {
	testkit.Property(t, "a drill read in inches and the same in millimetres give one result", func(t *rapid.T) {
		metric := draw(t)
		inches := readings{}
		for name, text := range metric {
			inches[name] = inInches(text)
		}
		a, b := metric.Drill(t), inches.Drill(t)
		if _, sized := a.Get(drill.Size); sized && (a.System() != quantity.Metric || b.System() != quantity.Inch) {
			t.Fatalf("systems %v and %v", a.System(), b.System())
		}
		same(t, inMetric(judge.Compute(a)), inMetric(judge.Compute(b)), rounding)
	})
}

// inMetric is the result as printed in millimetres.
func inMetric(r judge.Result) judge.Result {
	r.Drill.System = quantity.Metric
	return r
}

// At a limit's very edge the two systems agree as well.
func TestInchesAndMillimetresAgreeAtTheEdges(t *testing.T) {
	for _, line := range []string{
		"size 10mm; lip-height 0.05mm", "size 2mm; lip-height 0.05mm", "size 12.7mm; web 4.445mm", "size 25.4mm; lip-height 0.127mm",
		"size 3.175mm; clearance 16", "size 6.35mm", "size 12.7mm; depth 25.4mm; flute 38.1mm", "size 12mm; margin-wear 12mm", "flank-wear 0.25mm",
		"size 50.8mm; lip-angle 59,59; lip-height 0.1mm", "size 9.9mm; web 2.2275mm; chisel-angle 90",
	} {
		inches := readings{}
		for name, text := range of(line) {
			inches[name] = inInches(text)
		}
		same(t, inMetric(compute(t, line)), inMetric(judge.Compute(inches.Drill(t))), rounding)
	}
}

func inInches(text string) string {
	var out []string
	for _, part := range strings.Split(text, ",") {
		if v, _, _, err := (quantity.Reader{Kind: quantity.Length, Bare: quantity.Metric, Signed: true}).Pair(part); strings.HasSuffix(part, "mm") && err == nil {
			part = exact(v.V/25.4) + "in"
		}
		out = append(out, part)
	}
	return strings.Join(out, ",")
}

// Lip 1 for lip 2: the answer is the mirror image.
func TestSwappedLipsSwapTheAnswer(t *testing.T) {
	testkit.Property(t, "lip 1 for lip 2 gives the mirror image", func(t *rapid.T) {
		given := draw(t)
		other := readings{}
		for name, text := range given {
			if a, b, two := strings.Cut(text, ","); two {
				text = b + "," + a
			}
			other[name] = text
		}
		a, b := judge.Compute(given.Drill(t)), judge.Compute(other.Drill(t))
		same(t, swapped(a), b, rounding)
		mirrored(t, &a, &b)
		if want := [...]int{0, 2, 1}[a.Lips.High()]; b.Lips.High() != want {
			t.Errorf("the high lip is %d, want %d", b.Lips.High(), want)
		}
	})
}

// mirrored wants of b what a says of the other lip.
func mirrored(t *rapid.T, a, b *judge.Result) {
	share1, share2 := a.Shares()
	other1, other2 := b.Shares()
	if !math.IsNaN(share1) || !math.IsNaN(other2) {
		within(t, "share of lip 1", other2, share1, rounding)
		within(t, "share of lip 2", other1, share2, rounding)
	}
	one, planned := a.Evening()
	two, also := b.Evening()
	if planned != also {
		t.Fatalf("one way there is a plan: %v, the other: %v", planned, also)
	}
	within(t, "lip 1, inner end", two.Stock2Inner, one.Stock1Inner, rounding)
	within(t, "lip 1, corner", two.Stock2Outer, one.Stock1Outer, rounding)
	within(t, "lip 2, inner end", two.Stock1Inner, one.Stock2Inner, rounding)
	within(t, "lip 2, corner", two.Stock1Outer, one.Stock2Outer, rounding)
}

func swapped(r judge.Result) judge.Result {
	p, c, l := &r.Point, &r.Clearance, &r.Lips
	p.K1, p.K2, p.Difference = p.K2, p.K1, -p.Difference
	c.Lip1, c.Lip2, c.Drop1, c.Drop2 = c.Lip2, c.Lip1, c.Drop2, c.Drop1
	c.Flank1, c.Flank2 = c.Flank2, c.Flank1
	e := &l.Evened
	e.Line.Height0 -= l.Height // lip 2's corner is at no height
	e.Stock1Inner, e.Stock1Outer, e.Stock2Inner, e.Stock2Outer = e.Stock2Inner, e.Stock2Outer, e.Stock1Inner, e.Stock1Outer
	height := -l.Height
	if l.TakenLevel {
		height = 0
	}
	l.Line1, l.Line2 = point.LipThrough(l.Outer, height, p.K1), point.LipThrough(l.Outer, 0, p.K2)
	l.MidLip, l.OfClearance = -l.MidLip, -l.OfClearance
	if c.Along && (p.K1 != p.K2 || c.Lip1 != c.Lip2) {
		c.LeastLip, c.RubsLip = 3-c.LeastLip, 3-c.RubsLip
	}
	l.Height, l.Length, l.Offset, l.ByLengths = -l.Height, -l.Length, -l.Offset, -l.ByLengths
	l.Read1, l.Read2, l.Indicated1, l.Indicated2 = l.Read2, l.Read1, l.Indicated2, l.Indicated1
	h := &r.Held
	h[judge.Clearance1Limit].Value, h[judge.Clearance2Limit].Value = c.Lip1, c.Lip2
	h[judge.AngleDifferenceLimit].Value, h[judge.ClearanceDifferenceLimit].Value = -h[judge.AngleDifferenceLimit].Value, -h[judge.ClearanceDifferenceLimit].Value
	h[judge.LipHeightLimit].Value, h[judge.MidLipLimit].Value = l.Height, l.MidLip
	return r
}

// Take the plan's stock off both lips, read the drill again: nothing more is to
// come off, and the lips are even.
func TestTruedPointNeedsNothing(t *testing.T) {
	testkit.Property(t, "a point trued by its plan and read again is even and needs nothing", func(t *rapid.T) {
		given := drawWhole(t)
		d := given.Drill(t)
		first := judge.Compute(d)
		l := &first.Lips
		plan, ok := first.Evening()
		if !ok {
			t.Skip("lips of that length cannot be")
		}
		for _, stock := range []float64{plan.Stock1Inner, plan.Stock1Outer, plan.Stock2Inner, plan.Stock2Outer} {
			if !(stock >= 0) {
				t.Fatalf("metal put back on: %+v", plan)
			}
		}
		// The lips as they are left, from their heights at both ends.
		span := l.Outer - l.Inner
		k1 := math.Atan2(span, span/math.Tan(first.Point.K1)-plan.Stock1Inner+plan.Stock1Outer)
		k2 := math.Atan2(span, span/math.Tan(first.Point.K2)-plan.Stock2Inner+plan.Stock2Outer)
		height := l.Height - plan.Stock1Outer + plan.Stock2Outer
		again := *d
		again.Put(drill.LipAngle, k1, k2)
		again.Put(drill.LipHeight, height)
		again.Put(drill.Clearance, 12*deg)
		second := judge.Compute(&again)
		left, _ := second.Evening()
		within(t, "still to take", left.Most(), 0, 1e-6)
		within(t, "lips still differ in height", second.Lips.Height, 0, rounding)
		within(t, "lips still differ in angle", second.Point.Difference, 0, rounding)
		within(t, "oversize left", second.Oversize(), 0, 1e-7)
		within(t, "angle aimed at", second.Point.K(), first.Target(), rounding)
	})
}

// The plan is the least: at one end at least, one lip keeps all its metal.
func TestTruingIsTheLeast(t *testing.T) {
	testkit.Property(t, "a truing plan leaves one lip all its metal at one end", func(t *rapid.T) {
		r := judge.Compute(drawWhole(t).Drill(t))
		p, ok := r.Evening()
		if !ok {
			t.Skip("lips of that length cannot be")
		}
		within(t, "the smallest stock", min(p.Stock1Inner, p.Stock1Outer, p.Stock2Inner, p.Stock2Outer), 0, 1e-12)
	})
}

// Even lips at the angle wanted: what comes off is the height difference, off
// the higher lip only, alike at both ends.
func TestTruingEvenAngles(t *testing.T) {
	for _, height := range []float64{0.12, -0.12} {
		r := compute(t, "size 12mm; web 2mm; lip-angle 59,59; lip-height "+mm(height))
		p, _ := r.Evening()
		within(t, "lip 1 inner", p.Stock1Inner, max(0, height), 1e-12)
		within(t, "lip 1 outer", p.Stock1Outer, max(0, height), 1e-12)
		within(t, "lip 2 inner", p.Stock2Inner, max(0, -height), 1e-12)
		within(t, "lip 2 outer", p.Stock2Outer, max(0, -height), 1e-12)
	}
}

// What the lips are trued to: the angle asked for, else their own mean while it
// is within the limit, ends included, else what the material wants.
func TestTruingTarget(t *testing.T) {
	for line, want := range map[string]float64{
		"lip-angle 59.5,58": 59, "lip-angle 61,60": 59, "lip-angle 57,58": 59, "lip-angle 61,60.1": 59, "lip-angle 63,63": 63, "lip-angle 66,67": 67.5, "lip-angle 50,50": 59,
		"lip-angle 59.5,58; point-angle 118": 59, "lip-angle 59.5,58; point-angle 120": 60, "lip-angle 59,59; material steel-400": 59, "lip-angle 57.4,57.4; material steel-400": 59, "lip-angle 56,56; material steel-400": 67.5,
	} {
		r := compute(t, "size 12mm; web 2mm; lip-height 0.1mm; "+line)
		within(t, line, r.Target()/deg, want, 1e-9)
	}
}

// Off in two grinds is off in one.
func TestWebGrowthComposes(t *testing.T) {
	testkit.Property(t, "the web after two grinds is that after one of their sum", func(t *rapid.T) {
		d := drawWhole(t).Drill(t)
		a, b := rapid.Float64Range(0, 20).Draw(t, "first"), rapid.Float64Range(0, 20).Draw(t, "then")
		first, then, once := *d, *d, *d
		first.Put(drill.Remove, a)
		once.Put(drill.Remove, a+b)
		firstGround := judge.Compute(&first)
		after := firstGround.Web
		then.Put(drill.Web, after.After)
		then.Put(drill.Remove, b)
		twice, at1 := judge.Compute(&then), judge.Compute(&once)
		got, want := twice.Web, at1.Web
		within(t, "web after", got.After, want.After, rounding)
		if !d.Has(drill.ChiselAngle) {
			return
		}
		within(t, "chisel after", got.ChiselAfter, want.ChiselAfter, 1e-8)
		if !math.IsNaN(at1.ThrustRatio()) { // there is none once the chisel is as long as the drill is wide
			within(t, "thrust ratio", twice.ThrustRatio()*firstGround.ThrustRatio(), at1.ThrustRatio(), 1e-8)
		}
	})
}

// Web and angle give the length; web and length give the angle back; length and
// angle give the web back.
func TestChiselRoundTrip(t *testing.T) {
	testkit.Property(t, "of web, chisel angle and chisel length any two give the third back", func(t *rapid.T) {
		web := rapid.Float64Range(0.5, 4).Draw(t, "web")
		angle := rapid.Float64Range(92, 150).Draw(t, "angle") * deg
		var d drill.Drill
		d.Put(drill.Size, 12)
		d.Put(drill.Web, web)
		d.Put(drill.ChiselAngle, angle)
		made := judge.Compute(&d).Chisel
		within(t, "both ways of quoting", made.Angle+made.Acute, math.Pi, 1e-12)
		d.Drop(drill.ChiselAngle)
		d.Put(drill.ChiselLength, made.Length)
		within(t, "angle back", judge.Compute(&d).Chisel.Angle, angle, 1e-9)
		d.Drop(drill.Web)
		d.Put(drill.ChiselAngle, made.Acute)
		within(t, "web back", judge.Compute(&d).Chisel.Web, web, 1e-9)
	})
}

// What is left while cutting, and the feed angle, make the clearance of the lip
// that has less; nowhere on the lip is less left than the least; at the feed
// limit nothing is left.
func TestClearanceAddsUp(t *testing.T) {
	testkit.Property(t, "working clearance and feed angle make the clearance, and at the feed limit none is left", func(t *rapid.T) {
		d := drawWhole(t).Drill(t)
		c := judge.Compute(d).Clearance
		within(t, "working + feed angle", c.Working+c.FeedAngle, min(c.Lip1, c.Lip2), 1e-12)
		if !c.Along {
			t.Fatal("the lip was not looked at")
		}
		if c.Least > c.Working+1e-12 {
			t.Fatalf("the least %v is more than the corner's %v", c.Least, c.Working)
		}
		between(t, "where", c.LeastAt, 0, 1+1e-12)
		if c.FeedLimit <= 0 {
			return
		}
		d.Put(drill.Feed, c.FeedLimit)
		within(t, "left at the feed limit", judge.Compute(d).Clearance.Least, 0, 1e-6)
	})
}

// The drop of the heel gives the clearance that makes it.
func TestHeelDropRoundTrip(t *testing.T) {
	testkit.Property(t, "the drop of the heel gives the clearance that makes it", func(t *rapid.T) {
		size, turn := rapid.Float64Range(1, 50).Draw(t, "size"), rapid.Float64Range(5, 90).Draw(t, "turn")*deg
		c1, c2 := rapid.Float64Range(-5, 30).Draw(t, "lip 1")*deg, rapid.Float64Range(-5, 30).Draw(t, "lip 2")*deg
		var d drill.Drill
		d.Put(drill.Size, size)
		d.Put(drill.HeelTurn, turn)
		d.Put(drill.HeelDrop, size/2*turn*math.Tan(c1), size/2*turn*math.Tan(c2))
		c := judge.Compute(&d).Clearance
		within(t, "lip 1", c.Lip1, c1, 1e-12)
		within(t, "lip 2", c.Lip2, c2, 1e-12)
		if !c.FromDrop || !c.Both {
			t.Errorf("from the drop %v, both %v", c.FromDrop, c.Both)
		}
	})
}

// A drill twice as large in every length is the same drill seen closer: angles
// and ratios stay, lengths double.
func TestScale(t *testing.T) {
	testkit.Property(t, "a drill twice as large in every length keeps its angles and ratios and doubles its lengths", func(t *rapid.T) {
		d := drawWhole(t).Drill(t)
		twice := *d
		for _, r := range drill.All() {
			if k := r.Spec().Kind; k != quantity.Length && k != quantity.Size && k != quantity.Feed {
				continue
			}
			if a, b, n := d.Pair(r); n == 1 {
				twice.Put(r, 2*a)
			} else if n == 2 {
				twice.Put(r, 2*a, 2*b)
			}
		}
		a, b := judge.Compute(d), judge.Compute(&twice)
		if a.Web.BodyTaken || b.Web.BodyTaken {
			t.Skip("a new drill's web does not grow with its diameter")
		}
		within(t, "point length", b.Point.Length, 2*a.Point.Length, 1e-9*a.Drill.D)
		within(t, "offset", b.Lips.Offset, 2*a.Lips.Offset, 1e-9*a.Drill.D)
		before, _ := a.Evening()
		after, _ := b.Evening()
		within(t, "stock", after.Most(), 2*before.Most(), 1e-9*a.Drill.D)
		within(t, "chisel", b.Chisel.Length, 2*a.Chisel.Length, 1e-9*a.Drill.D)
		within(t, "web after", b.Web.After, 2*a.Web.After, 1e-9*a.Drill.D)
		within(t, "ratio", b.Chisel.Ratio, a.Chisel.Ratio, 1e-12)
		share, _ := a.Shares()
		same, _ := b.Shares()
		within(t, "share", same, share, 1e-12)
		within(t, "least clearance", b.Clearance.Least, a.Clearance.Least, 1e-9)
		within(t, "feed limit", b.Clearance.FeedLimit, 2*a.Clearance.FeedLimit, 1e-9*a.Drill.D)
	})
}

// Lengths of the lips and the indicator tell the same height of the same point.
func TestLengthsAndIndicatorAgree(t *testing.T) {
	testkit.Property(t, "lip lengths and the indicator tell one height of one point", func(t *rapid.T) {
		given := drawWhole(t).With(of("lip-height")).With(of("lip-length 1,1"))
		size := given.Drill(t)
		d0, _ := size.Get(drill.Size)
		given[drill.LipLength] = exact(0.44*d0) + "mm," + exact(rapid.Float64Range(0.42, 0.46).Draw(t, "lip 2")*d0) + "mm"
		d := given.Drill(t)
		byLengths := judge.Compute(d)
		indicated := *d
		indicated.Put(drill.LipHeight, byLengths.Lips.Height)
		again := judge.Compute(&indicated)
		if byLengths.Lips.From != judge.LipsFromLengths || again.Lips.From != judge.LipsIndicated {
			t.Fatalf("from %v and %v", byLengths.Lips.From, again.Lips.From)
		}
		within(t, "offset", again.Lips.Offset, byLengths.Lips.Offset, 1e-9*d0)
		// Seen from the end the shorter lip is the one the point is off toward.
		seen := byLengths.Lips.Read2*math.Sin(byLengths.Point.K2) - byLengths.Lips.Read1*math.Sin(byLengths.Point.K1)
		within(t, "offset from the lengths", byLengths.Lips.Offset, seen/2, 1e-9*d0)
	})
}
