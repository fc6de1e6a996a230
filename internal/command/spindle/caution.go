package spindle

import (
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// drillingCautions are what anyone at a drilling machine is to keep in mind.
var drillingCautions = []string{
	"clamp the work; wear eye protection",
	"no gloves, no loose clothing, no loose hair near a turning spindle",
	"stop the spindle to clear chips, with a brush and not by hand",
	"computed forces are estimates: start lightly",
	"work to the shop's own rules and the local code; ask a qualified person when unsure",
}

// beforeStart is the list to go through before the wheel is started.
func beforeStart() sheet.Grid {
	g := sheet.Grid{Key: "before_start", Title: "Before it is started", Columns: []sheet.Column{
		{Key: "step", Label: "", Kind: quantity.Count}, {Key: "check", Label: "look that", Kind: quantity.Word}}}
	for i, line := range [...]string{
		"the wheel's marked speed is at least the spindle's",
		"the wheel rang clear before it was mounted; a dead sound is a crack",
		"both flanges are alike and a third of the wheel across, or more",
		"the guard is on, and its tongue is within 1/4 in (6 mm)",
		"the rest is clamped within 1/8 in (3 mm), set with the wheel stopped",
		"eye protection is on; no gloves, nothing loose near the wheel",
		"nobody stands in the wheel's plane while it runs up; a new wheel runs a minute first",
		"the drill goes to the face of the wheel, never to its side",
	} {
		g.Rows = append(g.Rows, []sheet.Cell{sheet.V(float64(i + 1)), sheet.W(line)})
	}
	return g
}

var wheelCautions = []string{
	"a wheel that was dropped or sounds dead is not run",
	"work to the shop's own rules and the local code; ask a qualified person when unsure",
}
