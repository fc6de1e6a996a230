package print

import (
	"io"

	"evenlip/internal/sheet/print/style"
)

// ReadyForColour has the console behind out take colours, where it wants to be
// told, and reports whether it will.
func ReadyForColour(out io.Writer) bool { return style.Ready(out) }
