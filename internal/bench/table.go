//go:build unix

package main

import (
	"fmt"
	"io"
	"os"
	"runtime"
	"slices"
	"strings"
	"time"
)

// table prints the pairs: of CPU time and of time on the clock the median, and
// its multiple of the least program's in two ways, the quotient of the medians
// and the median of the quotients of each pair.
func table(w io.Writer, pairs []pair) {
	fmt.Fprintln(w, "| run | CPU, ms | x least | pair by pair | aim | clock, ms | x least | pair by pair | page faults | program, MB |")
	fmt.Fprintln(w, "|---|---|---|---|---|---|---|---|---|---|")
	for _, p := range pairs {
		aim := ""
		if p.aim > 0 {
			aim = fmt.Sprintf("%.2f", p.aim)
		}
		fmt.Fprintf(w, "| %s | %s | %s | %s | %.0f | %.1f |\n", p.name, multiples(p, func(c cost) float64 { return milliseconds(c.cpu) }), aim,
			multiples(p, func(c cost) float64 { return milliseconds(c.wall) }), median(list(p.costs, func(c cost) float64 { return c.faults })), float64(p.size)/1e6)
	}
}

// multiples returns three cells: the median, and it over the least program's
// both ways.
func multiples(p pair, of func(cost) float64) string {
	its, least := list(p.costs, of), list(p.floor, of)
	quotients := make([]float64, len(its))
	for i := range its {
		quotients[i] = its[i] / least[i]
	}
	return fmt.Sprintf("%.2f | %.2f | %.2f", median(its), median(its)/median(least), median(quotients))
}

func milliseconds(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }

func list(costs []cost, of func(cost) float64) []float64 {
	out := make([]float64, len(costs))
	for i, c := range costs {
		out[i] = of(c)
	}
	return out
}

// median returns the middle of the values, the mean of the two middle ones
// where their number is even. It reorders them.
func median(values []float64) float64 {
	slices.Sort(values)
	n := len(values)
	return (values[(n-1)/2] + values[n/2]) / 2
}

// machine says what the figures were measured on.
func machine() string {
	about := fmt.Sprintf("%s, %s/%s, %d processors", runtime.Version(), runtime.GOOS, runtime.GOARCH, runtime.NumCPU())
	if text, err := os.ReadFile("/proc/cpuinfo"); err == nil {
		if _, rest, found := strings.Cut(string(text), "model name"); found {
			model, _, _ := strings.Cut(rest, "\n")
			about += ", " + strings.Trim(model, " \t:")
		}
	}
	return about + ", " + time.Now().Format(time.DateOnly) + "."
}

// load is how many processes wanted a processor over the last minute.
func load() string {
	text, err := os.ReadFile("/proc/loadavg")
	if err != nil {
		return "unknown"
	}
	minute, _, _ := strings.Cut(string(text), " ")
	return minute
}
