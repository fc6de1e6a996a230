package crib

import (
	"errors"
	"io/fs"
	"os"
	"time"
)

// longestRead is how long somebody may take to read a crib.
const longestRead = time.Second

// rename puts one file in the place of another. Windows refuses that while
// anyone has the other open, if only to read it: then it is tried again.
func rename(from, to string) error {
	for wait := knock; ; wait *= 2 {
		err := os.Rename(from, to)
		if !errors.Is(err, fs.ErrPermission) || wait > longestRead {
			return err
		}
		time.Sleep(wait)
	}
}
