package store

import (
	"errors"
	"io/fs"
	"os"
	"syscall"
	"time"
)

// longestRead is how long somebody may take to read a file.
const longestRead = time.Second

// like gives a new file the mode of the one it replaces.
func like(f file, info fs.FileInfo) error { return os.Chmod(f.Name(), info.Mode()) }

// links returns how many names a file has.
func links(f *os.File) (int, error) {
	var told syscall.ByHandleFileInformation
	err := syscall.GetFileInformationByHandle(syscall.Handle(f.Fd()), &told)
	return int(told.NumberOfLinks), err
}

// rename puts one file in the place of another. Windows refuses that while anyone
// has the other open, if only to read it: then it is tried again.
func rename(from, to string) error {
	for wait := pause; ; wait *= 2 {
		err := os.Rename(from, to)
		if !errors.Is(err, fs.ErrPermission) || wait > longestRead {
			return err
		}
		time.Sleep(wait)
	}
}

// syncFolder does nothing: a folder cannot be opened as a file here.
func syncFolder(string) error { return nil }
