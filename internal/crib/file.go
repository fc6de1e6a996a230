package crib

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"evenlip/internal/crib/store"
	"evenlip/internal/fault"
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

// Start writes a new crib's file; one that is there is never written over.
func Start(path string, text []byte) error {
	err := store.Create(path, text)
	if errors.Is(err, fs.ErrExist) {
		return fault.Refuse("name another with --file", "%s is there already", path)
	}
	return err
}
