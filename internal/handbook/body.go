package handbook

// What a drawing shows of a drill's body without its having been measured.
var (
	MarginSource     = &Source{Practice, "", "margin 0.5 to 0.8 mm wide on drills of 2 to 6 mm, 0.7 to 1.0 mm on 6.5 to 10 mm: about a tenth of the diameter"}
	FlutePointSource = &Source{InPrint, "", "Model Engineer, 1916, as quoted: 59 degrees to the axis gives straight lips on the usual flute"}
	lipFlatSource    = &Source{Practice, "", "lips flattened for brass and plastics: a land of 0.4 to 0.8 mm, 1/64 to 1/32 in, parallel to the axis along each lip takes its rake away"}
	BodySource       = &Source{Own, "", "drawn like an ordinary drill's: behind the margin 0.95 of the diameter, a flute 108 degrees wide from corner to heel"}
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

// LipFlat is how high the land along a flattened lip is made, mm.
var LipFlat = Band{Low: 0.4, High: 0.8, Source: lipFlatSource}

func bodyTables() []Table {
	return []Table{
		{"margin-drawn", "Margin as drawn, part of diameter", MarginSource, []string{"width"}, [][]string{row(MarginPart)}},
		{"body-drawn", "Body as drawn", BodySource, []string{"diameter behind the margin, part of D", "flute deg"}, [][]string{row(BodyPart, FluteAngle/deg)}},
		{"flute-point", "Point angle that flutes are made for", FlutePointSource, []string{"deg"}, [][]string{row(FlutePoint / deg)}},
		{"lip-flat", "Land along a flattened lip", lipFlatSource, []string{"low mm", "high mm"}, [][]string{row(LipFlat.Low, LipFlat.High)}},
	}
}
