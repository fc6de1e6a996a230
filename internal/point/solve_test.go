package point

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

func TestSolve(t *testing.T) {
	for name, c := range map[string]struct {
		f            func(float64) float64
		lo, hi, want float64
		steps        int // bisection needs about 55
	}{
		"cosine":        {math.Cos, 0, 3, math.Pi / 2, 14},
		"rising":        {func(x float64) float64 { return x*x*x - 2 }, 0, 10, math.Cbrt(2), 22},
		"flat":          {func(x float64) float64 { return math.Pow(x-1, 9) }, 0, 10, 1, 57},
		"steep":         {func(x float64) float64 { return math.Tanh(1e6 * (x - 0.3)) }, 0, 1, 0.3, 30},
		"jump":          {func(x float64) float64 { return math.Copysign(1, x-0.7) }, 0, 1, 0.7, 57},
		"zero below":    {func(x float64) float64 { return x }, 0, 1, 0, 57},
		"zero above":    {func(x float64) float64 { return x - 1 }, 0, 1, 1, 57},
		"through zero":  {func(x float64) float64 { return math.Sinh(x) }, -1, 2, 0, 14},
		"one-sided":     {func(x float64) float64 { return math.Expm1(40*x) - 1e-3 }, -1, 1, math.Log1p(1e-3) / 40, 57},
		"near nothing":  {func(x float64) float64 { return x - 1e-310 }, 0, 4e-310, 1e-310, 57},
		"wide as it is": {func(x float64) float64 { return math.Log(x) }, 1e-300, 1e300, 1, 57},
	} {
		calls := 0
		got := solve(func(x float64) float64 { calls++; return c.f(x) }, c.lo, c.hi)
		if tol := 1e-14 + 3e-16*(math.Abs(c.lo)+math.Abs(c.hi)); math.Abs(got-c.want) > tol {
			t.Errorf("%s: %g, want %g", name, got, c.want)
		}
		if calls > c.steps {
			t.Errorf("%s: %d steps, want no more than %d", name, calls, c.steps)
		}
	}
	for name, f := range map[string]func(float64) float64{
		"no change of sign": func(float64) float64 { return 1 },
		"NaN at an end":     func(x float64) float64 { return math.Sqrt(x - 1) },
		"NaN on the way":    func(x float64) float64 { return math.Copysign(1, x-1) * math.Sqrt(math.Abs(x-1)-0.9) },
	} {
		if got := solve(f, 0, 2); !math.IsNaN(got) {
			t.Errorf("%s: %g, want NaN", name, got)
		}
	}
}

func TestCubicRoots(t *testing.T) {
	testkit.Property(t, "a cubic's roots come back", func(t *rapid.T) {
		place := rapid.Float64Range(-5, 5)
		a, b, c := place.Draw(t, "a"), place.Draw(t, "b"), place.Draw(t, "c")
		lead := rapid.SampledFrom([]float64{-2, 0, 1}).Draw(t, "lead")
		p := cubic{-a * b * c, a*b + b*c + a*c, -(a + b + c), 1}
		if lead == 0 {
			p = cubic{a * b, -(a + b), 1, 0}
			c = a
		}
		roots, n := p.rootsIn(-6, 6)
		if gap := math.Min(math.Abs(a-b), math.Min(math.Abs(b-c)+step(lead), math.Abs(a-c)+step(lead))); gap < 1e-2 {
			return
		}
		want := 3
		if lead == 0 {
			want = 2
		}
		if n != want {
			t.Fatalf("%d roots of %v, want %d", n, p, want)
		}
		for _, r := range roots[:n] {
			if d := math.Min(math.Abs(r-a), math.Min(math.Abs(r-b), math.Abs(r-c))); d > 1e-9 {
				t.Fatalf("%g is no root of %v", r, p)
			}
		}
	})
	if _, n := (cubic{1, 0, 0, 0}).rootsIn(-1, 1); n != 0 {
		t.Error("a constant has a root")
	}
	if _, n := (cubic{1, 1, 0, 1}).rootsIn(0, 1); n != 0 {
		t.Error("a root outside the bracket is reported")
	}
}

// step keeps the two roots of a quadratic apart from the third it lacks.
func step(lead float64) float64 {
	if lead == 0 {
		return 1
	}
	return 0
}
