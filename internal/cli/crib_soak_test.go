//go:build soak

package cli_test

import "testing"

func TestSoakYearOfOneCrib(t *testing.T) { yearOfRecords(t, 2000) }
