package sheet

import "sync"

// pool keeps the memory of sheets that nobody needs any more: a batch of a
// million drills makes as many.
var pool = sync.Pool{New: func() any { return new(Sheet) }}

// New returns an empty sheet for the answer of a command.
func New(command string, explaining bool) *Sheet {
	s := pool.Get().(*Sheet)
	s.Command, s.Explaining = command, explaining
	return s
}

// Free gives the sheet's memory back. Nothing of the sheet may be used after.
func (s *Sheet) Free() {
	sections, inputs, findings, extra, args, steps := s.Sections[:0], s.Inputs[:0], s.Findings[:0], s.Extra[:0], s.args[:0], s.steps[:0]
	*s = Sheet{Sections: sections, Inputs: inputs, Findings: findings, Extra: extra, args: args, steps: steps}
	pool.Put(s)
}
