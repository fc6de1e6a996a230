package cli_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/cli"
	"evenlip/internal/testkit"
)

// onDrill lists the commands that batch runs.
func onDrill() []string {
	return slices.DeleteFunc(slices.Sorted(maps.Keys(explained)), func(c string) bool { return c == "wheel" })
}

// The answer to a line is, to the byte, what the command prints for that drill
// alone, and the number of the line; and so is what is wrong with it, whichever
// worker answers it.
func TestBatchIsTheCommandsOwnAnswer(t *testing.T) {
	testkit.Property(t, "a line's answer is, to the byte, what the command prints for that drill alone, and the number of the line", func(t *rapid.T) {
		command := rapid.SampledFrom(onDrill()).Draw(t, "command")
		also := rapid.SampledFrom([][]string{nil, {"--explain"}, {"--units", "in"}, {"--caliper", "0.02mm", "--protractor", "1deg"}}).Draw(t, "flags")
		drills := rapid.SliceOfN(rapid.Custom(anyDrill), 1, 8).Draw(t, "drills")
		var in bytes.Buffer
		var want []string
		for i, d := range drills {
			maps.DeleteFunc(d, func(name, _ string) bool { return !slices.Contains(takes()[command], name) })
			d["size"] = fmt.Sprintf("%.2fmm", 1+float64(i)*3)
			line, err := json.Marshal(d)
			if err != nil {
				t.Fatal(err)
			}
			in.Write(append(line, '\n'))
			want = append(want, alone(t, i+1, command, d, also))
		}
		got := run(in.String(), append([]string{"batch", "--sources", "--command", command}, also...)...)
		answers := strings.Split(strings.TrimSuffix(got.out, "\n"), "\n")
		if !slices.Equal(answers, want) {
			t.Fatalf("%s %v of %s\ngives %s\nnot   %s\n%s", command, also, in.String(), strings.Join(answers, "\n"), strings.Join(want, "\n"), got.err)
		}
	})
}

// alone is the answer of the command to one drill, on one line: what it prints,
// or what is wrong as an object.
func alone(t *rapid.T, line int, command string, d readings, also []string) string {
	args := append([]string{command, "--format", "json"}, also...)
	for _, name := range slices.Sorted(maps.Keys(d)) {
		args = append(args, "--"+name, d[name])
	}
	a := run("", args...)
	if a.status == 0 {
		var out bytes.Buffer
		if err := json.Compact(&out, []byte(a.out)); err != nil {
			t.Fatal(err)
		}
		return numbered(out.String(), line)
	}
	args[2] = "plain" // under json the faults are an object; a line of the batch has them in words
	faults, hints := faultsByName(run("", args...).err)
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	err := enc.Encode(struct {
		Line  int    `json:"line"`
		Error string `json:"error"`
		Hint  string `json:"hint,omitempty"`
	}{line, strings.Join(faults, "; "), strings.Join(hints, "; ")})
	if err != nil {
		t.Fatal(err)
	}
	return strings.TrimSuffix(out.String(), "\n")
}

// numbered puts the number of a line where batch has it.
func numbered(answer string, line int) string {
	return strings.Replace(answer, `,"inputs":`, fmt.Sprintf(`,"line":%d,"inputs":`, line), 1)
}

// faultsByName takes apart what is wrong with a drill and brings it into the order of
// the readings' names, which is the one that they have on a line.
func faultsByName(said string) (faults, hints []string) {
	type fault struct{ text, hint string }
	var all []fault
	for _, line := range strings.Split(strings.TrimSuffix(said, "\n"), "\n") {
		if hint, ok := strings.CutPrefix(line, "hint: "); ok {
			all[len(all)-1].hint = hint
		} else {
			all = append(all, fault{text: strings.TrimPrefix(line, "error: --")})
		}
	}
	name := func(f fault) string { return f.text[:strings.Index(f.text, ":")] }
	slices.SortStableFunc(all, func(a, b fault) int { return strings.Compare(name(a), name(b)) })
	for _, f := range all {
		faults = append(faults, f.text)
		if f.hint != "" {
			hints = append(hints, f.hint)
		}
	}
	return faults, hints
}

// A line with a name and with readings that the command has no use for is
// answered as the same drill in a file of its own is.
func TestBatchIsTheFilesAnswer(t *testing.T) {
	d := map[string]string{"name": "drawer 4, \"half\" inch", "size": "1/2", "web": "0.085", "chisel-length": "0.104", "lip-angle": "59,59", "lip-height": "0.001", "clearance": "12", "every": "0.03"}
	line, err := json.Marshal(d)
	if err != nil {
		t.Fatal(err)
	}
	for _, command := range onDrill() {
		one := run(string(line), command, "-", "--format", "json") // JSON is YAML
		many := run(string(line), "batch", "--command", command, "--sources")
		var want bytes.Buffer
		if err := json.Compact(&want, []byte(one.out)); err != nil || one.status != 0 {
			t.Fatalf("%s: %v %s", command, err, one.err)
		}
		if want := numbered(want.String(), 1); many.out != want+"\n" || many.status != 0 {
			t.Errorf("%s:\ngives %s\nnot   %s", command, many.out, want)
		}
	}
}

// A row of CSV has what the command prints as CSV, then the line.
func TestBatchRows(t *testing.T) {
	testkit.Property(t, "a row of CSV is what the command prints as CSV, then the line", func(t *rapid.T) {
		command := rapid.SampledFrom(slices.DeleteFunc(onDrill(), func(c string) bool { return c == "edge" })).Draw(t, "command")
		d := anyDrill(t)
		maps.DeleteFunc(d, func(name, _ string) bool { return !slices.Contains(takes()[command], name) })
		if command == "inspect" && rapid.Bool().Draw(t, "cracked") {
			d["cracked"] = "yes"
		}
		args := []string{command, "--format", "csv"}
		names, fields := slices.Sorted(maps.Keys(d)), []string{}
		for _, name := range names {
			if name == "cracked" {
				args = append(args, "--cracked")
			} else {
				args = append(args, "--"+name, d[name])
			}
			fields = append(fields, d[name])
		}
		var in bytes.Buffer
		w := csv.NewWriter(&in)
		w.WriteAll([][]string{names, fields})
		many := run(in.String(), "batch", "--command", command, "--input", "csv", "--format", "csv")
		got := table(t, many.out)
		one := run("", args...)
		if one.status != 0 {
			if many.status != 3 || len(got) != 2 || got[1]["error"] == "" || got[1]["line"] != "2" {
				t.Fatalf("%v: %s\nbut %q, %s", d, one.err, got, many.err)
			}
			return
		}
		want := table(t, one.out)
		want[1]["line"], want[1]["error"] = "2", ""
		for key, v := range got[1] {
			if want[1][key] != v {
				t.Fatalf("%v: %s is %q, not %q", d, key, v, want[1][key])
			}
			delete(want[1], key)
		}
		if len(want[1]) > 0 || many.status != 0 {
			t.Fatalf("%v: status %d, no column for %v", d, many.status, want[1])
		}
	})
}

// table reads CSV into one map a row, the header first.
func table(t *rapid.T, text string) []map[string]string {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil || len(rows) == 0 {
		t.Fatalf("%q: %v", text, err)
	}
	out := make([]map[string]string, len(rows))
	for i, row := range rows {
		out[i] = map[string]string{}
		for j, field := range row {
			out[i][rows[0][j]] = field
		}
	}
	return out
}

// An answer is the whole one less its cautions and sources, unless they are asked for.
func TestBatchLean(t *testing.T) {
	const line = `{"size":"12mm","web":2.1,"chisel-angle":126,"lip-angle":[59,58.5]}`
	var whole, lean map[string]any
	if err := json.Unmarshal([]byte(run(line, "batch", "--explain", "--sources").out), &whole); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal([]byte(run(line, "batch", "--explain").out), &lean); err != nil {
		t.Fatal(err)
	}
	delete(whole, "cautions")
	delete(whole, "sources")
	strip := func(v any) { delete(v.(map[string]any), "source") }
	for _, limit := range whole["limits"].(map[string]any) {
		strip(limit)
	}
	for _, step := range whole["steps"].([]any) {
		strip(step)
	}
	if a, b := fmt.Sprint(whole), fmt.Sprint(lean); a != b || len(whole) < 6 {
		t.Errorf("lean %s\nwhole %s", b, a)
	}
}

// breaks takes so many bytes, then fails.
type breaks struct {
	room int
	err  error
}

func (b *breaks) Write(p []byte) (int, error) {
	if b.room -= len(p); b.room < 0 {
		return 0, b.err
	}
	return len(p), nil
}

// A pipe that nobody reads any more ends the run without a word; an output that
// breaks is told.
func TestBatchOutputBreaks(t *testing.T) {
	lines := strings.NewReader(strings.Repeat(`{"size":"12mm"}`+"\n", 5000))
	for _, c := range []struct {
		err    error
		room   int
		args   []string
		status int
		said   string
	}{
		{&os.PathError{Op: "write", Path: "|1", Err: syscall.EPIPE}, 1 << 20, nil, 128 + 13, ""},
		{io.ErrShortWrite, 1 << 20, nil, 3, "error: cannot write the answers: short write\n"},
		{io.ErrShortWrite, 10, []string{"--format", "csv"}, 3, "error: cannot write the answers: short write\n"},
	} {
		lines.Seek(0, io.SeekStart)
		var errw bytes.Buffer
		status := cli.Main(append([]string{"batch"}, c.args...), lines, &breaks{c.room, c.err}, &errw)
		_, said, cautioned := strings.Cut(errw.String(), "when unsure\n")
		if !cautioned {
			said = errw.String()
		}
		if status != c.status || said != c.said {
			t.Errorf("%v: status %d, %q", c.err, status, said)
		}
	}
}

// failing gives a text, then an error.
type failing struct {
	io.Reader
	err error
}

func (f failing) Read(p []byte) (int, error) {
	n, err := f.Reader.Read(p)
	if err == io.EOF {
		err = f.err
	}
	return n, err
}

func TestBatchInputBreaks(t *testing.T) {
	gone := errors.New("the disk is gone")
	for _, args := range [][]string{{"batch", "--sources"}, {"batch", "--sources", "--input", "csv"}} {
		var out, errw bytes.Buffer
		status := cli.Main(args, failing{strings.NewReader("\n"), gone}, &out, &errw)
		if status != 3 || out.Len() > 0 || errw.String() != "error: cannot read standard input: the disk is gone\n" {
			t.Errorf("%v: status %d, %q, %q", args, status, out.String(), errw.String())
		}
	}
}

// A line longer than any drill is refused, and the rest goes on.
func TestBatchLongLine(t *testing.T) {
	a := run(`{"name":"`+strings.Repeat("x", 2<<20)+"\"}\n"+`{"size":"12mm"}`+"\n", "batch", "--command", "chisel")
	if a.status != 3 || !strings.HasPrefix(a.out, `{"line":1,"error":"is longer than 1048576 bytes: no drill takes that"}`+"\n"+`{"schema":1,"command":"chisel"`) {
		t.Errorf("status %d, %.200s", a.status, a.out)
	}
}

// discard counts what it throws away, and looks at the memory in use now and then.
type discard struct {
	lines, writes int
	most          uint64
}

func (d *discard) Write(p []byte) (int, error) {
	if d.lines += bytes.Count(p, []byte("\n")); d.writes%500 == 0 {
		var now runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&now)
		d.most = max(d.most, now.HeapAlloc)
	}
	d.writes++
	return len(p), nil
}

// However long the input, the memory in use stays small.
func TestBatchMemory(t *testing.T) { batchMemory(t, 20_000) }

func batchMemory(t *testing.T, n int) {
	const line = `{"name":"M120-1","size":"12mm","web":2.1,"chisel-angle":126,"lip-angle":[59,58.5]}` + "\n"
	var before runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	out := new(discard)
	var errw bytes.Buffer
	status := cli.Main([]string{"batch", "--command", "chisel"}, io.LimitReader(&over{text: line}, int64(n*len(line))), out, &errw)
	if used := int64(out.most) - int64(before.HeapAlloc); status != 0 || out.lines != n || used > 24<<20 {
		t.Errorf("status %d, %d lines, %d bytes in use: %s", status, out.lines, used, errw.String())
	}
}

// over is a text over and over.
type over struct {
	text string
	at   int
}

func (o *over) Read(p []byte) (int, error) {
	n := copy(p, o.text[o.at:])
	o.at = (o.at + n) % len(o.text)
	return n, nil
}
