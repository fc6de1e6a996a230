//go:build soak

package judge_test

import "testing"

// With as many draws chance itself is off by a few thousandths at most.
func TestSoakDrawsBesideKinks(t *testing.T) { besideKinks(t, 100_000) }
