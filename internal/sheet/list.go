package sheet

import "evenlip/internal/quantity"

// List is what a screen shows of many drills, or of many readings of one: groups of them
// under a word, whose lines share their columns.
type List struct {
	// Columns are what stands over them, and which are numbers, one more for what is
	// wrong if that has a head; nil for no heads.
	Columns []Column
	Below   bool // it stands where figures do, below the answer and not in it
	Groups  []ListGroup
}

// ListGroup is the drills that have a word in common: REGRIND.
type ListGroup struct {
	Word  string // "" for none
	Lines []ListLine
	// Flow lets the lines run on, one behind the other: the bare names of those that
	// need nothing.
	Flow bool
}

// ListLine is one drill: what is told of it in columns, and behind them what is wrong.
type ListLine struct {
	System quantity.System // of its numbers, where the reader asked for none
	Cells  []quantity.Text
	Says   []quantity.Text
}
