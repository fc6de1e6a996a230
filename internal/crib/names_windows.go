package crib

import (
	"io/fs"
	"os"
	"syscall"
)

// names returns how many names a file has.
func names(path string, _ fs.FileInfo) (uint64, error) {
	f, err := os.Open(path)
	if err != nil {
		return 0, err
	}
	defer f.Close()
	var told syscall.ByHandleFileInformation
	err = syscall.GetFileInformationByHandle(syscall.Handle(f.Fd()), &told)
	return uint64(told.NumberOfLinks), err
}
