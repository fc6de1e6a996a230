package print

import (
	"encoding/json"
	"slices"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Contract is what the answers of a command have, as its sheets declare it: one for each
// kind of answer.
type Contract struct {
	Declared []*sheet.Sheet
	Steps    bool // a range makes a row of the answer to each of its steps
	Several  bool // several drills make a list of answers
}

// scheme is JSON Schema as encoding/json writes it.
type scheme = map[string]any

const dialect = "https://json-schema.org/draft/2020-12/schema"

// JSONSchema returns the JSON Schema of what the command prints as JSON.
func (c *Contract) JSONSchema() []byte {
	defs := common()
	defs["answer"] = c.answer(false)
	s := scheme{"$schema": dialect, "title": "evenlip " + c.command() + " --format json", "$defs": defs, "$ref": "#/$defs/answer"}
	if c.Several {
		delete(s, "$ref")
		s["anyOf"] = []scheme{ref("answer"), {"type": "array", "items": ref("answer"), "minItems": 2}}
	}
	return indented(s)
}

// BatchSchema returns the JSON Schema of a line that batch prints, by the commands that
// may answer it.
func BatchSchema(contracts []Contract) []byte {
	defs := common()
	defs["fault"] = closed(scheme{"file": typed("string"), "line": lineNumber(), "error": typed("string"), "hint": typed("string")}, "line", "error")
	lines := []scheme{ref("fault")}
	for i := range contracts {
		defs[contracts[i].command()] = contracts[i].answer(true)
		lines = append(lines, ref(contracts[i].command()))
	}
	return indented(scheme{"$schema": dialect, "title": "a line of evenlip batch", "$defs": defs, "anyOf": lines})
}

func (c *Contract) command() string { return c.Declared[0].Command }

func indented(s scheme) []byte {
	b, err := json.MarshalIndent(s, "", "  ")
	if err != nil { // a map of texts, lists and maps can be written
		panic(err)
	}
	return append(b, '\n')
}

// typed is a value of one of these types.
func typed(names ...string) scheme {
	if len(names) == 1 {
		return scheme{"type": names[0]}
	}
	return scheme{"type": names}
}

// common are the schemas that others refer to by name.
func common() scheme {
	ends := []string{"low", "high"}
	states := []any{nil}
	for st := sheet.Within; st <= sheet.Unsure; st++ {
		if word := st.String(); !slices.Contains(states, any(word)) {
			states = append(states, word)
		}
	}
	severity := scheme{"enum": []string{sheet.Note.String(), sheet.Warn.String(), sheet.Stop.String()}}
	return scheme{
		"number": typed("number", "null"), "word": typed("string", "null"), "switch": typed("boolean", "null"),
		"texts":    scheme{"type": "array", "items": typed("string")},
		"interval": closed(scheme{"low": numeric(), "high": numeric()}, ends...),
		"limit":    closed(scheme{"low": numeric(), "high": numeric(), "state": scheme{"enum": states}, "source": typed("string")}, append(ends, "state")...),
		"finding":  closed(scheme{"code": typed("string"), "severity": severity, "text": typed("string")}, "code", "severity", "text"),
		"step": closed(scheme{"figure": typed("string"), "formula": typed("string"), "numbers": typed("string"), "result": typed("string"), "source": typed("string")},
			"figure", "formula", "numbers", "result"),
	}
}

func ref(name string) scheme { return scheme{"$ref": "#/$defs/" + name} }

func numeric() scheme { return ref("number") }

func texts() scheme { return ref("texts") }

func lineNumber() scheme { return scheme{"type": "integer", "minimum": 1} }

// closed is an object of these members and no others.
func closed(members scheme, required ...string) scheme {
	s := scheme{"type": "object", "properties": members, "additionalProperties": false}
	if len(required) > 0 {
		slices.Sort(required)
		s["required"] = slices.Compact(required)
	}
	return s
}

// values are what a value of the kind may be.
func values(kind quantity.Kind) scheme {
	switch kind {
	case quantity.Word:
		return ref("word")
	case quantity.Switch:
		return ref("switch")
	case quantity.Words, quantity.Phrases:
		return texts()
	}
	return numeric()
}

// answer is the schema of one answer; lean ones may leave out where anything comes from.
func (c *Contract) answer(lean bool) scheme {
	members := scheme{
		"schema": scheme{"const": Schema}, "command": scheme{"const": c.command()}, "version": typed("string"),
		"id": typed("string"), "name": typed("string"), "file": typed("string"), "line": lineNumber(), "sample": scheme{"const": true},
		"inputs": c.inputs(), "limits": c.limits(), "findings": scheme{"type": "array", "items": ref("finding")},
		"cautions": texts(), "sources": texts(), "steps": scheme{"type": "array", "items": ref("step")}, ofShopKey: texts(),
	}
	if len(c.Declared) == 1 {
		members["results"] = c.results(c.Declared[0])
	}
	if kinds := c.kinds(); members["results"] == nil || len(kinds) > 1 {
		members["results"] = scheme{"anyOf": kinds}
	}
	c.uncertain(members)
	required := []string{"schema", "command", "version", "inputs", "results", "limits", "findings"}
	if !lean {
		required = append(required, "cautions", "sources")
	}
	return closed(members, required...)
}

// kinds are the schemas of the results that there are.
func (c *Contract) kinds() []scheme {
	var all []scheme
	for _, s := range c.Declared {
		all = append(all, c.results(s))
	}
	if c.Steps {
		all = append(all, c.rows())
	}
	return all
}

func (c *Contract) inputs() scheme {
	members := scheme{}
	for _, s := range c.Declared {
		for _, in := range s.Inputs {
			keys := scheme{"read": typed("string")}
			if !in.Kind.Number() {
				keys["value"] = values(in.Kind)
			}
			for _, key := range in.Keys {
				for _, of := range []string{"", "from_", "to_", "step_"} {
					keys[of+key] = numeric()
				}
			}
			members[in.Name] = closed(keys, "read")
		}
	}
	return closed(members)
}

// results is the schema of the figures and the lists of an answer, and of its verdict.
func (c *Contract) results(s *sheet.Sheet) scheme {
	members := scheme{}
	var required []string
	s.Each(func(f *sheet.Figure) {
		members[f.Key] = described(values(f.Kind), f.Label)
		if !s.Partial {
			required = append(required, f.Key)
		}
	})
	for i := range s.Grids {
		g := &s.Grids[i]
		members[g.Key] = described(list(g), g.Title)
	}
	if s.Verdict != nil {
		members["verdict"], members["verdict_reasons"], members["verdict_wants"] = values(quantity.Word), texts(), texts()
		members["verdict_share"], members["verdict_finer"] = numeric(), values(quantity.Word)
		required = append(required, "verdict", "verdict_reasons", "verdict_wants")
	}
	if s.Wants != nil {
		members["wants"] = texts()
	}
	return closed(members, required...)
}

// described is a schema with what a person calls it.
func described(s scheme, label string) scheme {
	if label == "" {
		return s
	}
	out := scheme{"description": label}
	for key, v := range s {
		out[key] = v
	}
	return out
}

// list is the schema of a list: of values where it has one column, else of objects.
func list(g *sheet.Grid) scheme {
	if len(g.Columns) == 1 {
		return scheme{"type": "array", "items": values(g.Columns[0].Kind)}
	}
	members := scheme{ofShopKey: texts()}
	var required []string
	for _, c := range g.Columns {
		members[c.Key] = described(values(c.Kind), c.Label)
		if !c.Sometimes {
			required = append(required, c.Key)
		}
	}
	if g.Limits != nil {
		limits := scheme{}
		declareLimits(limits, g.Limits(0))
		members["limits"] = closed(limits)
		required = append(required, "limits")
	}
	return scheme{"type": "array", "items": closed(members, required...)}
}

// rows is the schema of the answers to the steps of a range: what was given in each, and
// the figures, or the rows of the list that is the answer.
func (c *Contract) rows() scheme {
	s := c.Declared[0]
	row := sheet.Grid{}
	add := func(key, label string, kind quantity.Kind, sometimes bool) {
		row.Columns = append(row.Columns, sheet.Column{Key: key, Label: label, Kind: kind, Sometimes: sometimes})
	}
	for _, in := range s.Inputs {
		for _, key := range in.Keys {
			add(key, in.Name, in.Kind, true)
			add("given_"+key, in.Name, in.Kind, true)
		}
	}
	if g := mainGrid(s); g != nil {
		row.Columns = append(row.Columns, g.Columns...)
	} else {
		s.Each(func(f *sheet.Figure) { add(f.Key, f.Label, f.Kind, s.Partial) })
		add("outside", "figures outside their limit", quantity.Words, false)
		add("findings", "codes of the findings", quantity.Words, false)
		if s.Verdict != nil {
			add("verdict", "verdict", quantity.Word, false)
		}
	}
	return closed(scheme{"rows": list(&row)}, "rows")
}

// limits is the schema of the limits that figures are held against.
func (c *Contract) limits() scheme {
	members := scheme{}
	for _, s := range c.Declared {
		declareLimits(members, s)
		if s.Found != nil {
			declareLimits(members, s.Found)
		}
	}
	return closed(members)
}

// declareLimits adds the figures of s that have one.
func declareLimits(members scheme, s *sheet.Sheet) {
	s.Each(func(f *sheet.Figure) {
		if f.Limit != nil {
			members[f.Key] = ref("limit")
		}
	})
}

// uncertain adds what gauges leave of the figures.
func (c *Contract) uncertain(members scheme) {
	half, ends, words := scheme{}, scheme{}, scheme{}
	for _, s := range c.Declared {
		s.Each(func(f *sheet.Figure) {
			if f.Kind.Number() {
				half[f.Key] = numeric()
				ends[f.Key] = ref("interval")
			} else {
				words[f.Key] = texts()
			}
		})
	}
	members["uncertainty"], members["interval"], members["may_be"] = closed(half), closed(ends), closed(words)
}
