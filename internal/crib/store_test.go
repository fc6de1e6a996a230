package crib

import (
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

// leftovers returns what stands beside a crib besides its lock.
func leftovers(path string) (names []string) {
	entries, _ := os.ReadDir(filepath.Dir(path))
	for _, e := range entries {
		if e.Name() != filepath.Base(path) && e.Name() != filepath.Base(LockName(path)) {
			names = append(names, e.Name())
		}
	}
	return names
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
	if left := leftovers(path); len(left) > 0 {
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
