package crib

import (
	"io"
	"os"
)

// hold is what a file has in it. Until it is released nobody gets to open the
// file for writing, where the system grants that.
type hold struct {
	data  []byte
	lease *os.File // nil where none was granted
}

// take reads a file that nobody writes to. Errors: errOpen where somebody does, as
// far as the system tells.
func take(path string) (*hold, error) {
	f, err := os.Open(path)
	if err != nil {
		return &hold{}, err
	}
	h := &hold{lease: f}
	granted, err := lease(f)
	if err == nil {
		h.data, err = io.ReadAll(f)
	}
	if err != nil || !granted {
		h.release()
	}
	return h, err
}

// release lets others write again.
func (h *hold) release() {
	if h.lease != nil {
		h.lease.Close()
		h.lease = nil
	}
}

// isSought reports whether somebody waits to open the file for writing.
func (h *hold) isSought() bool { return h.lease != nil && isBroken(h.lease) }
