package cli_test

import (
	"os"
	"os/exec"
	"path/filepath"
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

// The script that is kept under docs does in bash what it is for.
func TestBashCompletes(t *testing.T) {
	bash, err := exec.LookPath("bash")
	if err != nil {
		t.Skip("no bash here")
	}
	script, err := filepath.Abs(filepath.Join(repository, "docs", "completions", "evenlip"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		line []string
		want string
	}{
		{[]string{"evenlip", "insp"}, "inspect\n"},
		{[]string{"evenlip", "inspect", "--size", "no.7"}, "no.79\nno.78\nno.77\nno.76\nno.75\nno.74\nno.73\nno.72\nno.71\nno.70\nno.7\n"},
		{[]string{"evenlip", "thrust", "--material", "titanium-"}, "titanium-pure\n"},
		{[]string{"evenlip", "crib", "record", "--sample", "I56"}, "I56-1\n"},
		{[]string{"evenlip", "inspect", "--units", "i"}, "in\n"},
	} {
		cmd := exec.Command(bash, append([]string{"-c", asBash, "bash", script}, c.line...)...)
		cmd.Dir, cmd.Env = t.TempDir(), os.Environ()
		out, err := cmd.CombinedOutput()
		if err != nil || string(out) != c.want {
			t.Errorf("%v: %v\n%s, not\n%s", c.line, err, out, c.want)
		}
	}
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
