package batch_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"evenlip/internal/batch"
)

// echo answers a line with its number and its text, and "bad" with an error.
type echo struct {
	slow func(batch.Line) time.Duration // nil: none is
}

var errBad = errors.New("bad")

func (e echo) Answer(out []byte, l batch.Line) ([]byte, error) {
	if e.slow != nil {
		time.Sleep(e.slow(l))
	}
	if l.Cut {
		return fmt.Appendf(out, "%d cut\n", l.Number), errBad
	}
	out = fmt.Appendf(out, "%d %s\n", l.Number, l.Text)
	if strings.HasPrefix(string(l.Text), "bad") {
		return out, fmt.Errorf("line %d: %w", l.Number, errBad)
	}
	return out, nil
}

func workers(n int, slow func(batch.Line) time.Duration) []batch.Worker {
	all := make([]batch.Worker, n)
	for i := range all {
		all[i] = echo{slow}
	}
	return all
}

// run answers a text with four workers.
func run(text string, o batch.Options) (string, batch.Tally, error) {
	var out bytes.Buffer
	tally, err := batch.Run(context.Background(), batch.NewLines(strings.NewReader(text)), &out, workers(4, nil), o)
	return out.String(), tally, err
}

// reads gives one of its texts a read, then its error.
type reads struct {
	texts []string
	err   error
}

func (r *reads) Read(p []byte) (int, error) {
	if len(r.texts) == 0 {
		return 0, r.err
	}
	n := copy(p, r.texts[0])
	if r.texts[0] = r.texts[0][n:]; r.texts[0] == "" {
		r.texts = r.texts[1:]
	}
	return n, nil
}

var _ io.Reader = (*reads)(nil)
