package spindle

// drillingCautions are what anyone at a drilling machine is to keep in mind.
var drillingCautions = []string{
	"clamp the work; wear eye protection",
	"no gloves, no loose clothing, no loose hair near a turning spindle",
	"stop the spindle to clear chips, with a brush and not by hand",
	"computed forces are estimates: start lightly",
	"work to the shop's own rules and the local code; ask a qualified person when unsure",
}
