package cli

import (
	"fmt"
	"io"
	"os"
	"strings"
	"sync/atomic"
	"time"
)

// progress is a line on a terminal that tells how far a long run has come: a bar and
// a count, or the count alone where nobody knows how much there is. It
// is there only while someone waits: from the second second on, and gone at the
// end.
type progress struct {
	w     io.Writer // nil: nobody looks
	now   func() time.Time
	begun time.Time
	told  time.Time // last; zero while the line is not there
	size  int64     // of the input in bytes, 0 if nobody knows
	read  atomic.Int64
}

// When the line comes, and how often it changes.
const (
	patience = time.Second
	refresh  = 200 * time.Millisecond
)

// progress watches the reading of the files, if someone looks: standard error is
// a terminal and no answers run down it.
func (a *app) progress(names []string) *progress {
	p := &progress{now: time.Now}
	p.begun = p.now()
	_, looks := terminal(a.err)
	_, answers := terminal(a.out)
	if t := os.Getenv("TERM"); !looks || answers || t == "" || t == "dumb" {
		return p
	}
	p.w = a.err
	for _, name := range names {
		info, err := os.Stat(name)
		if name == "-" || err != nil || !info.Mode().IsRegular() {
			p.size = 0
			break
		}
		p.size += info.Size()
	}
	return p
}

// of counts the bytes that are read from in.
func (p *progress) of(in io.Reader) io.Reader {
	if p.w == nil {
		return in
	}
	return counted{in, &p.read}
}

type counted struct {
	io.Reader
	n *atomic.Int64
}

func (c counted) Read(b []byte) (int, error) {
	n, err := c.Reader.Read(b)
	c.n.Add(int64(n))
	return n, err
}

// tell changes the line, if it is time to.
func (p *progress) tell(lines int) {
	if p.w == nil {
		return
	}
	now := p.now()
	if now.Sub(p.begun) < patience || now.Sub(p.told) < refresh {
		return
	}
	p.told = now
	text := fmt.Sprintf("%d lines", lines)
	if p.size > 0 {
		text = p.bar() + ", " + text
	}
	fmt.Fprint(p.w, wipe, text)
}

// bar shows how much of the input is read.
func (p *progress) bar() string {
	const cells = 20
	percent := min(100, 100*p.read.Load()/p.size)
	done := int(percent) * cells / 100
	return fmt.Sprintf("[%s%s] %3d %%", strings.Repeat("=", done), strings.Repeat(" ", cells-done), percent)
}

// wipe empties the line of a terminal.
const wipe = "\r\x1b[K"

// end takes the line away.
func (p *progress) end() {
	if !p.told.IsZero() {
		fmt.Fprint(p.w, wipe)
	}
}
