package cli_test

import (
	"slices"
	"strings"
	"testing"

	"evenlip/internal/cli"
)

// Who calls evenlip alone sees every command on a drill named, apart from what it is for.
func TestFrontPageNamesEveryCommand(t *testing.T) {
	var named []string
	for _, cell := range strings.Split(strings.ReplaceAll(cli.FrontPage, "\n", "  "), "  ") {
		if name := strings.TrimSpace(cell); !strings.Contains(name, " ") {
			named = append(named, name)
		}
	}
	for _, name := range cli.Calculations() {
		if !slices.Contains(named, name) {
			t.Errorf("%s is not named", name)
		}
	}
}
