package cli

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"syscall"

	"evenlip/internal/fault"
	"evenlip/internal/handbook/shop"
)

// shopVariable names the shop's file where no flag does; empty, there is to be none.
const shopVariable = "EVENLIP_SHOP"

// noShop is what is written in a file's place where the embedded limits are to hold.
const noShop = "none"

// useShop loads the shop's own settings: the file named by the flag or the environment,
// else the one in the user's configuration directory if there is one. A folder that may
// not be looked into is somebody else's, as where a service runs with another's HOME: no
// settings of this user's are there, and it is told that they were not looked for.
func (a *app) useShop() fault.List {
	name, by := a.global.shop, fault.Place{Flag: "shop"}
	about := ""
	if variable, set := os.LookupEnv(shopVariable); name == "" && set {
		name, by, about = cmp.Or(variable, noShop), fault.Place{}, shopVariable
	}
	if name == noShop {
		return nil
	}
	named := name != ""
	if !named {
		dir, err := os.UserConfigDir()
		if err != nil {
			return nil // no home, no settings
		}
		name = filepath.Join(dir, "evenlip", "shop.yaml")
	}
	text, f := readFile(name, largestFile, "what a shop sets")
	switch {
	case f == nil:
	case !named && hidden(name):
		a.remark("note:", fmt.Sprintf("%s cannot be looked for: permission denied; the embedded limits hold; --shop names a file", name))
		return nil
	case !named && (errors.Is(f, os.ErrNotExist) || errors.Is(f, syscall.ENOTDIR)):
		return nil
	case named:
		return fault.List{f.In(by, about)}
	default:
		f.Hint = "the shop's own limits stand there; --shop names another file, or none"
		return fault.List{f}
	}
	s, faults := shop.Read(name, string(text))
	if len(faults) > 0 {
		return faults
	}
	a.set.book, a.set.Gauges, a.set.shop, a.set.usual = s.Book, s.Gauges, true, s.Screen
	return nil
}

// hidden reports whether it cannot even be seen that there is such a file.
func hidden(name string) bool {
	_, err := os.Lstat(name)
	return errors.Is(err, os.ErrPermission)
}

// awaits tells whoever sits at a terminal what is read from it.
func (a *app) awaits(what string) {
	if _, typed := terminal(a.in); typed {
		a.remark("waits for:", what+"; "+endOfInput()+" ends it")
	}
}

// endOfInput is what is typed where there is no more.
func endOfInput() string {
	if runtime.GOOS == "windows" {
		return "Ctrl-Z and Enter"
	}
	return "Ctrl-D"
}

// readFile reads a file whole or not at all: what the rest of it says would be lost
// unseen.
func readFile(name string, largest int64, of string) ([]byte, *fault.Fault) {
	f, err := os.Open(name)
	if err != nil {
		return nil, cannotRead(name, err)
	}
	defer f.Close()
	return readAll(f, name, largest, of)
}

// readAll reads what is shown as a file of that name; larger than largest bytes it is
// none of what it is taken for.
func readAll(in io.Reader, name string, largest int64, of string) ([]byte, *fault.Fault) {
	text, err := io.ReadAll(io.LimitReader(in, largest+1))
	switch {
	case err != nil:
		return nil, cannotRead(name, err)
	case int64(len(text)) > largest:
		return nil, fault.NewData("", "%s is too large for %s: over %d bytes", name, of, largest)
	}
	return text, nil
}
