package cli

import "github.com/spf13/cobra"

// VersionSheet is versionSheet, for the tests.
var VersionSheet = versionSheet

// FrontPage is what evenlip says when it is called alone.
var FrontPage = frontPage(usualWidth)

// Calculations are the names of the commands that compute from readings.
func Calculations() []string {
	var out []string
	for _, c := range commands {
		out = append(out, c.About().Name)
	}
	return out
}

// Topics are what help knows beside the commands.
func Topics() []string { return topicNames() }

// Root is the tree of commands, for the tests.
func Root() *cobra.Command { return new(app).root(nil) }

// Broken is broken, for the tests.
var Broken = broken

// QuotedFor is quotedFor, for the tests.
var QuotedFor = quotedFor
