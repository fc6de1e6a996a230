package crib

import (
	"io"
	"io/fs"
	"os"
	"time"
)

// disk is what a record asks of the system.
type disk struct {
	create   func(folder, pattern string) (file, error)
	like     func(f file, info fs.FileInfo) error
	hold     func(path string) (*hold, error)
	rename   func(from, to string) error
	exchange func(a, b string) (done bool, err error)
	sync     func(folder string) error
	remove   func(path string) error
	patience time.Duration // with a program that writes to the file itself
}

// file is one that is being written.
type file interface {
	io.WriteCloser
	Name() string
	Sync() error
	Chown(uid, gid int) error
	Chmod(fs.FileMode) error
}

var system = disk{createTemp, likeness, take, rename, exchange, syncFolder, os.Remove, longestOpen}

func createTemp(folder, pattern string) (file, error) { return os.CreateTemp(folder, pattern) }
