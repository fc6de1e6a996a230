package crib

import (
	_ "embed"

	"evenlip/internal/fault"
	"evenlip/internal/handbook"
)

// SampleFile is what the embedded crib is called where a file's name would
// stand.
const SampleFile = "SAMPLE"

//go:embed sample.yaml
var sample []byte

// SampleText returns the file of the embedded crib.
func SampleText() []byte { return append([]byte(nil), sample...) }

// Sample reads the embedded crib, every drill of which is invented.
func Sample(book *handbook.Book) (*Crib, fault.List) {
	c, errs := Read(SampleFile, sample, book)
	if c != nil {
		c.Sample = true
	}
	return c, errs
}

// NewText is what a new crib's file begins with.
const NewText = `# A tool crib: one drill a list item, its keys the flags of evenlip inspect.
# Lengths and sizes as you write them: 12mm, 1/2in, 0.085in, '#7' (quoted: to YAML
# a bare # begins a remark).
version: 1
name: our crib

# How many usable drills of a size are to be in the drawer, such as
# keep:
#   12mm: 2

drills: []
# drills:
#   - id: A1
#     size: 12mm
#     series: jobber      # jobber, stub or long
#     shank: parallel     # parallel, taper or reduced
#     web: 2mm
#     chisel-angle: 125
#     lip-angle: 59,59
#     lip-height: 0.02mm
#     clearance: 12,12
#     flute: 80mm
#     depth: 30mm         # the deepest hole it is wanted for
`
