//go:build unix

package cli_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"io"
	"os/exec"
	"strings"
	"syscall"
	"testing"
)

// started runs the program itself and gives it lines without end, or just one.
func started(t *testing.T, endless bool) (cmd *exec.Cmd, answers *bufio.Reader, said *bytes.Buffer) {
	t.Helper()
	cmd = exec.Command("evenlip", "batch", "--sources")
	stdin, err := cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	stdout, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	said = new(bytes.Buffer)
	cmd.Stderr = said
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { stdin.Close() })
	const line = `{"size":"12mm"}` + "\n"
	go func() {
		io.WriteString(stdin, line)
		if endless {
			io.Copy(stdin, &over{text: line}) // until nobody reads
		}
	}()
	return cmd, bufio.NewReader(stdout), said
}

// A signal ends the run with a whole line, the status that a shell gives it and
// a word on how far it came, whether it is at work or waits for its input.
func TestBatchSignals(t *testing.T) {
	for _, c := range []struct {
		signal  syscall.Signal
		endless bool
		status  int
		said    string
	}{
		{syscall.SIGINT, false, 130, "error: standard input: stopped after line 1: interrupt\n"},
		{syscall.SIGTERM, false, 143, "error: standard input: stopped after line 1: terminated\n"},
		{syscall.SIGINT, true, 130, ""},
	} {
		cmd, answers, said := started(t, c.endless)
		if first, err := answers.ReadString('\n'); err != nil || !json.Valid([]byte(first)) {
			t.Fatalf("%q, %v", first, err)
		}
		if err := cmd.Process.Signal(c.signal); err != nil {
			t.Fatal(err)
		}
		rest, err := io.ReadAll(answers)
		if err != nil {
			t.Fatal(err)
		}
		cmd.Wait()
		if status := cmd.ProcessState.ExitCode(); status != c.status || c.said != "" && said.String() != c.said || !strings.Contains(said.String(), "stopped after line ") {
			t.Errorf("%v: status %d, %s", c.signal, status, said)
		}
		for _, line := range strings.SplitAfter(string(rest), "\n") {
			if line != "" && (!strings.HasSuffix(line, "}\n") || !json.Valid([]byte(line))) {
				t.Errorf("%v: half a line: %.100q", c.signal, line)
			}
		}
	}
}

// A run that was started not to be interrupted is not.
func TestBatchIgnoresWhatItsParentIgnores(t *testing.T) {
	out, err := exec.Command("sh", "-c", `trap '' INT
		(sleep 0.5; echo '{"size":"12mm"}') | sh -c 'exec 3<&0; evenlip batch --sources <&3 & sleep 0.2; kill -INT $!; wait $!; echo status $?'`).CombinedOutput()
	if text := string(out); err != nil || !strings.HasSuffix(text, "\nstatus 0\n") || strings.Count(text, "\n") != 2 {
		t.Errorf("%v: %s", err, text)
	}
}

// Whoever reads the answers may stop reading: not a word about it.
func TestBatchHead(t *testing.T) {
	cmd := exec.Command("sh", "-c", `(evenlip batch --sources; echo "status $?" >&2) | head -n 1`)
	cmd.Stdin = io.LimitReader(&over{text: `{"size":"12mm"}` + "\n"}, 1<<20)
	var said bytes.Buffer
	cmd.Stderr = &said
	out, err := cmd.Output()
	if err != nil || !json.Valid(out) || said.String() != "status 141\n" {
		t.Errorf("%v, %.100q, %q", err, out, said.String())
	}
}
