package store

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// Fifty changes at once are all made.
func TestFiftyWritersAtOnce(t *testing.T) {
	const writers = 50
	path := inFile(t, large(5000))
	var wg sync.WaitGroup
	for i := range writers {
		wg.Add(1)
		go func() {
			defer wg.Done()
			if out, err := process(path, fmt.Sprintf("writer %d", i)).CombinedOutput(); err != nil {
				t.Errorf("writer %d: %v %s", i, err, out)
			}
		}()
	}
	wg.Wait()
	added, old := strings.CutPrefix(contents(t, path), large(5000))
	if !old || strings.Count(added, "\n") != writers {
		t.Errorf("the old text stands: %v; and behind it\n%s", old, added)
	}
	for i := range writers {
		if !strings.Contains(added, fmt.Sprintf("writer %d\n", i)) {
			t.Errorf("writer %d has not written", i)
		}
	}
}

// killed begins a change and kills it after some time less than a change takes.
func killed(t *testing.T, path, line string, took time.Duration) bool {
	t.Helper()
	p := process(path, line)
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

// killMany kills that many changes of one file, one after the other.
func killMany(t *testing.T, kills int, died, landed *atomic.Int64) {
	path := inFile(t, large(20_000))
	began := time.Now()
	if err := Transform(path, ours); err != nil {
		t.Fatal(err)
	}
	took := 2 * time.Since(began)
	for i := range kills {
		line := fmt.Sprintf("writer %d", i)
		before := contents(t, path)
		if killed(t, path, line, took) {
			died.Add(1)
		}
		switch contents(t, path) {
		case before:
		case before + line + "\n":
			landed.Add(1)
		default:
			t.Fatalf("kill %d: the file is neither the old one nor the new one", i)
		}
	}
	if out, err := process(path, "last").CombinedOutput(); err != nil || !strings.HasSuffix(contents(t, path), "last\n") {
		t.Fatalf("after the kills: %v %s", err, out)
	}
	for _, name := range leftovers(path) { // as the manual says
		if !strings.HasPrefix(name, ".crib.yaml.") || !strings.HasSuffix(name, ".part") {
			t.Errorf("left over: %s", name)
		}
	}
}

// A change that is killed leaves the old file or the new one, whole, and never keeps
// the next one out.
func killWriters(t *testing.T, kills int) {
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
		t.Errorf("of %d only %d died in time and %d were made: this says little", kills, died.Load(), landed.Load())
	}
	t.Logf("of %d, %d died in time, %d were made", kills, died.Load(), landed.Load())
}

func TestKilledWriters(t *testing.T) { killWriters(t, 60) }

func TestLinksAndModesStay(t *testing.T) {
	path := inFile(t, text)
	if err := os.Chmod(path, 0o640); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(t.TempDir(), "link.yaml")
	if err := os.Symlink(path, link); err != nil {
		t.Skip(err)
	}
	if err := Transform(link, ours); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is one no longer: %v %v", info, err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
	if got := contents(t, path); got != text+"# ours\n" {
		t.Errorf("%q", got)
	}
	entries, _ := os.ReadDir(filepath.Dir(link))
	if len(entries) != 1 {
		t.Errorf("something was left beside the link: %v", entries)
	}
}

func TestFilesThatCannotBeWritten(t *testing.T) {
	closed := inFile(t, text)
	if err := os.Chmod(closed, 0o444); err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	for path, want := range map[string]string{closed: "read-only", filepath.Join(dir, "none.yaml"): "no such file", os.DevNull: "no ordinary file", dir: "no ordinary file"} {
		cannotWrite(t, Transform(path, ours), want)
	}
	if contents(t, closed) != text {
		t.Error("a read-only file was changed")
	}
}

// A file with two names would come apart: it is left as it is.
func TestHardLinks(t *testing.T) {
	path := inFile(t, text)
	other := filepath.Join(filepath.Dir(path), "other.yaml")
	if err := os.Link(path, other); err != nil {
		t.Skip(err)
	}
	if f := cannotWrite(t, Transform(path, ours), "2 names (hard links)"); f != nil && !strings.Contains(f.Hint, "symbolic") {
		t.Errorf("hint: %s", f.Hint)
	}
	if contents(t, path) != text {
		t.Error("the file was changed")
	}
	if err := errors.Join(os.Remove(other), Transform(path, ours)); err != nil {
		t.Errorf("with one name: %v", err)
	}
}

// An error of the change comes back as it is, and the file is not touched.
func TestRefusedIsNotWritten(t *testing.T) {
	path := inFile(t, text)
	before, _ := os.Stat(path)
	refused := errors.New("refused")
	if err := Transform(path, func([]byte) ([]byte, error) { return nil, refused }); err != refused {
		t.Errorf("%v", err)
	}
	after, _ := os.Stat(path)
	if contents(t, path) != text || !after.ModTime().Equal(before.ModTime()) || !os.SameFile(before, after) {
		t.Error("the file was written")
	}
}

func TestCreate(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new.yaml")
	if err := Create(path, []byte(text)); err != nil || contents(t, path) != text {
		t.Errorf("%v", err)
	}
	if err := Create(path, []byte("other")); !errors.Is(err, fs.ErrExist) || err.Error() != path+" is there already" || contents(t, path) != text {
		t.Errorf("%v", err)
	}
	cannotWrite(t, Create(filepath.Join(path, "x"), nil), "")
}
