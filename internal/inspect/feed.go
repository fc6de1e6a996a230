package inspect

import (
	"evenlip/internal/cutting"
	"evenlip/internal/figure"
	"evenlip/internal/reference"
)

// UsualFeed returns the feed, mm per revolution, that is taken where none was
// read, for a drill of diameter d mm and the work, which may be nil: in the
// published band for the diameter, at the part of it that the work takes. NaN
// unless d is a positive length.
func UsualFeed(d float64, m *reference.Material) float64 {
	row := reference.FeedOf(d)
	return cutting.Feed(row.Low, row.High, row.Share(d, feedEnd(m)))
}

func feedEnd(m *reference.Material) reference.FeedEnd {
	if m == nil {
		return reference.FeedMid
	}
	return m.FeedEnd
}

// WorkFeed leaves the working of UsualFeed, less the part cut, with the figure
// added to s last.
func WorkFeed(s *figure.Sheet, d float64, m *reference.Material, cut float64) {
	row := reference.FeedOf(d)
	if row.Source == nil {
		return
	}
	a, b := feedEnd(m).Line()
	low, high, from, to := figure.Feed(row.Low), figure.Feed(row.High), figure.Len(row.From), figure.Len(row.To)
	s.Work(row.Source.String()+"; "+reference.FeedTakenSource().String(),
		"f = (low + (high - low) x) (1 - cut), x = a (D - from) / (to - from) - b, 0 to 1, of the published row; a and b: 1 and 0, hard work 2 and 1, soft work 2 and 0",
		"({} + ({} - {}) * max(0, min(1, {} * ({} - {}) / ({} - {}) - {}))) * (1 - {})",
		low, high, low, figure.Num(a), figure.Len(d), from, to, from, figure.Num(b), figure.Num(cut))
}

// FeedAssumption says in s which feed was taken for want of a reading.
func (b *Basics) FeedAssumption(s *figure.Sheet) {
	if !b.FeedAssumed {
		return
	}
	s.Find("feed-assumed", figure.Note, "no feed was given: {} is taken, from those published for this diameter and work", figure.Feed(b.Feed))
	s.Extra = append(s.Extra, reference.FeedBand(b.D).Source, reference.FeedTakenSource())
}

// feedTaken says so where a figure that hangs on the feed is known.
func (r *Result) feedTaken(s *figure.Sheet, hangs float64) {
	if known(hangs) {
		r.Drill.FeedAssumption(s)
	}
}
