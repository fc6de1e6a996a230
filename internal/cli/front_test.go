package cli_test

import (
	"regexp"
	"testing"

	"evenlip/internal/cli"
)

// Who calls evenlip alone sees every command on a drill named.
func TestFrontPageNamesEveryCommand(t *testing.T) {
	for _, name := range cli.Calculations() {
		if !regexp.MustCompile(`\b` + name + `\b`).MatchString(cli.FrontPage) {
			t.Errorf("%s is not named", name)
		}
	}
}
