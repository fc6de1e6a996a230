package cli

import (
	"bytes"
	"testing"
	"time"
)

// The line comes after a second, changes five times a second and goes at the end.
func TestProgress(t *testing.T) {
	var shown bytes.Buffer
	begun := time.Unix(1000, 0)
	p := &progress{w: &shown, begun: begun}
	at := func(after time.Duration, lines int, want string) {
		t.Helper()
		shown.Reset()
		if p.tell(begun.Add(after), lines); shown.String() != want {
			t.Errorf("after %v: %q, not %q", after, shown.String(), want)
		}
	}
	at(900*time.Millisecond, 10, "")
	at(1000*time.Millisecond, 20, "\r\x1b[K20 lines")
	at(1100*time.Millisecond, 30, "")
	at(1200*time.Millisecond, 40, "\r\x1b[K40 lines")
	shown.Reset()
	if p.end(); shown.String() != "\r\x1b[K" {
		t.Errorf("at the end %q", shown.String())
	}
}

// Where nothing was shown nothing is taken away, and nobody is told who does
// not look.
func TestNoProgress(t *testing.T) {
	var shown bytes.Buffer
	p := &progress{w: &shown, begun: time.Now()}
	p.tell(time.Now(), 1)
	p.end()
	a := &app{out: new(bytes.Buffer), err: &shown}
	p = a.progress()
	p.tell(time.Now().Add(time.Hour), 1)
	p.end()
	if shown.Len() > 0 {
		t.Errorf("%q", shown.String())
	}
}
