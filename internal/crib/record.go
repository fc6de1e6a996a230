package crib

import (
	"fmt"
	"strings"

	"evenlip/internal/crib/store"
	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/strict"
)

// Record works a change out, writes it into the crib's file and returns what it
// came to. Errors: those of [Rewrite], and of [store.Transform].
func Record(path, id string, ch Change, book *handbook.Book) (*Outcome, error) {
	var out *Outcome
	err := store.Transform(path, func(data []byte) (next []byte, err error) {
		out, next, err = Rewrite(path, data, id, ch, book)
		return next, err
	})
	if err != nil {
		return nil, err
	}
	return out, nil
}

// Rewrite returns the bytes of a crib's file with a change written in. Every
// byte that the change does not bear on stays. The result is read again and
// must say just what was meant, or an error comes back and no bytes. Errors: the
// faults of the file as [Read] gives them, a [*fault.Fault] of [Crib.Apply], and a
// [*strict.Error] of a drill that is written in a way that is not changed here.
func Rewrite(file string, data []byte, id string, ch Change, book *handbook.Book) (*Outcome, []byte, error) {
	c, errs := Read(file, data, book)
	if len(errs) > 0 {
		return nil, nil, errs
	}
	out, err := c.Apply(id, ch)
	if err != nil {
		return nil, nil, err
	}
	next, err := c.write(data, out)
	if err == nil {
		err = c.confirm(file, next, out, book)
	}
	if err != nil {
		d, _ := c.Find(id)
		return nil, nil, &fault.Fault{At: d.node.In(file), Text: fmt.Sprintf("the drill %q is %s", id, err),
			Hint: "write it one reading a line, such as web: 2mm, and its history as a list below history:"}
	}
	return out, next, nil
}

// confirm reads the new file and holds it against what was meant: that drill as
// the change leaves it, one more event, and all else the same.
func (c *Crib) confirm(file string, data []byte, out *Outcome, book *handbook.Book) error {
	next, errs := Read(file, data, book)
	if len(errs) > 0 || len(next.Drills) != len(c.Drills) {
		return errShape
	}
	for i, e := range c.root.Entries() {
		if e.Key.Text() != "drills" && !strict.Same(e.Value, next.root.Entries()[i].Value) {
			return errShape
		}
	}
	for i := range c.Drills {
		was, is := &c.Drills[i], &next.Drills[i]
		if was.ID != out.ID && !strict.Same(was.node, is.node) || was.ID == out.ID && !out.matches(was, is) {
			return errShape
		}
	}
	return nil
}

// matches reports whether is is the drill was with the outcome in it.
func (o *Outcome) matches(was, is *Drill) bool {
	if len(is.History) != len(was.History)+1 || is.ID != was.ID || is.Series != was.Series || is.Shank != was.Shank || is.Note != was.Note {
		return false
	}
	for _, r := range drill.All() {
		if squeezed(is.Readings.Written(r)) != squeezed(o.New.Written(r)) {
			return false
		}
	}
	for i := range was.History {
		if !was.History[i].same(&is.History[i]) {
			return false
		}
	}
	return o.Event.same(&is.History[len(was.History)])
}

// squeezed takes out the blanks that a list may have between its values.
func squeezed(text string) string { return strings.ReplaceAll(text, " ", "") }

func (e *Event) same(f *Event) bool {
	const rounding = 1e-9
	known := e.Stock == e.Stock
	if e.Date != f.Date || e.What != f.What || e.Note != f.Note || len(e.Before) != len(f.Before) || known != (f.Stock == f.Stock) {
		return false
	}
	for i := range e.Before {
		if e.Before[i].Reading != f.Before[i].Reading || squeezed(e.Before[i].Text) != squeezed(f.Before[i].Text) {
			return false
		}
	}
	return !known || e.Stock-f.Stock < rounding && f.Stock-e.Stock < rounding
}
