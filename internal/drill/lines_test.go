package drill_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
)

// A line of JSON, a row of CSV and flags of the same readings are the same
// drill.
func TestLinesAndFlagsAgree(t *testing.T) {
	flags, errs := read(manyKinds, quantity.Unset)
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	header, faults := drill.ReadHeader("crib.csv", 1, []byte(`size, material,web,chisel-angle,lip-angle,lip-height,clearance,cracked,helix,name`))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	row := []byte(`1/2,steel-200,0.085,126,"59.5,58.5", "-0.02mm,0.1mm","11,12",no,,"drawer ""4"""`)
	var l drill.Lines
	for name, read := range map[string]func() ([]drill.Given, fault.List){
		"as flags": func() ([]drill.Given, fault.List) {
			return l.JSON(1, []byte(`{"name":"drawer \"4\"","size":"1/2","material":"steel-200","web":"0.085","chisel-angle":"126","lip-angle":"59.5,58.5","lip-height":"-0.02mm,0.1mm","clearance":"11,12","cracked":"no"}`))
		},
		"as JSON": func() ([]drill.Given, fault.List) {
			return l.JSON(1, []byte(" { \"cracked\" : false ,\t\"clearance\":[11 , 12], \"lip-height\":[\"-0.02mm\",\"0.1mm\"], \"lip-angle\":[59.5,58.5],\"chisel-angle\":126,\"web\":0.085,\"material\":\"steel\\u002d200\",\"size\":\"1\\/2\",\"name\":\"drawer \\u00224\\u0022\", \"helix\":null } "))
		},
		"as CSV": func() ([]drill.Given, fault.List) { return l.CSV(header, 2, row) },
	} {
		given, faults := read()
		d, faults := resolved(given, faults, quantity.Unset)
		if len(faults) > 0 {
			t.Errorf("%s: %v", name, faults)
			continue
		}
		same(t, name, d, flags)
		if d.Name != `drawer "4"` {
			t.Errorf("%s: name %q", name, d.Name)
		}
	}
}

// Units asked for outside weigh more than a line's own, and nothing of one line
// is left in the next.
func TestLinesStandAlone(t *testing.T) {
	l := drill.Lines{File: "crib.jsonl"}
	var d drill.Read
	line := func(number int, text string, units quantity.System) fault.List {
		given, faults := l.JSON(number, []byte(text))
		return append(faults, d.Resolve(given, drill.Options{Units: units})...)
	}
	errs := line(1, `{"units":"in","size":0.5,"web":0.1,"name":"first"}`, quantity.Unset)
	if len(errs) > 0 || d.Value(drill.Size) != 12.7 || d.Value(drill.Web) != 2.54 {
		t.Errorf("%v, %v", d.Value(drill.Size), errs)
	}
	errs = line(2, `{"size":12}`, quantity.Unset)
	if len(errs) > 0 || d.Value(drill.Size) != 12 || d.Has(drill.Web) || d.Name != "" || d.Units != quantity.Metric {
		t.Errorf("%v, %v, %q", d.Value(drill.Size), errs, d.Name)
	}
	if errs = line(3, `{"units":"in","size":0.5}`, quantity.Metric); len(errs) > 0 || d.Value(drill.Size) != 0.5 {
		t.Errorf("%v, %v", d.Value(drill.Size), errs)
	}
}

// Each line of JSON is wrong at these places, all told at once and in order.
func TestLineFaults(t *testing.T) {
	for text, want := range map[string][]string{
		`{"size":"12mm","size":"13mm"}`:  {`16: "size" stands twice (keep one of them)`},
		`{"name":"a","name":"b"}`:        {`13: "name" stands twice (keep one of them)`},
		`{"sise":"12mm"}`:                {`2: no reading is called "sise" (did you mean size?)`},
		`{"bin":3}`:                      {`2: no reading is called "bin" (the keys are the flags' names: evenlip inspect --help)`},
		`{"Size":12}`:                    {`2: no reading is called "Size" (did you mean size?)`},
		`{"\u001b[31m":2}`:               {`2: no reading is called "\x1b[31m" (the keys are the flags' names: evenlip inspect --help)`},
		`{"size":""}`:                    {`9: size: takes a value (leave it out if it was not read)`},
		`{"size":" "}`:                   {`9: size: takes a value (leave it out if it was not read)`},
		`{"size":{"in":12}}`:             {`9: size: takes a text, a number or a list of two ()`},
		`{"lip-angle":[59,[58]]}`:        {`14: lip-angle: takes a text, a number or a list of two ()`},
		`{"lip-angle":[59,null]}`:        {`14: lip-angle: takes a text, a number or a list of two ()`},
		`{"lip-angle":[]}`:               {`14: lip-angle: takes a value (leave it out if it was not read)`},
		`{"lip-angle":["",58]}`:          {`14: lip-angle: cannot read ",58": takes an angle such as 59, 59.5deg or 59°30' (a value is missing beside the comma)`},
		`{"lip-angle":[59,58,57]}`:       {`14: lip-angle: cannot read "59,58,57": takes an angle such as 59, 59.5deg or 59°30' (more than two values; a comma is never a decimal point or a thousands mark)`},
		`{"size":true}`:                  {`9: size: cannot read "true": takes a drill size such as 12mm, 0.5in, 1/2, #7 or F (begin with a number)`},
		`{"name":["a"],"size":1}`:        {`9: name: takes a text ()`},
		`{"name":true,"size":1}`:         {`9: name: takes a text ()`},
		`{"name":{},"size":1}`:           {`9: name: takes a text, a number or a list of two ()`},
		`{"units":"cm","size":1}`:        {`10: units: cannot read "cm": takes mm or in ()`},
		`{"remove":"0mm..6mm by 1mm"}`:   {`11: remove: cannot read "0mm..6mm by 1mm": takes a length such as 12mm, 0.5in, 1/2 or 85thou (this takes one value; a range is for the flags of one drill)`},
		`{"name":"Größe 刃","web":"?"}`:   {`25: web: cannot read "?": takes a length such as 12mm, 0.5in, 1/2 or 85thou (begin with a number)`},
		`{"web":"?","bin":1,"web":1}`:    {`8: web: cannot read "?": takes a length such as 12mm, 0.5in, 1/2 or 85thou (begin with a number)`, `12: no reading is called "bin" (the keys are the flags' names: evenlip inspect --help)`, `20: "web" stands twice (keep one of them)`},
		`{}`:                             {`1: no reading was given (leave the line out)`},
		`{"name":"x","web":null}`:        {`1: no reading was given (leave the line out)`},
		`12`:                             {`1: takes one drill a line, such as {"size": "12mm", "web": 2.1} (one JSON object a line; for CSV say --input csv, and a drill's YAML file is for evenlip inspect FILE)`},
		` [{"size":12}]`:                 {`2: takes one drill a line, such as {"size": "12mm", "web": 2.1} (a list is not taken: write each drill on a line of its own (jq -c '.[]' does))`},
		`size: 12mm`:                     {`1: not JSON: invalid character 's' looking for beginning of value (one JSON object a line; for CSV say --input csv, and a drill's YAML file is for evenlip inspect FILE)`},
		`{"size":12} {"size":12}`:        {`13: not JSON: invalid character '{' after top-level value ()`},
		`{"size":12,}`:                   {`12: not JSON: invalid character '}' looking for beginning of object key string ()`},
		`{"size":NaN}`:                   {`9: not JSON: invalid character 'N' looking for beginning of value ()`},
		`{"size":01}`:                    {`10: not JSON: invalid character '1' after object key:value pair ()`},
		`{'size':1}`:                     {`2: not JSON: invalid character '\'' looking for beginning of object key string ()`},
		`{"size":`:                       {`8: not JSON: unexpected end of JSON input (is it all on this line? the whole drill goes on one (jq -c . does that))`},
		"{\"name\":\"\xff\",\"size\":1}": {`10: is not UTF-8 (save the file as UTF-8)`},
		"{\"size\":\"\x01\"}":            {`10: not JSON: invalid character '\x01' in string literal ()`},
	} {
		l := drill.Lines{File: "crib.jsonl"}
		given, errs := l.JSON(7, []byte(text))
		_, errs = resolved(given, errs, quantity.Unset)
		if got := told(errs); !slices.Equal(got, want) {
			t.Errorf("%s:\n got %q\nwant %q", text, got, want)
		}
	}
}

// told puts faults as "column: text (hint)", where they are of line 7.
func told(errs fault.List) []string {
	var out []string
	for _, e := range errs {
		if e.At.Line != 7 || !strings.HasPrefix(e.At.File, "crib.") {
			return []string{"not a fault of line 7: " + e.Error()}
		}
		out = append(out, fmt.Sprintf("%d: %s (%s)", e.At.Column, e.Message(), e.Hint))
	}
	return out
}

// The same of CSV, the header's own faults among them.
func TestRowFaults(t *testing.T) {
	for _, c := range []struct {
		header, row string
		want        []string
	}{
		{"size,web", "12mm", []string{"1: has 1 fields where the header has 2 (leave a field empty if it was not read, its comma stays)"}},
		{"size,web", "12mm,2,3", []string{"1: has 3 fields where the header has 2 (leave a field empty if it was not read, its comma stays)"}},
		{"size,web", `12mm,"1,8"`, []string{`6: web: cannot read "1,8": takes one value (a comma is never a decimal point: write 1.8)`}},
		{"size,web", `?, !`, []string{`1: size: cannot read "?": takes a drill size such as 12mm, 0.5in, 1/2, #7 or F (begin with a number)`, `4: web: cannot read "!": takes a length such as 12mm, 0.5in, 1/2 or 85thou (begin with a number)`}},
		{"size,web", `12mm,"2`, []string{`7: not CSV: extraneous or missing " in quoted-field (a quoted field ends before a comma or the line's end, and a " inside it is written twice)`}},
		{"size,web", `12mm,2"`, []string{`7: not CSV: bare " in non-quoted-field ()`}},
		{"size,web", `, `, []string{`1: no reading was given (leave the line out)`}},
		{"size,units", `12,cm`, []string{`4: units: cannot read "cm": takes mm or in ()`}},
		{"size,wed", "", []string{`6: no reading is called "wed" (did you mean web?)`}},
		{"size,size", "", []string{`6: "size" stands twice (keep one of them)`}},
		{"size,", "", []string{`6: no reading is called "" (the keys are the flags' names: evenlip inspect --help)`}},
		{"size;web", "", []string{`1: no comma stands between the columns (save it as CSV with commas)`}},
		{"size\tweb", "", []string{`1: no comma stands between the columns (save it as CSV with commas)`}},
		{`size,"web`, "", []string{`9: not CSV: extraneous or missing " in quoted-field (a quoted field ends before a comma or the line's end, and a " inside it is written twice)`}},
	} {
		header, errs := drill.ReadHeader("crib.csv", 7, []byte(c.header))
		if c.row != "" {
			if len(errs) > 0 {
				t.Errorf("%s: %v", c.header, errs)
				continue
			}
			l := drill.Lines{File: "crib.csv"}
			given, faults := l.CSV(header, 7, []byte(c.row))
			_, errs = resolved(given, faults, quantity.Unset)
		}
		if got := told(errs); !slices.Equal(got, c.want) {
			t.Errorf("%s / %s:\n got %q\nwant %q", c.header, c.row, got, c.want)
		}
	}
}

// What is found wrong later, with a reading of the line, is told with its place.
func TestLineFaultFoundLater(t *testing.T) {
	l := drill.Lines{File: "crib.jsonl"}
	given, errs := l.JSON(7, []byte(`{"name":"ø","size":"12mm","web":"13mm"}`))
	d, errs := resolved(given, errs, quantity.Unset)
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	if e := d.Refuse(drill.Web, "", "cannot be"); e.Error() != "crib.jsonl:7:33: web: cannot be" {
		t.Error(e)
	}
	if e := d.Refuse(drill.Flute, "", "is wanted"); e.Error() != "crib.jsonl: flute: is wanted" {
		t.Error(e)
	}
}

// Whatever a line of JSON holds, the reader takes it for JSON exactly if the
// standard library does, sees the same keys and values in it, says where each
// fault is, and lets no control character through.
func FuzzLine(f *testing.F) {
	for _, seed := range []string{
		`{"size":"12mm","web":2.1,"lip-angle":[59,58.5]}`, `{"size":12,"size":13}`, ` { } `, `{"name":"\ud83d\ude00\n","cracked":true}`, `{"web":[[1],{"a":[]}]}`, `{"a":{"b":{"c":1}}}`,
		`[1]`, `"x"`, `{"size":1e2}`, `{"size":-0}`, `{"lip-height":[-0.02,"0.1mm"]}`, `{"size":null}`, `{"size":"\\\""}`, "{\"\xff\":1}", `{"size":12,}`, `{`, ``, `nul`, `{"web":"1..2 by 1"}`, `{"size" :	12 }`,
		`{"\u0073ize":12}`, `{"size":12}}`, `{"lip-angle":["59,58"]}`, "\"⛛", `{"lip-angle":[true,1]}`, `{"name":12}`, `{"units":"in","size":".5"}`,
	} {
		f.Add([]byte(seed))
	}
	var l drill.Lines
	f.Fuzz(func(t *testing.T, line []byte) {
		if bytes.IndexByte(line, '\n') >= 0 {
			t.Skip("two lines")
		}
		was := bytes.Clone(line)
		given, errs := l.JSON(1, line)
		d, errs := resolved(given, errs, quantity.Unset)
		if !bytes.Equal(was, line) {
			t.Error("the line was changed")
		}
		placed(t, string(line), errs)
		if !json.Valid(line) || !utf8.Valid(line) {
			if len(errs) != 1 || !strings.HasPrefix(errs[0].Error(), ":1:") && len(line) > 0 {
				t.Errorf("%q is not JSON in UTF-8: %v", line, errs)
			}
			return
		}
		if len(errs) > 0 {
			return
		}
		keys, values := members(t, line)
		if slices.Sort(keys); len(slices.Compact(slices.Clone(keys))) != len(keys) {
			t.Errorf("%q: a key stands twice", line)
		}
		for _, key := range keys {
			got := d.Name
			if r, ok := drill.Find(key); ok {
				got = d.Written(r)
				values[key] = strings.TrimSpace(values[key])
			} else if key == "units" {
				continue
			}
			if got != values[key] {
				t.Errorf("%q: %s is %q, not %q", line, key, got, values[key])
			}
		}
		for _, r := range drill.All() {
			if d.Written(r) != "" && !slices.Contains(keys, r.String()) {
				t.Errorf("%q: %s comes from nowhere", line, r)
			}
		}
	})
}

// placed wants every fault to have a place on the line and no control character.
func placed(t *testing.T, line string, errs fault.List) {
	t.Helper()
	for _, e := range errs {
		if e.At.Line != 1 || e.At.Column < 1 || e.At.Column > utf8.RuneCountInString(line)+1 {
			t.Errorf("%q: %v has no place", line, e)
		}
		if said := e.Error() + e.Hint; strings.IndexFunc(said, unicode.IsControl) >= 0 {
			t.Errorf("%q: a control character in %q", line, said)
		}
	}
}

// members reads an object with the standard library's decoder.
func members(t *testing.T, line []byte) (keys []string, values map[string]string) {
	dec := json.NewDecoder(bytes.NewReader(line))
	dec.UseNumber()
	values = map[string]string{}
	dec.Token()
	for dec.More() {
		key, _ := dec.Token()
		keys = append(keys, key.(string))
		var v any
		if err := dec.Decode(&v); err != nil {
			t.Fatalf("%q: %v", line, err)
		}
		list, ok := v.([]any)
		if !ok {
			list = []any{v}
		}
		var texts []string
		for _, item := range list {
			if item != nil {
				texts = append(texts, fmt.Sprint(item))
			}
		}
		values[key.(string)] = strings.Join(texts, ",")
	}
	return keys, values
}

// Whatever a header and a row hold, the reader takes them apart as the standard
// library does with the whole file, says where each fault is, and lets no
// control character through.
func FuzzRow(f *testing.F) {
	for _, seed := range [][2]string{
		{"size,web,lip-angle", `12mm,2.1mm,"59,58"`}, {"size", "12"}, {"size,name", `12,"a ""b"""`}, {"size;web", "1;2"}, {`"size",web`, `,`}, {"size,web", `12"`}, {"size,web", `"12,2`},
		{" size , web", " 12 , 2"}, {"size,size", "1,2"}, {"", ""}, {"size,units", "1,in"}, {"size,cracked", "1,yes"}, {"size", "\r"}, {"size", "\xff"}, {"size,name", "1,\x1b"}, {"name,size", "\"\"\"\",1"},
	} {
		f.Add(seed[0], seed[1])
	}
	f.Fuzz(func(t *testing.T, head, row string) {
		if strings.ContainsAny(head+row, "\n\r") || strings.TrimSpace(head) == "" || strings.TrimSpace(row) == "" {
			return // lines come without their ends, and blank ones not at all
		}
		header, errs := drill.ReadHeader("", 1, []byte(head))
		placed(t, head, errs)
		if len(errs) > 0 {
			return
		}
		l := drill.Lines{}
		given, errs := l.CSV(header, 1, []byte(row))
		d, errs := resolved(given, errs, quantity.Unset)
		placed(t, row, errs)
		if len(errs) > 0 {
			return
		}
		in := csv.NewReader(strings.NewReader(head + "\n" + row + "\n"))
		in.TrimLeadingSpace = true
		all, err := in.ReadAll()
		if err != nil || len(all) != 2 {
			t.Fatalf("%q: the library reads %q, %v", head+"\n"+row, all, err)
		}
		for i, key := range all[0] {
			r, ok := drill.Find(strings.TrimSpace(key))
			want := all[1][i]
			if !ok || strings.TrimSpace(want) == "" {
				continue
			}
			if got := d.Written(r); got != want && got != strings.TrimSpace(want) {
				t.Errorf("%q, %q: %s is %q", head, row, key, got)
			}
		}
	})
}
