package drill

// SampleName is what the built-in sample calls itself; every title shows it.
const SampleName = "SAMPLE: an invented drill of the ferry yard's crib"

// sampleReadings is a drill from the crib of a repair shop that does not
// exist: a few grinds old, worn at the corner, one lip high.
var sampleReadings = [...]Given{
	{Reading: Name, Text: SampleName},
	{Reading: Size, Text: "12mm"}, {Reading: Material, Text: "steel-200"}, {Reading: Web, Text: "2.1mm"}, {Reading: ChiselAngle, Text: "126deg"},
	{Reading: LipAngle, Text: "59.5,58.5"}, {Reading: LipHeight, Text: "0.14mm,0.02mm"}, {Reading: Clearance, Text: "11,12"},
	{Reading: Flute, Text: "78mm"}, {Reading: Depth, Text: "30mm"}, {Reading: FlankWear, Text: "0.2mm"}, {Reading: CornerWear, Text: "0.4mm"},
	{Reading: Remove, Text: "0.8mm"}, {Reading: Feed, Text: "0.2mm"},
}

// Sample returns the readings of the built-in sample drill.
func Sample() []Given { return sampleReadings[:] }
