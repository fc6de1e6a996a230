package handbook

// What a drawing shows of a drill's body without its having been measured.
var (
	marginSource = Source{Practice, "", "margin 0.5 to 0.8 mm wide on drills of 2 to 6 mm, 0.7 to 1.0 mm on 6.5 to 10 mm: about a tenth of the diameter"}
	flutePoint   = Source{InPrint, "", "Model Engineer, 1916, as quoted: 59 degrees to the axis gives straight lips on the usual flute"}
	lipFlat      = Source{Practice, "", "lips flattened for brass and plastics: a land of 0.4 to 0.8 mm, 1/64 to 1/32 in, parallel to the axis along each lip takes its rake away"}
	bodySource   = Source{Own, "", "drawn like an ordinary drill's: behind the margin 0.95 of the diameter, a flute 108 degrees wide from corner to heel"}
)

// MarginPart is the width of the margin, BodyPart the diameter behind it, as
// parts of the drill's diameter; FluteAngle is the width of a flute, radians,
// from the corner of its lip to the heel across it. FlutePoint is the point angle,
// radians, for which flutes are usually made: on it the lips are straight.
const (
	MarginPart = 0.1
	BodyPart   = 0.95
	FluteAngle = 108 * deg
	FlutePoint = 118 * deg
)

// MarginSource is where MarginPart comes from.
func MarginSource() *Source { return &marginSource }

// BodySource is where BodyPart and FluteAngle come from.
func BodySource() *Source { return &bodySource }

// FlutePointSource is where FlutePoint comes from.
func FlutePointSource() *Source { return &flutePoint }

// LipFlat returns how high the land along a flattened lip is made, mm.
func LipFlat() Band { return Band{Low: 0.4, High: 0.8, Source: &lipFlat} }

// bodyTables returns the tables of this file.
func bodyTables() []Table {
	return []Table{
		{Name: "margin-drawn", Title: "Margin as drawn, part of diameter", Source: marginSource,
			Head: []string{"width"}, Rows: func() [][]string { return [][]string{{cell(MarginPart)}} }},
		{Name: "body-drawn", Title: "Body as drawn", Source: bodySource,
			Head: []string{"diameter behind the margin, part of D", "flute deg"},
			Rows: func() [][]string { return [][]string{{cell(BodyPart), cell(FluteAngle / deg)}} }},
		{Name: "flute-point", Title: "Point angle that flutes are made for", Source: flutePoint,
			Head: []string{"deg"}, Rows: func() [][]string { return [][]string{{cell(FlutePoint / deg)}} }},
		{Name: "lip-flat", Title: "Land along a flattened lip", Source: lipFlat,
			Head: []string{"low mm", "high mm"}, Rows: func() [][]string { return [][]string{{cell(LipFlat().Low), cell(LipFlat().High)}} }},
	}
}
