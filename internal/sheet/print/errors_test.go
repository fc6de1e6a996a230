package print_test

import (
	"encoding/json"
	"reflect"
	"testing"

	"evenlip/internal/fault"
	"evenlip/internal/sheet/print"
)

// What is wrong can be read back, whatever a file is called.
func TestErrorsAsJSON(t *testing.T) {
	text := print.AppendErrors(nil, fault.List{
		fault.New("write it so", "cannot read %q", "a\"\x1b").In(fault.Place{Flag: "size"}, ""),
		fault.NewData("", "makes no sense").In(fault.Place{File: "a \"b\".yaml", Line: 3, Column: 7}, "web"),
	})
	var got map[string]any
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatalf("%v: %s", err, text)
	}
	want := map[string]any{
		"schema": 1.0, "error": `cannot read "a\"\x1b"; web: makes no sense`, "hint": "write it so", "status": 3.0,
		"flag": "size", "file": nil, "line": nil, "column": nil,
		"faults": []any{
			map[string]any{"error": `cannot read "a\"\x1b"`, "hint": "write it so", "flag": "size", "file": nil, "line": nil, "column": nil},
			map[string]any{"error": "web: makes no sense", "hint": nil, "flag": nil, "file": `a "b".yaml`, "line": 3.0, "column": 7.0},
		},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%v\nwant %v", got, want)
	}
}
