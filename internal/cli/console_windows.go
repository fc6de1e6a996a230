package cli

import (
	"os"

	"golang.org/x/sys/windows"
)

// takesColour reports whether a console understands colours, and has it do so:
// Windows asks to be told.
func takesColour(fd int) bool {
	if os.Getenv("TERM") == "dumb" {
		return false
	}
	console, mode := windows.Handle(fd), uint32(0)
	if windows.GetConsoleMode(console, &mode) != nil {
		return false
	}
	return windows.SetConsoleMode(console, mode|windows.ENABLE_VIRTUAL_TERMINAL_PROCESSING) == nil
}

// showsUTF8 is true: what goes to a console goes there as UTF-16, whatever the
// locale.
func showsUTF8() bool { return true }
