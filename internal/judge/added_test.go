package judge_test

import (
	"maps"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/testkit"
)

// tells are the readings that a reason's own figure or its limit rests on: one of them,
// added, may lift it. What drill it is, and for what work, every limit rests on.
var tells = map[judge.Reason][]drill.Reading{
	judge.MarginGone: {drill.Flute, drill.Depth}, // enough flute is cut back
	judge.PointOff:   {drill.PointAngle},
	// How high a lip stands half way along depends on where it begins; lip lengths tell of
	// heights once the clearances' part is off; and a point asked for may be a flatter one.
	judge.LipsUneven: {drill.LipHeight, drill.LipLength, drill.Web, drill.ChiselAngle, drill.ChiselLength, drill.Clearance, drill.HeelDrop, drill.HeelTurn, drill.PointAngle},
	// The corners are taken level until their heights are read.
	judge.AnglesUneven: {drill.LipHeight, drill.LipLength, drill.Web, drill.ChiselAngle, drill.ChiselLength},
	// A lip rubs first where it begins.
	judge.FlankRubs: {drill.Web, drill.ChiselAngle, drill.ChiselLength, drill.Feed},
	// How far unequal clearances put the chisel edge off goes by the web at the point, which
	// is not known of a thinned one until its edge was read whole.
	judge.ClearancesUneven: {drill.Web, drill.ChiselAngle, drill.ChiselLength},
	// Three chisel readings may tell of a thinned point, or contradict each other.
	judge.ChiselLong: {drill.Web, drill.ChiselAngle, drill.ChiselLength},
	judge.ChiselOff:  {drill.Web, drill.ChiselAngle, drill.ChiselLength},
}

// graver is the reason that stands in the place of another where it holds.
var graver = map[judge.Reason]judge.Reason{judge.MarginWorn: judge.MarginGone, judge.ChiselLong: judge.WebSpent, judge.LipsUneven: judge.AnglesUneven}

// A reading that is added lifts no reason but one that it tells of: a drill does not get
// better by a look at something else, and is not left for it.
func TestAddedReadingLiftsOnlyItsOwnReason(t *testing.T) {
	testkit.Property(t, "a reading that is added lifts no reason but its own", func(t *rapid.T) {
		given := draw(t)
		if size, sized := given.Drill(t).Get(drill.Size); sized && rapid.Bool().Draw(t, "past thinning") {
			given[drill.Web] = mm(size * rapid.Float64Range(0.45, 0.6).Draw(t, "of the diameter"))
		}
		after := judge.Compute(given.Drill(t)).Verdict
		for added := range given {
			if added == drill.Size || added == drill.Material {
				continue
			}
			without := maps.Clone(given)
			delete(without, added)
			before := judge.Compute(without.Drill(t)).Verdict
			lifted := false
			for i, held := range before.Reasons {
				x := judge.Reason(i)
				switch heavier, ok := graver[x]; {
				case !held || after.Reasons[x] || ok && after.Reasons[heavier]:
				case slices.Contains(tells[x], added):
					lifted = true
				case !after.Borderline[x]: // one that is borderline is told beside another alone
					t.Fatalf("%s lifts %s", added, x.Code())
				}
			}
			if !lifted && after.Word < before.Word {
				t.Fatalf("%s makes %q of %q", added, after.Word, before.Word)
			}
		}
	})
}
