package fault

import "io/fs"

// Bare strips the file's name that the system's error repeats.
func Bare(err error) error {
	if p, ok := err.(*fs.PathError); ok {
		return p.Err
	}
	return err
}
