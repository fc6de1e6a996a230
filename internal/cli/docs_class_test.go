package cli_test

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"evenlip/internal/cli"
)

// The drawings of the lessons are what the commands of the Makefile draw.
func TestLessonDrawings(t *testing.T) {
	makefile, err := os.ReadFile(filepath.Join(repository, "Makefile"))
	if err != nil {
		t.Fatal(err)
	}
	const draws, into = "$(GO) run ./cmd/evenlip draw ", " --svg "
	drawn := 0
	for _, line := range strings.Split(strings.ReplaceAll(string(makefile), "\\\n", " "), "\n") {
		_, flags, isDrawing := strings.Cut(strings.Join(strings.Fields(line), " "), draws)
		readings, file, named := strings.Cut(flags, into)
		if !isDrawing || !named {
			continue
		}
		drawn++
		t.Run(filepath.Base(file), func(t *testing.T) {
			kept, err := os.ReadFile(filepath.Join(repository, file))
			if err != nil {
				t.Fatal(err)
			}
			var out, complaints bytes.Buffer
			args := append([]string{"draw", "--svg", "-"}, strings.Fields(readings)...)
			if status := cli.Main(args, strings.NewReader(""), &out, &complaints); status != 0 {
				t.Fatalf("status %d: %s", status, complaints.String())
			}
			sameDrawing(t, string(kept), out.String())
		})
	}
	if drawn == 0 {
		t.Error("the Makefile draws nothing")
	}
}

// sameDrawing compares the words of two drawings exactly and their numbers
// within two steps of the third decimal, by which processors may differ.
func sameDrawing(t *testing.T, kept, now string) {
	t.Helper()
	const tolerance = 0.0021
	number := regexp.MustCompile(`-?\d+(\.\d+)?`)
	if was, is := number.ReplaceAllString(kept, "#"), number.ReplaceAllString(now, "#"); was != is {
		t.Errorf("drawn otherwise (make docs): %s", firstDifference(was, is))
		return
	}
	was, is := number.FindAllString(kept, -1), number.FindAllString(now, -1)
	for i := range was {
		a, errA := strconv.ParseFloat(was[i], 64)
		b, errB := strconv.ParseFloat(is[i], 64)
		if errA != nil || errB != nil || math.Abs(a-b) > tolerance {
			t.Errorf("number %d is %s in the file and %s as drawn now (make docs)", i, was[i], is[i])
			return
		}
	}
}
