// Package fault is the one kind of error of the program: what is wrong, where it
// stands, what to do about it, and the exit status that it ends with.
package fault

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strconv"
	"strings"
)

// Status is the exit status of the program.
type Status int

// The exit statuses.
const (
	OK        Status = 0
	Outside   Status = 1 // with --check: outside a limit
	Usage     Status = 2 // wrong usage or an impossible reading
	Data      Status = 3 // a file that cannot be read or makes no sense
	Unprinted Status = 4 // done, but the answer could not be printed
	Refused   Status = 5 // understood, but things stand otherwise: no slip of typing
)

// Place says where a fault stands: a flag, or a place in a file. The zero Place is
// the command line as a whole.
type Place struct {
	Flag         string // without its dashes
	File         string // as it is shown
	Line, Column int    // from 1, the column in characters; 0 where it is not known
}

// String returns "--size", "drill.yaml:3:7" or "".
func (p Place) String() string {
	if p.Flag != "" {
		return "--" + p.Flag
	}
	out := p.File
	for _, n := range [...]int{p.Line, p.Column} {
		if n == 0 {
			break
		}
		out += ":" + strconv.Itoa(n)
	}
	return out
}

// Fault is one thing that is wrong.
type Fault struct {
	At     Place
	About  string // the reading or key that it is about; "" where the text says it all
	Text   string
	Shown  string // the place as it stands in its file, in lines; may be empty
	Hint   string // what to do; may be empty
	Status Status // zero: see Exit
	Cause  error  // what a library said, for errors.Is; may be nil
}

// New makes a fault of wrong usage.
func New(hint, format string, args ...any) *Fault {
	return &Fault{Text: fmt.Sprintf(format, args...), Hint: hint}
}

// Refuse makes a fault of what was understood and cannot be done as things stand: a
// drill that is not there, one that was thrown away, a file that is there already.
func Refuse(hint, format string, args ...any) *Fault {
	f := New(hint, format, args...)
	f.Status = Refused
	return f
}

// NewData makes a fault of a file or its data.
func NewData(hint, format string, args ...any) *Fault {
	f := New(hint, format, args...)
	f.Status = Data
	return f
}

// Unreadable makes the fault of a file that cannot be read or written; doing says
// which: "cannot read drill.yaml". The name that the system's error repeats is left
// out.
func Unreadable(doing string, err error) *Fault {
	return &Fault{Text: doing + ": " + Bare(err).Error(), Status: Data, Cause: err}
}

// Bare strips the file's name that the system's error repeats.
func Bare(err error) error {
	if p, ok := err.(*fs.PathError); ok {
		return p.Err
	}
	return err
}

// Flag makes a fault about a flag.
func Flag(flag, hint, format string, args ...any) *Fault {
	f := New(hint, format, args...)
	f.At.Flag = flag
	return f
}

// In returns the fault at a place, about a reading or key. A flag bears the name of
// its reading.
func (f *Fault) In(at Place, about string) *Fault {
	f.At, f.About = at, about
	if at.Flag != "" {
		f.About = ""
	}
	return f
}

// Error returns "place: about: text".
func (f *Fault) Error() string {
	if at := f.At.String(); at != "" {
		return at + ": " + f.Message()
	}
	return f.Message()
}

// Message returns what is wrong without the place.
func (f *Fault) Message() string {
	if f.About != "" {
		return f.About + ": " + f.Text
	}
	return f.Text
}

// Unwrap returns the cause.
func (f *Fault) Unwrap() error { return f.Cause }

// Exit returns the exit status: Status, else Data in a file and Usage otherwise.
func (f *Fault) Exit() Status {
	switch {
	case f.Status != OK:
		return f.Status
	case f.At.File != "":
		return Data
	}
	return Usage
}

// List is everything that is wrong.
type List []*Fault

// Error returns the faults, a line each.
func (l List) Error() string {
	lines := make([]string, len(l))
	for i, f := range l {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns the faults one by one.
func (l List) Unwrap() []error {
	out := make([]error, len(l))
	for i, f := range l {
		out[i] = f
	}
	return out
}

// Err returns the list as an error, nil where it is empty: a nil List in an error is
// not nil.
func (l List) Err() error {
	if len(l) == 0 {
		return nil
	}
	return l
}

// Exit returns the gravest status.
func (l List) Exit() Status {
	worst := OK
	for _, f := range l {
		worst = max(worst, f.Exit())
	}
	return worst
}

// Sort puts the faults of a file in the file's order; what has no place in it comes
// last. Faults at one place keep their order.
func (l List) Sort() {
	slices.SortStableFunc(l, func(a, b *Fault) int {
		return cmp.Or(byLine(a.At.Line, b.At.Line), cmp.Compare(a.At.Column, b.At.Column))
	})
}

func byLine(a, b int) int {
	if a == 0 || b == 0 {
		return cmp.Compare(b, a)
	}
	return cmp.Compare(a, b)
}

// Of returns the faults that an error is made of; one of another kind is a fault of
// wrong usage.
func Of(err error) List {
	var l List
	var f *Fault
	switch {
	case err == nil:
		return nil
	case errors.As(err, &l):
		return l
	case errors.As(err, &f):
		return List{f}
	}
	return List{{Text: err.Error(), Cause: err}}
}
