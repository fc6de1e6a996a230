package cli

import (
	"fmt"
	"io"
	"os"
	"time"
)

// progress is a line on a terminal that tells how many lines of a long run are done. It
// is there only while someone waits: from the second second on, and gone at the end.
type progress struct {
	w     io.Writer // nil: nobody looks
	begun time.Time
	told  time.Time // last; zero while the line is not there
}

// When the line comes, and how often it changes.
const (
	patience = time.Second
	refresh  = 200 * time.Millisecond
)

// wipe empties the line of a terminal.
const wipe = "\r\x1b[K"

// progress is shown if someone looks and wants to: standard error is a terminal and no answers run
// down it.
func (a *app) progress() *progress {
	p := &progress{begun: time.Now()}
	_, looks := terminal(a.err)
	_, answers := terminal(a.out)
	if t := os.Getenv("TERM"); !a.global.quiet && looks && !answers && t != "" && t != "dumb" {
		p.w = a.err
	}
	return p
}

// tell changes the line, if it is time to.
func (p *progress) tell(now time.Time, lines int) {
	if p.w == nil || now.Sub(p.begun) < patience || now.Sub(p.told) < refresh {
		return
	}
	p.told = now
	fmt.Fprintf(p.w, "%s%d lines", wipe, lines)
}

// end takes the line away.
func (p *progress) end() {
	if !p.told.IsZero() {
		fmt.Fprint(p.w, wipe)
	}
}
