package cli

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"evenlip/internal/reference"
	"evenlip/internal/shop"
)

// useShop loads the shop's own settings: the file named, else the one in the
// user's configuration directory if there is one.
func (a *app) useShop() error {
	name, named := a.global.shop, a.global.shop != ""
	if !named {
		dir, err := os.UserConfigDir()
		if err != nil {
			return nil // no home, no settings
		}
		name = filepath.Join(dir, "evenlip", "shop.yaml")
	}
	f, err := os.Open(name)
	switch {
	case errors.Is(err, os.ErrNotExist) && !named:
		return nil
	case err != nil:
		return &dataError{fmt.Errorf("cannot read %s: %w", name, cause(err))}
	}
	defer f.Close()
	s, errs := shop.Read(name, io.LimitReader(f, largestFile))
	if len(errs) > 0 {
		return many(errs)
	}
	a.shop = s
	return nil
}

// book is the limits and materials in force; nil is the embedded ones.
func (a *app) book() *reference.Book {
	if a.shop == nil {
		return nil
	}
	return a.shop.Book
}
