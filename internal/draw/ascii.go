package draw

import "math/bits"

// shape is a letter and the dots that it looks like, row by row.
type shape struct {
	letter rune
	rows   [dotsDown]string
}

func (s *shape) dots() (out uint8) {
	for y, row := range s.rows {
		for x := range row {
			if row[x] == 'x' {
				out |= brailleDot[y][x]
			}
		}
	}
	return out
}

var shapes = [...]shape{
	{'.', [...]string{"  ", "  ", "  ", "x "}}, {'.', [...]string{"  ", "  ", "  ", " x"}},
	{'_', [...]string{"  ", "  ", "  ", "xx"}},
	{'\'', [...]string{"x ", "  ", "  ", "  "}}, {'\'', [...]string{" x", "  ", "  ", "  "}},
	{'"', [...]string{"xx", "  ", "  ", "  "}},
	{'-', [...]string{"  ", "xx", "  ", "  "}}, {'-', [...]string{"  ", "  ", "xx", "  "}},
	{'-', [...]string{"  ", "x ", "  ", "  "}}, {'-', [...]string{"  ", " x", "  ", "  "}},
	{'-', [...]string{"  ", "  ", "x ", "  "}}, {'-', [...]string{"  ", "  ", " x", "  "}},
	{'~', [...]string{"  ", "x ", " x", "  "}}, {'~', [...]string{"  ", " x", "x ", "  "}},
	{'|', [...]string{"x ", "x ", "x ", "x "}}, {'|', [...]string{" x", " x", " x", " x"}},
	{'/', [...]string{" x", " x", "x ", "x "}}, {'/', [...]string{"  ", " x", "x ", "  "}},
	{'\\', [...]string{"x ", "x ", " x", " x"}},
	{'`', [...]string{"x ", " x", "  ", "  "}}, {',', [...]string{"  ", "  ", " x", "x "}},
	{':', [...]string{"  ", "x ", "  ", "x "}}, {':', [...]string{"x ", "  ", "x ", "  "}},
	{'+', [...]string{"x ", "xx", "x ", "x "}}, {'+', [...]string{" x", "xx", " x", " x"}},
	{'#', [...]string{"xx", "xx", "xx", "xx"}},
}

// letter returns the letter that looks most like the dots of a cell, the first
// of several.
func letter(dots uint8) rune {
	best, least := ' ', 9
	for i := range shapes {
		s := &shapes[i]
		if off := bits.OnesCount8(dots ^ s.dots()); off < least {
			best, least = s.letter, off
		}
	}
	return best
}
