package shop

import (
	"math"

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
	seen := map[string]bool{}
	for _, e := range n.Entries() {
		name := e.Key.Text()
		if seen[name] {
			rd.Fault(e.Key, quote(name)+" stands twice", "keep one of them")
			continue
		}
		seen[name] = true
		if m, ok := rd.base(e); ok {
			rd.material(e.Value, &m)
			b.Own = append(b.Own, m)
		}
	}
}

// base returns what a shop's material starts from.
func (rd *reader) base(e strict.Entry) (handbook.Material, bool) {
	name := e.Key.Text()
	if !e.Value.IsMap() {
		rd.Fault(e.Value, name+" takes what is set for it, a line each", "such as point-angle: 120deg")
		return handbook.Material{}, false
	}
	if m, ok := handbook.FindMaterial(name); ok && m.Name == name {
		return *m, true
	}
	for _, x := range e.Value.Entries() {
		if x.Key.Text() != "like" {
			continue
		}
		m, ok := handbook.FindMaterial(x.Value.Text())
		if !ok {
			hint := "evenlip material lists them"
			if near := handbook.SuggestMaterial(x.Value.Text()); near != "" {
				hint = "did you mean " + near + "?"
			}
			rd.Fault(x.Value, "no material is called "+quote(x.Value.Text()), hint)
			return handbook.Material{}, false
		}
		m.Name, m.Title, m.Also = name, name, nil
		return *m, true
	}
	rd.Fault(e.Key, quote(name)+" is new: it needs a material that it is like", "like: steel-200")
	return handbook.Material{}, false
}

func (rd *reader) material(n strict.Node, m *handbook.Material) {
	shop := &handbook.Source{Label: handbook.Shop}
	band := func(to *handbook.Band, kind quantity.Kind) func(strict.Node) {
		return func(n strict.Node) {
			low, high := rd.span(n, kind)
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
		strict.On("clearance", band(&m.Clearance, quantity.Angle)),
		strict.On("chisel-angle", band(&m.Chisel, quantity.Angle)),
		strict.On("helix", band(&m.Helix, quantity.Angle)),
		strict.On("speed", band(&m.Speed, quantity.Cutting)),
		strict.On("kd-thrust", func(n strict.Node) { m.KdThrust, m.KdThrustSource = rd.positive(n, quantity.Number), shop }),
		strict.On("kd-torque", func(n strict.Node) { m.KdTorque, m.KdTorqueSource = rd.positive(n, quantity.Number), shop }),
	)
}
