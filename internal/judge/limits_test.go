package judge_test

import (
	"testing"

	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/sheet"
)

// Whoever reads the answer sees every limit that the verdict rests on, with the figure
// that is held against it; a crack alone is no figure.
func TestEveryLimitIsAFiguresLimit(t *testing.T) {
	r := judge.Compute(possible(t, whole))
	for l := range r.Held {
		r.Held[l] = sheet.Held{Band: handbook.Band{Low: float64(l), High: float64(l)}}
	}
	s := new(sheet.Sheet)
	judge.Figures(&r, s)
	shown := map[sheet.Limit]string{}
	s.Each(func(f *sheet.Figure) {
		if f.Limit != nil {
			shown[sheet.Limit(f.Limit.Low)] = f.Key
		}
	})
	for l := judge.CrackLimit + 1; int(l) < len(r.Held); l++ {
		if shown[l] == "" {
			t.Errorf("limit %d is no figure's", l)
		}
	}
}
