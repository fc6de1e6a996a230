package crib

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestStart(t *testing.T) {
	if c := read(t, NewText); len(c.Drills) != 0 || c.Name == "" {
		t.Errorf("%+v", c)
	}
	if !bytes.Equal(SampleText(), sample) {
		t.Error("the sample's text is another")
	}
	// the drill that a new file shows as a remark can be taken as it stands
	var shown strings.Builder
	for _, line := range strings.Split(NewText, "\n") {
		if line == "drills: []" {
			continue
		}
		if strings.HasPrefix(line, "# drills:") || strings.HasPrefix(line, "#   ") {
			line = strings.TrimPrefix(line, "# ")
		}
		shown.WriteString(line + "\n")
	}
	if c := read(t, strings.Replace(shown.String(), "  12mm: 2\n", "", 1)); len(c.Drills) != 1 {
		t.Errorf("%d drills", len(c.Drills))
	}
}

func TestNearest(t *testing.T) {
	top := t.TempDir()
	deep := filepath.Join(top, "a", "b")
	if err := os.MkdirAll(filepath.Join(deep, FileName), 0o755); err != nil { // a folder of that name is no crib
		t.Fatal(err)
	}
	if got, found := Nearest(deep); found && strings.HasPrefix(got, top) {
		t.Errorf("found %s", got)
	}
	for _, dir := range []string{top, filepath.Join(top, "a")} {
		want := filepath.Join(dir, FileName)
		if err := os.WriteFile(want, nil, 0o644); err != nil {
			t.Fatal(err)
		}
		if got, found := Nearest(deep); !found || got != want {
			t.Errorf("%s, not %s", got, want)
		}
	}
}
