package handbook

import "slices"

var fluteSource = Source{Practice, "", "ordinary helix for most work; high helix for deep holes and powdery chips, as of grey cast iron; straight flutes for brass, lead, copper and most plastics"}

// Flute is a kind of drill flute.
type Flute uint8

// The kinds.
const (
	OrdinaryHelix Flute = iota
	HighHelix
	StraightFlutes
)

// String returns the kind in words.
func (f Flute) String() string {
	return [...]string{"ordinary helix", "high helix", "straight flutes"}[f]
}

// straightFor are the materials of the list that want straight flutes.
var straightFor = [...]string{"brass", "leaded-brass", "copper", "plastics", "nylon"}

// powderyFrom are the materials of the list whose chips are powdery.
var powderyFrom = [...]string{"cast-iron-150"}

// Powdery reports whether a material's chips are powdery, and where that is from.
func Powdery(m *Material) (bool, *Source) {
	return m != nil && slices.Contains(powderyFrom[:], m.Kin), &fluteSource
}

// FluteFor returns the flute that a material, nil for one not known, wants in an
// ordinary or a deep hole. Source: common practice.
func FluteFor(m *Material, deep bool) (Flute, *Source) {
	switch {
	case m != nil && slices.Contains(straightFor[:], m.Kin):
		return StraightFlutes, &fluteSource
	case deep:
		return HighHelix, &fluteSource
	}
	return OrdinaryHelix, &fluteSource
}

// fluteTables returns the table of this file.
func fluteTables() []Table {
	return []Table{{"flutes", "Flutes by work", fluteSource, []string{"flute", "work"}, func() [][]string {
		return [][]string{
			{OrdinaryHelix.String(), "most work"},
			{HighHelix.String(), "deep holes, powdery chips"},
			{StraightFlutes.String(), "brass, lead, copper, most plastics"},
		}
	}}}
}
