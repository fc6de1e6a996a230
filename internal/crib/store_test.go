package crib

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"evenlip/internal/drill"
)

// manyDrills is a crib large enough for writing it to take a while.
func manyDrills(n int) string {
	var b strings.Builder
	b.WriteString("# kept by hand\nversion: 1\ndrills:\n")
	for i := range n {
		fmt.Fprintf(&b, "  # drill %d\n  - id: D%d\n    size: 12mm\n    web: 1.9mm   # caliper\n    flute: 70mm\n", i, i)
	}
	return b.String()
}

func inFile(t *testing.T, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), FileName)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func contents(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// process is this test's program as a writer of its own.
func process(path, id, note string) *exec.Cmd {
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), "CRIB_TEST_WRITER="+path, "CRIB_TEST_ID="+id, "CRIB_TEST_NOTE="+note)
	return cmd
}

// Fifty records at once all land, ten of them on one drill.
func TestFiftyWritersAtOnce(t *testing.T) {
	path := inFile(t, manyDrills(60))
	var wg sync.WaitGroup
	for i := range 50 {
		wg.Add(1)
		go func() {
			defer wg.Done()
			if out, err := process(path, fmt.Sprintf("D%d", max(0, i-9)), fmt.Sprintf("writer %d", i)).CombinedOutput(); err != nil {
				t.Errorf("writer %d: %v %s", i, err, out)
			}
		}()
	}
	wg.Wait()
	text := contents(t, path)
	c := read(t, text)
	events := 0
	for _, d := range c.Drills {
		events += len(d.History)
	}
	if events != 50 || strings.Count(text, "# drill ") != 60 || strings.Count(text, "# caliper") != 60 {
		t.Errorf("%d events of 50, %d remarks", events, strings.Count(text, "# "))
	}
	for i := range 50 {
		if !strings.Contains(text, fmt.Sprintf("note: writer %d\n", i)) {
			t.Errorf("writer %d has not landed", i)
		}
	}
}

// killed begins a record and kills it after some time less than a record takes.
func killed(t *testing.T, path, id string, took time.Duration) bool {
	t.Helper()
	p := process(path, id, "killed")
	out, err := p.StdoutPipe()
	if err == nil {
		err = p.Start()
	}
	if err != nil {
		t.Fatal(err)
	}
	out.Read(make([]byte, 1)) // it has begun
	time.Sleep(time.Duration(rand.Int64N(int64(took))))
	p.Process.Kill()
	return p.Wait() != nil
}

// killMany kills that many records of one file, one after the other.
func killMany(t *testing.T, kills int, died, landed *atomic.Int64) {
	path := inFile(t, manyDrills(kills+1))
	began := time.Now()
	if _, err := Record(path, "D0", Change{Date: "2026-11-25", What: Readings, Readings: map[drill.Reading]string{drill.Web: "2mm"}}, nil); err != nil {
		t.Fatal(err)
	}
	took := 2 * time.Since(began)
	for i := range kills {
		id := fmt.Sprintf("D%d", i+1)
		before := contents(t, path)
		if killed(t, path, id, took) {
			died.Add(1)
		}
		after := contents(t, path)
		c := read(t, after) // whole, or it would not be read
		switch n := len(find(t, c, id).History); {
		case n == 0 && after != before:
			t.Fatalf("kill %d: the file changed and the record is not in it", i)
		case n > 1:
			t.Fatalf("kill %d: recorded %d times", i, n)
		default:
			landed.Add(int64(n))
		}
	}
	if out, err := process(path, "D0", "last").CombinedOutput(); err != nil {
		t.Fatalf("after the kills: %v %s", err, out)
	}
	if left, _ := filepath.Glob(filepath.Join(filepath.Dir(path), ".*.new")); len(left) > 0 {
		t.Errorf("left over: %v", left)
	}
}

// A record that is killed leaves the old file or the new one, whole, and never
// keeps the next one out.
func TestKilledWriters(t *testing.T) {
	kills := 200
	if testing.Short() {
		kills = 40
	}
	const files = 4
	var died, landed atomic.Int64
	t.Run("all", func(t *testing.T) {
		for file := range files {
			t.Run(fmt.Sprint(file), func(t *testing.T) {
				t.Parallel()
				killMany(t, kills/files, &died, &landed)
			})
		}
	})
	if died.Load() < int64(kills)/10 || landed.Load() < int64(kills)/20 {
		t.Errorf("of %d only %d died in time and %d were recorded: this says little", kills, died.Load(), landed.Load())
	}
	t.Logf("of %d, %d died in time, %d were recorded", kills, died.Load(), landed.Load())
}

func TestLinksAndModesStay(t *testing.T) {
	path := inFile(t, small)
	if err := os.Chmod(path, 0o640); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(t.TempDir(), "link.yaml")
	if err := os.Symlink(path, link); err != nil {
		t.Skip(err)
	}
	if _, err := Record(link, "A1", ground("1mm"), nil); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is one no longer: %v %v", info, err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
	if n := len(find(t, read(t, contents(t, path)), "A1").History); n != 2 {
		t.Errorf("%d events", n)
	}
	entries, _ := os.ReadDir(filepath.Dir(link))
	if len(entries) != 1 {
		t.Errorf("something was left beside the link: %v", entries)
	}
}

// Someone who asks for no lock saves the file while a record is being made: the
// record begins again, and both are in the file.
func TestEditedMeanwhile(t *testing.T) {
	path := inFile(t, small)
	edited := strings.Replace(small, "# the end", "# edited meanwhile", 1)
	tries := 0
	err := update(path, func(data []byte) ([]byte, error) {
		if tries++; tries == 1 {
			if err := os.WriteFile(path, []byte(edited), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		_, next, err := Rewrite(path, data, "A1", ground("1mm"), nil)
		return next, err
	})
	text := contents(t, path)
	if err != nil || tries != 2 || !strings.Contains(text, "# edited meanwhile") || !strings.Contains(text, "what: grind\n") {
		t.Errorf("%v after %d tries:\n%s", err, tries, text)
	}
}

// Where that goes on, the editor's file stands and the record says so.
func TestEditedAgainAndAgain(t *testing.T) {
	path := inFile(t, small)
	tries := 0
	err := update(path, func(data []byte) ([]byte, error) {
		tries++
		if err := os.WriteFile(path, fmt.Appendf(nil, "%s# edit %d\n", small, tries), 0o644); err != nil {
			t.Fatal(err)
		}
		return append(data, "# ours\n"...), nil
	})
	var store *StoreError
	if !errors.As(err, &store) || !errors.Is(err, errChanged) || store.Hint == "" {
		t.Errorf("%v", err)
	}
	if text := contents(t, path); tries != mostTries || text != fmt.Sprintf("%s# edit %d\n", small, tries) {
		t.Errorf("%d tries:\n%s", tries, text)
	}
}

// An editor has saved after the last look at the file and before the renaming:
// its file is there again, and ours is gone.
func TestEditedInTheVeryMoment(t *testing.T) {
	path := inFile(t, "theirs")
	next := filepath.Join(filepath.Dir(path), "next")
	if err := os.WriteFile(next, []byte("ours"), 0o644); err != nil {
		t.Fatal(err)
	}
	if done, err := exchange(next, path); !done || err != nil {
		t.Skip("files cannot change places here", err)
	}
	if _, err := exchange(next, path); err != nil {
		t.Fatal(err)
	}
	if err := swap(next, path, []byte("as it was")); !errors.Is(err, errChanged) {
		t.Errorf("%v", err)
	}
	if text := contents(t, path); text != "theirs" {
		t.Errorf("%q stands", text)
	}
	if _, err := os.Stat(next); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("left over: %v", err)
	}
	if err := os.WriteFile(next, []byte("ours"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := swap(next, path, []byte("theirs")); err != nil || contents(t, path) != "ours" {
		t.Errorf("%v, %q", err, contents(t, path))
	}
}

func TestFilesThatCannotBeWritten(t *testing.T) {
	change := Change{Date: "2026-11-25", What: Readings, Readings: map[drill.Reading]string{drill.Web: "2mm"}}
	closed := inFile(t, small)
	if err := os.Chmod(closed, 0o444); err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	for path, want := range map[string]string{closed: "read-only", filepath.Join(dir, "none.yaml"): "no such file", os.DevNull: "no ordinary file", dir: "no ordinary file"} {
		_, err := Record(path, "A1", change, nil)
		var store *StoreError
		if !errors.As(err, &store) || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, not %s", err, want)
		}
	}
	if contents(t, closed) != small {
		t.Error("a read-only file was changed")
	}
}

// A refusal leaves the file as it was, to the byte.
func TestRefusedIsNotWritten(t *testing.T) {
	path := inFile(t, small)
	before, _ := os.Stat(path)
	if _, err := Record(path, "A1", ground("900mm"), nil); err == nil {
		t.Fatal("900 mm came off")
	}
	after, _ := os.Stat(path)
	if contents(t, path) != small || !after.ModTime().Equal(before.ModTime()) || !os.SameFile(before, after) {
		t.Error("the file was written")
	}
}

func TestStart(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new.yaml")
	if err := Start(path, []byte(NewText)); err != nil {
		t.Fatal(err)
	}
	if c := read(t, contents(t, path)); len(c.Drills) != 0 || c.Name == "" {
		t.Errorf("%+v", c)
	}
	var refusal *Refusal
	if err := Start(path, []byte("other")); !errors.As(err, &refusal) || contents(t, path) != NewText {
		t.Errorf("%v", err)
	}
	var store *StoreError
	if err := Start(filepath.Join(path, "x"), nil); !errors.As(err, &store) {
		t.Errorf("%v", err)
	}
	if !bytes.Equal(SampleText(), sample) {
		t.Error("the sample's text is another")
	}
	// the drill that a new file shows as a remark can be taken as it stands
	var shown strings.Builder
	for _, line := range strings.Split(NewText, "\n") {
		if line == "drills: []" {
			continue
		}
		if strings.HasPrefix(line, "# drills:") || strings.HasPrefix(line, "#   ") {
			line = strings.TrimPrefix(line, "# ")
		}
		shown.WriteString(line + "\n")
	}
	if c := read(t, strings.Replace(shown.String(), "  12mm: 2\n", "", 1)); len(c.Drills) != 1 {
		t.Errorf("%d drills", len(c.Drills))
	}
}

func TestNearest(t *testing.T) {
	top := t.TempDir()
	deep := filepath.Join(top, "a", "b")
	if err := os.MkdirAll(filepath.Join(deep, FileName), 0o755); err != nil { // a folder of that name is no crib
		t.Fatal(err)
	}
	if got, found := Nearest(deep); found && strings.HasPrefix(got, top) {
		t.Errorf("found %s", got)
	}
	for _, dir := range []string{top, filepath.Join(top, "a")} {
		want := filepath.Join(dir, FileName)
		if err := os.WriteFile(want, nil, 0o644); err != nil {
			t.Fatal(err)
		}
		if got, found := Nearest(deep); !found || got != want {
			t.Errorf("%s, not %s", got, want)
		}
	}
}
