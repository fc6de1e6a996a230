//go:build soak

package crib

import "testing"

func TestSoakYears(t *testing.T) { liveYears(t, 20) }

func TestSoakFromDullToRetired(t *testing.T) {
	asForetold(t, "M120-1", "M250-1")
	withMishaps(t, "M120-1", "M250-1")
}
