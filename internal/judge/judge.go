// Package judge turns the readings of one drill into the five results (point,
// lip clearance, chisel edge, web after regrind, lip height), holds each
// against its limit and gives one verdict. Every command, file and line that
// asks about a drill's point comes through here.
package judge

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Result is the state of a drill's point, in millimetres and radians. A figure
// that the readings do not give is NaN.
type Result struct {
	Drill     Basics
	Point     Point
	Clearance Clearance
	Chisel    Chisel
	Web       Web
	Lips      Lips
	Face      Face
	Wear      Wear
	Held      [limits]sheet.Held
	Verdict   Verdict
}

// Basics are what every section leans on.
type Basics struct {
	D        float64 // NaN when no size was read
	Book     *handbook.Book
	Material *handbook.Material
	// Given says that the material was named and not taken for granted.
	Given bool
	Feed  float64
	// System picks the equations of the thrust: the handbook has them in inches, too.
	System quantity.System
	// Gauged says that gauges were named, so that nothing is forgiven for what a bench
	// gauge cannot tell.
	Gauged bool
	// FeedAssumed says that no feed was read and the usual one is used.
	FeedAssumed bool
}

// Compute works out everything that the readings of d give. The readings must
// have passed Check. It allocates nothing, unless lip lengths that no drill of
// that size can have make an error.
func Compute(d *drill.Drill) Result {
	var r Result
	r.Drill = basics(d)
	r.Point = pointOf(d, &r.Drill)
	r.Chisel = chiselOf(d, &r.Drill)
	r.Clearance = clearanceOf(d, &r)
	r.alongLips()
	r.Web = webOf(d, &r)
	r.Lips = lipsOf(d, &r)
	r.Face = faceOf(d)
	r.Wear = wearOf(d)
	r.hold()
	r.Lips.Evened = r.evened()
	r.Verdict = judge(&r)
	return r
}

// Figures puts the figures of the five results and of the wear into s. A cracked
// drill has none.
func Figures(r *Result, s *sheet.Sheet) {
	if !r.Wear.Cracked {
		sheet.Put(s, r, r.Held[:], &Letters, &FeedLetter, &ThrustLetters, &PointFigures, &CornerClearance, &FlankSlopes, &WorkingClearance, &ChiselEdge, &WebFigures, &LipPlace, &LipFigures, &WearFigures)
	}
}

// HeldFigures puts those of the same figures into s that the verdict holds against a
// limit, without their working.
func HeldFigures(r *Result, s *sheet.Sheet) {
	if !r.Wear.Cracked {
		sheet.PutHeld(s, r, r.Held[:], &PointFigures, &CornerClearance, &WorkingClearance, &ChiselEdge, &LipFigures, &WearFigures)
	}
}

func basics(d *drill.Drill) Basics {
	b := Basics{D: d.Value(drill.Size), Feed: d.Value(drill.Feed), System: d.System(), Book: d.Book, Gauged: d.Gauged}
	b.Given = d.Has(drill.Material)
	b.Material = materialOf(d)
	if math.IsNaN(b.Feed) && !math.IsNaN(b.D) {
		b.Feed, b.FeedAssumed = UsualFeed(b.D, b.Material), true
	}
	return b
}

// PointSource is where the point angle that the work wants comes from; nil where
// nothing is published.
func (b *Basics) PointSource() *handbook.Source {
	if b.Material == nil {
		return nil
	}
	return b.Material.PointSource
}

// DefaultMaterial is what the work is taken to be when nothing is said.
const DefaultMaterial = "steel-200"

func materialOf(d *drill.Drill) *handbook.Material {
	name := d.Written(drill.Material)
	if name == "" {
		name = DefaultMaterial
	}
	m, _ := d.Book.Material(name)
	return m
}

// pair returns both values of a paired reading; one value stands for both lips, which
// differ only where they are drawn.
func pair(d *drill.Drill, r drill.Reading) (a, b float64, both bool) {
	a, b, n := d.Pair(r)
	switch n {
	case 0:
		return math.NaN(), math.NaN(), false
	case 1:
		return a, b, false
	}
	return a, b, true
}

func known(vs ...float64) bool { return sheet.Known(vs...) }

// rounding is the part of a number that arithmetic may be off by.
const rounding = 1e-9
