package headroom

import "testing"

// The room is there to be used: the compiler would drop one that is not.
func TestReserve(t *testing.T) {
	if got := reserve(3); got != 9 {
		t.Errorf("the room holds %d where 9 was put", got)
	}
	if got := reserve(0); got != 0 {
		t.Errorf("got %d out of nothing", got)
	}
}
