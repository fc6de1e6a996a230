package draw

import (
	"bytes"
	"encoding/xml"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

// What a drawing says is what whoever reads it as XML gets back, and the same
// as the standard library's own escaping would give.
func TestEscape(t *testing.T) {
	testkit.Property(t, "what a drawing says comes back whole through an XML reader", func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringMatching(`[<>&"'\x00-\x1f\x7f-\x{9f}\x{fffd}-\x{10001}Ø°a]{0,12}`)).Draw(t, "text")
		if rapid.Bool().Draw(t, "broken") {
			text += "\xc3"
		}
		var plain bytes.Buffer
		if err := xml.EscapeText(&plain, []byte(text)); err != nil {
			t.Fatal(err)
		}
		ours, theirs := content(t, escaped(text)), content(t, plain.String())
		if want := strings.ReplaceAll(theirs, "\r", "\ufffd"); ours != want {
			t.Errorf("%q reads %q, not %q", text, ours, want)
		}
	})
}

// content reads escaped text as XML.
func content(t *rapid.T, escaped string) string {
	var into string
	if err := xml.Unmarshal([]byte("<text>"+escaped+"</text>"), &into); err != nil {
		t.Fatalf("%q is no XML: %v", escaped, err)
	}
	return into
}
