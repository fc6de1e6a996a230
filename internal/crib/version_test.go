package crib

import (
	"fmt"
	"math"
	"os"
	"testing"

	"evenlip/internal/drill"
)

// The file of the first version says what it said. A later version of this program
// has to pass this as it stands.
func TestFirstVersionIsRead(t *testing.T) {
	data, err := os.ReadFile("testdata/version-1.yaml")
	if err != nil {
		t.Fatal(err)
	}
	c := read(t, string(data))
	if c.Name != "the long shelf" || len(c.Keep) != 2 || c.Keep[0].Count != 2 || c.Keep[1].Size.Echo() != "#7" || len(c.Drills) != 2 {
		t.Fatalf("%+v", c)
	}
	a, b := find(t, c, "A1"), find(t, c, "B1")
	if a.Series != "jobber" || a.Shank != "taper" || a.Note != "by hand" || a.Size() != 12 || a.Readings.Value(drill.Web) != 2 {
		t.Errorf("%+v", a)
	}
	if k1, k2, n := a.Readings.Pair(drill.LipAngle); n != 2 || math.Abs(k1-59*math.Pi/180) > 1e-12 || math.Abs(k2-58*math.Pi/180) > 1e-12 {
		t.Errorf("lips at %v and %v", k1, k2)
	}
	if math.Abs(b.Readings.Value(drill.Web)-0.762) > 1e-12 || b.Retired() != "2026-03-01" {
		t.Errorf("%v, %q", b.Readings.Value(drill.Web), b.Retired())
	}
	const want = `{2026-01-02 grind 0.5 chipped [{flute 80.5} {lip-chip 0.4}]}
{2026-02-03 thinning NaN  [{web 2.4}]}
{2026-02-04 readings NaN  [{flank-wear 0.2}]}
{2026-02-05 correction NaN  []}
`
	got := ""
	for _, e := range a.History {
		got += fmt.Sprintln(e)
	}
	if got != want {
		t.Errorf("%s\nnot\n%s", got, want)
	}
	if past := a.Readings.Past; past.Usual != 0.5 || past.Body != 2.4 {
		t.Errorf("%+v", past)
	}
}
