package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The screens in docs/screens are what the program shows: make docs draws them anew.
func TestPictures(t *testing.T) {
	for _, name := range []string{"LC_ALL", "EVENLIP_SHOP"} { // set while they are drawn
		t.Setenv(name, os.Getenv(name))
	}
	dir, kept := t.TempDir(), filepath.Join("..", "..", "docs", "screens")
	if err := pictures(dir); err != nil {
		t.Fatal(err)
	}
	for name := range shown {
		for ground := range themes {
			file := name + "-" + ground + ".svg"
			want, err := os.ReadFile(filepath.Join(dir, file))
			if err != nil {
				t.Fatal(err)
			}
			if got, err := os.ReadFile(filepath.Join(kept, file)); err != nil || string(got) != string(want) {
				t.Errorf("%s is not what is shown now (%v): make docs", file, err)
			}
			if text := string(want); strings.Contains(text, "\x1b") || !strings.Contains(text, themes[ground].ground) || strings.Count(text, "<text") < 20 {
				t.Errorf("%s: %.400s", file, text)
			}
		}
	}
}
