//go:build unix

package crib

import (
	"fmt"
	"io/fs"
	"os"
	"syscall"
)

// likeness gives a new file owner, group and mode of the one it takes the place
// of. Where the system does not let another's file be made, the owner becomes
// whoever records; group and mode must stay.
func likeness(f file, like fs.FileInfo) error {
	st, ok := like.Sys().(*syscall.Stat_t)
	if ok && f.Chown(int(st.Uid), int(st.Gid)) != nil {
		if err := f.Chown(-1, int(st.Gid)); err != nil {
			return &advised{fmt.Errorf("its group cannot be kept: %w", bare(err)), "record as the file's owner, or as a member of its group"}
		}
	}
	return f.Chmod(like.Mode())
}

// names returns how many names a file has.
func names(_ string, info fs.FileInfo) (uint64, error) {
	if st, ok := info.Sys().(*syscall.Stat_t); ok {
		return uint64(st.Nlink), nil
	}
	return 1, nil
}

// syncFolder brings a folder's entries to the disk.
func syncFolder(dir string) error {
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	defer d.Close()
	return d.Sync()
}
