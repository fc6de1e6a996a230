package cli

import (
	"cmp"
	"math"
	"runtime"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// release is the version of a build from sources without their history:
// go build -ldflags "-X evenlip/internal/cli.release=0.1.0".
var release string

func (a *app) versionCommand() *cobra.Command {
	return &cobra.Command{
		Use: "version", Short: "which evenlip this is, and what built it", GroupID: "look", Args: noArgs,
		Long: `The version, the commit it was built from and when that was made, and the Go
release and platform it was built by and for: what to tell when something is
wrong.`,
		PersistentPreRunE: a.withoutShop,
		Example:           "  evenlip version\n  evenlip version --format json",
		RunE:              func(*cobra.Command, []string) error { return a.printVersion() },
	}
}

func (a *app) printVersion() error {
	return a.printSheet(versionSheet(buildInfo()), quantity.Metric)
}

// printRelease prints the version in a line; a script has the rest beside it.
func (a *app) printRelease() error {
	if a.set.forScripts() {
		return a.printVersion()
	}
	a.buf.WriteString("evenlip " + versionOf(buildInfo()) + "\n")
	return nil
}

func buildInfo() *debug.BuildInfo {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return new(debug.BuildInfo)
	}
	return info
}

func versionOf(info *debug.BuildInfo) string {
	return cmp.Or(release, strings.TrimPrefix(info.Main.Version, "v"), "(devel)")
}

// versionSheet lists what is known of a build; what is not known is left open.
func versionSheet(info *debug.BuildInfo) *sheet.Sheet {
	built := map[string]string{}
	for _, s := range info.Settings {
		built[s.Key] = s.Value
	}
	version := versionOf(info)
	changed := ""
	switch built["vcs.modified"] {
	case "true":
		changed = "yes"
	case "false":
		changed = "no"
	}
	s := &sheet.Sheet{Command: "version", Title: "evenlip " + version}
	s.Open("Build")
	for _, f := range [...]sheet.Figure{
		{Key: "version", Label: "version", Word: version, Kind: quantity.Word},
		{Key: "commit", Label: "commit", Word: built["vcs.revision"], Kind: quantity.Word},
		{Key: "commit_time", Label: "commit made at", Word: built["vcs.time"], Kind: quantity.Word},
		{Key: "commit_changed", Label: "changed since the commit", Word: changed, Kind: quantity.Switch},
		{Key: "go", Label: "built by", Word: runtime.Version(), Kind: quantity.Word},
		{Key: "platform", Label: "built for", Word: runtime.GOOS + "/" + runtime.GOARCH, Kind: quantity.Word},
	} {
		f.Value = math.NaN()
		s.Add(f)
	}
	return s
}
