//go:build soak

package judge_test

import "testing"

// With as many draws chance itself is no more off than a thousandth.
func TestDrawsAreWhatChanceMakesAtLength(t *testing.T) { againstChance(t, 400_000) }
