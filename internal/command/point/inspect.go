package point

import (
	"sync"

	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Inspect is evenlip inspect.
var Inspect = command.Of[judge.Result]{Info: command.Info{
	Name: "inspect", Pictured: true, Short: "is this drill fit, and if not, why, and what cures it",
	Long: `The point angle, lip clearance, chisel edge, web after regrind and lip height of
one drill, each against its limit, and a verdict: fit, regrind, thin or retire.
Any reading may be missing: what can be computed is, and what cannot says which
reading it wants.`,
	Examples: `  evenlip inspect --size 12mm --web 2mm --chisel-angle 126 --lip-angle 59,58 --lip-height 0.12mm --clearance 11
  evenlip inspect --size 1/2 --web 0.085 --chisel-length 0.105 --lip-angle 59,59 --format json
  evenlip inspect --sample --explain`,
	Answers: "FIT, REGRIND, THIN, RETIRE, or MEASURE where too little was read",
	Rule:    sync.OnceValue(func() []drill.Reading { return drill.Of(drill.Point) }), Safety: &command.AtBench,
}, Cannot: judge.Cannot, Compute: judge.Compute, Figures: inspectFigures, Rest: inspectRest, Declares: inspectDeclares, Screen: inspectScreen}

// inspectFigures puts the figures of the whole point, and in a draw its verdict.
func inspectFigures(r *judge.Result, s *sheet.Sheet) {
	judge.Figures(r, s)
	if s.Drawing {
		s.Verdict = new(sheet.Verdict)
		r.Drawn(s.Verdict)
	}
}

// inspectDeclares says that a cracked drill has no figures.
func inspectDeclares(s *sheet.Sheet) { s.Partial = true }

func inspectRest(r *judge.Result, s *sheet.Sheet) {
	if !r.Wear.Cracked {
		r.PointRemarks(s)
		r.ClearanceRemarks(s)
		r.Chisel.Contradiction(s)
		r.WebRemarks(s)
		r.LipRemarks(s)
		if r.Drill.Material != nil && !r.Drill.Given {
			s.Find("material-assumed", sheet.Note, "no material was given: {} is taken", quantity.Say(r.Drill.Material.Name))
		}
		r.FaceRemarks(s)
	}
	s.Verdict = r.Judgement()
	r.VerdictRemarks(s)
	s.Extra = append(s.Extra, &rules)
}

func inspectScreen(r *judge.Result, s *sheet.Sheet) *sheet.Screen {
	scr := r.Screen(s)
	r.CloseCalls(scr)
	return scr
}

var rules = handbook.Source{Label: handbook.Own, Text: "the verdict's rules, docs/verdict.md"}
