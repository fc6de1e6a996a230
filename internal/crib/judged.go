package crib

import (
	"cmp"
	"slices"
	"strings"

	"evenlip/internal/judge"
	"evenlip/internal/sheet"
)

// Undecided is the word for a drill of which too little was measured.
const Undecided = "undecided"

// Verdicts are the words that an audit knows, worst first.
var Verdicts = []string{"retire", "regrind", "thin", Undecided, "fit"}

// Judged is a drill with the verdict that inspect gives for it.
type Judged struct {
	*Drill
	Verdict  *sheet.Verdict
	Material string // of the work that it is judged for
}

// Word returns the verdict in a word.
func (j *Judged) Word() string { return cmp.Or(j.Verdict.Word, Undecided) }

// Judge inspects every drill that is still there, in the file's order.
func (c *Crib) Judge() []Judged {
	return slices.DeleteFunc(c.judgeAll(), func(j Judged) bool { return j.Retired() != "" })
}

// judgeAll inspects those that were thrown away, too.
func (c *Crib) judgeAll() []Judged {
	out := make([]Judged, len(c.Drills))
	inParts(len(out), func(from, to int) {
		for i := from; i < to; i++ {
			out[i] = c.judge(&c.Drills[i])
		}
	})
	return out
}

// judge makes no sheet: of a large crib only few drills are shown.
func (c *Crib) judge(d *Drill) Judged {
	r := judge.Compute(d.Readings)
	j := Judged{Drill: d, Verdict: r.JudgementOn(d.Readings, c.Gauges)}
	if r.Drill.Material != nil {
		j.Material = r.Drill.Material.Name
	}
	return j
}

// WorstFirst puts drills in the order of their verdicts, those with more
// reasons first, and leaves it as it is among equals.
func WorstFirst(drills []Judged) {
	slices.SortStableFunc(drills, func(a, b Judged) int {
		return cmp.Or(cmp.Compare(rank(a.Word()), rank(b.Word())),
			-cmp.Compare(len(a.Verdict.Reasons), len(b.Verdict.Reasons)))
	})
}

func rank(word string) int { return slices.Index(Verdicts, word) }

// Filter says which drills are wanted; a field that is zero wants all.
type Filter struct {
	Verdicts []string
	Size     float64 // mm
	Material string
}

// Select returns those of the drills that the filter wants.
func (f Filter) Select(all []Judged) []Judged {
	return slices.DeleteFunc(slices.Clone(all), func(j Judged) bool { return !f.wants(&j) })
}

func (f Filter) wants(j *Judged) bool {
	return (len(f.Verdicts) == 0 || slices.Contains(f.Verdicts, j.Word())) &&
		(f.Size == 0 || sameSize(f.Size, j.Size())) &&
		(f.Material == "" || f.Material == j.Material)
}

// Listed returns the drills of the file that the filter wants, in their order. One
// that was thrown away is of no verdict.
func (c *Crib) Listed(f Filter) []*Drill {
	all := len(f.Verdicts) == 0 && f.Size == 0 && f.Material == ""
	var judged []Judged
	if !all {
		judged = c.judgeAll()
	}
	var out []*Drill
	for i := range c.Drills {
		d := &c.Drills[i]
		if all || f.wants(&judged[i]) && (len(f.Verdicts) == 0 || d.Retired() == "") {
			out = append(out, d)
		}
	}
	return out
}

// why returns the reasons for the verdict, or what is still to be read.
func (j *Judged) why() string {
	v := j.Verdict
	if v.Word != "" {
		return strings.Join(v.Reasons, " ")
	}
	return wants(v.Missing)
}

func wants(readings []string) string { return "wants " + strings.Join(readings, "; ") }
