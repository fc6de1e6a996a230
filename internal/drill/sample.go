package drill

// SampleName is what the built-in sample calls itself; every title shows it.
const SampleName = "SAMPLE: an invented drill of the ferry yard's crib"

// sampleReadings is a drill from the crib of a repair shop that does not
// exist: a few grinds old, worn at the corner, one lip high.
var sampleReadings = [...]struct {
	r    Reading
	text string
}{
	{Size, "12mm"}, {Material, "steel-200"}, {Web, "2.1mm"}, {ChiselAngle, "126deg"},
	{LipAngle, "59.5,58.5"}, {LipHeight, "0.14mm,0.02mm"}, {Clearance, "11,12"},
	{Flute, "78mm"}, {Depth, "30mm"}, {FlankWear, "0.2mm"}, {CornerWear, "0.4mm"},
	{Remove, "0.8mm"}, {Feed, "0.2mm"},
}

// Sample returns the built-in sample drill, its readings set but not resolved.
func Sample() *Drill {
	d := &Drill{Name: SampleName, Sample: true}
	for _, s := range sampleReadings {
		d.Set(s.r, s.text)
	}
	return d
}
