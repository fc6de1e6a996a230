//go:build !windows

package cli

import (
	"os"
	"strings"
)

// takesColour reports whether the terminal is one that knows colours.
func takesColour(int) bool {
	t := os.Getenv("TERM")
	return t != "dumb" && t != ""
}

// showsUTF8 reports whether the locale can show dots and blocks. The first
// variable that says anything decides, as everywhere.
func showsUTF8() bool {
	for _, name := range [...]string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := strings.ToLower(os.Getenv(name)); v != "" {
			return strings.Contains(v, "utf-8") || strings.Contains(v, "utf8")
		}
	}
	return false
}
