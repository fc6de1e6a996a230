package drill

import (
	"strconv"
	"strings"

	"evenlip/internal/fault"
	"evenlip/internal/quantity"
)

// Sweep is a range of one value of a reading, or of both together.
type Sweep struct {
	quantity.Range
	Lip   int            // of a pair of which one is a range: 0 or 1; else -1
	Other quantity.Value // the other one of that pair
}

// mostSteps bounds the table that ranges, or two of them together, ask for.
const mostSteps = 10_000

// readRange reads "0mm..6mm by 0.5mm"; of a pair one value may be a range.
func (t *Taken) readRange(bare quantity.System, s *Spec) (f *fault.Fault) {
	reader := quantity.Reader{Kind: s.Kind, Bare: bare, Signed: s.Signed}
	sweep := &Sweep{Lip: -1}
	t.Swept = sweep
	first, second, two := strings.Cut(t.Text, ",")
	if !two || !s.Pair {
		sweep.Range, f = reader.Range(t.Text)
		return f
	}
	sweep.Lip = 0
	if !quantity.IsRange(first) {
		first, second, sweep.Lip = second, first, 1
	}
	if quantity.IsRange(second) {
		return quantity.Refusal(t.Text, "one range", "give the other lip one value")
	}
	if sweep.Other, f = reader.One(second); f == nil {
		sweep.Range, f = reader.Range(first, &sweep.Other)
	}
	return f
}

// KeyOf returns the name in JSON of what a range sweeps: one for both lips carries no
// lip's number.
func (t *Taken) KeyOf() string {
	if t.Swept.Lip < 0 {
		return t.KeysOf(1)[0]
	}
	return t.Spec().Keys[t.Swept.Lip]
}

// Label names what a range sweeps.
func (t *Taken) Label() string {
	if t.Swept.Lip < 0 {
		return t.Reading.String()
	}
	return t.Reading.String() + " " + strconv.Itoa(t.Swept.Lip+1)
}

// sweep puts one step's value of a range into a drill.
func (rd *Read) sweep(d *Drill, t *Taken, v float64) {
	switch t.Swept.Lip {
	case 0:
		d.Put(t.Reading, v, t.Swept.Other.V)
	case 1:
		d.Put(t.Reading, t.Swept.Other.V, v)
	default:
		d.Put(t.Reading, v)
	}
}

// Steps calls f with the drill of every combination of the ranges' values, in the
// order of Ranges, the last one changing fastest, until f fails. Without a range it
// calls f once.
func (rd *Read) Steps(f func(at []float64, d *Drill) error) error {
	at := make([]float64, len(rd.Ranges))
	d := rd.Drill
	var step func(n int) error
	step = func(n int) error {
		if n == len(at) {
			one := d
			return f(at, &one)
		}
		t := rd.written(rd.Ranges[n])
		for _, v := range t.Swept.Values() {
			at[n] = v
			rd.sweep(&d, t, v)
			if err := step(n + 1); err != nil {
				return err
			}
		}
		return nil
	}
	return step(0)
}
