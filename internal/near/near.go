// Package near says which of the names that there are was meant by one that is
// none of them.
package near

import (
	"strconv"
	"strings"
	"unicode"

	"github.com/agnivade/levenshtein"
)

// Name returns the name that is fewest letters away from what was typed, capitals
// aside; "" where none is near. A third of the letters may differ, three at the
// most, but one in any case: of a short name with more changed another is meant. Of
// two names as near, the one that begins longer as what was typed does.
func Name(typed string, names ...string) string {
	best, least := "", slips(typed)+1
	for _, name := range names {
		n := distance(strings.ToLower(typed), strings.ToLower(name))
		if n < len(name) && (n < least || n == least && best != "" && alike(typed, name) > alike(typed, best)) {
			best, least = name, n
		}
	}
	return best
}

// distance is how many letters are to be changed; two neighbours that changed places
// are one slip of the fingers.
func distance(a, b string) int {
	letters := levenshtein.ComputeDistance(a, b)
	for i := 1; i < len(a) && letters == 2; i++ {
		if a[:i-1]+a[i:i+1]+a[i-1:i]+a[i+1:] == b {
			return 1
		}
	}
	return letters
}

// alike returns how many letters two words have in common from the first.
func alike(a, b string) int {
	a, b = strings.ToLower(a), strings.ToLower(b)
	n := 0
	for n < min(len(a), len(b)) && a[n] == b[n] {
		n++
	}
	return n
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
// what else helps. A name with a line end or the like in it stands in quotes.
func Hint(typed, otherwise string, names ...string) string {
	name := Name(typed, names...)
	switch {
	case name == "":
		return otherwise
	case strings.ContainsFunc(name, func(r rune) bool { return !unicode.IsPrint(r) }):
		name = strconv.Quote(name)
	}
	return "did you mean " + name + "?"
}
