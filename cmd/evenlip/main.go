// Command evenlip works out the regrinding of a twist-drill point.
package main

import (
	"os"

	"evenlip/internal/cli"
)

func main() { os.Exit(cli.Main(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
