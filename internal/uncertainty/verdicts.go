package uncertainty

import (
	"math"
	"slices"
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Verdicts counts the verdicts of the draws beside the one that the readings by
// themselves give.
type Verdicts struct {
	of      *sheet.Verdict
	tally   Tally // whether the word is that of the readings, and the word
	reasons []count
}

// NewVerdicts begins a count beside the verdict of the readings by themselves.
func NewVerdicts(of *sheet.Verdict) *Verdicts { return &Verdicts{of: of} }

// Add adds the verdict on a draw. Its reasons are all that hold, those too that a
// heavier one stands before.
func (t *Verdicts) Add(v *sheet.Verdict) {
	same := 0.0
	if v.Word == t.of.Word {
		same = 1
	}
	t.tally.Add([]float64{same}, []string{v.Word})
	for _, code := range v.Reasons {
		t.reasons = met(t.reasons, code)
	}
}

// Settle takes back of the verdict what the draws do not bear out. Its word stays if
// it comes out in Tells of them, else there is none, and Finer says what to read
// again. A reason stays under the same rule; where it goes, the lighter one
// that it stands before takes its place if the draws bear that out.
func (t *Verdicts) Settle(draws []Draw) {
	v := t.of
	v.Share = t.tally.Mean(0)
	var sure []string
	for _, code := range v.Reasons {
		if !t.bearsOut(code) {
			code = v.Hidden[code].Code
			if code == "" || !t.bearsOut(code) {
				continue
			}
		}
		if !slices.Contains(sure, code) {
			sure = append(sure, code)
		}
	}
	v.Reasons = sure
	if v.Share >= Tells {
		return
	}
	for _, word := range t.tally.Words(0) {
		v.Words = append(v.Words, sheet.Counted{Word: word, Share: t.tally.Share(0, word)})
	}
	v.Word = ""
	v.Finer = t.tally.Finer(0, draws)
	v.Missing = append(v.Missing, v.Finer)
}

func (t *Verdicts) bearsOut(code string) bool {
	for _, c := range t.reasons {
		if c.word == code {
			return float64(c.draws) >= Tells*float64(t.tally.n)
		}
	}
	return false
}

// tell puts into s what became of its verdict: the remarks on reasons that went are
// taken out, those on reasons that took their place come in.
func (t *Verdicts) tell(s *sheet.Sheet, before []string) {
	v := s.Verdict
	s.Findings = slices.DeleteFunc(s.Findings, func(f sheet.Finding) bool {
		return slices.Contains(before, f.Code) && !slices.Contains(v.Reasons, f.Code)
	})
	for _, code := range before {
		if f, ok := v.Hidden[code]; ok && !slices.Contains(v.Reasons, code) && slices.Contains(v.Reasons, f.Code) {
			s.Findings = append(s.Findings, f)
		}
	}
	if v.Words == nil {
		return
	}
	s.Find("verdict-in-doubt", sheet.Warn, "these gauges bear out no verdict: {}; read {}", quantity.Say(shares(v.Words)), quantity.Say(v.Finer))
}

// shares says in how many of the draws each word comes out: "regrind in 72 % of the
// draws, fit in 28 %".
func shares(words []sheet.Counted) string {
	var parts []string
	for i, w := range words {
		word := w.Word
		if word == "" {
			word = "none"
		}
		part := word + " in " + percent(w.Share)
		if i == 0 {
			part += " of the draws"
		}
		parts = append(parts, part)
	}
	return strings.Join(parts, ", ")
}

// percent is a share in whole per cent, as finely as N draws tell it. What is too
// little to be told is never rounded up to what would be enough.
func percent(share float64) string {
	whole := max(math.Round(100*share), 1)
	if share < Tells {
		whole = min(whole, 100*Tells-1)
	}
	return quantity.Format{}.Text(quantity.Count, quantity.NoGauge, whole) + " %"
}
