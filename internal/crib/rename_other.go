//go:build !windows

package crib

import "os"

// rename puts one file in the place of another.
func rename(from, to string) error { return os.Rename(from, to) }
