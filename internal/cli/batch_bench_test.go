//go:build unix

package cli_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"runtime"
	"syscall"
	"testing"
	"time"

	"evenlip/internal/cli"
)

// crib returns n lines, each an invented drill of the ferry yard's.
func cribLines(n int) []byte {
	var b bytes.Buffer
	sizes := [...]float64{3, 4, 5, 6.8, 8.5, 10, 12, 16, 20, 25}
	for i := range n {
		d := sizes[i%len(sizes)]
		wear := float64(i%41) / 100
		fmt.Fprintf(&b, `{"name":"M%.0f-%d","size":"%gmm","material":"steel-200","web":%.3f,"chisel-angle":%d,"lip-angle":[%.1f,58.5],"lip-height":[%.2f,0.02],"clearance":[11,12],"flute":%.1f,"flank-wear":%.2f,"corner-wear":%.2f,"depth":%.1f,"feed":0.1}`+"\n",
			10*d, i, d, d*(0.12+wear/10), 118+i%18, 58+wear*4, wear/2, 9*d, wear, wear/2, 2*d)
	}
	return b.Bytes()
}

// spent is the time that something took, by the clock and on all the cores.
type spent struct{ wall, cpu time.Duration }

func (s *spent) add(f func()) {
	cpu, start := processorTime(), time.Now()
	f()
	s.wall += time.Since(start)
	s.cpu += processorTime() - cpu
}

func processorTime() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// BenchmarkBatch holds batch against the least that any program in its place
// would do: take each line apart with encoding/json and put it together again,
// on one core. The two take turns, so that a busy machine slows both.
func BenchmarkBatch(b *testing.B) {
	const n = 4000
	lines := cribLines(n)
	var floor, ours spent
	b.SetBytes(int64(len(lines)))
	for b.Loop() {
		cores := runtime.GOMAXPROCS(1)
		floor.add(func() { recode(b, lines) })
		runtime.GOMAXPROCS(cores)
		ours.add(func() {
			if status := cli.Main([]string{"batch"}, bytes.NewReader(lines), io.Discard, io.Discard); status != 0 {
				b.Fatalf("status %d", status)
			}
		})
	}
	each := func(t time.Duration) float64 { return float64(t.Nanoseconds()) / float64(b.N*n) }
	b.ReportMetric(each(floor.wall), "floor-ns/line")
	b.ReportMetric(each(ours.wall), "batch-ns/line")
	b.ReportMetric(each(ours.cpu), "batch-cpu-ns/line")
	b.ReportMetric(ours.wall.Seconds()/floor.wall.Seconds(), "wall-ratio")
	b.ReportMetric(ours.cpu.Seconds()/floor.cpu.Seconds(), "cpu-ratio")
}

func recode(b *testing.B, lines []byte) {
	out := bufio.NewWriter(io.Discard)
	in := bufio.NewScanner(bytes.NewReader(lines))
	for in.Scan() {
		var drill map[string]any
		if err := json.Unmarshal(in.Bytes(), &drill); err != nil {
			b.Fatal(err)
		}
		again, err := json.Marshal(drill)
		if err != nil {
			b.Fatal(err)
		}
		out.Write(append(again, '\n'))
	}
}
