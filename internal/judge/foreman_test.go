package judge_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"evenlip/internal/command/point"
	"evenlip/internal/testkit"
)

// Thirty drills were judged on paper before evenlip was asked: testdata/foreman.txt.
// What evenlip says of each stands there, and why it is not what the foreman said.
func TestWhatAForemanSays(t *testing.T) {
	text, err := os.ReadFile("../../testdata/foreman.txt")
	if err != nil {
		t.Fatal(err)
	}
	foreman := testkit.Against(t, testkit.Trade, "what a foreman says of drills on the bench")
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
		v := point.Inspect.Sheet(possible(t, of(field["read"])), false).Verdict
		got := v.Word
		if got == "" {
			got = "look"
		}
		said, _, _ := strings.Cut(field["foreman"], ":")
		want, reasons, _ := strings.Cut(field["evenlip"], ":")
		slices.Sort(v.Reasons)
		if codes := strings.Fields(reasons); got != want || !slices.Equal(v.Reasons, codes) {
			t.Errorf("%s: %s: %v, and the file has %s: %v", title, got, v.Reasons, want, codes)
		}
		if field["differs"] == "" {
			foreman.Says(title, got, said)
		} else if got == said {
			t.Errorf("%s: the file says that the two words differ, and both are %s", title, got)
		}
	}
}
