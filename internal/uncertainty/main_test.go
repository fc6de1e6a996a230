package uncertainty_test

import (
	"os"
	"testing"

	"evenlip/internal/verify"
)

func TestMain(m *testing.M) { os.Exit(verify.Keep(m).Run()) }
