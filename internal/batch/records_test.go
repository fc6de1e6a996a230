package batch_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/batch"
	"evenlip/internal/testkit"
)

// records answers the records of a text of CSV, read so many bytes at a time.
func records(in io.Reader) (string, batch.Tally, error) {
	lines := batch.NewLines(in)
	lines.Quoted()
	var out bytes.Buffer
	tally, err := batch.Run(context.Background(), lines, &out, workers(1, nil), batch.Options{})
	return out.String(), tally, err
}

// A record goes on over line ends in a quoted field, and its number is that of its
// first line. A quote that nothing closes, or that closes in the midst of a field,
// spoils its own line alone.
func TestRecords(t *testing.T) {
	long := strings.Repeat("x", 70_000)
	for text, want := range map[string]string{
		"a,\"b\nc\",d\ne\n":               "1 a,\"b\nc\",d\n3 e\n",
		"a,\"b\r\nc\"\r\ne\r\n":           "1 a,\"b\r\nc\"\n3 e\n",
		"a, \"b\n\nc\"\n\ne":              "1 a, \"b\n\nc\"\n5 e\n",
		"\"a\nb\"":                        "1 \"a\nb\"\n",
		"\"a\nb\"\r":                      "1 \"a\nb\"\n",
		"\ufeffsize\n\"a\nb\",\"c\nd\"\n": "1 size\n2 \"a\nb\",\"c\nd\"\n",
		"\"a\"\"\n\",b\nc\n":              "1 \"a\"\"\n\",b\n3 c\n",
		"a,b\"\nc\"\nd\n":                 "1 a,b\"\n2 c\"\n3 d\n",
		"a,1/2\"\nb,\"c\"\n":              "1 a,1/2\"\n2 b,\"c\"\n",
		"a,\"b\nc\nd\n":                   "1 a,\"b\n2 c\n3 d\n",
		"a,\"b\nc,\"d\"\ne\n":             "1 a,\"b\n2 c,\"d\"\n3 e\n",
		"a,\"b\nc\" d\ne\n":               "1 a,\"b\n2 c\" d\n3 e\n",
		"a,\"b\nc\"\rd\n":                 "1 a,\"b\n2 c\"\rd\n",
		"a,\"\n" + long + "\"\nb\n":       "1 a,\"\n2 " + long + "\"\n3 b\n",
		"\"a\nb\"," + long + "\nc\n":      "1 \"a\n2 b\"," + long + "\n3 c\n",
		"\"\n\"\n":                        "1 \"\n\"\n",
		"":                                "",
	} {
		if out, tally, err := records(strings.NewReader(text)); out != want || err != nil || tally.Last > strings.Count(text, "\n")+1 {
			t.Errorf("%.60q:\n%.80q\nnot\n%.80q, %v", text, out, want, err)
		}
	}
}

// Whatever the fields, and however they arrive, the records are those of the
// standard library's reader, each at its line.
func TestRecordsAreTheLibrarys(t *testing.T) {
	testkit.Property(t, "the records of CSV are the standard library's, each with the number of its first line, however they arrive", func(t *rapid.T) {
		rows := rapid.SliceOfN(rapid.SliceOfN(rapid.StringMatching("[a\" ,\r\n]{0,6}b"), 1, 4), 1, 40).Draw(t, "rows")
		var b strings.Builder
		w := csv.NewWriter(&b)
		w.UseCRLF = rapid.Bool().Draw(t, "line ends of two characters")
		w.WriteAll(rows)
		text := b.String()
		in := &reads{err: io.EOF}
		for rest := text; rest != ""; {
			n := rapid.IntRange(1, len(rest)).Draw(t, "bytes at a time")
			in.texts, rest = append(in.texts, rest[:n]), rest[n:]
		}
		library := csv.NewReader(strings.NewReader(text))
		library.FieldsPerRecord = -1
		var want strings.Builder
		for {
			if _, err := library.Read(); err == io.EOF {
				break
			} else if err != nil {
				t.Fatal(err)
			}
			line, _ := library.FieldPos(0)
			fmt.Fprintf(&want, "%d\n", line)
		}
		lines := batch.NewLines(in)
		lines.Quoted()
		var out bytes.Buffer
		if _, err := batch.Run(context.Background(), lines, &out, []batch.Worker{numbers{}}, batch.Options{}); err != nil || out.String() != want.String() {
			t.Fatalf("%q: records at\n%s\nnot\n%s, %v", text, out.String(), want.String(), err)
		}
	})
}

// numbers answers a line with its number.
type numbers struct{}

func (numbers) Answer(out []byte, l batch.Line) ([]byte, error) {
	return fmt.Appendf(out, "%d\n", l.Number), nil
}

// A record that is there is answered though the next one is only begun.
func TestRecordsAtOnce(t *testing.T) {
	r, w := io.Pipe()
	answers := make(chan string, 1)
	lines := batch.NewLines(r)
	lines.Quoted()
	go batch.Run(context.Background(), lines, told(func(p []byte) { answers <- string(p) }), workers(1, nil), batch.Options{})
	w.Write([]byte("a,\"b\nc\"\nd,\"e\n"))
	if got := <-answers; got != "1 a,\"b\nc\"\n" {
		t.Errorf("%q", got)
	}
	w.Write([]byte("f\"\n"))
	if got := <-answers; got != "3 d,\"e\nf\"\n" {
		t.Errorf("%q", got)
	}
	w.Close()
}

type told func([]byte)

func (f told) Write(p []byte) (int, error) {
	f(p)
	return len(p), nil
}
