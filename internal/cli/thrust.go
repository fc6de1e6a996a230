package cli

// spindleCommands are the commands on a drill at work and on the grinder.
var spindleCommands = []calculation{}
