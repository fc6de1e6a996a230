package crib

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// lease makes everyone who opens the file for writing wait until it is closed, and
// reports whether that was granted: the system grants it to the file's owner and
// to root, on a disk of its own. Errors: errOpen where someone has the file open
// for writing already.
func lease(f *os.File) (granted bool, err error) {
	_, err = unix.FcntlInt(f.Fd(), unix.F_SETLEASE, unix.F_RDLCK)
	if errors.Is(err, unix.EAGAIN) && !isRemote(f) {
		return false, errOpen
	}
	return err == nil, nil
}

// isBroken reports whether somebody waits for the end of a lease.
func isBroken(f *os.File) bool {
	kind, err := unix.FcntlInt(f.Fd(), unix.F_GETLEASE, 0)
	return err != nil || kind != unix.F_RDLCK
}

// isRemote reports whether a file is on another machine, where a lease that is
// refused tells nothing.
func isRemote(f *os.File) bool {
	var st unix.Statfs_t
	if unix.Fstatfs(int(f.Fd()), &st) != nil {
		return true
	}
	switch uint32(st.Type) {
	case unix.NFS_SUPER_MAGIC, unix.SMB_SUPER_MAGIC, unix.CIFS_SUPER_MAGIC, unix.SMB2_SUPER_MAGIC:
		return true
	}
	return false
}
