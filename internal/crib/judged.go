package crib

import (
	"cmp"
	"slices"
	"strings"

	"evenlip/internal/figure"
	"evenlip/internal/inspect"
)

// Undecided is the word for a drill of which too little was measured.
const Undecided = "undecided"

// Verdicts are the words that an audit knows, worst first.
var Verdicts = []string{"retire", "regrind", "thin", Undecided, "fit"}

// Judged is a drill with the sheet that inspect gives for it.
type Judged struct {
	*Drill
	Sheet *figure.Sheet
}

// Word returns the verdict in a word.
func (j *Judged) Word() string { return cmp.Or(j.Sheet.Verdict.Word, Undecided) }

// Judge inspects every drill, in the file's order.
func (c *Crib) Judge() []Judged {
	out := make([]Judged, len(c.Drills))
	for i := range c.Drills {
		out[i] = Judged{&c.Drills[i], c.Inspect(c.Drills[i].Readings)}
	}
	return out
}

// WorstFirst puts drills in the order of their verdicts, those with more
// reasons first, and leaves it as it is among equals.
func WorstFirst(drills []Judged) {
	slices.SortStableFunc(drills, func(a, b Judged) int {
		return cmp.Or(cmp.Compare(rank(a.Word()), rank(b.Word())),
			-cmp.Compare(len(a.Sheet.Verdict.Reasons), len(b.Sheet.Verdict.Reasons)))
	})
}

func rank(word string) int { return slices.Index(Verdicts, word) }

// Filter says which drills are wanted; a field that is zero wants all.
type Filter struct {
	Verdict  string
	Size     float64 // mm
	Material string
}

// Select returns those of the drills that the filter wants.
func (f Filter) Select(all []Judged) []Judged {
	var out []Judged
	for _, j := range all {
		if (f.Verdict == "" || f.Verdict == j.Word()) &&
			(f.Size == 0 || sameSize(f.Size, j.Size())) &&
			(f.Material == "" || f.Material == j.material()) {
			out = append(out, j)
		}
	}
	return out
}

// material returns the work's material that the drill is judged for.
func (j *Judged) material() string {
	r := inspect.Compute(j.Readings)
	if r.Drill.Material == nil {
		return ""
	}
	return r.Drill.Material.Name
}

// why returns the reasons for the verdict, or what is still to be read.
func (j *Judged) why() string {
	v := j.Sheet.Verdict
	if v.Word == "" {
		return "wants " + strings.Join(v.Missing, "; ")
	}
	return strings.Join(v.Reasons, " ")
}
