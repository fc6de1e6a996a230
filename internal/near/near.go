// Package near says which of the names that there are was meant by one that is
// none of them.
package near

import (
	"strings"

	"github.com/agnivade/levenshtein"
)

// Name returns the name that is fewest letters away from what was typed, capitals
// aside; "" where none is near. A third of the letters may differ, three at the
// most, but one in any case: of a short name with more changed another is meant.
func Name(typed string, names ...string) string {
	best, least := "", slips(typed)+1
	for _, name := range names {
		if n := levenshtein.ComputeDistance(strings.ToLower(typed), strings.ToLower(name)); n < least && n < len(name) {
			best, least = name, n
		}
	}
	return best
}

// longest is beyond any name: what is longer is not compared.
const longest = 64

func slips(typed string) int {
	if len(typed) > longest {
		return -1
	}
	return max(1, min(3, (len(typed)+1)/3))
}

// Hint puts the name that was meant as a question, or, where none is near, says
// what else helps.
func Hint(typed, otherwise string, names ...string) string {
	if name := Name(typed, names...); name != "" {
		return "did you mean " + name + "?"
	}
	return otherwise
}
