package cli_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"evenlip/internal/cli"
)

// asBash presses the tabulator after a line, as bash would with its collection
// of completion functions, of which the script wants one.
const asBash = `
_get_comp_words_by_ref() {
	words=("${COMP_WORDS[@]}"); cword=$COMP_CWORD
	cur=${words[cword]}; prev=${words[cword-1]}
}
source "$1"; shift
COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); COMP_LINE="$*"; COMP_POINT=${#COMP_LINE}; COMP_TYPE=9
compopt() { :; }
__start_evenlip
printf '%s\n' "${COMPREPLY[@]}"
`

// asZsh and asFish do the same as these two would.
const (
	asZsh = `
compdef() { : }
_describe() { print -rl -- "${completions[@]%%:*}" }
source "$1"; shift
words=("$@"); CURRENT=$#
_evenlip
`
	asFish = `
source $argv[1]
complete --do-complete=$argv[2] | string replace --regex '\t.*' ''; or true
`
)

// The completion scripts do in each shell what they are for.
func TestShellsComplete(t *testing.T) {
	for _, c := range []struct {
		line string
		want string // word by word
	}{
		{"evenlip insp", "inspect"},
		{"evenlip thrust --material titanium-", "titanium-pure"},
		{"evenlip crib record --sample I56", "I56-1"},
		{"evenlip inspect --units i", "in"},
		{"evenlip batch --command thr", "thrust"},
		{"evenlip batch --input ", "json csv"},
		{"evenlip batch --command spe", "speed"},
	} {
		for _, shell := range []string{"bash", "zsh", "fish"} {
			inShell(t, shell, c.line, c.want)
		}
	}
}

// inShell presses the tabulator after a line in a shell, if it is there.
func inShell(t *testing.T, shell, line, want string) {
	t.Helper()
	t.Run(shell+" "+line, func(t *testing.T) {
		program, err := exec.LookPath(shell)
		if err != nil {
			t.Skip("no " + shell + " here")
		}
		var args []string
		switch words := strings.Split(line, " "); shell {
		case "bash":
			args = append([]string{"--norc", "-c", asBash, "bash", script(t, shell)}, words...)
		case "zsh":
			args = append([]string{"-f", "-c", asZsh, "zsh", script(t, shell)}, words...)
		case "fish":
			args = []string{"--no-config", "-c", asFish, script(t, shell), line}
		}
		cmd := exec.Command(program, args...)
		cmd.Dir, cmd.Env = t.TempDir(), append(os.Environ(), "HOME="+t.TempDir())
		out, err := cmd.CombinedOutput()
		if got := strings.Join(strings.Fields(string(out)), " "); err != nil || got != want {
			t.Errorf("%v\n%s, not\n%s", err, got, want)
		}
	})
}

// script is a file with what a shell is to read.
func script(t *testing.T, shell string) string {
	t.Helper()
	a := run("", "completion", shell)
	if a.status != 0 {
		t.Fatalf("completion %s: status %d, %s", shell, a.status, a.err)
	}
	file := filepath.Join(t.TempDir(), shell)
	if err := os.WriteFile(file, []byte(a.out), 0o666); err != nil {
		t.Fatal(err)
	}
	return file
}

// The command that is printed again can be typed again: PowerShell takes a word
// apart at a comma, a POSIX shell does not.
func TestQuotedForTheShell(t *testing.T) {
	for text, want := range map[string][2]string{
		"12mm":  {"12mm", "12mm"},
		"59,58": {"59,58", "'59,58'"},
		"#7":    {"'#7'", "'#7'"},
		`0.03"`: {`'0.03"'`, `'0.03"'`},
		"o'n e": {`'o'\''n e'`, `'o''n e'`},
	} {
		for i, system := range [...]string{"linux", "windows"} {
			if got := cli.QuotedFor(system, text); got != want[i] {
				t.Errorf("%s on %s: %s, not %s", text, system, got, want[i])
			}
		}
	}
}
