//go:build unix

package store

import (
	"io/fs"
	"os"
	"syscall"

	"evenlip/internal/fault"
)

// like gives a new file the owner, group and mode of the one it replaces. Where the
// system does not let another's file be made, the owner becomes whoever writes it;
// group and mode must stay.
func like(f file, info fs.FileInfo) error {
	st := info.Sys().(*syscall.Stat_t)
	if f.Chown(int(st.Uid), int(st.Gid)) != nil {
		if err := f.Chown(-1, int(st.Gid)); err != nil {
			return &fault.Fault{Text: "its group cannot be kept: " + fault.Bare(err).Error(), Hint: "write to it as its owner, or as a member of its group", Cause: err}
		}
	}
	return f.Chmod(info.Mode())
}

// links returns how many names a file has.
func links(f *os.File) (int, error) {
	info, err := f.Stat()
	if err != nil {
		return 0, err
	}
	return int(info.Sys().(*syscall.Stat_t).Nlink), nil
}

func rename(from, to string) error { return os.Rename(from, to) }

// syncFolder brings a folder's entries to the disk.
func syncFolder(dir string) error {
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	defer d.Close()
	return d.Sync()
}
