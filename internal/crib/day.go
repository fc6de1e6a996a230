package crib

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/plan"
	"evenlip/internal/quantity"
)

// Do is what is to be done about a drill or a size.
type Do string

// The answers, in the order in which a day's plan gives them.
const (
	ToGrind   Do = "grind"
	ToThin    Do = "thin"
	ToRetire  Do = "retire"
	ToMeasure Do = "measure"
	ToLeave   Do = "leave"
	ToBuy     Do = "buy"
)

// Task is what is to be done with one drill.
type Task struct {
	Judged
	Do     Do
	Plan   plan.Plan
	Urgent bool // no drill of this size is fit
	// Finer says what to read again, and how, before the plan is sure; "" where it is.
	Finer string
}

// Purchase is how many drills of a size to buy.
type Purchase struct {
	Size   quantity.Value // as it is written
	Wanted int            // how many are to be there
	Usable int            // how many there are once the spent ones are out
}

// Count returns how many to buy.
func (p Purchase) Count() int { return max(0, p.Wanted-p.Usable) }

// Day is the plan of one day.
type Day struct {
	Tasks []Task // drills for the grinder first, in their order
	Buy   []Purchase
}

// Day plans what is to be done with the crib.
func (c *Crib) Day() Day {
	drills := c.Judge()
	ready := sizesReady(drills)
	day := Day{Tasks: make([]Task, len(drills))}
	inParts(len(drills), func(from, to int) {
		for i := from; i < to; i++ {
			j := drills[i]
			p := plan.Of(j.Readings)
			finer := c.finer(&j, &p)
			day.Tasks[i] = Task{Judged: j, Do: doing(&j, &p, finer), Plan: p, Urgent: !hasSize(ready, j.Size()), Finer: finer}
		}
	})
	slices.SortStableFunc(day.Tasks, byTurn)
	day.Buy = c.purchases(day.Tasks)
	return day
}

// Idle reports whether there is nothing to do with the crib, and nothing to buy.
func (d *Day) Idle() bool {
	return len(d.Buy) == 0 && !slices.ContainsFunc(d.Tasks, func(t Task) bool { return t.Do != ToLeave })
}

// sizesReady returns the sizes of which a drill is fit.
func sizesReady(drills []Judged) []float64 {
	var out []float64
	for i := range drills {
		if j := &drills[i]; j.Word() == "fit" && !hasSize(out, j.Size()) {
			out = append(out, j.Size())
		}
	}
	return out
}

func hasSize(sizes []float64, size float64) bool {
	return slices.ContainsFunc(sizes, func(s float64) bool { return sameSize(s, size) })
}

// finer says what the audit's verdict, or else the plan, waits to have read again.
func (c *Crib) finer(j *Judged, p *plan.Plan) string {
	if j.Verdict.Finer != "" || c.Gauges == (quantity.Gauges{}) || p.Do != plan.Regrind && p.Do != plan.Retire {
		return j.Verdict.Finer
	}
	return p.Finer(j.Readings, c.Gauges)
}

// doing rests on the audit's verdict: a plan that the gauges do not bear out takes no
// metal off, and throws no drill away.
func doing(j *Judged, p *plan.Plan, finer string) Do {
	if finer != "" {
		return ToMeasure
	}
	switch p.Do {
	case plan.Retire:
		return ToRetire
	case plan.Regrind:
		return ToGrind
	case plan.Thin:
		return ToThin
	}
	if j.Word() == Undecided {
		return ToMeasure
	}
	return ToLeave
}

var doOrder = []Do{ToGrind, ToThin, ToRetire, ToMeasure, ToLeave}

// byTurn orders what goes to the grinder: sizes that are out of fit drills
// first, then one setting of the rest after the other, then small to large.
func byTurn(a, b Task) int {
	return cmp.Or(cmp.Compare(slices.Index(doOrder, a.Do), slices.Index(doOrder, b.Do)),
		urgency(a)-urgency(b),
		cmp.Compare(math.Round(a.halfAngle()*1e6), math.Round(b.halfAngle()*1e6)),
		cmp.Compare(a.Size(), b.Size()))
}

func urgency(t Task) int {
	if t.Urgent {
		return 0
	}
	return 1
}

// halfAngle returns the angle to the axis at which the lips are to be ground.
func (t *Task) halfAngle() float64 {
	if t.Plan.Made {
		return t.Plan.Lips.Target
	}
	return math.NaN()
}

// atGrinder reports whether the drill is taken to the grinder.
func (t *Task) atGrinder() bool { return t.Do == ToGrind || t.Do == ToThin }

// because returns why: the reasons for the verdict, and what a grind that would
// be its last comes to.
func (t *Task) because() string {
	why := t.why()
	switch {
	case t.Do == ToRetire && t.Word() != "retire":
		why = strings.TrimSpace(why + " " + t.Plan.Reason)
	case t.Do == ToMeasure && len(t.Verdict.Reasons) > 0:
		why = strings.Join(t.Verdict.Reasons, " ") + ", but wants " + t.Finer
	}
	return why
}

// retiredFor returns what retires the drill, and nothing that a grind would have
// put right.
func (t *Task) retiredFor() string {
	if t.Word() != "retire" {
		return t.Plan.Reason + " once ground"
	}
	reasons := slices.Clone(t.Verdict.Reasons)
	return strings.Join(slices.DeleteFunc(reasons, func(code string) bool { return !judge.Retires(code) }), " ")
}

// purchases returns the sizes that are to be had and are not all there, in the
// order of their diameters.
func (c *Crib) purchases(tasks []Task) []Purchase {
	var sizes []Purchase
	add := func(size quantity.Value, wanted int) {
		if !slices.ContainsFunc(sizes, func(p Purchase) bool { return sameSize(p.Size.V, size.V) }) {
			sizes = append(sizes, Purchase{Size: size, Wanted: wanted})
		}
	}
	for _, k := range c.Keep {
		add(k.Size, k.Count)
	}
	for i := range c.Drills {
		add(c.Drills[i].Readings.AsRead(drill.Size)[0], 1)
	}
	for i := range sizes {
		for _, t := range tasks {
			if sameSize(t.Size(), sizes[i].Size.V) && t.Do != ToRetire {
				sizes[i].Usable++
			}
		}
	}
	sizes = slices.DeleteFunc(sizes, func(p Purchase) bool { return p.Count() == 0 })
	slices.SortStableFunc(sizes, func(a, b Purchase) int { return cmp.Compare(a.Size.V, b.Size.V) })
	return sizes
}
