package handbook

import "math"

// Sources of the feeds.
var (
	feedBandSource  = &Source{InPrint, "", "US Navy training course Machinery Repairman, feeds of high-speed-steel drills; lower end for hard material, ease the feed at break-through"}
	FeedTakenSource = &Source{Own, "", "ordinary work in a straight line from the low end at the row's first diameter to the high end at its last; hard work keeps the low end to the middle of the row, soft work has the high end from there on"}
	feedHeavySource = &Source{Own, "", "a feed is heavy over one and a half times the published high end: between, it is above what is published and cut every day"}
)

// FeedEnd says which part of the published feeds a material takes.
type FeedEnd uint8

// The parts; "lower end for hard material" is in print, the rest is its
// counterpart.
const (
	FeedLow FeedEnd = iota
	FeedMid
	FeedHigh
)

// String returns the part in words.
func (e FeedEnd) String() string {
	return [...]string{"low end", "middle", "high end"}[e]
}

// FeedEnd returns the part that a class of work takes.
func (r Relief) FeedEnd() FeedEnd {
	switch r {
	case Hard:
		return FeedLow
	case Soft:
		return FeedHigh
	}
	return FeedMid
}

// Line returns a and b of the line by which the feed rises through a row of the
// table: a x - b, held between 0 (the low end) and 1 (the high end), at the
// part x of the way from the row's first diameter to its last. The rows touch
// at their ends, so that all three lines meet there and the feed never jumps.
// Source: own rule.
func (e FeedEnd) Line() (a, b float64) {
	switch e {
	case FeedLow:
		return 2, 1
	case FeedHigh:
		return 2, 0
	}
	return 1, 0
}

// FeedRow is a row of the published feeds: its band in mm per revolution, and
// the diameters in mm from which to which it holds.
type FeedRow struct {
	Band
	From, To float64
}

// feedRow is FeedRow as published, inches.
type feedRow struct {
	name      string
	from, to  float64 // to is inclusive
	low, high float64 // in/rev
}

// The first row begins at No. 80 and the last, open one is taken to end with the
// largest ordinary size.
var feedRows = [...]feedRow{
	{"No. 80 to 1/8", 0.0135, 0.125, 0.001, 0.002},
	{"1/8 to 1/4", 0.125, 0.25, 0.002, 0.004},
	{"1/4 to 1/2", 0.25, 0.5, 0.004, 0.007},
	{"1/2 to 1", 0.5, 1, 0.007, 0.015},
	{"over 1", 1, 3.5, 0.015, 0.025},
}

// FeedOf returns the row of the published feeds for a high-speed-steel drill of
// diameter d mm. A diameter on the edge between two rows takes the smaller
// drill's; smaller and larger ones than the table's take its first and its last
// row. All is NaN when d is not a positive length.
func FeedOf(d float64) FeedRow {
	if !(d > 0) || math.IsInf(d, 1) {
		return FeedRow{unpublished, nan, nan}
	}
	last := len(feedRows) - 1
	i := 0
	for i < last && d > feedRows[i].to*InchMM+edge {
		i++
	}
	r := feedRows[i]
	return FeedRow{Band{r.low * InchMM, r.high * InchMM, feedBandSource}, r.from * InchMM, r.to * InchMM}
}

// FeedBand returns the band of FeedOf.
func FeedBand(d float64) Band { return FeedOf(d).Band }

// Share returns how far from the low to the high end of the row's band the feed
// lies that is taken for a drill of diameter d mm, 0 to 1: the line of the
// material's end. NaN for the row of no diameter.
func (r FeedRow) Share(d float64, end FeedEnd) float64 {
	a, b := end.Line()
	return math.Max(0, math.Min(1, a*(d-r.From)/(r.To-r.From)-b))
}

const feedHeavy = 1.5

// FeedServes returns the feeds that are not warned of at diameter d mm: from the
// published low end to half as much again as the high end. Source: own rule.
func FeedServes(d float64) Band {
	b := FeedBand(d)
	if b.Source == nil {
		return b
	}
	return Band{b.Low, feedHeavy * b.High, feedHeavySource}
}

func feedTables() []Table {
	return []Table{
		{"feeds", "Feeds of high-speed-steel drills, in/rev", feedBandSource, []string{"drill in", "in/rev"},
			rows(feedRows[:], func(r feedRow) []string { return []string{r.name, Band{r.low, r.high, nil}.in(1)} })},
		{"feed-taken", "Feed taken in a row of the feeds", FeedTakenSource, []string{"work", "end", "first diameter", "middle", "last diameter"}, [][]string{
			{Hard.String(), FeedLow.String(), "low", "low", "high"},
			{General.String(), FeedMid.String(), "low", "middle", "high"},
			{Soft.String(), FeedHigh.String(), "low", "high", "high"},
		}},
		{"feed-heavy", "Heavy feed, times the published high end", feedHeavySource, []string{"over"}, [][]string{row(feedHeavy)}},
	}
}
