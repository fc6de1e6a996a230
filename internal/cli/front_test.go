package cli_test

import (
	"slices"
	"strings"
	"testing"

	"evenlip/internal/cli"
)

// Who calls evenlip alone sees every command on a drill named, left of what it is for.
func TestFrontPageNamesEveryCommand(t *testing.T) {
	var named []string
	for line := range strings.Lines(cli.FrontPage) {
		if names, _, two := strings.Cut(strings.TrimSpace(line), "  "); two {
			named = append(named, strings.Fields(names)...)
		}
	}
	for _, name := range cli.Calculations() {
		if !slices.Contains(named, name) {
			t.Errorf("%s is not named", name)
		}
	}
}
