package fault_test

import (
	"errors"
	"fmt"
	"io/fs"
	"testing"

	"evenlip/internal/fault"
)

func TestError(t *testing.T) {
	for _, c := range []struct {
		f    fault.Fault
		want string
		exit fault.Status
	}{
		{fault.Fault{Text: "no reading was given"}, "no reading was given", fault.Usage},
		{fault.Fault{At: fault.Place{Flag: "size"}, Text: "nothing was written"}, "--size: nothing was written", fault.Usage},
		{fault.Fault{At: fault.Place{File: "a.yaml", Line: 3, Column: 7}, About: "web", Text: "it cannot be zero"}, "a.yaml:3:7: web: it cannot be zero", fault.Data},
		{fault.Fault{At: fault.Place{File: "a.yaml", Line: 3}, Text: "not JSON"}, "a.yaml:3: not JSON", fault.Data},
		{fault.Fault{At: fault.Place{File: "a.yaml"}, Text: "the file is empty"}, "a.yaml: the file is empty", fault.Data},
		{fault.Fault{Text: "cannot write a.yaml", Status: fault.Data}, "cannot write a.yaml", fault.Data},
	} {
		if got := c.f.Error(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
		if got := c.f.Exit(); got != c.exit {
			t.Errorf("%s: exit %d, want %d", c.want, got, c.exit)
		}
	}
}

func TestIn(t *testing.T) {
	if got := fault.New("", "it cannot be zero").In(fault.Place{Flag: "web"}, "web").Error(); got != "--web: it cannot be zero" {
		t.Error(got)
	}
	if got := fault.New("", "it cannot be zero").In(fault.Place{}, "web").Error(); got != "web: it cannot be zero" {
		t.Error(got)
	}
}

func TestUnreadable(t *testing.T) {
	f := fault.Unreadable("cannot read a.yaml", &fs.PathError{Op: "open", Path: "a.yaml", Err: fs.ErrNotExist})
	if f.Error() != "cannot read a.yaml: file does not exist" || f.Exit() != fault.Data || !errors.Is(f, fs.ErrNotExist) {
		t.Errorf("%v, %d", f, f.Exit())
	}
}

// An empty list is no error, and a list in an error comes out again whole.
func TestList(t *testing.T) {
	var none fault.List
	if err := none.Err(); err != nil || none.Exit() != fault.OK {
		t.Errorf("an empty list is the error %v", err)
	}
	usage, data := fault.New("", "one"), &fault.Fault{Text: "two", Status: fault.Data}
	list := fault.List{usage, data}
	if list.Exit() != fault.Data || list.Error() != "one\ntwo" || !errors.Is(list.Err(), data) {
		t.Errorf("%q, exit %d", list.Error(), list.Exit())
	}
	for _, c := range []struct {
		err  error
		want int
	}{{nil, 0}, {list, 2}, {fmt.Errorf("wrapped: %w", list), 2}, {data, 1}, {errors.New("another"), 1}} {
		if got := fault.Of(c.err); len(got) != c.want {
			t.Errorf("%v: %d faults, want %d", c.err, len(got), c.want)
		}
	}
}

func TestSort(t *testing.T) {
	at := func(line, column int) *fault.Fault {
		return &fault.Fault{At: fault.Place{File: "a", Line: line, Column: column}}
	}
	list := fault.List{at(0, 0), at(2, 5), at(1, 9), at(2, 1), at(0, 0)}
	list.Sort()
	if got := list.Error(); got != "a:1:9: \na:2:1: \na:2:5: \na: \na: " {
		t.Errorf("%q", got)
	}
}
