package command

import (
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Safety is what a screen warns of: the risk of what comes next. The cautions in full
// are in docs/safety.md and behind --full.
type Safety struct{ MM, Inch string }

// The risks: of whatever is read off a drill, of the way to the wheel, of the spindle.
var (
	AtBench = Safety{
		"eye protection, guard, rest within 3 mm; shop rules, local code first",
		"eye protection, guard, rest within 1/8 in; shop rules, local code first",
	}
	AtWheel = Safety{
		"eye protection, guard on, no gloves; rest within 3 mm, tongue within 6, set with the wheel stopped; shop rules and local code first; unsure: ask",
		"eye protection, guard on, no gloves; rest within 1/8 in, tongue within 1/4, set with the wheel stopped; shop rules and local code first; unsure: ask",
	}
	AtSpindle = Safety{
		MM: "clamp the work, eye protection, no gloves; chips off with a brush, the spindle stopped; estimates: start light; shop rules, local code first",
	}
	OfWheel = Safety{
		MM: "grind on the face only, never the side; a wheel past its marking can burst; the shop's rules and local code first; unsure: ask, and do not start it",
	}
	OfScrap = Safety{
		MM: "break it or mark it so that nobody can pick it up for one last hole",
	}
)

// Foot is the line of a screen that warns.
func (s *Safety) Foot() sheet.Foot {
	return sheet.Foot{Lead: "safety", Text: quantity.Sayf(s.MM), Inch: quantity.Sayf(s.Inch)}
}

// taken says in a few words what a finding of that code takes for want of a reading,
// with the finding's arguments; "" for one that takes nothing.
func taken(code string) string {
	switch code {
	case "material-assumed":
		return "{}, as no material was given"
	case "feed-assumed":
		return "feed {} a turn"
	case "web-taper-assumed":
		return "web taper {}"
	case "lip-angle-taken":
		return "both lips at {}"
	case "lips-taken-even":
		return "lips level"
	case "clearance-aimed":
		return "clearance {}"
	case "depth-missing":
		return "no hole: {} of flute for the chips alone"
	}
	return ""
}

// Finished adds to a screen what is told alike of every answer: warnings that are no
// reason of its verdict, what was taken as usual, safety, and what more there is.
func Finished(scr *sheet.Screen, s *sheet.Sheet, info *Info) *sheet.Screen {
	for _, f := range s.Findings {
		switch short := taken(f.Code); {
		case short != "":
			scr.Note("usual", short, f.Text.Args...)
		case f.Severity != sheet.Note && !told(scr, s, f.Code):
			scr.Note("note", f.Text.Format, f.Text.Args...)
		}
	}
	safety := info.Safety
	if scr.Scrap {
		safety = &OfScrap
	}
	if safety != nil {
		scr.Foot = append(scr.Foot, safety.Foot())
	}
	scr.Note("more", "--full  every figure, limit and basis")
	scr.Note("more", "--explain  how each was got")
	return scr
}

// told reports whether a finding is a reason of the verdict, which the numbered lines
// tell, or was left to the screen.
func told(scr *sheet.Screen, s *sheet.Sheet, code string) bool {
	if s.Verdict != nil {
		for _, reason := range s.Verdict.Reasons {
			if reason == code {
				return true
			}
		}
	}
	return strings.Contains(scr.Told+" ", code+" ")
}
