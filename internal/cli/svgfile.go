package cli

import (
	"errors"
	"io"
	"os"
	"path/filepath"

	"evenlip/internal/draw"
	"evenlip/internal/fault"
)

// writeDrawing writes an SVG whole or not at all. An older drawing of ours is
// replaced; anything else in its place is left alone.
func writeDrawing(name string, svg []byte) error {
	if target, err := filepath.EvalSymlinks(name); err == nil {
		name = target
	}
	mode, err := replaceable(name)
	if err != nil {
		return err
	}
	failed := func(err error) error { return fault.Unreadable("cannot write "+name, err) }
	f, err := os.CreateTemp(filepath.Dir(name), ".evenlip-*.svg")
	if err != nil {
		return failed(err)
	}
	_, err = f.Write(svg)
	err = errors.Join(err, f.Chmod(mode), f.Sync(), f.Close())
	if err == nil {
		err = os.Rename(f.Name(), name)
	}
	if err != nil {
		os.Remove(f.Name())
		return failed(err)
	}
	return nil
}

// replaceable returns the mode for the file of that name, and an error where
// one stands there that is no drawing of ours.
func replaceable(name string) (os.FileMode, error) {
	const usual, head = 0o644, 200
	info, err := os.Stat(name)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return usual, nil
	case err != nil:
		return 0, fault.Unreadable("cannot write "+name, err)
	case !info.Mode().IsRegular():
		return 0, fault.Flag("svg", "--svg - writes to standard output", "%s is no file", name)
	}
	f, err := os.Open(name)
	if err != nil {
		return 0, fault.Unreadable("cannot read "+name, err)
	}
	defer f.Close()
	begins, err := io.ReadAll(io.LimitReader(f, head))
	if err != nil {
		return 0, fault.Unreadable("cannot read "+name, err)
	}
	if len(begins) > 0 && !draw.IsOurs(begins) {
		return 0, fault.Flag("svg", "give another name, or remove it first", "%s is not a drawing by evenlip and is left as it is", name)
	}
	return info.Mode().Perm(), nil
}
