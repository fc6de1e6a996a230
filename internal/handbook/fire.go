package handbook

import "slices"

var fireSource = Source{Practice, "", "fine chips and grinding dust of magnesium and titanium burn, and water feeds a magnesium fire"}

// burning are the materials of the list whose chips and dust burn.
var burning = [...]string{"magnesium", "titanium", "titanium-pure"}

// Burns reports whether the chips and dust of a material, nil for one not known,
// burn. Source: common practice.
func Burns(m *Material) (bool, *Source) {
	return m != nil && slices.Contains(burning[:], m.Kin), &fireSource
}

// fireTables returns the table of this file.
func fireTables() []Table {
	return []Table{{"fire", "Materials whose chips and dust burn", fireSource, []string{"material"}, func() [][]string {
		var out [][]string
		for _, name := range burning {
			out = append(out, []string{name})
		}
		return out
	}}}
}
