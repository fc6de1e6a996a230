package cli

import (
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
)

// readingFlags are the flags of readings; what is written is understood later, when
// the size is known.
type readingFlags []*readingFlag

type readingFlag struct {
	drill.Reading
	text    string
	cracked bool // of a reading that is yes or no
}

// addReadings adds the flags of some readings to a command, in the order of the bench.
func addReadings(cmd *cobra.Command, readings []drill.Reading) readingFlags {
	usual, rest := drill.ForBench(readings)
	flags := make(readingFlags, len(readings))
	cmd.Flags().SortFlags = false
	for i, r := range append(usual, rest...) {
		flags[i] = &readingFlag{Reading: r}
		if r.Spec().Switch {
			cmd.Flags().BoolVar(&flags[i].cracked, r.String(), false, r.Spec().Help)
			continue
		}
		cmd.Flags().Var(&text{value: &flags[i].text, kind: "value", pair: r.Spec().Pair}, r.String(), r.Spec().Help)
	}
	return flags
}

// given returns what was written in each flag that was given.
func (flags readingFlags) given(cmd *cobra.Command) []drill.Given {
	var out []drill.Given
	for _, f := range flags {
		if !cmd.Flags().Changed(f.String()) {
			continue
		}
		text := f.text
		if f.Spec().Switch {
			text = map[bool]string{true: "yes", false: "no"}[f.cracked]
		}
		out = append(out, drill.Flag(f.Reading, text))
	}
	return out
}

// onceFlag adds a flag that says what is done or to which drill: of two, the
// last must not win unseen.
func onceFlag(f *pflag.FlagSet, to *string, name, help string) {
	f.Var(&text{value: to, kind: "string"}, name, help)
}

// text is a flag whose value is kept as written. It is written once: of two
// readings nobody knows which one holds, and the second may be the other lip's.
type text struct {
	value *string
	kind  string // in the help
	given bool
	pair  bool
}

func (t *text) String() string {
	if t.value == nil { // pflag asks an empty one what no value looks like
		return ""
	}
	return *t.value
}

func (t *text) Type() string { return t.kind }

func (t *text) Set(s string) error {
	if !t.given {
		*t.value, t.given = s, true
		return nil
	}
	f := fault.New("give it once", "given twice, as %q and as %q", *t.value, s)
	if t.pair && !strings.Contains(*t.value+s, ",") {
		f.Hint = "the readings of two lips go together: " + *t.value + "," + s
	}
	return f
}
