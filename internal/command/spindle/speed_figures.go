package spindle

import (
	"math"

	"evenlip/internal/cutting"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

const (
	noSpeed  = "a material whose speed is published"
	practice = "common practice"
	torsion  = "torsion of a round bar"
)

func (r *running) figures(s *sheet.Sheet) {
	r.letters(s, &factors)
	sheet.Letters(s, &r.Found, &judge.CornerClearance, &judge.FlankSlopes)
	sheet.Put(s, r, r.held[:], &speedLetters, &speedFigures, &feedFigures, &holeFigures)
	s.Open("Load on the spindle")
	sheet.Put(s, &r.work, r.held[:], &forces)
	sheet.Put(s, &r.Found, r.Found.Held[:], &judge.WorkingClearance)
	sheet.Put(s, r, r.held[:], &shankFigures)
}

type runDef = sheet.Def[running]

var speedLetters = sheet.Group[running]{Figures: []runDef{
	{Letter: "V", Label: "one metre a minute", Kind: quantity.Cutting, Work: sheet.AsRead, Value: func(*running) float64 { return 1 }},
	{Letter: "ra", Label: "from here on in the row of the feeds", Kind: quantity.Length, Work: sheet.AsRead, Of: "size", Value: func(r *running) float64 { return r.row.From }},
	{Letter: "rb", Label: "to here in the row of the feeds", Kind: quantity.Length, Work: sheet.AsRead, Of: "size", Value: func(r *running) float64 { return r.row.To }},
	{Letter: "xf", Label: "how far up the row of the feeds", Kind: quantity.Number,
		Value: func(r *running) float64 { return r.row.Share(r.load.D, r.feedEnd()) },
		Works: func(r *running) (work, source string) {
			source = handbook.FeedTakenSource.String()
			switch r.feedEnd() {
			case handbook.FeedLow:
				return "max(0, 2 * (D - ra) / (rb - ra) - 1)", source
			case handbook.FeedHigh:
				return "min(1, 2 * (D - ra) / (rb - ra))", source
			}
			return "max(0, min(1, (D - ra) / (rb - ra)))", source
		}},
	{Letter: "depth", Label: "depth of the hole", Kind: quantity.Length, Work: sheet.AsRead, Of: "depth", Value: func(r *running) float64 { return r.depth }},
	{Letter: "kw", Label: "point angle wanted", Kind: quantity.Angle, Gauge: quantity.Protractor, Work: sheet.AsRead, Value: func(r *running) float64 { return r.Found.Point.Wanted }},
	{Letter: "lp", Label: "length of the point", Kind: quantity.Length, Value: func(r *running) float64 { return r.pointLength },
		Works: func(r *running) (work, source string) {
			if sheet.Known(r.Found.Point.Length) {
				return "D / 2 / tan((k1 + k2) / 2)", ""
			}
			return "D / 2 / tan(kw / 2)", ""
		}},
}}

// feedEnd is the part of the published feeds that the work takes.
func (r *running) feedEnd() handbook.FeedEnd {
	if m := r.Found.Drill.Material; m != nil {
		return m.Relief.FeedEnd()
	}
	return handbook.FeedMid
}

var speedFigures = sheet.Group[running]{Title: "Speed", Figures: []runDef{
	{Key: "cutting_speed_low_m_min", Letter: "va", Kind: quantity.Cutting, Of: noSpeed, Value: func(r *running) float64 { return r.published.Low },
		LabelOf: func(r *running) string { return r.published.Source.Whose() + ", from" }, Works: publishedSpeed, Shop: shopSpeed},
	{Key: "cutting_speed_high_m_min", Letter: "vb", Kind: quantity.Cutting, Of: noSpeed, Value: func(r *running) float64 { return r.published.High },
		LabelOf: func(r *running) string { return r.published.Source.Whose() + ", to" }, Works: publishedSpeed, Shop: shopSpeed},
	{Key: "speed_cut", Letter: "sc", Label: "taken off for the depth", Kind: quantity.Share, Value: func(r *running) float64 { return r.cut.Speed }, Works: deepCut, OfWays: depthMissing},
	{Key: "cutting_speed_m_min", Letter: "vc", Label: "cutting speed", Kind: quantity.Cutting, Value: func(r *running) float64 { return r.speed },
		Works: func(r *running) (work, source string) {
			_, pick := handbook.SpeedPick(r.published)
			switch {
			case r.rpmRead:
				return "pi * Dm * n / 1000 * V", practice
			case r.cut.Speed > 0:
				return "(va + vb) / 2 * (1 - sc)", pick.String() + "; " + r.cut.Source.String()
			}
			return "(va + vb) / 2", pick.String()
		},
		OfWays: func(r *running) string {
			if r.rpmRead {
				return "size"
			}
			return noSpeed + ", or rpm"
		},
		Shop: func(r *running) bool { return !r.rpmRead && shopSpeed(r) }},
	{Key: "rpm", Letter: "n", Label: "spindle speed", Kind: quantity.Rpm, Limit: rpmLimit, Value: func(r *running) float64 { return r.load.Rpm },
		Read: func(r *running) bool { return r.rpmRead }, Work: "1000 * vc / V / (pi * Dm)", Source: practice,
		GaugeOf: func(r *running) quantity.Gauge { return r.turns().Gauge }},
}}

func publishedSpeed(r *running) (work, source string) { return factorRead(r.published.Source) }

func shopSpeed(r *running) bool { return r.published.Source.OfShop() }

func deepCut(r *running) (work, source string) { return factorRead(r.cut.Source) }

// depthMissing names what is missing of the depth in diameters.
func depthMissing(r *running) string {
	return sheet.Wanted(sheet.Need{Reading: "size", Value: r.load.D}, sheet.Need{Reading: "depth", Value: r.depth})
}

var feedFigures = sheet.Group[running]{Title: "Feed", Figures: []runDef{
	{Key: "feed_low_mm", Letter: "fa", Label: "published, from", Kind: quantity.Feed, Of: "size", Value: func(r *running) float64 { return r.row.Low }, Works: publishedFeed},
	{Key: "feed_high_mm", Letter: "fb", Label: "published, to", Kind: quantity.Feed, Of: "size", Value: func(r *running) float64 { return r.row.High }, Works: publishedFeed},
	{Key: "feed_cut", Letter: "fc", Label: "taken off for the depth", Kind: quantity.Share, Value: func(r *running) float64 { return r.cut.Feed }, Works: deepCut, OfWays: depthMissing},
	{Key: "feed_mm", Letter: "f", Label: "feed per turn", Kind: quantity.Feed, Limit: feedLimit, Value: func(r *running) float64 { return r.load.Feed },
		Read: func(r *running) bool { return r.feedRead },
		Works: func(r *running) (work, source string) {
			source = handbook.FeedTakenSource.String()
			if r.cut.Feed > 0 {
				return "(fa + (fb - fa) * xf) * (1 - fc)", source + "; " + r.cut.Source.String()
			}
			return "fa + (fb - fa) * xf", source
		}},
	{Key: "penetration_mm_min", Label: "feed per minute", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *running) float64 { return cutting.Penetration(r.load.Feed, r.load.Rpm) }, Work: "f * n", Source: practice},
}}

func publishedFeed(r *running) (work, source string) { return factorRead(r.row.Source) }

var holeFigures = sheet.Group[running]{Title: "The hole", Figures: []runDef{
	{Key: "depth_ratio", Label: "depth, in diameters", Kind: quantity.Number, Limit: depthLimit, Value: func(r *running) float64 { return r.depthRatio }, Work: "depth / D"},
	{Key: "hole_time_s", Label: "time in the cut", Kind: quantity.Duration,
		Value: func(r *running) float64 {
			return cutting.HoleTime(r.depth, r.pointLength, r.load.Feed, r.load.Rpm)
		},
		Work: "60 * (depth + lp) / (f * n)", Source: judge.Geometry + "; withdrawals are not in it"},
	{Key: "usual_oversize_low_mm", Label: "oversize usually, from", Kind: quantity.Length, Gauge: quantity.Indicator, Of: oversizeOf, Works: oversize,
		Value: func(r *running) float64 { return handbook.UsualOversize(r.load.D).Low }},
	{Key: "usual_oversize_mean_mm", Label: "oversize usually, mean", Kind: quantity.Length, Gauge: quantity.Indicator, Of: oversizeOf, Works: oversize,
		Value: func(r *running) float64 { return handbook.UsualOversize(r.load.D).Mean }},
	{Key: "usual_oversize_high_mm", Label: "oversize usually, to", Kind: quantity.Length, Gauge: quantity.Indicator, Of: oversizeOf, Works: oversize,
		Value: func(r *running) float64 { return handbook.UsualOversize(r.load.D).High }},
}}

const oversizeOf = "a size from 1/16 to 1 in"

func oversize(*running) (work, source string) {
	return sheet.AsRead, handbook.OversizeSource.String() + ", between two sizes in a straight line"
}

var shankFigures = sheet.Group[running]{Title: "Shank and flutes", Figures: []runDef{
	{Letter: "Ms", Label: "torque, with a new drill's chisel edge where none was read", Kind: quantity.Torque, Work: torqueWork, Source: judge.ForceSource,
		Value: func(r *running) float64 { return r.force.Torque }},
	{Letter: "ds", Label: "shank diameter, mm", Kind: quantity.Number, Work: sheet.AsRead, Of: "shank-diameter", Value: func(r *running) float64 { return r.shank }},
	{Letter: "st", Label: "stress that a shank carries, MPa", Kind: quantity.Number, Work: sheet.AsRead, Value: func(*running) float64 { return handbook.ShankStress }},
	{Letter: "MPa", Label: "one megapascal", Kind: quantity.Stress, Work: sheet.AsRead, Value: func(*running) float64 { return 1 }},
	{Letter: "mm", Label: "one millimetre", Kind: quantity.Length, Fine: true, Work: sheet.AsRead, Value: func(*running) float64 { return 1 }},
	{Key: "shank_stress_mpa", Label: "stress in the shank", Kind: quantity.Stress, Limit: shankLimit, Value: func(r *running) float64 { return r.held[shankLimit].Value },
		Work: "16000 * Ms / Nm / (pi * ds^3) * MPa", Source: torsion},
	{Key: "least_shank_mm", Label: "least shank diameter", Kind: quantity.Length, Gauge: quantity.Caliper, Value: (*running).leastShank,
		Works: func(*running) (work, source string) {
			return "(16000 * Ms / Nm / (pi * st))^(1/3) * mm", torsion + "; " + handbook.ShankStressSource.String()
		}},
	{Key: "helix_deg", Label: "helix angle", Kind: quantity.Angle, Gauge: quantity.Protractor, Limit: helixLimit, Of: "helix", Work: sheet.AsRead, Source: sheet.AsRead,
		Value: func(r *running) float64 { return r.helix }},
}}

// leastShank is the thinnest shank that carries the torque, mm.
func (r *running) leastShank() float64 {
	return cutting.LeastShank(r.force.Torque, handbook.ShankStress)
}

// straightEnough is the helix, radians, under which flutes count as straight.
const straightEnough = 5 * math.Pi / 180
