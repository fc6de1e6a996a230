package judge

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// docs/verdict.md tells of exactly the reasons that there are, each under the
// verdict it leads to and in the order in which they are told.
func TestDocsNameTheRules(t *testing.T) {
	page, err := os.ReadFile("../../docs/verdict.md")
	if err != nil {
		t.Fatal(err)
	}
	var want, got []string
	for _, r := range rules {
		want = append(want, r.verdict.String()+" "+r.code)
	}
	heading, code := "", regexp.MustCompile(`\*\*([a-z-]+)\*\*`)
	for line := range strings.Lines(string(page)) {
		if h, ok := strings.CutPrefix(line, "## "); ok {
			heading = strings.ToLower(strings.TrimSpace(h))
		}
		if !strings.HasPrefix(line, "- ") {
			continue
		}
		for _, m := range code.FindAllStringSubmatch(line, -1) {
			got = append(got, heading+" "+m[1])
		}
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("docs/verdict.md has\n%s\nthe rules are\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
