package cli

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"time"
)

// The line comes after a second, changes five times a second and goes at the
// end; of an input of known size it tells how much is read.
func TestProgress(t *testing.T) {
	var shown bytes.Buffer
	clock := time.Unix(1000, 0)
	p := &progress{w: &shown, now: func() time.Time { return clock }, begun: clock, size: 200}
	in := p.of(strings.NewReader(strings.Repeat("x", 100)))
	at := func(after time.Duration, lines int, want string) {
		t.Helper()
		shown.Reset()
		clock = time.Unix(1000, 0).Add(after)
		if p.tell(lines); shown.String() != want {
			t.Errorf("after %v: %q, not %q", after, shown.String(), want)
		}
	}
	at(900*time.Millisecond, 10, "")
	at(1000*time.Millisecond, 20, "\r\x1b[K[                    ]   0 %, 20 lines")
	if _, err := io.ReadAll(in); err != nil {
		t.Fatal(err)
	}
	at(1100*time.Millisecond, 30, "")
	at(1200*time.Millisecond, 40, "\r\x1b[K[==========          ]  50 %, 40 lines")
	p.read.Store(199)
	at(1400*time.Millisecond, 45, "\r\x1b[K[=================== ]  99 %, 45 lines")
	p.read.Store(300) // the file has grown since
	at(1600*time.Millisecond, 48, "\r\x1b[K[====================] 100 %, 48 lines")
	p.size = 0
	at(1800*time.Millisecond, 50, "\r\x1b[K50 lines")
	shown.Reset()
	if p.end(); shown.String() != "\r\x1b[K" {
		t.Errorf("at the end %q", shown.String())
	}
}

// Where nothing was shown nothing is taken away, and nobody is told who does
// not look.
func TestNoProgress(t *testing.T) {
	var shown bytes.Buffer
	p := &progress{w: &shown, now: time.Now, begun: time.Now()}
	p.tell(1)
	p.end()
	a := &app{out: new(bytes.Buffer), err: &shown}
	p = a.progress([]string{"progress.go"})
	in := strings.NewReader("x")
	p.begun = time.Unix(0, 0)
	p.tell(1)
	p.end()
	if shown.Len() > 0 || p.of(in) != io.Reader(in) {
		t.Errorf("%q", shown.String())
	}
}
