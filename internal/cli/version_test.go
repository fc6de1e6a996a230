package cli_test

import (
	"runtime/debug"
	"testing"

	"evenlip/internal/cli"
	"evenlip/internal/sheet"
)

// What a build knows of itself is told as it stands; what it does not know is
// left open.
func TestVersion(t *testing.T) {
	tagged := &debug.BuildInfo{Main: debug.Module{Version: "v0.1.0"}, Settings: []debug.BuildSetting{
		{Key: "vcs.revision", Value: "0a1b2c"}, {Key: "vcs.time", Value: "2026-03-02T08:00:00Z"}, {Key: "vcs.modified", Value: "false"}}}
	dirty := &debug.BuildInfo{Main: debug.Module{Version: "v0.1.1-0.2026+dirty"}, Settings: []debug.BuildSetting{{Key: "vcs.modified", Value: "true"}}}
	for _, c := range []struct {
		info *debug.BuildInfo
		want map[string]string
	}{
		{tagged, map[string]string{"version": "0.1.0", "commit": "0a1b2c", "commit_time": "2026-03-02T08:00:00Z", "commit_changed": "no"}},
		{dirty, map[string]string{"version": "0.1.1-0.2026+dirty", "commit": "", "commit_time": "", "commit_changed": "yes"}},
		{new(debug.BuildInfo), map[string]string{"version": "(devel)", "commit": "", "commit_time": "", "commit_changed": ""}},
	} {
		s := cli.VersionSheet(c.info)
		if want := "evenlip " + c.want["version"]; s.Title != want {
			t.Errorf("called %q, not %q", s.Title, want)
		}
		s.Each(func(f *sheet.Figure) {
			if want, told := c.want[f.Key]; told && f.Word != want {
				t.Errorf("%s is %q, not %q", f.Key, f.Word, want)
			}
		})
	}
}
