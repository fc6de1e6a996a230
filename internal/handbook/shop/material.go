package shop

import (
	"math"
	"slices"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/strict"
)

// materials reads the materials that a shop changes or adds. A name that is
// embedded changes that one; a new name starts from the one it is like.
func (rd *reader) materials(n strict.Node, b *handbook.Book) {
	if !n.IsMap() {
		rd.Fault(n, "takes a name a line, with what is set for it below", "")
		return
	}
	for _, e := range n.Entries() {
		m, ok := rd.base(e)
		if !ok {
			continue
		}
		if slices.ContainsFunc(b.Own, func(own handbook.Material) bool { return handbook.SameName(own.Name, m.Name) }) {
			rd.Fault(e.Key, quote(e.Key.Text())+" stands twice", "keep one of them")
			continue
		}
		rd.material(e.Value, &m)
		b.Own = append(b.Own, m)
	}
}

// base returns what a shop's material starts from.
func (rd *reader) base(e strict.Entry) (handbook.Material, bool) {
	name := e.Key.Text()
	if !e.Value.IsMap() {
		rd.Fault(e.Value, name+" takes what is set for it, a line each", "such as point-angle: 120deg")
		return handbook.Material{}, false
	}
	known, isKnown := handbook.FindMaterial(name)
	for _, x := range e.Value.Entries() {
		if x.Key.Text() != "like" {
			continue
		}
		if isKnown {
			rd.Fault(x.Key, quote(name)+" is known and starts from its own figures", "leave the line out, or give another name")
			return handbook.Material{}, false
		}
		like, ok := handbook.FindMaterial(x.Value.Text())
		if !ok {
			rd.Fault(x.Value, "no material is called "+quote(x.Value.Text()), handbook.MaterialHint(x.Value.Text()))
			return handbook.Material{}, false
		}
		m := *like
		m.Name, m.Title, m.Also, m.ForceConstant = name, name, nil, 0
		return m, true
	}
	if isKnown {
		return *known, true
	}
	rd.Fault(e.Key, quote(name)+" is new: it needs a material that it is like", "like: steel-200")
	return handbook.Material{}, false
}

func (rd *reader) material(n strict.Node, m *handbook.Material) {
	shop := &handbook.Source{Label: handbook.Shop}
	band := func(to *handbook.Band, read func(strict.Node) (low, high float64)) func(strict.Node) {
		return func(n strict.Node) {
			low, high := read(n)
			*to = handbook.Band{Low: low, High: high, Source: shop}
		}
	}
	rd.Entries(n,
		strict.On("like", func(strict.Node) {}),
		strict.On("title", func(n strict.Node) { m.Title = rd.Word(n) }),
		strict.On("point-angle", func(n strict.Node) {
			if m.PointAim = rd.positive(n, quantity.Angle); m.PointAim >= math.Pi {
				rd.Fault(n, "a point angle lies under 180°", "")
			}
			m.PointSource = shop
		}),
		strict.On("clearance", band(&m.Clearance, rd.sharp)),
		strict.On("chisel-angle", band(&m.Chisel, rd.obtuse)),
		strict.On("helix", band(&m.Helix, rd.sharp)),
		strict.On("speed", band(&m.Speed, rd.speeds)),
		strict.On("kd-thrust", func(n strict.Node) { m.KdThrust, m.KdThrustSource = rd.positive(n, quantity.Number), shop }),
		strict.On("kd-torque", func(n strict.Node) { m.KdTorque, m.KdTorqueSource = rd.positive(n, quantity.Number), shop }),
	)
}
