package cli_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"evenlip/internal/cli"
)

// schemas keeps what was compiled, by the name of the command.
var schemas sync.Map

// schemaOf is the schema of a command's answers as an independent library of JSON Schema
// reads it, which also holds it against the schema of schemas.
func schemaOf(command string) (*jsonschema.Schema, error) {
	if s, ok := schemas.Load(command); ok {
		return s.(*jsonschema.Schema), nil
	}
	var out, errw bytes.Buffer
	if status := cli.Main(append([]string{"schema"}, strings.Fields(command)...), strings.NewReader(""), &out, &errw); status != 0 {
		return nil, errors.New(errw.String())
	}
	doc, err := jsonschema.UnmarshalJSON(&out)
	if err != nil {
		return nil, err
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("schema.json", doc); err != nil {
		return nil, err
	}
	s, err := c.Compile("schema.json")
	if err == nil {
		schemas.Store(command, s)
	}
	return s, err
}

// held holds what a run printed to the schema of its command, where it printed JSON.
func held(args []string, status int, out string) error {
	switch {
	case status > 1 && (len(args) == 0 || args[0] != "batch"), len(args) == 0, slices.Contains(args, "schema"), slices.Contains(args, "__complete"):
		return nil // nothing, or a document of another kind
	case args[0] == "batch":
		for line := range strings.Lines(out) {
			if !strings.HasPrefix(line, "{") || !strings.HasSuffix(line, "}\n") {
				continue // CSV, or where the reading stopped
			}
			if err := heldTo("batch", line); err != nil {
				return err
			}
		}
		return nil
	case !strings.HasPrefix(out, "{") && !strings.HasPrefix(out, "["):
		return nil
	}
	var answer any
	if err := json.Unmarshal([]byte(out), &answer); err != nil {
		return nil // a table that begins with a bracket
	}
	if list, ok := answer.([]any); ok {
		answer = list[0]
	}
	command, _ := answer.(map[string]any)["command"].(string)
	return heldTo(command, out)
}

func heldTo(command, text string) error {
	s, err := schemaOf(command)
	if err != nil {
		return err
	}
	v, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
	if err != nil {
		return err
	}
	if err := s.Validate(v); err != nil {
		return fmt.Errorf("an answer of %s is not what its schema says: %w\n%s", command, err, text)
	}
	return nil
}

// beginning keeps the first of what is written: a batch may go on for ever.
type beginning struct{ bytes.Buffer }

func (b *beginning) Write(p []byte) (int, error) {
	if b.Len() < 1<<20 {
		b.Buffer.Write(p)
	}
	return len(p), nil
}

// notHeld is the status of a run whose answer is not what its schema says.
const notHeld = 99

// checked runs the program and holds what it prints to the schema: the scripts and the
// documents run it so.
func checked(args []string, in io.Reader, out, errw io.Writer) int {
	if !slices.Contains(args, "json") && !slices.Contains(args, "batch") {
		return cli.Main(args, in, out, errw)
	}
	var printed beginning
	status := cli.Main(args, in, io.MultiWriter(out, &printed), errw)
	if err := held(args, status, printed.String()); err != nil {
		fmt.Fprintln(errw, err)
		return notHeld
	}
	return status
}

// The schema is no rubber stamp: it refuses an answer with a name too many or too few, or
// with a value of another type, wherever that is.
func TestSchemaRefuses(t *testing.T) {
	for _, args := range [][]string{
		{"inspect", "--sample", "--explain", "--caliper", "0.02mm", "--protractor", "1deg"}, {"regrind", "--sample"}, {"cone", "--sample"}, {"edge", "--sample"},
		{"web", "--sample", "--remove", "0mm..1mm by 0.5mm"}, {"crib", "audit", "--sample"}, {"crib", "plan", "--sample"}, {"size", "12mm"}, {"material", "steel-200"}, {"version"},
	} {
		a := run("", append(args, "--format", "json")...)
		var answer map[string]any
		if err := json.Unmarshal([]byte(a.out), &answer); err != nil || a.status != 0 {
			t.Fatalf("%v: %v\n%s", args, err, a.err)
		}
		command := answer["command"].(string)
		spoilt := 0
		spoil(answer, func(where string) {
			text, err := json.Marshal(answer)
			if err != nil {
				t.Fatal(err)
			}
			if heldTo(command, string(text)) == nil {
				t.Errorf("%s: with %s it is held to be right", command, where)
			}
			spoilt++
		})
		if spoilt < 15 {
			t.Errorf("%s: spoilt in %d ways alone", command, spoilt)
		}
	}
}

// spoil makes each thing in an object wrong in turn, calls told, and puts it right again.
func spoil(object map[string]any, told func(where string)) {
	object["never_heard_of"] = 1.0
	told("a name too many beside " + strings.Join(slices.Sorted(maps.Keys(object)), ", "))
	delete(object, "never_heard_of")
	for _, key := range slices.Sorted(maps.Keys(object)) {
		switch was := object[key].(type) {
		case map[string]any:
			spoil(was, told)
		case []any:
			for i := range was[:min(len(was), 2)] {
				if row, ok := was[i].(map[string]any); ok {
					spoil(row, told)
				}
			}
			object[key] = "a text"
			told(key + " a text")
			object[key] = was
		default:
			object[key] = []any{}
			told(key + " a list")
			object[key] = was
		}
	}
}

// Every command that prints JSON has a schema, and names what it answers in its own.
func TestEveryAnswerHasASchema(t *testing.T) {
	for _, c := range commands(cli.Root()) {
		name := strings.TrimPrefix(c.CommandPath(), "evenlip ")
		if name == "evenlip" || name == "crib" || strings.HasSuffix(name, "schema") {
			continue // no answer, or a document of another kind
		}
		if _, err := schemaOf(name); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if a := run("", "schema", "wheal"); a.status != 2 || !strings.Contains(a.err, "wheel") {
		t.Errorf("status %d, %s", a.status, a.err)
	}
}
