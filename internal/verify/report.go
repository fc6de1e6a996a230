package verify

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// foldFrom is how many rows a table has before a reader has to ask for it.
const foldFrom = 16

// Report renders the evidence as Markdown. open says what is not verified.
func Report(parts []Part, open string) string {
	var b strings.Builder
	all := gatherChecks(parts)
	outside, apart := split(all)
	b.WriteString(head1(parts, outside, apart))
	b.WriteString("## Sources\n\n")
	writeSources(&b, outside)
	b.WriteString("\n## Held against print and practice\n")
	writeWorks(&b, outside)
	b.WriteString("\n## Worked a second time\n\nFigures worked out apart from the program, by hand, by vectors or by brute\nforce; they tell a slip from a formula, but share its assumptions.\n")
	writeWorks(&b, apart)
	b.WriteString("\n## Invariants\n\nWhat has to hold whatever the drill, over drawn cases, every time the tests\nrun.\n")
	writeInvariants(&b, parts)
	b.WriteString("\n## Fuzzed\n\n`make fuzz` runs each of these on changed input; `.ci/run` does so briefly.\n\n")
	writeFuzzed(&b, parts)
	b.WriteString("\n## Not verified, and why\n\n" + strings.TrimSpace(open) + "\n")
	return b.String()
}

// check is a check with the package that made it.
type check struct {
	Record
	Package string
}

func gatherChecks(parts []Part) []check {
	var out []check
	for _, p := range parts {
		for _, r := range p.Records {
			if r.Cases == 0 {
				out = append(out, check{r, p.Package})
			}
		}
	}
	slices.SortStableFunc(out, func(a, b check) int {
		return cmp.Or(cmp.Compare(a.rank(), b.rank()), cmp.Compare(a.Work, b.Work), natural(a.Place, b.Place),
			cmp.Compare(a.Package, b.Package), cmp.Compare(a.Test, b.Test), natural(a.What, b.What))
	})
	return out
}

// rank puts what was read in print first, then what is remembered, then the
// trade's rules.
func (c check) rank() int {
	switch {
	case strings.Contains(c.Label, string(InPrint)):
		return 0
	case strings.Contains(c.Label, string(Memory)):
		return 1
	}
	return 2
}

func split(all []check) (outside, apart []check) {
	for _, c := range all {
		if strings.HasPrefix(c.Label, string(Geometry)) || strings.HasPrefix(c.Label, string(Copy)) {
			apart = append(apart, c)
		} else {
			outside = append(outside, c)
		}
	}
	return outside, apart
}

func head1(parts []Part, outside, apart []check) string {
	works := len(groups(outside, workOf))
	invariants, cases, fuzzed := 0, 0, 0
	for _, p := range parts {
		fuzzed += len(p.Fuzzed)
		for _, r := range p.Records {
			if r.Cases > 0 {
				invariants++
				cases += r.Cases
			}
		}
	}
	return fmt.Sprintf(`# Verification

What the tests hold evenlip to, and how near it comes. They write this page:
each check leaves what was printed and what came out beside its package, `+"`make\nverification`"+` puts them together here, and a test fails when this page and the
tests no longer say the same.

| | |
|---|--:|
| checks against %d sources from outside | %d |
| checks against figures worked a second time | %d |
| invariants | %d |
| cases drawn for them in a run of the tests | %d |
| fuzz targets | %d |

"Allowed" is what the test lets pass: half the last printed digit where the
figures are the same, more where the printed figure is a rule of thumb or was
rounded before it was used. A difference is ours less the printed value, or the
nearer end of a printed band.

`, works, len(outside), len(apart), invariants, cases, fuzzed)
}

// group is what has one name.
type group struct {
	Name   string
	Checks []check
}

// groups gathers neighbours that have one name.
func groups(checks []check, name func(check) string) []group {
	var out []group
	for _, c := range checks {
		if n := len(out); n > 0 && out[n-1].Name == name(c) {
			out[n-1].Checks = append(out[n-1].Checks, c)
			continue
		}
		out = append(out, group{name(c), []check{c}})
	}
	return out
}

func workOf(c check) string { return c.Work + " · " + c.Label }

func writeSources(b *strings.Builder, checks []check) {
	b.WriteString("| source | label | checks | largest difference |\n|---|---|--:|--:|\n")
	for _, g := range groups(checks, workOf) {
		c := g.Checks[0]
		fmt.Fprintf(b, "| %s | %s | %d | %s |\n", upper(c.Work), c.Label, len(g.Checks), largest(g.Checks))
	}
}

// largest is the largest difference as a part of the printed value.
func largest(checks []check) string {
	most, known := 0.0, false
	for _, c := range checks {
		if part := c.part(); !math.IsNaN(part) {
			most, known = max(most, part), true
		}
	}
	if !known {
		return "-"
	}
	return strconv.FormatFloat(100*most, 'f', 1, 64) + " %"
}

func writeWorks(b *strings.Builder, checks []check) {
	for _, work := range groups(checks, workOf) {
		fmt.Fprintf(b, "\n### %s\n\n%s.\n", upper(work.Checks[0].Work), upper(work.Checks[0].Label))
		for _, place := range groups(work.Checks, func(c check) string { return c.Place + "\x00" + c.Package + "\x00" + c.Test }) {
			writePlace(b, place.Checks)
		}
	}
}

func writePlace(b *strings.Builder, checks []check) {
	c := checks[0]
	where := fmt.Sprintf("`%s` %s", c.Package, c.Test)
	if c.Place != "" {
		where = "**" + c.Place + "** · " + where
	}
	folded := len(checks) >= foldFrom
	if folded {
		fmt.Fprintf(b, "\n%s\n\n<details><summary>%d checks, largest difference %s</summary>\n", where, len(checks), largest(checks))
	} else {
		fmt.Fprintf(b, "\n%s\n", where)
	}
	b.WriteString("\n| | printed | evenlip | difference | allowed |\n|---|--:|--:|--:|--:|\n")
	for _, c := range checks {
		fmt.Fprintf(b, "| %s | %s | %s | %s | %s |\n", c.What, c.Printed+spaced(c.Unit), c.Ours+spaced(c.Unit), c.difference(), c.Allowed)
	}
	if folded {
		b.WriteString("\n</details>\n")
	}
}

// away is ours less what was printed, or less the nearer end of a band, 0
// within it; NaN for words.
func (c check) away() (away, printed float64) {
	low, high, band := strings.Cut(c.Printed, " to ")
	if !band {
		high = low
	}
	ours, err := strconv.ParseFloat(c.Ours, 64)
	from, errLow := strconv.ParseFloat(low, 64)
	to, errHigh := strconv.ParseFloat(high, 64)
	switch {
	case err != nil || errLow != nil || errHigh != nil:
		return math.NaN(), math.NaN()
	case ours > to:
		return ours - to, to
	case ours < from:
		return ours - from, from
	}
	return 0, from
}

// part is the difference as a part of the printed value; NaN where there is
// none.
func (c check) part() float64 {
	away, printed := c.away()
	if away == 0 {
		return 0
	}
	if printed == 0 {
		return math.NaN()
	}
	return math.Abs(away / printed)
}

func (c check) difference() string {
	away, _ := c.away()
	text := fixed(away, decimals(c.Ours))
	switch {
	case math.IsNaN(away):
		return "-"
	case strings.Trim(text, "-0.") == "":
		return "0"
	case away > 0:
		return "+" + text
	}
	return text
}

func writeInvariants(b *strings.Builder, parts []Part) {
	for _, p := range parts {
		rows := ""
		for _, r := range p.Records {
			if r.Cases > 0 {
				rows += fmt.Sprintf("| %s | %d | %s |\n", r.What, r.Cases, r.Test)
			}
		}
		for _, u := range p.Uncounted {
			rows += fmt.Sprintf("| %s | not counted | %s |\n", cmp.Or(strings.TrimSuffix(u.Says, "."), u.Name), u.Name)
		}
		if rows != "" {
			fmt.Fprintf(b, "\n`%s`\n\n| holds | cases | test |\n|---|--:|---|\n%s", p.Package, rows)
		}
	}
}

func writeFuzzed(b *strings.Builder, parts []Part) {
	b.WriteString("| package | target | |\n|---|---|---|\n")
	for _, p := range parts {
		for _, f := range p.Fuzzed {
			fmt.Fprintf(b, "| `%s` | %s | %s |\n", p.Package, f.Name, f.Says)
		}
	}
}

func upper(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
