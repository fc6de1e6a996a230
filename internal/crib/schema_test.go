package crib

import (
	"bytes"
	"encoding/json"
	"maps"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/strict"
	"evenlip/internal/testkit"
)

// theSchema is the schema as an independent library of JSON Schema reads it,
// which also holds it against the schema of schemas.
func theSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("crib.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	return c.MustCompile("crib.schema.json")
}

// The schema in docs is the one that the program prints: make docs writes it.
func TestSchemaInDocs(t *testing.T) {
	text, err := os.ReadFile("../../docs/crib.schema.json")
	if err != nil || string(text) != string(Schema()) {
		t.Errorf("docs/crib.schema.json is another (make docs): %v", err)
	}
}

var (
	yamlInt   = regexp.MustCompile(`^[-+]?[0-9]+$`)
	yamlFloat = regexp.MustCompile(`^[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?$`)
)

// plainTree is what an editor makes of a file before it holds it against a
// schema: the core schema of YAML 1.2 (section 10.3.2).
func plainTree(n strict.Node) any {
	switch {
	case n.IsMap():
		out := map[string]any{}
		for _, e := range n.Entries() {
			out[e.Key.Text()] = plainTree(e.Value)
		}
		return out
	case n.IsList():
		out := []any{}
		for _, item := range n.Items() {
			out = append(out, plainTree(item))
		}
		return out
	case n.IsNull():
		return nil
	case n.Quote() != 0:
	case yamlInt.MatchString(n.Text()) || yamlFloat.MatchString(n.Text()):
		v, _ := strconv.ParseFloat(n.Text(), 64)
		return v
	case slices.Contains([]string{"true", "True", "TRUE", "false", "False", "FALSE"}, n.Text()):
		return strings.EqualFold(n.Text(), "true")
	}
	return n.Text()
}

func treeOf(t *testing.T, text string) map[string]any {
	t.Helper()
	root, err := strict.Parse("crib.yaml", text)
	if err != nil {
		t.Fatal(err)
	}
	return plainTree(root).(map[string]any)
}

// Every crib of these tests that is read is taken.
func TestSchemaTakesCribs(t *testing.T) {
	schema := theSchema(t)
	for _, text := range []string{
		string(sample), small, NewText, queue, manyDrills(3),
		"version: 1\ndrills:\n", "version: 1\nunits: IN\nkeep: {}\ndrills: [{id: 7, size: 3, note: true, history: ~}]\n",
	} {
		read(t, text)
		if err := schema.Validate(treeOf(t, text)); err != nil {
			t.Errorf("%s\n%v", text, err)
		}
	}
}

// readsAndTakes asks both about one tree. JSON is YAML too, so the tree needs no
// writer of its own.
func readsAndTakes(t *rapid.T, schema *jsonschema.Schema, tree any) (reads, takes bool, text string) {
	data, err := json.Marshal(tree)
	if err != nil {
		t.Fatal(err)
	}
	back, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	_, errs := Read("crib.json", data, nil)
	return len(errs) == 0, schema.Validate(back) == nil, string(data)
}

// values are ways to write a reading of each kind.
var values = map[quantity.Kind][]any{
	quantity.Size: {"12mm", "1/2in", "#7", "F", 12, "12.5"}, quantity.Length: {"0.5mm", 0.5, "0.02in", " 1mm ", []any{"0.5mm"}},
	quantity.Angle: {59, "59.5", "59°30'", "60deg", []any{59, "58.5"}, "59,58"}, quantity.Taper: {0.0005, "0.016"},
	quantity.Feed: {"0.2mm", 0.1}, quantity.Rpm: {800}, quantity.Word: {"steel-200", "brass"},
}

func readingValue(t *rapid.T, r drill.Reading) any {
	if r.Spec().Switch {
		return rapid.SampledFrom([]any{true, false, "yes", "No"}).Draw(t, "switch")
	}
	return rapid.SampledFrom(values[r.Spec().Kind]).Draw(t, r.String())
}

// someCrib draws a crib that is mostly in order.
// changing are the readings that a history may have: a drill keeps its size.
func changing() []drill.Reading {
	return slices.DeleteFunc(slices.Clone(Kept()), func(r drill.Reading) bool { return r == drill.Size })
}

func someCrib(t *rapid.T) map[string]any {
	drills := []any{}
	for i := range rapid.IntRange(1, 3).Draw(t, "drills") {
		d := map[string]any{"id": "D" + strconv.Itoa(i), "size": readingValue(t, drill.Size)}
		for range rapid.IntRange(0, 3).Draw(t, "readings") {
			r := rapid.SampledFrom(Kept()).Draw(t, "reading")
			d[r.String()] = readingValue(t, r)
		}
		if rapid.Bool().Draw(t, "told") {
			r := rapid.SampledFrom(changing()).Draw(t, "was")
			d["history"] = []any{map[string]any{"date": "2026-03-02", "what": "grind", "stock": 0.5, "before": map[string]any{r.String(): readingValue(t, r)}}}
			d["series"], d["shank"], d["note"] = "stub", "taper", 3
		}
		drills = append(drills, d)
	}
	return map[string]any{"version": 1, "name": "drawer", "keep": map[string]any{"12mm": 2}, "units": "mm", "drills": drills}
}

var junk = []any{nil, true, 0, -1, 1.5, 1, "", "yes", "mm", "x", "12mm", "2026-02-30", "grind", "thinning", []any{}, []any{"12mm"}, []any{1, 2, 3}, map[string]any{}, map[string]any{"web": 1}}

// spoil changes one place of a tree: another value, a key more, a key less.
func spoil(t *rapid.T, at any) any {
	deeper := rapid.IntRange(0, 4).Draw(t, "deeper") > 0
	switch n := at.(type) {
	case map[string]any:
		if len(n) == 0 || !deeper {
			break
		}
		out := maps.Clone(n)
		key := rapid.SampledFrom(slices.Sorted(maps.Keys(n))).Draw(t, "key")
		switch rapid.IntRange(0, 7).Draw(t, "how") {
		case 0:
			delete(out, key)
		case 1:
			out[rapid.SampledFrom([]string{"wheel", "name", "units", "webs", "version", "id", "<<", "stock"}).Draw(t, "new")] = out[key]
		default:
			out[key] = spoil(t, n[key])
		}
		return out
	case []any:
		if len(n) == 0 || !deeper {
			break
		}
		out := slices.Clone(n)
		i := rapid.IntRange(0, len(n)-1).Draw(t, "item")
		out[i] = spoil(t, n[i])
		return out
	}
	return rapid.SampledFrom(junk).Draw(t, "junk")
}

// Whatever is done to a crib: what is read, the schema takes.
func TestSchemaTakesWhatIsRead(t *testing.T) {
	schema := theSchema(t)
	read, taken, all := 0, 0, 0
	testkit.Property(t, "what is read as a crib, its schema takes", func(t *rapid.T) {
		var tree any = someCrib(t)
		for range rapid.IntRange(0, 2).Draw(t, "faults") {
			tree = spoil(t, tree)
		}
		reads, takes, text := readsAndTakes(t, schema, tree)
		if reads && !takes {
			t.Fatalf("read, and not taken: %s", text)
		}
		all++
		if reads {
			read++
		}
		if takes {
			taken++
		}
	})
	if read < all/20 || taken > all*19/20 {
		t.Errorf("of %d cribs %d were read and %d taken: this says little", all, read, taken)
	}
}

// place is where a fault stands, given a crib and one of its drills.
type place func(root, drill map[string]any) map[string]any

func inRoot(root, _ map[string]any) map[string]any { return root }

func inDrill(_, d map[string]any) map[string]any { return d }

func inEvent(_, d map[string]any) map[string]any {
	event := map[string]any{"date": "2026-03-02", "what": "grind"}
	d["history"] = []any{event}
	return event
}

// spoiler puts a fault into a crib, or into one of its drills.
type spoiler func(t *rapid.T, root, drill map[string]any)

func set(where place, key string, values ...any) spoiler {
	return func(t *rapid.T, root, d map[string]any) {
		where(root, d)[key] = rapid.SampledFrom(values).Draw(t, key)
	}
}

func without(where place, key string) spoiler {
	return func(_ *rapid.T, root, d map[string]any) { delete(where(root, d), key) }
}

var tree = map[string]any{"a": 1}

// formless are the faults of a file's form.
var formless = map[string]spoiler{
	"version":         set(inRoot, "version", 0, 2, 1.5, "1", nil, true, tree),
	"no version":      without(inRoot, "version"),
	"no drills":       without(inRoot, "drills"),
	"drills":          set(inRoot, "drills", "A1", 3, tree, []any{"A1"}, []any{nil}),
	"name":            set(inRoot, "name", nil, "", tree, []any{"a"}),
	"units":           set(inRoot, "units", "ell", 1, nil, []any{"mm"}),
	"keep":            set(inRoot, "keep", nil, 3, []any{1}, map[string]any{"3mm": 1.5}, map[string]any{"3mm": "1"}, map[string]any{"3mm": -1}, map[string]any{"3mm": 10000}),
	"unknown in file": set(inRoot, "drils", []any{}, 1),
	"no id":           without(inDrill, "id"),
	"no size":         without(inDrill, "size"),
	"id":              set(inDrill, "id", nil, "", tree, []any{"a"}),
	"size":            set(inDrill, "size", nil, "", true, tree, []any{"12mm"}, -3),
	"web":             set(inDrill, "web", nil, "", false, tree, []any{"1mm"}, []any{1, 2}, -1),
	"lip-angle":       set(inDrill, "lip-angle", []any{}, []any{59, 58, 57}, []any{nil}, []any{[]any{59}}, tree),
	"cracked":         set(inDrill, "cracked", 1, "perhaps", []any{true}, nil),
	"series":          set(inDrill, "series", "longer", 1, nil),
	"shank":           set(inDrill, "shank", "bent", []any{"taper"}),
	"history":         set(inDrill, "history", "ground", tree, []any{"x"}, []any{nil}),
	"unknown":         set(inDrill, "wed", "2mm", nil),
	"idle":            set(inDrill, "wheel", "200mm"),
	"name of a drill": set(inDrill, "name", "a"),
	"no date":         without(inEvent, "date"),
	"no what":         without(inEvent, "what"),
	"date":            set(inEvent, "date", "2.3.2026", 20260302, nil, []any{"2026-03-02"}),
	"what":            set(inEvent, "what", "polish", nil, 1),
	"stock":           set(inEvent, "stock", "", 0, -1, nil, true, []any{"1mm"}),
	"before":          set(inEvent, "before", "2mm", nil, []any{}, map[string]any{"wed": 1}, map[string]any{"units": "mm"}, map[string]any{"web": nil}),
	"unknown event":   set(inEvent, "depth", 3),
	"stock without grind": func(t *rapid.T, root, d map[string]any) {
		event := inEvent(root, d)
		event["what"], event["stock"] = rapid.SampledFrom([]string{"thinning", "readings"}).Draw(t, "what"), "1mm"
	},
}

// A fault of the file's form is seen by both, wherever it is.
func TestSchemaSeesFaultsOfForm(t *testing.T) {
	schema := theSchema(t)
	for name, spoil := range formless {
		t.Run(name, func(t *testing.T) {
			testkit.Property(t, "each fault of form is seen by reader and schema, wherever it is", func(t *rapid.T) {
				root := someCrib(t)
				drills := root["drills"].([]any)
				spoil(t, root, rapid.SampledFrom(drills).Draw(t, "drill").(map[string]any))
				if reads, takes, text := readsAndTakes(t, schema, root); reads || takes {
					t.Fatalf("read %v, taken %v: %s", reads, takes, text)
				}
			})
		})
	}
}

// No reading that a crib keeps is unknown to the schema, alone or in a history.
func TestSchemaKnowsEveryReading(t *testing.T) {
	schema := theSchema(t)
	for _, r := range Kept() {
		var one any = "yes"
		if !r.Spec().Switch {
			one = values[r.Spec().Kind][0]
		}
		d := map[string]any{"id": "a", "size": "12mm", r.String(): one}
		if r != drill.Size {
			d["history"] = []any{map[string]any{"date": "2026-03-02", "what": "readings", "before": map[string]any{r.String(): one}}}
		}
		data, err := json.Marshal(map[string]any{"version": 1, "drills": []any{d}})
		if err != nil {
			t.Fatal(err)
		}
		c, errs := Read("crib.json", data, nil)
		if len(errs) > 0 {
			t.Fatal(complaints(errs))
		}
		if err := schema.Validate(treeOf(t, string(data))); err != nil || len(c.Drills) != 1 {
			t.Errorf("%s: %v", r, err)
		}
	}
}
