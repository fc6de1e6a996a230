package print

import "evenlip/internal/sheet"

func (t *tableWriter) cautions(s *sheet.Sheet) {
	if s.Cautions == nil {
		return
	}
	t.line()
	for i, l := range wrapItems(s.Cautions, "; ", t.o.Width-8) {
		head := t.pen.Heading("safety") // never faint: it is to be read
		if i > 0 {
			head = "      "
		}
		t.line(head, "  ", l)
	}
}
