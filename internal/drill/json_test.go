package drill_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
	"unicode"

	"evenlip/internal/drill"
	"evenlip/internal/quantity"
)

// FuzzReadJSON writes readings with the standard library's JSON and reads them
// as a drill's file: they are the readings that the flags make of the same text.
func FuzzReadJSON(f *testing.F) {
	f.Add("12mm", "59°30'", "59", "0.02in")
	f.Add("1/2", "59.5", "58.5", "-0.001")
	f.Add("#7", "\u2028", "é", "\\")
	f.Add("Ø12", "1e3", "NaN", "\"")
	f.Fuzz(func(t *testing.T, size, angle1, angle2, height string) {
		if strings.TrimSpace(size) == "" || strings.TrimSpace(height) == "" {
			return // no flag is given so, and a file's key wants a value
		}
		texts := map[drill.Reading]string{drill.Size: size, drill.LipAngle: angle1 + "," + angle2, drill.LipHeight: height}
		var given []drill.Given
		for r, text := range texts {
			given = append(given, drill.Given{Reading: r, Text: text})
		}
		var flags drill.Read
		refused := len(flags.Resolve(given, drill.Options{})) > 0
		text, err := json.Marshal(map[string]any{"size": size, "lip-angle": texts[drill.LipAngle], "lip-height": height})
		if err != nil {
			t.Fatal(err)
		}
		file, errs := readFile(string(text), quantity.Unset)
		if refused && len(errs) == 0 {
			t.Fatalf("%s is taken, and refused as flags", text)
		}
		if len(errs) > 0 {
			if plain := func(s string) bool { return !slices.ContainsFunc([]rune(s), unfit) }; !refused && plain(size+angle1+angle2+height) {
				t.Fatalf("%s is refused, and taken as flags: %v", text, errs)
			}
			return
		}
		for r := range texts {
			if a, b := file.Values(r), flags.Values(r); !slices.Equal(a, b) {
				t.Errorf("%s: %s is %v, as a flag %v", text, r, a, b)
			}
		}
	})
}

// unfit reports whether a file may not hold a letter at all.
func unfit(r rune) bool {
	return unicode.IsControl(r) || r == unicode.ReplacementChar || !unicode.IsPrint(r) && r != ' '
}
