package cli

import (
	"bytes"
	"io"
	"strings"

	"github.com/spf13/cobra"
)

// mend is what a shell's script is given before the first line that begins so.
type mend struct{ before, add string }

// People are taught to type '#7, and cobra's scripts trip over it. In bash and zsh
// they hand the line to the shell's eval as it stands, with its quote still open, or
// with the rest of it a remark; in fish the program is given the quote.
var (
	bashMends = [...]mend{
		{"    # When completing a flag with an =", `    # A quote that is still open is closed for the program; a # begins no remark.
    local begun=${lastParam#-*=}
    case ${begun} in
    \'* | \"*)
        quote=${begun:0:1}
        if [[ ${begun:1} == *"${quote}"* ]]; then
            quote=""
        else
            requestComp+=${quote}
        fi
        ;;
    \#*)
        requestComp="${requestComp%"${begun}"}\\${begun}"
        ;;
    esac

`},
		{`    __evenlip_debug "Calling ${requestComp}"`, `    if [[ -n ${quote} ]]; then
        cur=${cur#"${quote}"}
    elif [[ ${cur} == \#* ]]; then
        cur="\\${cur}"
    fi

`},
		{"__evenlip_handle_completion_types() {", `# Within an open quote the shell wants what is offered as it stands.
__evenlip_handle_quoted() {
    local tab=$'\t' compline longest=0

    for compline in "${completions[@]}"; do
        if [[ ${compline%%$tab*} == "${cur}"* ]]; then
            COMPREPLY+=("${compline}")
            compline=${compline%%$tab*}
            if ((${#compline} > longest)); then
                longest=${#compline}
            fi
        fi
    done
    if ((${#COMPREPLY[*]} == 1 || COMP_TYPE == 37 || COMP_TYPE == 42)); then
        COMPREPLY=("${COMPREPLY[@]%%$tab*}")
    else
        __evenlip_format_comp_descriptions $longest
    fi
}

`},
		{"    case $COMP_TYPE in", `    if [[ -n ${quote} ]]; then
        __evenlip_handle_quoted
        return 0
    fi

`},
		{"    local out directive\n", "    local quote\n"},
	}
	zshMends = [...]mend{
		{`    __evenlip_debug "About to call: eval`, `    # A quote that is still open is closed for the program; a # begins no remark.
    local begun=${lastParam#-*=}
    case ${begun} in
    (\'*|\"*)
        [[ ${begun[2,-1]} == *${begun[1]}* ]] || requestComp+=${begun[1]}
        ;;
    (\#*)
        requestComp="${requestComp%$begun}\\$begun"
        ;;
    esac

`},
	}
	fishMends = [...]mend{
		{`    __evenlip_debug "args: $args"`, `    # A quote that is still open, or a mark before a #, is none of the text.
    set lastArg (commandline -ct | string replace -r -- '^(-[^=]*=)?[\'"]([^\'"]*)$' '$1$2' | string replace '\\#' '#' | string escape)

`},
	}
)

// mended returns a shell's script with its mends.
func mended(shell, script string) string {
	var mends []mend
	switch shell {
	case "bash":
		mends = bashMends[:]
	case "zsh":
		mends = zshMends[:]
	case "fish":
		mends = fishMends[:]
	}
	for _, m := range mends {
		script = strings.Replace(script, m.before, m.add+m.before, 1)
	}
	return script
}

// completionCommand makes cobra's own command ours: it refuses a shell that it does
// not know, where by itself it shows its help and calls that a success, and mends
// the scripts.
func completionCommand(root *cobra.Command) {
	answer, script := root.OutOrStdout(), new(bytes.Buffer)
	root.SetOut(script) // cobra's commands keep the output that root has when they are made
	root.InitDefaultCompletionCmd()
	root.SetOut(answer)
	for _, cmd := range root.Commands() {
		if cmd.Name() != "completion" {
			continue
		}
		cmd.RunE = func(cmd *cobra.Command, _ []string) error { return cmd.Help() }
		cmd.Args = func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			return noCommand(cmd, args[0], "completion knows no shell called %q")
		}
		for _, shell := range cmd.Commands() {
			generate := shell.RunE
			shell.RunE = func(cmd *cobra.Command, args []string) error {
				if err := generate(cmd, args); err != nil {
					return err
				}
				_, err := io.WriteString(answer, mended(cmd.Name(), script.String()))
				return err
			}
		}
	}
}
