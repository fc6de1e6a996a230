package cli_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"evenlip/internal/sheet/print/style"
)

// labelCells is the room for a figure's name in a table.
const labelCells = 26

// No figure that a table shows has a name wider than its column, so that the
// numbers stand under each other.
func TestLabelsKeepTheirColumn(t *testing.T) {
	shown := 0
	for _, command := range slices.Sorted(maps.Keys(explained)) {
		for _, name := range slices.Sorted(maps.Keys(bench)) {
			if bench[name][explained[command]] == "" {
				continue
			}
			args := bench[name].args(command)
			table := run("", args...).out
			for _, line := range strings.Split(run("", append(args, "--format", "plain")...).out, "\n") {
				label, _, _ := strings.Cut(line, "\t")
				if !strings.Contains(table, "\n  "+label+" ") {
					continue
				}
				if shown++; style.Width(label) > labelCells {
					t.Errorf("%s: %q takes %d cells", command, label, style.Width(label))
				}
			}
		}
	}
	if shown < 1000 {
		t.Errorf("only %d figures were seen", shown)
	}
}
