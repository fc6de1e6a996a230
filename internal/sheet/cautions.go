package sheet

// Cautions are what anyone at a grinder is to keep in mind; docs/safety.md has
// the long form with its sources.
var Cautions = []string{
	"wear eye protection; keep the guard in place",
	"rest within 1/8 in (3 mm) of the wheel, tongue within 1/4 in (6 mm); set them with the wheel stopped",
	"ring-test a wheel before mounting it",
	"no gloves, no loose clothing",
	"grind lightly and quench lightly",
	"work to the shop's own rules and the local code; ask a qualified person when unsure",
}
