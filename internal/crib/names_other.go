//go:build !unix && !windows

package crib

import "io/fs"

// names takes it that a file has one name, where a system tells nothing of others.
func names(string, fs.FileInfo) (uint64, error) { return 1, nil }
