package crib

import (
	"bytes"
	"fmt"
	"runtime"
	"strings"
	"testing"
	"time"

	"gopkg.in/yaml.v3"
)

// largeCrib is a file of the sample's drills over and over, n in all.
func largeCrib(t testing.TB, n int) []byte {
	t.Helper()
	head, drills, found := strings.Cut(string(sample), "\ndrills:\n")
	if !found {
		t.Fatal("the sample has no drills")
	}
	var b bytes.Buffer
	b.WriteString(head + "\ndrills:\n")
	for i := 0; n > 0; i++ {
		for _, d := range strings.Split(drills, "  - id: ")[1:] {
			if n--; n < 0 {
				break
			}
			fmt.Fprintf(&b, "  - id: %d-%s", i, d)
		}
	}
	return b.Bytes()
}

// BenchmarkAudit100k holds an audit of a hundred thousand drills against what the
// YAML library takes to make nodes of the same file and nothing else: the fastest
// of each, for whoever else uses the processors slows down one or the other.
func BenchmarkAudit100k(b *testing.B) {
	text := largeCrib(b, 100_000)
	decoding, auditing := time.Hour, time.Hour
	for range b.N {
		decoding = min(decoding, spent(func() {
			var doc yaml.Node
			if err := yaml.Unmarshal(text, &doc); err != nil {
				b.Fatal(err)
			}
		}))
		auditing = min(auditing, spent(func() {
			c, errs := Read("crib.yaml", text, nil)
			if len(errs) > 0 {
				b.Fatal(errs[0])
			}
			drills := c.Judge()
			WorstFirst(drills)
			c.Audit(drills, People)
		}))
	}
	b.ReportMetric(decoding.Seconds(), "s-decoding")
	b.ReportMetric(auditing.Seconds(), "s-audit")
	b.ReportMetric(auditing.Seconds()/decoding.Seconds(), "audit/decoding")
}

// spent returns how long do takes, begun with no garbage lying about.
func spent(do func()) time.Duration {
	runtime.GC()
	began := time.Now()
	do()
	return time.Since(began)
}

// BenchmarkAuditWithGauges audits three thousand drills, each drawn within its gauges.
func BenchmarkAuditWithGauges(b *testing.B) {
	c, faults := Read("crib.yaml", largeCrib(b, 3000), nil)
	if len(faults) > 0 {
		b.Fatal(faults[0])
	}
	c.Gauges = coarse
	for b.Loop() {
		drills := c.Judge()
		WorstFirst(drills)
		c.Audit(drills, People)
	}
}

// BenchmarkDayWithGauges plans for them.
func BenchmarkDayWithGauges(b *testing.B) {
	c, faults := Read("crib.yaml", largeCrib(b, 3000), nil)
	if len(faults) > 0 {
		b.Fatal(faults[0])
	}
	c.Gauges = coarse
	for b.Loop() {
		c.Day()
	}
}
