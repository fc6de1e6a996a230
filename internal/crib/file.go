package crib

import (
	"os"
	"path/filepath"
)

// FileName is what a crib's file is called where no name is given.
const FileName = "crib.yaml"

// Nearest returns the crib.yaml in dir or in the nearest folder above it.
func Nearest(dir string) (path string, found bool) {
	for {
		path = filepath.Join(dir, FileName)
		if info, err := os.Stat(path); err == nil && !info.IsDir() {
			return path, true
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", false
		}
		dir = up
	}
}
