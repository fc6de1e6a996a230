package crib

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/testkit"
)

// laid is a line of a drill's, and the reading that it is of; size for a line
// that no record changes.
type laid struct {
	text string
	of   drill.Reading
}

// hand lays a drill out as a hand may, one reading a line: its entries in any order,
// in any quotes, remarks and empty lines anywhere.
type hand struct {
	rt      *rapid.T
	remarks int
	lines   []laid
}

// remark is one more, unlike all others.
func (h *hand) remark() string {
	h.remarks++
	return "#" + rapid.SampledFrom([]string{" ", "", " - ", " [", "] ", " it's ", " \"", ": ", " # "}).Draw(h.rt, "mark") + fmt.Sprint("r", h.remarks) + rapid.SampledFrom([]string{"", " ", "]", "'", ": x"}).Draw(h.rt, "end")
}

// behind is a remark behind something, or nothing.
func (h *hand) behind() string {
	if rapid.Bool().Draw(h.rt, "remark behind") {
		return rapid.SampledFrom([]string{" ", "   ", "\t"}).Draw(h.rt, "blanks") + h.remark()
	}
	return ""
}

// between lays lines that say nothing.
func (h *hand) between() {
	for range rapid.IntRange(0, 2).Draw(h.rt, "lines between") {
		text := ""
		if rapid.Bool().Draw(h.rt, "a remark") {
			text = strings.Repeat(" ", rapid.IntRange(0, 10).Draw(h.rt, "indent")) + h.remark()
		}
		h.lines = append(h.lines, laid{text, drill.Size})
	}
}

func (h *hand) line(of drill.Reading, text string) {
	h.lines = append(h.lines, laid{text + h.behind(), of})
}

// quoted is a value in one of the ways to write it.
func (h *hand) quoted(text string) string {
	quote := rapid.SampledFrom([]string{"", "'", "\""}).Draw(h.rt, "quote")
	return quote + text + quote
}

// entry lays one reading; of a pair, in one of two ways.
func (h *hand) entry(of drill.Reading, key, value string) {
	if (of == drill.LipAngle || of == drill.LipHeight) && rapid.Bool().Draw(h.rt, "between brackets") {
		h.line(of, "    "+key+": ["+strings.ReplaceAll(value, ",", ", ")+"]")
		return
	}
	h.line(of, "    "+key+": "+h.quoted(value))
}

func (h *hand) drill() {
	entries := []struct {
		of         drill.Reading
		key, value string
	}{{drill.Size, "id", "b"}, {drill.Size, "size", "12mm"}, {drill.Size, "note", "it is good"}}
	for _, e := range []struct {
		of    drill.Reading
		value string
	}{{drill.Web, "2mm"}, {drill.LipAngle, "59,58"}, {drill.LipAngle, "59"}, {drill.LipHeight, "0,0.1mm"}, {drill.FlankWear, "0.3mm"}, {drill.CornerWear, "0.5mm"}, {drill.Flute, "70mm"}, {drill.ChiselLength, "2.4mm"}} {
		twice := len(entries) > 0 && entries[len(entries)-1].of == e.of
		if !twice && rapid.Bool().Draw(h.rt, e.of.String()) {
			entries = append(entries, struct {
				of         drill.Reading
				key, value string
			}{e.of, e.of.String(), e.value})
		}
	}
	entries = rapid.Permutation(entries).Draw(h.rt, "order")
	past := rapid.IntRange(-len(entries), len(entries)).Draw(h.rt, "history at")
	for i, e := range entries {
		h.entry(e.of, e.key, e.value)
		h.between()
		if i == past {
			h.line(drill.Size, "    history:")
			h.line(drill.Size, "    - {date: 2026-01-02, what: readings, note: '# no remark'}")
			h.between()
		}
	}
	h.lines[0].text = "  - " + h.lines[0].text[4:]
}

// changes are those that a drawn drill is put through.
var changes = []Change{
	ground("0.6mm"), lips("60"), lips("60,58"), lips("59,57"), lips("57,60"),
	{Date: "2026-11-25", What: Grind, Stock: "1mm", Note: "# all", Readings: map[drill.Reading]string{drill.LipAngle: "60,59", drill.LipHeight: "0"}},
	{Date: "2026-11-25", What: Correction, Readings: map[drill.Reading]string{drill.Web: "1.9mm", drill.Flute: "71mm", drill.LipHeight: "0.1mm,0", drill.LeastDiameter: "#8"}},
	{Date: "2026-11-25", What: Thinning, Readings: map[drill.Reading]string{drill.Web: "1.5mm"}},
	{Date: "2026-11-25", What: Retired},
}

// A drill laid out in any such way: no record of it is refused, what
// stands before and after the drill comes back byte for byte, and inside it every
// remark, every empty line and every line of a reading that is not moved, in their
// order. A list's dash may have come to stand alone, or before another key.
func TestEveryLineInsideTheDrillStays(t *testing.T) {
	testkit.Property(t, "a record keeps every remark of the drill that it is of, and every line that it does not bear on, in their order", func(rt *rapid.T) {
		h := &hand{rt: rt}
		h.drill()
		ch := rapid.SampledFrom(changes).Draw(rt, "change")
		eol := rapid.SampledFrom([]string{"\n", "\r\n", "\r"}).Draw(rt, "line end")
		lines := make([]string, len(h.lines))
		for i, line := range h.lines {
			lines[i] = line.text + eol
		}
		start := strings.Join([]string{"version: 1", "drills:", "  - id: a # of a", "    size: 3mm", ""}, eol)
		end := strings.Join([]string{"  - {id: c, size: 4mm}", "# the end"}, eol)
		text := start + strings.Join(lines, "") + end
		out, next, err := Rewrite("f", []byte(text), "b", ch, nil)
		if err != nil {
			rt.Fatalf("%v\n%s", err, text)
		}
		inside, before := strings.CutPrefix(string(next), start)
		inside, after := strings.CutSuffix(inside, end)
		if !before || !after || strings.ContainsAny(strings.ReplaceAll(inside, eol, ""), "\r\n") {
			rt.Fatalf("what is about it changed:\n%s", next)
		}
		moved := func(r drill.Reading) bool {
			return slices.ContainsFunc(out.Moves, func(m Move) bool { return m.Reading == r })
		}
		if lost := h.lost(strings.Split(inside, eol), moved); lost != "" {
			rt.Fatalf("%q is lost of\n%s\nwhich became\n%s", lost, text, next)
		}
	})
}

// lost returns the first of the drill's lines that is not among those that a
// record has left, "" for none.
func (h *hand) lost(left []string, moved func(drill.Reading) bool) string {
	bare := func(line string) string { return strings.TrimPrefix(strings.TrimLeft(line, " "), "- ") }
	at := 0
	for _, line := range h.lines {
		stays := func(s string) bool { return s == line.text || bare(s) == bare(line.text) }
		if moved(line.of) {
			i := strings.IndexByte(line.text, '#')
			if i < 0 {
				continue
			}
			stays = func(s string) bool { return strings.HasSuffix(s, line.text[i:]) }
		}
		found := slices.IndexFunc(left[at:], stays)
		if found < 0 {
			return line.text
		}
		at += found + 1
	}
	return ""
}
