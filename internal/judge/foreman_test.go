package judge_test

import (
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenlip/internal/command/point"
	"evenlip/internal/command/regrind"
	"evenlip/internal/testkit"
)

// testdata/foreman.txt has what a foreman would say of a drill, what evenlip says and
// what its plan takes off, and why either is not what the foreman said. Who wrote the
// first part knew the rules; who wrote the last 36 had seen neither them nor evenlip.
func TestWhatAForemanSays(t *testing.T) {
	text, err := os.ReadFile("../../testdata/foreman.txt")
	if err != nil {
		t.Fatal(err)
	}
	foreman := testkit.Against(t, testkit.Trade, "what a foreman says of drills on the bench").Because("the last 36 by somebody who had seen neither the rules nor the program; the others by people who knew the rules, some after evenlip was asked")
	blocks := strings.Split(strings.TrimSpace(string(text)), "\n\n")[1:]
	if len(blocks) < 30 {
		t.Errorf("%d drills", len(blocks))
	}
	for _, block := range blocks {
		title, rest, _ := strings.Cut(block, "\n")
		field := map[string]string{}
		for line := range strings.Lines(rest) {
			name, said, _ := strings.Cut(strings.TrimSpace(line), " ")
			field[name] = strings.TrimSpace(said)
		}
		got, plan := said(t, field["read"])
		if got != field["evenlip"] {
			t.Errorf("%s: %s, and the file has %s", title, got, field["evenlip"])
		}
		planned, stock, step := metal(t, field["plan"])
		if plan.word != planned || math.Abs(plan.stock-stock) > step/2+1e-9 {
			t.Errorf("%s: the plan is %s, %.4g mm off, and the file has %s", title, plan.word, plan.stock, field["plan"])
		}
		words, _, _ := strings.Cut(field["foreman"], ":")
		least, most, ranged := strings.Cut(words, " to ")
		want, off, step := metal(t, least)
		high := off
		if ranged {
			_, high, _ = metal(t, "to "+most)
		}
		word, _, _ := strings.Cut(got, ":")
		metalToo := step == 0 || plan.stock >= off-max(0.05, off/4)-1e-9 && plan.stock <= high+max(0.05, high/4)+1e-9
		switch {
		case field["differs"] == "":
			foreman.Says(title, word, want)
			if !metalToo {
				t.Errorf("%s: the foreman takes %.4g to %.4g mm off, the plan %.4g, and no line says why", title, off, high, plan.stock)
			}
		case word == want && metalToo:
			t.Errorf("%s: the file says that the two differ, and they do not", title)
		}
	}
}

type planned struct {
	word  string
	stock float64
}

// said is what evenlip says of a drill and of its regrind, as the file has it.
func said(t *testing.T, read string) (verdict string, plan planned) {
	d := of(read).Drill(t)
	if len(check(d)) > 0 {
		return "refused", planned{"refused", 0}
	}
	v := point.Inspect.Sheet(d, false).Verdict
	verdict = v.Word
	if verdict == "" {
		verdict = "look"
	}
	if len(v.Reasons) > 0 {
		slices.Sort(v.Reasons)
		verdict += ": " + strings.Join(v.Reasons, " ")
	}
	s := regrind.Command.Sheet(d, false)
	plan = planned{s.Lookup("plan").Word, s.Lookup("stock_mm").Value}
	if plan.word == "" {
		plan.word = "none"
	}
	if math.IsNaN(plan.stock) { // nothing but the word is said of a cracked drill
		plan.stock = 0
	}
	return verdict, plan
}

// metal takes "regrind .005in" apart: the word, how much in mm, and the step to which
// it is given, 0 where it is not.
func metal(t *testing.T, text string) (word string, stock, step float64) {
	word, length, found := strings.Cut(text, " ")
	unit := 1.0
	switch {
	case !found:
		return word, 0, 0
	case length == "0":
		return word, 0, 1e-6
	case strings.HasSuffix(length, "in"):
		unit, step = inch, 0.001*inch
	default:
		step = 0.05
	}
	stock, err := strconv.ParseFloat(strings.TrimRight(length, "inm"), 64)
	if err != nil {
		t.Errorf("%q: %v", text, err)
	}
	return word, stock * unit, step
}
