package near_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/near"
	"evenlip/internal/testkit"
)

func TestName(t *testing.T) {
	names := []string{"web", "web-taper", "size", "lip-height", "lip-length", "steel-200", "steel-300", "I32-1"}
	for typed, want := range map[string]string{
		"wed": "web", "wbe": "web", "ewb": "web", "bew": "", "szie": "size", "sise": "size", "SIZE": "size", "lip-hight": "lip-height", "lip-lenght": "lip-length", "lip-heigth": "lip-height", "lipheight": "lip-height", "steel-20": "steel-200", "i32-1": "I32-1",
		"": "", "xyz": "", "wxy": "", "colour": "", "taper": "", strings.Repeat("web", 40): "",
	} {
		if got := near.Name(typed, names...); got != want {
			t.Errorf("%q: %q, not %q", typed, got, want)
		}
	}
	if got := near.Name("web"); got != "" {
		t.Errorf("of no names %q", got)
	}
	names = append(names, "M-30\nx", "F\x1b[31m")
	for typed, want := range map[string]string{"wed": "did you mean web?", "bin": "see the list", "M-30x": `did you mean "M-30\nx"?`, "F[31m": `did you mean "F\x1b[31m"?`} {
		if got := near.Hint(typed, "see the list", names...); got != want {
			t.Errorf("%q: %q", typed, got)
		}
	}
}

// A name of the list is its own best suggestion, and one letter changed in a name
// of five and more leads back to it, where no other is as near.
func TestOneLetterLeadsBack(t *testing.T) {
	names := []string{"inspect", "regrind", "thrust", "chisel", "clearance", "material"}
	testkit.Property(t, "a name is its own best suggestion, and one letter changed leads back to it", func(t *rapid.T) {
		name := rapid.SampledFrom(names).Draw(t, "name")
		if got := near.Name(name, names...); got != name {
			t.Fatalf("%s: %q", name, got)
		}
		at := rapid.IntRange(0, len(name)-1).Draw(t, "at")
		typed := name[:at] + string(rune(rapid.IntRange('a', 'z').Draw(t, "letter"))) + name[at+1:]
		if got := near.Name(typed, names...); got != name {
			t.Fatalf("%s: %q, not %s", typed, got, name)
		}
	})
}
