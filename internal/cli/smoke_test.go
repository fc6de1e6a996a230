package cli_test

import (
	"bytes"
	"strings"
	"testing"

	"evenlip/internal/cli"
)

// The sample drill has a worn corner and an uneven point.
func TestSampleIsToBeReground(t *testing.T) {
	var out, errw bytes.Buffer
	if status := cli.Main([]string{"inspect", "--sample"}, strings.NewReader(""), &out, &errw); status != 0 {
		t.Fatalf("status %d: %s", status, errw.String())
	}
	for _, want := range []string{"SAMPLE", "Verdict: REGRIND", "lip 1 stands 0.12 mm higher", "118.0°"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("no %q in:\n%s", want, out.String())
		}
	}
}
