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

// table prints the medians of CPU time and of pages, and the median time as a
// multiple of either floor's. The aim is a multiple of the libraries' time.
func table(w io.Writer, all []measured) {
	fmt.Fprintln(w, "| run | CPU, ms | x least | x the libraries | aim | page faults | program, MB |")
	fmt.Fprintln(w, "|---|---|---|---|---|---|---|")
	for _, m := range all {
		its := median(list(m.runs, milliseconds))
		beside := its / median(list(m.libraries, milliseconds))
		aim := ""
		switch {
		case m.aim > 0 && beside > m.aim:
			aim = fmt.Sprintf("%.2f, missed", m.aim)
		case m.aim > 0:
			aim = fmt.Sprintf("%.2f", m.aim)
		}
		fmt.Fprintf(w, "| %s | %.2f | %.2f | %.2f | %s | %.0f | %.1f |\n", m.name, its, its/median(list(m.least, milliseconds)), beside, aim,
			median(list(m.runs, func(c cost) float64 { return c.faults })), float64(m.size)/1e6)
	}
}

func milliseconds(c cost) float64 { return float64(c.cpu) / float64(time.Millisecond) }

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
