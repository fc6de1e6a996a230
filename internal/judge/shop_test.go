package judge_test

import (
	"slices"
	"testing"

	"evenlip/internal/command/point"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
)

// A shop's own limit is the one that is held against, and it says so; what the
// shop has not set stays.
func TestShopLimits(t *testing.T) {
	shop := handbook.Source{Label: handbook.Shop, Text: "the ferry yard's shop"}
	for _, c := range []struct {
		book    handbook.Book
		line    string // fit by the embedded limits
		reasons string
	}{
		{handbook.Book{PointTolerance: 1 * deg}, "lip-angle 58,58", "point-angle-off"},
		{handbook.Book{Chisel: handbook.Band{Low: 125 * deg, High: 132 * deg}}, "chisel-angle 122", "chisel-angle-off"},
		{handbook.Book{LipHeightMost: 0.04}, "lip-height 0.055mm", "lips-uneven"},
		{handbook.Book{ChiselMost: 0.18}, "web 1.9mm", "chisel-long"},
		{handbook.Book{FlankMost: 0.05}, "flank-wear 0.1mm", "dull"},
		{handbook.Book{ChipRoom: 2}, "depth 30mm; flute 50mm", "flute-short"},
		{handbook.Book{WebMost: 0.14}, "web 1.8mm", "web-spent"},
	} {
		c.book.Source = shop
		d := possible(t, sound.With(of(c.line)))
		if w := judge.Compute(d).Verdict.Word; w != judge.Fit {
			t.Errorf("%s is %q before the shop has its say", c.line, w)
		}
		d.Book = &c.book
		if s := point.Inspect.Sheet(d, false); !slices.Equal(s.Verdict.Reasons, []string{c.reasons}) {
			t.Errorf("%s: %v, want %s", c.line, s.Verdict.Reasons, c.reasons)
		}
	}
	d := possible(t, sound.With(of("margin-wear 10mm")))
	d.Book = &handbook.Book{Source: shop, MarginMost: 0.5}
	if s := point.Inspect.Sheet(d, false); s.Verdict.Word != "retire" {
		t.Errorf("margin: %+v", s.Verdict)
	}
}

// The shop's web taper, and its clearance for a material, are used and named;
// a taper that was typed or measured outweighs the shop's.
func TestShopTaperAndClearance(t *testing.T) {
	own := handbook.Materials()[2]
	own.Clearance = handbook.Band{Low: 5 * deg, High: 9 * deg, Source: &handbook.Source{Label: handbook.Shop}}
	book := &handbook.Book{Source: handbook.Source{Label: handbook.Shop}, Taper: 0.02, Own: []handbook.Material{own}}
	d := possible(t, sound.With(of("material "+own.Name+"; remove 10mm")))
	d.Book = book
	r := judge.Compute(d)
	within(t, "web after", r.Web.After, 2.0, 1e-12)
	within(t, "aim", r.Clearance.Aim/deg, 7, 1e-9)
	within(t, "to", r.Limit(judge.Clearance1Limit).High/deg, 9, 1e-9)
	if r.Web.Origin != judge.TaperShop || !r.Verdict.Reasons[judge.ClearanceHigh] {
		t.Errorf("taper from %v, reasons %v", r.Web.Origin, r.Verdict.Reasons)
	}
	noNaN(t, point.Inspect.Sheet(d, true))
	typed := possible(t, sound.With(of("remove 10mm; web-taper 0.015")))
	typed.Book = book
	within(t, "web after, taper typed", judge.Compute(typed).Web.After, 1.95, 1e-12)
	measured := possible(t, sound.With(of("remove 10mm; second-web 2.1mm; second-web-at 30mm")))
	measured.Book = book
	within(t, "web after, taper measured", judge.Compute(measured).Web.After, 1.9, 1e-12)
}
