package cli

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"syscall"

	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/handbook/shop"
)

// useShop loads the shop's own settings: the file named, else the one in the
// user's configuration directory if there is one. A folder that may not be looked
// into is somebody else's, as where a service runs with another's HOME: no settings of
// this user's are there, and it is told that they were not looked for.
func (a *app) useShop() error {
	name, named := a.global.shop, a.global.shop != ""
	if !named {
		dir, err := os.UserConfigDir()
		if err != nil {
			return nil // no home, no settings
		}
		name = filepath.Join(dir, "evenlip", "shop.yaml")
	}
	text, err := readShop(name)
	switch {
	case err == nil:
	case !named && hidden(name):
		a.complain("note:", fmt.Sprintf("%s cannot be looked for: permission denied; the embedded limits hold; --shop names a file", name))
		return nil
	case !named && (errors.Is(err, os.ErrNotExist) || errors.Is(err, syscall.ENOTDIR)):
		return nil
	case named:
		return err.In(fault.Place{Flag: "shop"}, "")
	default:
		err.Hint = "the shop's own limits stand there; --shop names another file"
		return err
	}
	s, errs := shop.Read(name, bytes.NewReader(text))
	if len(errs) > 0 {
		return listOf(errs)
	}
	a.shop = s
	return nil
}

// hidden reports whether it cannot even be seen that there is such a file.
func hidden(name string) bool {
	_, err := os.Lstat(name)
	return errors.Is(err, os.ErrPermission)
}

// readShop reads the file whole or not at all: what the rest of it sets would be
// lost unseen.
func readShop(name string) ([]byte, *fault.Fault) {
	f, err := os.Open(name)
	if err != nil {
		return nil, fault.Unreadable("cannot read "+name, err)
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, largestFile+1))
	switch {
	case err != nil:
		return nil, fault.Unreadable("cannot read "+name, err)
	case len(text) > largestFile:
		return nil, fault.NewData("", "%s is too large for what a shop sets: over %d bytes", name, largestFile)
	}
	return text, nil
}

// book is the limits and materials in force; nil is the embedded ones.
func (a *app) book() *handbook.Book {
	if a.shop == nil {
		return nil
	}
	return a.shop.Book
}
