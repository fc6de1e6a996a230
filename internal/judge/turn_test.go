package judge_test

import (
	"math"
	"testing"

	commands "evenlip/internal/command/point"
	"evenlip/internal/point"
	"evenlip/internal/testkit/drilltest"
)

// Why a long turn is remarked on: of a cone point that is right at its corner a
// short one reads within two degrees or so, a long one does not.
func TestLongHeelTurnReadsHigh(t *testing.T) {
	const deg = math.Pi / 180
	c, err := point.Wanted{D: 12, Web: 1.8, HalfAngle: 59 * deg, Clearance: 12 * deg, SemiAngle: 30 * deg}.WithChisel(55 * deg)
	if err != nil {
		t.Fatal(err)
	}
	short, long := c.HeelClearance(6, 10*deg)/deg, c.HeelClearance(6, 30*deg)/deg
	if math.Abs(short-12) > 2 || long < 16 {
		t.Errorf("over 10° it reads %v, over 30° %v", short, long)
	}
}

// Where lips of one angle lie makes no difference to what comes off: the web
// taken is told only where the working shows it.
func TestWebOfEvenLips(t *testing.T) {
	for text, want := range map[string]bool{
		"size 12mm; lip-angle 59,59; lip-height 0.06mm":                  false,
		"size 12mm; lip-angle 60,58; lip-height 0.06mm":                  true,
		"size 12mm; lip-angle 60,60; point-angle 118; lip-height 0.06mm": true,
	} {
		if got := drilltest.Found(commands.Lips.Sheet(possible(t, of(text)), false), "lip-web-assumed"); got != want {
			t.Errorf("%s: told is %v", text, got)
		}
	}
}
