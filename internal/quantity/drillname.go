package quantity

import (
	"strconv"
	"strings"

	"evenlip/internal/handbook"
)

const (
	numbersRun = "number sizes run from #1 to #80"
	lettersRun = "letter sizes run from A to Z"
)

// drillName reads a drill's number or letter: "#7", "no.7", "No 7", "F",
// "letter f". named says that s is meant as such a name, and the hint, if any,
// why it is none.
func drillName(s string) (mm float64, hint string, named bool) {
	low := strings.ToLower(s)
	if number, ok := cutNumberMark(low); ok {
		n, err := strconv.ParseUint(number, 10, 8)
		mm, ok := handbook.NumberDrill(int(n))
		if err != nil || !ok {
			return 0, numbersRun, true
		}
		return mm, "", true
	}
	letter, spelt := strings.CutPrefix(low, "letter ")
	letter = strings.TrimLeft(letter, " ")
	if !spelt && len(letter) != 1 {
		return 0, "", false
	}
	if len(letter) == 1 {
		if mm, ok := handbook.LetterDrill(letter[0]); ok {
			return mm, "", true
		}
	}
	if spelt {
		return 0, lettersRun, true
	}
	return 0, "", false
}

// cutNumberMark drops the mark in front of a drill number. The words count
// only before a figure, so that "nothing" is no number.
func cutNumberMark(low string) (number string, ok bool) {
	for _, mark := range [...]string{"#", "number", "no.", "no"} {
		rest, found := strings.CutPrefix(low, mark)
		rest = strings.TrimLeft(rest, " ")
		if found && (mark == "#" || digits(cutSign(rest)) > 0) {
			return rest, true
		}
	}
	return "", false
}
