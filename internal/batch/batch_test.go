package batch_test

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"runtime"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"pgregory.net/rapid"

	"evenlip/internal/batch"
	"evenlip/internal/testkit"
)

// Each input gives these answers, and so many lines of which so many are bad.
func TestLines(t *testing.T) {
	long := strings.Repeat("x", batch.Longest)
	for text, want := range map[string]struct {
		out        string
		lines, bad int
	}{
		"":                      {"", 0, 0},
		"\n\r\n  \n\t\n":        {"", 0, 0},
		"a\nb\n":                {"1 a\n2 b\n", 2, 0},
		"a\nb":                  {"1 a\n2 b\n", 2, 0},
		"a\r\nb\r\n":            {"1 a\n2 b\n", 2, 0},
		"\n\na\n\nb":            {"3 a\n5 b\n", 2, 0},
		"\ufeffa\n\ufeffb\n":    {"1 a\n2 \ufeffb\n", 2, 0},
		"\ufeff":                {"", 0, 0},
		"a\nbad\nb\n":           {"1 a\n2 bad\n3 b\n", 3, 1},
		" a \n":                 {"1  a \n", 1, 0},
		"a\x00b\n":              {"1 a\x00b\n", 1, 0},
		long + "\r\na\n":        {"1 " + long + "\n2 a\n", 2, 0},
		long + "y\na\n":         {"1 cut\n2 a\n", 2, 1},
		long + long + "\r\na\n": {"1 cut\n2 a\n", 2, 1},
		"a\n" + long + "y":      {"1 a\n2 cut\n", 2, 1},
		"\ufeff" + long + "\n":  {"1 " + long + "\n", 1, 0},
	} {
		out, tally, err := run(text, batch.Options{})
		if out != want.out || tally.Lines != want.lines || tally.Bad != want.bad || err != nil {
			t.Errorf("%.40q: %.40q, %+v, %v", text, out, tally, err)
		}
	}
}

// Whatever the lines, however they arrive and however long each takes, every
// one that is not blank is answered once, in order.
func TestEveryLineInOrder(t *testing.T) {
	testkit.Property(t, "every line that is not blank is answered once and in order, however lines arrive", func(t *rapid.T) {
		lines := rapid.SliceOfN(rapid.StringMatching(`[a-z ]{0,40}`), 0, 300).Draw(t, "lines")
		ends := rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "ends")
		text := strings.Join(lines, ends)
		in := &reads{err: io.EOF}
		for rest := text; rest != ""; {
			n := rapid.IntRange(1, min(len(rest), 4000)).Draw(t, "bytes at a time")
			in.texts, rest = append(in.texts, rest[:n]), rest[n:]
		}
		var want strings.Builder
		answered := 0
		for i, l := range lines {
			if strings.TrimSpace(l) != "" {
				fmt.Fprintf(&want, "%d %s\n", i+1, l)
				answered++
			}
		}
		slow := func(l batch.Line) time.Duration { return time.Duration(l.Number*7%5) * time.Microsecond }
		var out bytes.Buffer
		tally, err := batch.Run(context.Background(), batch.NewLines(in), &out, workers(rapid.IntRange(1, 5).Draw(t, "workers"), slow), batch.Options{})
		if out.String() != want.String() || tally.Lines != answered || err != nil {
			t.Fatalf("%q\ngives %q\nnot   %q; %+v, %v", text, out.String(), want.String(), tally, err)
		}
	})
}

// Many lines of any length, each taking its own time, keep their order.
func TestOrderUnderLoad(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	var in, want bytes.Buffer
	const n = 20_000
	for i := range n {
		text := strings.Repeat("x", 1+random.IntN(200)*random.IntN(20))
		fmt.Fprintln(&in, text)
		fmt.Fprintf(&want, "%d %s\n", i+1, text)
	}
	slow := func(l batch.Line) time.Duration {
		if l.Number%977 == 0 {
			return time.Millisecond
		}
		return 0
	}
	var out bytes.Buffer
	written := 0
	tally, err := batch.Run(context.Background(), batch.NewLines(&in), &out, workers(8, slow), batch.Options{Written: func(t batch.Tally) { written = t.Lines }})
	if !bytes.Equal(out.Bytes(), want.Bytes()) || tally != (batch.Tally{Lines: n, Last: n}) || written != n || err != nil {
		t.Errorf("%+v, told of %d, %v", tally, written, err)
	}
}

// A strict run ends before its first bad line, whatever comes behind.
func TestStrict(t *testing.T) {
	for _, bad := range []int{1, 2, 31, 32, 33, 500} {
		var in, want strings.Builder
		for i := 1; i <= 1000; i++ {
			switch {
			case i == bad, i > bad && i%3 == 0:
				fmt.Fprintln(&in, "bad")
			default:
				fmt.Fprintln(&in, "x")
			}
			if i < bad {
				fmt.Fprintf(&want, "%d x\n", i)
			}
		}
		out, tally, err := run(in.String(), batch.Options{Strict: true})
		if out != want.String() || tally.Lines != bad-1 || tally.Bad != 0 || !errors.Is(err, errBad) || err.Error() != fmt.Sprintf("line %d: bad", bad) {
			t.Errorf("bad in line %d: %d bytes of %d, %+v, %v", bad, len(out), want.Len(), tally, err)
		}
	}
}

// Whoever writes one line and waits for its answer gets it: nothing is held
// back for a fuller buffer.
func TestAnswersAtOnce(t *testing.T) {
	in, ask := io.Pipe()
	answers, out := io.Pipe()
	done := make(chan error, 1)
	go func() {
		_, err := batch.Run(context.Background(), batch.NewLines(in), out, workers(3, nil), batch.Options{})
		done <- err
	}()
	answer := bufio.NewReader(answers)
	for i := 1; i <= 100; i++ {
		if _, err := fmt.Fprintf(ask, "q%d\n", i); err != nil {
			t.Fatal(err)
		}
		if got, err := answer.ReadString('\n'); got != fmt.Sprintf("%d q%d\n", i, i) || err != nil {
			t.Fatalf("asked q%d: %q, %v", i, got, err)
		}
	}
	// half a line is not answered before its end
	fmt.Fprint(ask, "ha")
	fmt.Fprint(ask, "lf\n")
	if got, _ := answer.ReadString('\n'); got != "101 half\n" {
		t.Errorf("%q", got)
	}
	ask.Close()
	if err := <-done; err != nil {
		t.Error(err)
	}
}

// What was read before the input broke is answered; half a line is not.
func TestInputBreaks(t *testing.T) {
	gone := errors.New("the disk is gone")
	var out bytes.Buffer
	tally, err := batch.Run(context.Background(), batch.NewLines(&reads{[]string{"a\nb\nha"}, gone}), &out, workers(2, nil), batch.Options{})
	var in *batch.InputError
	if out.String() != "1 a\n2 b\n" || tally.Lines != 2 || !errors.As(err, &in) || !errors.Is(err, gone) || err.Error() != gone.Error() {
		t.Errorf("%q, %+v, %v", out.String(), tally, err)
	}
}

// full takes so many bytes and no more.
type full struct{ room int }

func (f *full) Write(p []byte) (int, error) {
	if f.room -= len(p); f.room < 0 {
		return 0, os.ErrClosed
	}
	return len(p), nil
}

// An output that takes no more ends the run, though the input never would.
func TestOutputBreaks(t *testing.T) {
	tally, err := batch.Run(context.Background(), batch.NewLines(endless{}), &full{10_000}, workers(3, nil), batch.Options{})
	var out *batch.OutputError
	if !errors.As(err, &out) || !errors.Is(err, os.ErrClosed) || err.Error() != os.ErrClosed.Error() || tally.Lines == 0 || tally.Lines > 10_000/len("1 x\n") {
		t.Errorf("%+v, %v", tally, err)
	}
}

// endless is a file of lines without end.
type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = "x\n"[i%2]
	}
	return len(p) - len(p)%2, nil
}

// A run that is told to end does, with a whole line and the reason, whether it
// is at work or waits for its input.
func TestToldToEnd(t *testing.T) {
	enough := errors.New("enough")
	for name, in := range map[string]io.Reader{"at work": endless{}, "waiting": waiting(t)} {
		ctx, cancel := context.WithCancelCause(context.Background())
		var out bytes.Buffer
		seen := 0
		tally, err := batch.Run(ctx, batch.NewLines(in), &out, workers(3, nil), batch.Options{Written: func(t batch.Tally) {
			if seen = t.Lines; name == "waiting" || seen > 1000 {
				cancel(enough)
			}
		}})
		if !errors.Is(err, enough) || tally.Lines != seen || tally.Last != seen || strings.Count(out.String(), "\n") != seen || !strings.HasSuffix(out.String(), "\n") {
			t.Errorf("%s: %+v, %v, %d bytes", name, tally, err, out.Len())
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if tally, err := batch.Run(ctx, batch.NewLines(endless{}), io.Discard, workers(1, nil), batch.Options{}); tally.Lines != 0 || !errors.Is(err, context.Canceled) {
		t.Errorf("%+v, %v", tally, err)
	}
}

// waiting gives one line and then nothing, until the test is over.
func waiting(t *testing.T) io.Reader {
	in, w := io.Pipe()
	t.Cleanup(func() { w.Close() })
	go io.WriteString(w, "a\n")
	return in
}

// However long the input, the memory in use stays small: chunks go round.
func TestBoundedMemory(t *testing.T) {
	const n, line = 200_000, 300
	text := strings.Repeat("x", line-1) + "\n"
	var before, now runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	most := uint64(0)
	in := io.LimitReader(repeat(text), n*line)
	tally, err := batch.Run(context.Background(), batch.NewLines(in), io.Discard, workers(4, nil), batch.Options{Written: func(t batch.Tally) {
		if t.Lines%(n/20) < 32 {
			runtime.GC()
			runtime.ReadMemStats(&now)
			most = max(most, now.HeapAlloc)
		}
	}})
	if tally.Lines != n || err != nil {
		t.Fatalf("%+v, %v", tally, err)
	}
	if used := int64(most) - int64(before.HeapAlloc); used > 8<<20 {
		t.Errorf("%d bytes in use, of an input of %d", used, n*line)
	}
}

// A slow reader of the answers slows the reading of the input down.
func TestBackpressure(t *testing.T) {
	var read atomic.Int64
	in := readerFunc(func(p []byte) (int, error) {
		n, err := endless{}.Read(p)
		read.Add(int64(n))
		return n, err
	})
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	answers, out := io.Pipe()
	done := make(chan struct{})
	go func() {
		batch.Run(ctx, batch.NewLines(in), out, workers(2, nil), batch.Options{})
		close(done)
	}()
	fmt.Fscanln(answers) // the first write has begun
	time.Sleep(50 * time.Millisecond)
	cancel()
	answers.Close()
	<-done
	if n := read.Load(); n > 4<<20 {
		t.Errorf("%d bytes were read ahead of a reader who took none", n)
	}
}

type readerFunc func([]byte) (int, error)

func (f readerFunc) Read(p []byte) (int, error) { return f(p) }

// repeat is a text over and over.
func repeat(text string) io.Reader {
	at := 0
	return readerFunc(func(p []byte) (int, error) {
		for i := range p {
			p[i] = text[at]
			at = (at + 1) % len(text)
		}
		return len(p), nil
	})
}

// Next takes lines out of the input before a run, which goes on behind them.
func TestNext(t *testing.T) {
	lines := batch.NewLines(strings.NewReader("\ufeff\n \r\nhead\r\na\nb"))
	head, err := lines.Next()
	if string(head.Text) != "head" || head.Number != 3 || head.Cut || err != nil {
		t.Fatalf("%+v, %v", head, err)
	}
	var out bytes.Buffer
	if _, err := batch.Run(context.Background(), lines, &out, workers(2, nil), batch.Options{}); out.String() != "4 a\n5 b\n" || err != nil {
		t.Errorf("%q, %v", out.String(), err)
	}
	if _, err := lines.Next(); err != io.EOF {
		t.Errorf("%v", err)
	}
	if l, err := batch.NewLines(strings.NewReader("only")).Next(); string(l.Text) != "only" || err != nil {
		t.Errorf("%+v, %v", l, err)
	}
	gone := errors.New("gone")
	if _, err := batch.NewLines(&reads{[]string{"ha"}, gone}).Next(); err != gone {
		t.Errorf("%v", err)
	}
}
