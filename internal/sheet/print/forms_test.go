package print

import (
	"encoding/csv"
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pgregory.net/rapid"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
)

// Nothing that a file calls itself may act on the terminal it is shown on.
func TestNamesAreHarmless(t *testing.T) {
	for _, form := range Forms {
		for _, explain := range []bool{false, true} {
			out := written(t, Options{Form: Form(form), Explain: explain}, evilSheet(), evilSheet())
			for _, r := range out {
				layout := r == '\n' || r == '\t' && form == "plain"
				if !layout && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r)) {
					t.Errorf("%s lets %U through", form, r)
				}
			}
			if !strings.Contains(out, "red") || !strings.Contains(out, "quoted") {
				t.Errorf("%s has lost the name", form)
			}
			if strings.Contains(out, "red\n") || form != "csv" && strings.Contains(out, "tab\n") {
				t.Errorf("%s lets a name break a line", form)
			}
		}
	}
}

func TestCleanKeepsWhatIsHarmless(t *testing.T) {
	for was, want := range map[string]string{
		"drawer 4, half inch": "drawer 4, half inch", "Ø12 – 59°": "Ø12 – 59°", "skuff №7 ½\"": "skuff №7 ½\"", "日本": "日本",
		"a\x1b[1mb": "a?[1mb", "a\u202eb": "a?b", "a\u009bb": "a?b", "a\r\nb": "a??b", "a\xffb": "a?b", "\u200b": "?",
	} {
		if got := quantity.Clean(was); got != want {
			t.Errorf("quantity.Clean(%q) = %q, not %q", was, got, want)
		}
	}
}

// Outside check: the standard library's reader of RFC 4180.
func TestCSVReadsBack(t *testing.T) {
	for _, crlf := range []bool{false, true} {
		csvReadsBack(t, crlf)
	}
}

func csvReadsBack(t *testing.T, crlf bool) {
	cracked := &sheet.Sheet{Command: "inspect", Title: "plain", Verdict: &sheet.Verdict{Word: "retire"}}
	for _, sheets := range [][]*sheet.Sheet{{evilSheet()}, {evilSheet(), cracked}, {cracked, evilSheet()}, {evilSheet(), evilSheet(), evilSheet()}} {
		out := written(t, Options{Form: CSV, CRLF: crlf}, sheets...)
		ends := map[bool]int{true: strings.Count(out, "\n")}[crlf]
		if !strings.HasSuffix(out, "\n") || strings.Count(out, "\r\n") != ends || strings.Count(out, "\r") != ends {
			t.Errorf("with crlf %v %d of %d lines end in it", crlf, strings.Count(out, "\r\n"), strings.Count(out, "\n"))
		}
		rows, err := csv.NewReader(strings.NewReader(out)).ReadAll() // refuses rows of unequal length
		if err != nil {
			t.Fatal(err)
		}
		if len(rows) != 1+len(sheets) {
			t.Fatalf("%d rows for %d drills", len(rows), len(sheets))
		}
		head := rows[0]
		if head[0] != "drill" || head[len(head)-1] != "findings" || !slices.Contains(head, "verdict") {
			t.Errorf("header %v", head)
		}
		for _, key := range []string{"length_mm", "unknown_mm", "boundless_mm", "word"} {
			if n := strings.Count(","+strings.Join(head, ",")+",", ","+key+","); n != 1 {
				t.Errorf("%s stands %d times in the header", key, n)
			}
		}
		for i, s := range sheets {
			if strings.Count(rows[i+1][0], "\n") != strings.Count(s.Title, "\n") {
				t.Errorf("the line breaks of %q are not those of %q", rows[i+1][0], s.Title)
			}
			if n := slices.Index(head, "lengths"); len(s.Grids) > 0 && n >= 0 && rows[i+1][n] != "1.5; " {
				t.Errorf("a list of lengths is %q", rows[i+1][n])
			}
			for n, key := range head {
				if f := s.Lookup(key); f != nil && rows[i+1][n] != csvCell(f) {
					t.Errorf("%s is %q", key, rows[i+1][n])
				}
			}
			if got := rows[i+1][slices.Index(head, "verdict")]; got != s.Verdict.Word {
				t.Errorf("verdict %q", got)
			}
		}
	}
}

// csvCell is what a figure's cell has to hold: a word, a number in full, or
// nothing where there is no number.
func csvCell(f *sheet.Figure) string {
	switch {
	case f.Word != "":
		return f.Word
	case math.IsNaN(f.Value) || math.IsInf(f.Value, 0):
		return ""
	}
	return strconv.FormatFloat(f.Value, 'g', -1, 64)
}

func TestCSVOfAMainGrid(t *testing.T) {
	s := evilSheet()
	s.Grids[0].Main = true
	first, second, _ := strings.Cut(evil, "\n")
	rows, err := csv.NewReader(strings.NewReader(written(t, Options{Form: CSV}, s))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if want := [][]string{{"name", "at_mm"}, {quantity.Clean(first) + "\n" + quantity.Clean(second), "1"}, {"second", ""}}; !slices.EqualFunc(rows, want, slices.Equal) {
		t.Errorf("%q", rows)
	}
}

// Outside check: the standard library's decoder. NaN and infinities, of which
// JSON knows nothing, are null, and a name comes back as it was.
func TestJSONReadsBack(t *testing.T) {
	out := written(t, Options{Form: JSON, Explain: true}, evilSheet())
	var d struct {
		Name    string
		Results map[string]any
		Limits  map[string]struct{ Low, High *float64 }
		Steps   []struct{ Figure, Numbers, Result string }
	}
	if err := json.Unmarshal([]byte(out), &d); err != nil {
		t.Fatal(err)
	}
	if want := strings.ToValidUTF8(evil, "\ufffd"); d.Name != want {
		t.Errorf("the name came back as %q, not %q", d.Name, want)
	}
	for key, want := range map[string]any{"length_mm": 2.0, "unknown_mm": nil, "boundless_mm": nil, "word": "even", "verdict": "regrind"} {
		if got, ok := d.Results[key]; !ok || got != want {
			t.Errorf("%s is %v", key, got)
		}
	}
	for key, want := range map[string][]any{
		"list": {"one", strings.ToValidUTF8(evil, "\ufffd")}, "lengths": {1.5, nil}, "empty": {},
		"rows": {map[string]any{"name": strings.ToValidUTF8(evil, "\ufffd"), "at_mm": 1.0}, map[string]any{"name": "second", "at_mm": nil}},
	} {
		if got := d.Results[key]; !reflect.DeepEqual(got, want) {
			t.Errorf("%s is %v, not %v", key, got, want)
		}
	}
	if l := d.Limits["boundless_mm"]; l.Low == nil || l.High != nil {
		t.Error("a limit without end is not null")
	}
	if len(d.Steps) != 1 || d.Steps[0].Numbers != "1 + 1" || d.Steps[0].Result != "2.00 mm" {
		t.Errorf("steps %v", d.Steps)
	}
	if several := written(t, Options{Form: JSON}, evilSheet(), evilSheet()); !json.Valid([]byte(several)) || several[0] != '[' {
		t.Error("several drills are no list")
	}
	undecided := evilSheet()
	undecided.Verdict.Word = ""
	if out := written(t, Options{Form: JSON}, undecided); !strings.Contains(out, `"verdict": null`) {
		t.Error("no verdict is not null")
	}
}

func TestAnyStringAndNumberMakeJSON(t *testing.T) {
	testkit.Property(t, "any text and number make JSON that the standard library reads back", func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.Map(rapid.SliceOf(rapid.Byte()), func(b []byte) string { return string(b) })).Draw(t, "text")
		quoted := appendQuoted(nil, text)
		var back string
		if err := json.Unmarshal(quoted, &back); err != nil {
			t.Fatalf("%q: %v", quoted, err)
		}
		if want := strings.ToValidUTF8(text, "\ufffd"); back != want && utf8.ValidString(text) {
			t.Fatalf("%q came back as %q", text, back)
		}
		for _, r := range string(quoted) {
			if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) {
				t.Fatalf("%U in %q", r, quoted)
			}
		}
		v := rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, math.MaxFloat64, 5e-324})).Draw(t, "number")
		var number *float64
		if err := json.Unmarshal(appendNumber(nil, v), &number); err != nil {
			t.Fatal(err)
		}
		if finite := !math.IsNaN(v) && !math.IsInf(v, 0); finite != (number != nil) || finite && *number != v {
			t.Fatalf("%v came back as %v", v, number)
		}
	})
}

func TestPlain(t *testing.T) {
	one := strings.Split(written(t, Options{Form: Plain}, evilSheet()), "\n")
	columns := strings.Count(one[0], "\t")
	for _, line := range one[:6] {
		if strings.Count(line, "\t") != columns {
			t.Errorf("%q has not %d tabs", line, columns)
		}
	}
	if !strings.HasPrefix(one[1], "a length\t2.00\tmm\t1.00\t3.00\twithin\tpractice") {
		t.Errorf("%q", one[1])
	}
	if !strings.HasPrefix(one[2], "unknown\t-\tmm") || !strings.HasPrefix(one[4], "a word\teven\t") {
		t.Errorf("%q", one[1:5])
	}
	two := written(t, Options{Form: Plain}, evilSheet(), evilSheet())
	if strings.Count(two, "drill\tfigure\t") != 1 {
		t.Error("the header does not stand once")
	}
}

// broken takes nothing.
type broken struct{}

var errFull = errors.New("no space left")

func (broken) Write([]byte) (int, error) { return 0, errFull }

func TestWriteTellsOfFaults(t *testing.T) {
	jobs := []Job{{Sheet: evilSheet(), System: quantity.Metric}}
	for _, form := range Forms {
		if err := Write(broken{}, jobs, Options{Form: Form(form), Width: 80}); !errors.Is(err, errFull) {
			t.Errorf("%s: %v", form, err)
		}
	}
	if err := Write(broken{}, jobs, Options{Form: "xml"}); err == nil || errors.Is(err, errFull) {
		t.Errorf("xml: %v", err)
	}
}

// A table shows what can be seen at the bench: known figures, the rows that
// matter, a turned list as columns, each remark with its weight, the verdict.
func TestTable(t *testing.T) {
	out := written(t, Options{Form: Table}, evilSheet())
	for _, want := range []string{
		"  a length                        2.00 mm 1.00 to 3.00 mm  within  practice\n",
		"  over its limit                  4.00 mm 1.00 to 3.00 mm  over    practice\n",
		"  exact                            5.1054\n", "  - wants size: unknown\n",
		"  state    now  ground\n  web mm  2.00    2.10\n", "      2    2.22\n",
		"  note  for the record\n", "  stop  no further\n", "\nVerdict: REGRIND\n", "still wanted: size\n", "\nsafety  wear eye protection",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
	for _, unwanted := range []string{"never seen", "hushed", "Empty", "gone", "2.11", "2.33", "Nothing known", "Quiet"} {
		if strings.Contains(out, unwanted) {
			t.Errorf("%q is shown", unwanted)
		}
	}
}

// Where gauges were named each figure carries its uncertainty, in every form.
func TestUncertaintyIsShown(t *testing.T) {
	s := evilSheet()
	s.Gauged = true
	f := s.Lookup("length_mm")
	f.Doubt = about(2, 0.031)
	f.Doubt.Mostly = "web"
	for form, want := range map[Form]string{
		Table: "2.00 mm ±0.03", Plain: "\tpractice\t0.03\n", JSON: "\"uncertainty\": {\n    \"length_mm\": 0.03\n  }",
	} {
		if out := written(t, Options{Form: form}, s); !strings.Contains(out, want) {
			t.Errorf("%s: no %q in\n%s", form, want, out)
		}
	}
	if out := written(t, Options{Form: Table, Explain: true}, s); !strings.Contains(out, "± 0.03 mm (95 %, JCGM 101:2008), mostly from web") {
		t.Errorf("not explained:\n%s", out)
	}
	f.Doubt.High = 2.5
	if out := written(t, Options{Form: Table, Explain: true}, s); !strings.Contains(out, "2.0 to 2.5 mm (95 %, JCGM 101:2008), mostly from web") {
		t.Errorf("not explained:\n%s", out)
	}
}

// A limit that has no upper end has an empty field there, as JSON has null.
func TestPlainLeavesAnOpenLimitEmpty(t *testing.T) {
	s := &sheet.Sheet{Command: "thin"}
	s.Open("Web")
	s.Add(sheet.Figure{Key: "web_ratio", Label: "web, part of D", Value: 0.2, Limit: &handbook.Band{Low: 0.025, High: math.Inf(1)}})
	if out := written(t, Options{Form: Plain}, s); !strings.Contains(out, "\t0.025\t\twithin\t") {
		t.Errorf("not empty:\n%s", out)
	}
}
