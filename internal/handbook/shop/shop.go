// Package shop reads what a shop has set for itself: what its gauges resolve,
// its own limits, and materials that it changes or adds.
package shop

import (
	"math"

	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/strict"
)

// Shop is a shop's own settings.
type Shop struct {
	Name   string
	Gauges quantity.Gauges
	Book   *handbook.Book
	Screen Screen
}

// Screen is how a shop has its answers, where neither a flag nor the environment says
// otherwise. The zero Screen says nothing.
type Screen struct {
	Units  quantity.System // of bare numbers that are typed without a size's unit
	Width  int             // columns
	Colour string          // one of Colours
}

// Colours are the words for when to colour an answer.
var Colours = []string{"auto", "always", "never"}

// The widths, in columns, that an answer can be printed for.
const LeastWidth, MostWidth = 30, 1000

const degree = math.Pi / 180

// reader collects what is wrong with a file.
type reader struct{ strict.Reader }

// Read reads a shop's file. Everything wrong with it is returned, each with its
// line and column.
func Read(file, text string) (*Shop, fault.List) {
	root, errs := strict.Parse(file, text)
	if len(errs) > 0 {
		return nil, errs
	}
	rd := &reader{strict.Reader{File: file}}
	s := &Shop{Name: "the shop", Book: &handbook.Book{}}
	rd.Entries(root,
		strict.On("name", func(n strict.Node) { s.Name = rd.Word(n) }),
		strict.On("gauges", func(n strict.Node) {
			rd.Entries(n,
				strict.On("caliper", func(n strict.Node) { s.Gauges.Caliper = rd.upTo(1, n, quantity.Length) }),
				strict.On("protractor", func(n strict.Node) { s.Gauges.Protractor = rd.upTo(10*degree, n, quantity.Angle) }),
				strict.On("indicator", func(n strict.Node) { s.Gauges.Indicator = rd.upTo(1, n, quantity.Length) }),
			)
		}),
		strict.On("units", func(n strict.Node) { s.Screen.Units = rd.units(n) }),
		strict.On("width", func(n strict.Node) { s.Screen.Width = rd.width(n) }),
		strict.On("color", func(n strict.Node) { s.Screen.Colour = rd.oneOf(n, Colours) }),
		strict.On("limits", func(n strict.Node) { rd.limits(n, s.Book) }),
		strict.On("materials", func(n strict.Node) { rd.materials(n, s.Book) }),
	)
	s.Book.Sign(s.Name + ", " + file)
	if len(rd.Errs) > 0 {
		return nil, rd.Errs
	}
	return s, nil
}

func (rd *reader) limits(n strict.Node, b *handbook.Book) {
	rd.Entries(n,
		strict.On("point-angle", func(n strict.Node) { b.PointTolerance = rd.upTo(15*degree, n, quantity.Angle) }),
		strict.On("chisel-angle", func(n strict.Node) { b.Chisel.Low, b.Chisel.High = rd.obtuse(n) }),
		strict.On("lip-height", func(n strict.Node) { b.LipHeightMost = rd.upTo(1, n, quantity.Length) }),
		strict.On("chisel-ratio", func(n strict.Node) { b.ChiselMost = rd.part(n) }),
		strict.On("flank-wear", func(n strict.Node) { b.FlankMost = rd.upTo(2, n, quantity.Length) }),
		strict.On("margin-wear", func(n strict.Node) { b.MarginMost = rd.upTo(10, n, quantity.Number) }),
		strict.On("chip-room", func(n strict.Node) { b.ChipRoom = rd.upTo(10, n, quantity.Number) }),
		strict.On("web-ratio", func(n strict.Node) { b.WebMost = rd.part(n) }),
		strict.On("clean-up", func(n strict.Node) { b.CleanUp = rd.upTo(2, n, quantity.Length) }),
		strict.On("every", func(n strict.Node) { b.Every = rd.upTo(10, n, quantity.Length) }),
		strict.On("web-taper", func(n strict.Node) { b.Taper = rd.upTo(0.1, n, quantity.Taper) }),
	)
}
