package cli

import (
	"io"
	"os"
	"runtime"
	"strings"

	"evenlip/internal/sheet/print"
)

// takesColour reports whether the terminal behind out knows colours. A Windows
// console has no TERM, but wants to be told that colours come.
func takesColour(out io.Writer) bool {
	t := os.Getenv("TERM")
	if t == "dumb" || t == "" && runtime.GOOS != "windows" {
		return false
	}
	return print.ReadyForColour(out)
}

// showsUTF8 reports whether the locale can show dots and blocks: the first
// variable that says anything decides, as everywhere. A Windows console is
// written to in UTF-16, whatever its locale.
func showsUTF8() bool {
	if runtime.GOOS == "windows" {
		return true
	}
	for _, name := range [...]string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := strings.ToLower(os.Getenv(name)); v != "" {
			return strings.Contains(v, "utf-8") || strings.Contains(v, "utf8")
		}
	}
	return false
}
