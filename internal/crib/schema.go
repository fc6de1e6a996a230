package crib

import (
	"encoding/json"

	"evenlip/internal/drill"
	"evenlip/internal/quantity"
)

// scheme is a part of a JSON Schema.
type scheme = map[string]any

// Schema returns the JSON Schema (draft 07) of a crib's file, by which an editor
// completes keys and marks what Read would refuse. It is made of what Read
// itself knows. It takes whatever Read takes; of what depends on several values,
// such as a web wider than the drill, it knows nothing.
func Schema() []byte {
	root := object("a tool crib's drills, kept for evenlip crib", scheme{
		"version": scheme{"description": "the version of this file's form", "const": Version},
		"name":    described("what the crib is called", words()),
		"units":   units("units of numbers without one; left out, each drill's size decides"),
		"keep":    keepScheme(),
		"drills":  listOf("the drills", drillScheme()),
	}, "version", "drills")
	root["$schema"] = "http://json-schema.org/draft-07/schema#"
	root["definitions"] = readingSchemes()
	text, err := json.MarshalIndent(root, "", "  ")
	if err != nil {
		panic(err) // it is made of words and numbers
	}
	return append(text, '\n')
}

func object(about string, keys scheme, required ...string) scheme {
	out := scheme{"description": about, "type": "object", "properties": keys, "additionalProperties": false}
	if len(required) > 0 {
		out["required"] = required
	}
	return out
}

func described(about string, s scheme) scheme {
	s["description"] = about
	return s
}

func listOf(about string, item scheme) scheme {
	return scheme{"description": about, "type": []string{"array", "null"}, "items": item}
}

func oneOf(about string, words []string) scheme {
	return scheme{"description": about, "enum": words}
}

// words is a text; to YAML one may look like a number or a truth.
func words() scheme {
	return scheme{"type": []string{"string", "number", "boolean"}, "minLength": 1}
}

func units(about string) scheme {
	return scheme{"description": about, "type": "string", "pattern": `^\s*([mM][mM]|[iI][nN])\s*$`}
}

func keepScheme() scheme {
	return scheme{"description": "how many usable drills of a size are to be there, such as 12mm: 2", "type": "object",
		"additionalProperties": scheme{"type": "integer", "minimum": 0, "maximum": mostCount}}
}

func drillScheme() scheme {
	keys := readingKeys()
	keys["id"] = described("what the drill is called; no other drill is called so", words())
	keys["units"] = units("units of this drill's numbers without one; left out, the file's, else the size's")
	keys["series"] = oneOf("the length series", serieses)
	keys["shank"] = oneOf("the kind of shank", shanks)
	keys["note"] = described("a remark", words())
	keys["history"] = listOf("what was done to it, the latest last", eventScheme())
	return object("a drill; its readings are the flags of evenlip inspect", keys, "id", drill.Size.String())
}

func eventScheme() scheme {
	was := readingKeys()
	delete(was, drill.Size.String()) // no drill changes its size
	event := object("what was done on a day", scheme{
		"date":   scheme{"description": "year-month-day", "type": "string", "pattern": `^\d{4}-\d{2}-\d{2}$`},
		"what":   oneOf("what was done", whats),
		"stock":  scheme{"description": "what came off the end in a grind: 0.6mm", "type": []string{"string", "number"}, "minLength": 1, "exclusiveMinimum": 0},
		"note":   described("a remark", words()),
		"before": object("the readings that this did away with", was),
	}, "date", "what")
	event["if"] = scheme{"required": []string{"stock"}}
	event["then"] = scheme{"properties": scheme{"what": scheme{"const": Grind}}}
	return event
}

// readingKeys are the keys of the readings, each pointing to what it takes.
func readingKeys() scheme {
	out := scheme{}
	for _, r := range Kept() {
		out[r.String()] = scheme{"$ref": "#/definitions/" + r.String()}
	}
	return out
}

func readingSchemes() scheme {
	out := scheme{}
	for _, r := range Kept() {
		spec := r.Spec()
		out[r.String()] = described(spec.Help+". "+spec.How, takes(spec))
	}
	return out
}

// takes says how a reading may be written.
func takes(spec *drill.Spec) scheme {
	switch {
	case spec.Switch:
		return scheme{"type": []string{"boolean", "string"}, "pattern": `^\s*([yY][eE][sS]|[nN][oO]|[tT][rR][uU][eE]|[fF][aA][lL][sS][eE])\s*$`}
	case spec.Kind == quantity.Word:
		return words()
	}
	one := scheme{"type": []string{"string", "number"}, "minLength": 1}
	if !spec.Signed {
		one["minimum"] = 0
	}
	if !spec.Pair {
		return one
	}
	return scheme{"anyOf": []scheme{one, {"type": "array", "items": one, "minItems": 1, "maxItems": 2}}}
}
