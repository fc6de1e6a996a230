package cli

import "github.com/spf13/cobra"

// VersionSheet is versionSheet, for the tests.
var VersionSheet = versionSheet

// Root is the tree of commands, for the tests and the manual.
func Root() *cobra.Command { return new(app).root(nil) }
