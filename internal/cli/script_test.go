package cli_test

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	jq "github.com/itchyny/gojq/cli"
	"github.com/rogpeppe/go-internal/testscript"

	"evenlip/internal/sheet/print/style"
)

var update = flag.Bool("update", false, "rewrite what the scripts and the documents say the program prints")

func TestMain(m *testing.M) {
	testscript.Main(atNobodysHome{m}, map[string]func(){
		"evenlip": func() { os.Exit(checked(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) },
		"jq":      func() { os.Exit(jq.Run()) },
		"mail":    mail,
	})
}

// mail stands in for the system's: it says what would be sent.
func mail() {
	text, err := io.ReadAll(os.Stdin)
	if err != nil {
		os.Exit(1)
	}
	fmt.Printf("to be sent: %q, %d lines\n", os.Args[1:], bytes.Count(text, []byte("\n")))
}

// atNobodysHome runs the tests where no settings of the person who runs them
// can change an answer.
type atNobodysHome struct{ m *testing.M }

func (a atNobodysHome) Run() int {
	for _, name := range []string{"NO_COLOR", "FORCE_COLOR", "XDG_CONFIG_HOME", "EVENLIP_SHOP"} {
		os.Unsetenv(name)
	}
	os.Setenv("HOME", "/no-home")
	os.Setenv("LC_ALL", "C.UTF-8")
	return a.m.Run()
}

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "../../testdata/script",
		UpdateScripts:       *update,
		RequireUniqueNames:  true,
		RequireExplicitExec: true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("GORACE", "atexit_sleep_ms=0")
			e.Setenv("LANG", "C.UTF-8")
			return nil
		},
		Cmds: map[string]func(ts *testscript.TestScript, neg bool, args []string){
			"exits": exits,
			"cells": cells,
		},
	})
}

// exits runs a command and wants its exit status: "exits 2 evenlip inspect".
// With status 2 or 3 nothing may stand on stdout, and stderr says what is
// wrong.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits STATUS COMMAND...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	var failed *exec.ExitError
	if err := ts.Exec(args[1], args[2:]...); errors.As(err, &failed) {
		got = failed.ExitCode()
	} else {
		ts.Check(err)
	}
	if got != want {
		ts.Fatalf("exit status %d, not %d", got, want)
	}
	if want < 2 {
		return
	}
	if out := ts.ReadFile("stdout"); out != "" {
		ts.Fatalf("something on stdout with status %d: %q", got, out)
	}
	if complaint := ts.ReadFile("stderr"); !strings.Contains("\n"+complaint, "\nerror: ") && !strings.HasPrefix(complaint, `{"schema":`) {
		ts.Fatalf("no line of stderr begins with error, nor is it an object: %q", complaint)
	}
}

// cells wants no line of stdout to be wider than so many cells of a terminal.
func cells(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: cells WIDTH")
	}
	most, err := strconv.Atoi(args[0])
	ts.Check(err)
	for _, line := range strings.Split(ts.ReadFile("stdout"), "\n") {
		if n := style.Width(line); n > most {
			ts.Fatalf("%d cells: %s", n, line)
		}
	}
}
