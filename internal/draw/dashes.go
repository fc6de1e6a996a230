package draw

import "math"

// pattern says which dots of a line are set: those whose place along it, in
// dots, falls into the first part of a period.
var pattern = [...]struct{ period, drawn float64 }{Wide: {1, 1}, Narrow: {3, 1}, Dashed: {4, 2}, Chain: {4, 1}}

// inLetters is the same of lines whose gaps would be lost in a letter: cell by
// cell, what is no space is drawn.
var inLetters = [...]string{Dashed: "- ", Chain: "--- - "}

// drawnInLetters reports whether a line from a to b is drawn in the cell of the
// dot at (x, y). It goes by the cell's column or row, so that lines on one
// height are dashed alike.
func drawnInLetters(l Line, a, b Pt, x, y int) bool {
	at := y / dotsDown
	if math.Abs(b.X-a.X)*dotsDown >= math.Abs(b.Y-a.Y)*dotsAcross {
		at = x / dotsAcross
	}
	return inLetters[l][at%len(inLetters[l])] != ' '
}

// levelled returns y for a line that slants, and the middle of y's cell for one
// that is level, so that its letters are all of one kind.
func levelled(a, b Pt, y int) int {
	if a.Y != b.Y {
		return y
	}
	return y - y%dotsDown + dotsDown/2
}
