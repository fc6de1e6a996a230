package handbook

var speedPickSource = Source{Own, "", "the middle of the published cutting speeds"}

// SpeedPick returns the cutting speed, m/min, that is taken out of a published
// band, and where the rule comes from; NaN when nothing is published.
func SpeedPick(b Band) (float64, *Source) { return (b.Low + b.High) / 2, &speedPickSource }

// speedPickTables returns the table of this file.
func speedPickTables() []Table {
	return []Table{{"speed-taken", "Cutting speed taken", speedPickSource,
		[]string{"rule"}, func() [][]string { return [][]string{{"middle of the band"}} }}}
}
