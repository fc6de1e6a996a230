package judge

import (
	"evenlip/internal/cutting"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// UsualFeed returns the feed, mm per revolution, that is taken where none was
// read, for a drill of diameter d mm and the work, which may be nil: in the
// published band for the diameter, at the part of it that the work takes. NaN
// unless d is a positive length.
func UsualFeed(d float64, m *handbook.Material) float64 {
	row := handbook.FeedOf(d)
	return cutting.Feed(row.Low, row.High, row.Share(d, feedEnd(m)))
}

func feedEnd(m *handbook.Material) handbook.FeedEnd {
	if m == nil {
		return handbook.FeedMid
	}
	return m.Relief.FeedEnd()
}

// FeedAssumption says in s which feed was taken for want of a reading.
func (b *Basics) FeedAssumption(s *sheet.Sheet) {
	if !b.FeedAssumed {
		return
	}
	s.Find("feed-assumed", sheet.Note, "no feed was given: {} is taken, from those published for this diameter and work", quantity.Of(quantity.Feed, b.Feed))
	s.Extra = append(s.Extra, handbook.FeedBand(b.D).Source, handbook.FeedTakenSource)
}
