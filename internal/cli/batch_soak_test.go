//go:build soak

package cli_test

import "testing"

func TestSoakBatchMemory(t *testing.T) { batchMemory(t, 1_000_000) }
