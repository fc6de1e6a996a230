//go:build soak

package store

import "testing"

func TestSoakKilledWriters(t *testing.T) { killWriters(t, 1000) }
