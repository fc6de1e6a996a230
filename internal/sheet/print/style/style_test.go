package style_test

import (
	"strings"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"pgregory.net/rapid"

	"evenlip/internal/sheet/print/style"
	"evenlip/internal/testkit"
)

func TestPen(t *testing.T) {
	for name, paint := range map[string]func(style.Pen, string) string{
		"title": style.Pen.Title, "heading": style.Pen.Heading, "good": style.Pen.Good, "bad": style.Pen.Bad, "faint": style.Pen.Faint,
	} {
		if got := paint(style.New(false), "lip 1"); got != "lip 1" {
			t.Errorf("%s without colour: %q", name, got)
		}
		got := paint(style.New(true), "lip 1")
		if !strings.HasPrefix(got, "\x1b[") || !strings.HasSuffix(got, "\x1b[0m") || style.Width(got) != len("lip 1") {
			t.Errorf("%s: %q is %d cells", name, got, style.Width(got))
		}
		if n := strings.Count(got, "\x1b["); n != 2 {
			t.Errorf("%s: %q has %d escape sequences, not one before and one behind", name, got, n)
		}
		if got := paint(style.New(true), ""); got != "" {
			t.Errorf("%s of nothing: %q", name, got)
		}
	}
}

// A title is underlined as a whole: letter by letter it would be ten times as long,
// and nothing to a program that reads along.
func TestTitleIsOneStretch(t *testing.T) {
	if got, want := style.New(true).Title("lip 1, as read"), "\x1b[1;4mlip 1, as read\x1b[0m"; got != want {
		t.Errorf("%q, not %q", got, want)
	}
}

func TestWidth(t *testing.T) {
	for text, want := range map[string]int{"": 0, "59°": 3, "Ø12 ± 0.1": 9, "½": 1, "日本": 4} {
		if got := style.Width(text); got != want {
			t.Errorf("%q is %d cells, not %d", text, got, want)
		}
	}
}

// The short cut for ASCII measures as the library does.
func TestWidthIsTheLibrarys(t *testing.T) {
	testkit.Property(t, "the short cut for ASCII measures a text as the library does", func(t *rapid.T) {
		text := rapid.StringMatching(`[ -~\x00-\x1f\x7f°日]{0,12}`).Draw(t, "text")
		if got, want := style.Width(text), lipgloss.Width(text); got != want {
			t.Errorf("%q is %d cells, not %d", text, got, want)
		}
	})
}

// What is no console has nothing to be told and takes what it gets.
func TestReady(t *testing.T) {
	if !style.Ready(new(strings.Builder)) {
		t.Error("a buffer refuses colours")
	}
}
