package crib

import (
	"errors"
	"io/fs"
	"os"
)

// Start writes a new crib's file; one that is there is never written over.
func Start(path string, text []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrExist) {
		return &Refusal{path + " is there already", "name another with --file"}
	}
	if err != nil {
		return &StoreError{path, bare(err), ""}
	}
	_, err = f.Write(text)
	if err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		os.Remove(path)
		return &StoreError{path, bare(err), ""}
	}
	return nil
}
