package cli

import "github.com/spf13/cobra"

// VersionSheet is versionSheet, for the tests.
var VersionSheet = versionSheet

// FrontPage is what evenlip says when it is called alone.
const FrontPage = frontPage

// Root is the tree of commands, for the tests and the manual.
func Root() *cobra.Command { return new(app).root(nil) }

// Broken is broken, for the tests and the manual.
var Broken = broken
