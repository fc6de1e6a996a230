package strict

import (
	"errors"
	"io"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// mostFaults bounds the complaints about what is no plain YAML.
const mostFaults = 20

// broken is a file that is no YAML. The library stops at its first complaint and
// tells the line alone; so each block is tried by itself, and what is wrong with
// one does not hide the others.
type broken struct {
	file   string
	lines  []string // those of the blocks at fault are emptied
	faults []error
	lost   []string // the keys of the entries at fault
	failed int      // blocks; of more than can be told none is looked for
}

// mend returns what is wrong with a file that is no YAML. A block at fault is set
// aside; what can be read without it goes along with the faults.
func mend(file, text string) error {
	b := &broken{file: file, lines: linesOf(text)}
	entries := entriesOf(b.lines)
	heads := make([]block, len(entries))
	for i, e := range entries {
		heads[i] = e.head
	}
	var bad []block
	for _, head := range b.failing(heads) {
		bad = append(bad, head)
		b.lost = append(b.lost, head.key)
	}
	for _, e := range entries {
		bad = append(bad, b.failingItems(e.items)...)
	}
	slices.SortFunc(bad, func(x, y block) int { return x.from - y.from })
	for _, at := range bad[:min(len(bad), mostFaults)] {
		b.tell(at)
	}
	for _, e := range entries {
		b.setAside(e, bad)
	}
	return b.rest()
}

// atOnce is how many blocks are tried together before any of them is tried by
// itself: a long file is gone through once, and not once more for every halving.
const atOnce = 256

// failing returns the blocks that are no YAML.
func (b *broken) failing(some []block) (bad []block) {
	for part := range slices.Chunk(some, atOnce) {
		bad = append(bad, b.halved(part)...)
	}
	return bad
}

// halved returns the same of a few blocks, halving what is tried until each stands
// alone.
func (b *broken) halved(some []block) []block {
	if b.failed > mostFaults || complaint(b.text(some)) == "" {
		return nil
	}
	if len(some) == 1 {
		b.failed++
		return some
	}
	half := len(some) / 2
	bad := append(slices.Clone(b.halved(some[:half])), b.halved(some[half:])...)
	if len(bad) == 0 && some[0].keyless() { // by itself it is a text, and so no fault
		return some[:1]
	}
	return bad
}

// failingItems returns the items that are no YAML, or out of line.
func (b *broken) failingItems(items []block) []block {
	var straight, bad []block
	for _, it := range items {
		if it.column == items[0].column {
			straight = append(straight, it)
		} else {
			bad = append(bad, it)
		}
	}
	return append(bad, b.failing(straight)...)
}

func (b *broken) text(some []block) string {
	var out strings.Builder
	for _, at := range some {
		for _, line := range b.lines[at.from:at.to] {
			out.WriteString(line)
		}
	}
	return out.String()
}

// tell tells the faults of a block: the first, and those that can be seen once
// that line is gone.
func (b *broken) tell(at block) {
	part := slices.Clone(b.lines[at.from:at.to])
	if line, column, fault := illegible(strings.Join(part, "")); fault != nil {
		b.fault(at.from+line-1, column, *fault)
		return
	}
	if at.item && at.column != at.first {
		b.fault(at.from, at.column+1, noYAML(outOfLine(at.column, at.first)))
		return
	}
	for last := -1; len(b.faults) < mostFaults; {
		line, said := firstBad(part)
		if line <= last {
			return
		}
		last = line
		l := look{part: part, line: line, said: said}
		where, column, fault := l.explain()
		b.fault(at.from+where, column, noYAML(fault))
		if !removable(part, line) {
			return
		}
		part[line] = breakOf(part[line])
		if complaint(strings.Join(part, "")) == "" {
			return
		}
	}
}

// fault tells what is wrong at a line, counted from 0.
func (b *broken) fault(line, column int, f fault) {
	b.faults = append(b.faults, &Error{File: b.file, Line: line + 1, Column: column, Text: f.text, Hint: f.hint})
}

// noYAML says that a fault is one of the file's form, and not of what it says.
func noYAML(f fault) fault {
	if f.text != noAnchors {
		f.text = "not YAML: " + f.text
	}
	return f
}

// setAside empties the lines of an entry's blocks that are at fault; a list goes
// with its head.
func (b *broken) setAside(e entry, bad []block) {
	isBad := func(at block) bool { return slices.ContainsFunc(bad, func(x block) bool { return x.from == at.from }) }
	headless := isBad(e.head)
	for _, at := range append([]block{e.head}, e.items...) {
		if headless || isBad(at) {
			for i := at.from; i < at.to; i++ {
				b.lines[i] = breakOf(b.lines[i])
			}
		}
	}
}

// rest reads what is left of the file. Where not even that is YAML, what else is
// wrong cannot be told yet, and is said to be so.
func (b *broken) rest() error {
	d, err := decode(b.file, strings.Join(b.lines, ""))
	if err != nil && len(b.faults) == 0 {
		b.tell(block{to: len(b.lines)})
	}
	if err != nil || len(b.faults) == mostFaults {
		last := b.faults[len(b.faults)-1].(*Error)
		last.Hint += "; what else is wrong can be told once this is mended"
	}
	faults := append(b.faults, d.faults...)
	slices.SortStableFunc(faults, ByPlace)
	return &document{root: d.root, lost: append(b.lost, d.lost...), faults: faults}
}

// complaint returns what the library has against a text, "" for nothing.
func complaint(text string) string {
	_, said := complaintAt(text)
	return said
}

func complaintAt(text string) (line int, what string) {
	if line, _, bad := illegible(text); bad != nil {
		return line, bad.text
	}
	dec := yaml.NewDecoder(strings.NewReader(text))
	for {
		var n yaml.Node
		switch err := dec.Decode(&n); {
		case errors.Is(err, io.EOF):
			return 0, ""
		case err != nil:
			return said(err)
		}
	}
}

// How many lines of a block are tried one by one, and how large a block is tried
// at all.
const (
	window    = 32
	mostTried = 128 << 10 // bytes
)

// firstBad returns the line of a block from which on it is no YAML, and what the
// library says of it: the first line after the longest beginning that is YAML.
// Brackets that are open there are closed. Of a very large block it is the line
// that the library names.
func firstBad(part []string) (line int, said string) {
	whole := strings.Join(part, "")
	if len(whole) > mostTried {
		line, said = complaintAt(whole)
		return min(max(line, 1), len(part)) - 1, said
	}
	complaint := func(lines int) string {
		text := strings.Join(part[:lines], "")
		return complaint(text + closers(text))
	}
	good, bad := 0, len(part)
	switch {
	case complaint(bad) != "":
	case lastOpen(whole) >= 0: // it is never closed
		return bad - 1, ""
	default:
		return slices.IndexFunc(part, busy), ""
	}
	for bad-good > window {
		if half := (good + bad) / 2; complaint(half) == "" {
			good = half
		} else {
			bad = half
		}
	}
	for bad-1 > good && complaint(bad-1) != "" {
		bad--
	}
	return bad - 1, complaint(bad)
}

// removable reports whether a block's other lines mean the same without that
// line: it does not begin the block, and nothing hangs on it.
func removable(part []string, line int) bool {
	above := slices.IndexFunc(part, busy)
	if line <= above || lastOpen(strings.Join(part[:line], "")) >= 0 {
		return false
	}
	for i, other := range part[:line] {
		if busy(other) {
			above = i
		}
	}
	for _, next := range part[line+1:] {
		if busy(next) {
			return columnOf(next) <= columnOf(part[above]) && (!isItem(next) || isItem(part[line]))
		}
	}
	return true
}
