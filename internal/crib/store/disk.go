package store

import (
	"io"
	"io/fs"
	"os"
)

// disk is what a change asks of the system.
type disk struct {
	read   func(path string) ([]byte, fs.FileInfo, error)
	create func(folder, pattern string) (file, error)
	like   func(f file, info fs.FileInfo) error
	rename func(from, to string) error
	sync   func(folder string) error
}

// file is one that is being written.
type file interface {
	io.WriteCloser
	Name() string
	Sync() error
	Chown(uid, gid int) error
	Chmod(fs.FileMode) error
}

var system = disk{read, create, like, rename, syncFolder}

func create(folder, pattern string) (file, error) { return os.CreateTemp(folder, pattern) }
