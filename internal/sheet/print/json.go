package print

import (
	"bytes"
	"cmp"
	"encoding/json"
	"io"
	"strconv"
	"strings"

	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// usualJSON is room for the sheet of a drill: a buffer that grew to it would
// touch memory again at every size.
const usualJSON = 4 << 10

// writeJSON prints one object for one sheet, a list for several.
func writeJSON(w io.Writer, jobs []Job, o Options) error {
	e := Encoder{Explain: o.Explain, Version: o.Version}
	b := make([]byte, 0, usualJSON)
	if len(jobs) > 1 {
		b = append(b, '[')
	}
	for i, j := range jobs {
		if i > 0 {
			b = append(b, ',')
		}
		b = e.Append(b, j.Sheet)
	}
	if len(jobs) > 1 {
		b = append(b, ']')
	}
	var out bytes.Buffer
	out.Grow(2 * len(b))
	if err := json.Indent(&out, b, "", "  "); err != nil {
		return err
	}
	out.WriteByte('\n')
	_, err := out.WriteTo(w)
	return err
}

// Schema is the version of what is printed as JSON: a name that changes its meaning
// or goes makes another.
const Schema = 1

// Append appends the sheet as one compact JSON object: what it is, which drill it is
// about, inputs, results, limits, findings, cautions, sources, and steps where the
// working was asked for. Lengths are in millimetres and angles in degrees.
func (e *Encoder) Append(b []byte, s *sheet.Sheet) []byte {
	e.sheets++
	j := object{b: append(b, '{')}
	j.raw("schema", strconv.Itoa(Schema))
	j.text("command", s.Command)
	j.text("version", e.Version)
	j.origin(&s.Origin)
	if s.Sample {
		j.raw("sample", "true")
	}
	j.open("inputs", '{')
	for i := range s.Inputs {
		j.input(&s.Inputs[i])
	}
	j.close('}')
	e.results(&j, s)
	e.limits(&j, s, !e.Lean)
	j.uncertainty(s)
	if s.Shop {
		j.list(ofShopKey, setByShop(s))
	}
	e.findings(&j, s.Findings)
	if !e.Lean {
		e.listCautions(&j, s.Cautions)
		e.listSources(&j, s)
	}
	if e.Explain {
		e.steps(&j, worked(s))
	}
	return append(j.b, '}')
}

// origin appends what is known of where the drill comes from.
func (j *object) origin(o *sheet.Origin) {
	if o.ID != "" {
		j.text("id", o.ID)
	}
	if o.Name != "" {
		j.text("name", o.Name)
	}
	if o.File != "" {
		j.text("file", o.File)
	}
	if o.Line > 0 {
		j.raw("line", strconv.Itoa(o.Line))
	}
}

func (j *object) input(in *sheet.Input) {
	j.open(in.Name, '{')
	j.text("read", in.Text)
	if !in.Kind.Number() {
		j.name("value")
		j.value(in.Kind, in.Word, 0)
	}
	for i, v := range in.Values {
		j.number(in.Keys[i], quantity.Export(in.Kind, v.V))
	}
	j.close('}')
}

func (e *Encoder) results(j *object, s *sheet.Sheet) {
	j.open("results", '{')
	s.Each(func(f *sheet.Figure) {
		j.name(f.Key)
		j.value(f.Kind, knownWord(f), f.Value)
	})
	for i := range s.Grids {
		e.grid(j, &s.Grids[i])
	}
	if v := s.Verdict; v != nil {
		j.name("verdict")
		j.value(quantity.Word, v.Word, 0)
		if s.Gauged {
			j.number("verdict_share", v.Share)
			j.name("verdict_finer")
			j.value(quantity.Word, v.Finer, 0)
		}
		j.list("verdict_reasons", v.Reasons)
		j.list("verdict_wants", v.Missing)
	}
	if s.Wants != nil {
		j.list("wants", s.Wants)
	}
	j.close('}')
}

func (e *Encoder) grid(j *object, g *sheet.Grid) {
	j.open(g.Key, '[')
	for n, row := range g.Rows {
		if len(row) == 1 {
			j.comma()
			j.value(g.Columns[0].Kind, row[0].Word, row[0].Value)
			continue
		}
		j.openElement('{')
		for i, c := range row {
			j.name(g.Columns[i].Key)
			j.value(g.Columns[i].Kind, c.Word, c.Value)
		}
		if keys := ofShop(g, row); keys != "" {
			j.list(ofShopKey, strings.Fields(keys))
		}
		if g.Limits != nil {
			s := g.Limits(n)
			e.limits(j, s, false)
			s.Free()
		}
		j.close('}')
	}
	j.close(']')
}

// value appends a word, if there is one, or a number; what is not known is null, and a
// list of nothing is empty.
func (j *object) value(kind quantity.Kind, word string, number float64) {
	switch {
	case kind == quantity.Words:
		j.elements(strings.Fields(word))
	case kind == quantity.Phrases:
		j.elements(phrases(word))
	case word == "" && kind.Number():
		j.b = appendNumber(j.b, quantity.Export(kind, number))
	case word == "":
		j.b = append(j.b, "null"...)
	case kind == quantity.Switch:
		j.b = strconv.AppendBool(j.b, word == yes)
	default:
		j.b = appendQuoted(j.b, word)
	}
}

// yes is the word for a switch that is on.
const yes = "yes"

func phrases(text string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(text, "; ")
}

// knownWord is the word of a figure as far as it is known: where gauges leave several,
// or what a person is told is that it is not known, it is none.
func knownWord(f *sheet.Figure) string {
	if f.Open || f.Doubt != nil && f.Doubt.Unsure {
		return ""
	}
	return f.Word
}

// limits appends the limits that the figures of s are held against.
func (e *Encoder) limits(j *object, s *sheet.Sheet, sourced bool) {
	j.open("limits", '{')
	one := func(f *sheet.Figure) {
		if f.Limit == nil {
			return
		}
		j.open(f.Key, '{')
		j.number("low", quantity.Export(f.Kind, f.Limit.Low))
		j.number("high", quantity.Export(f.Kind, f.Limit.High))
		j.name("state")
		j.value(quantity.Word, stateWord(f), 0)
		if sourced && f.Limit.Source != nil {
			j.name("source")
			j.b = append(j.b, e.source(f.Limit.Source).quoted...)
		}
		j.close('}')
	}
	s.Each(one)
	if s.Found != nil {
		s.Found.Each(func(f *sheet.Figure) {
			if f.Known() {
				one(f)
			}
		})
	}
	j.close('}')
}

// uncertainty lists the expanded uncertainties of the figures and the intervals that
// they are half of, of 95 %, and what a word may be, where gauges were named.
func (j *object) uncertainty(s *sheet.Sheet) {
	if !s.Gauged {
		return
	}
	j.open("uncertainty", '{')
	s.Each(func(f *sheet.Figure) {
		if u, _, ok := exported(f); ok {
			j.number(f.Key, u)
		}
	})
	j.close('}')
	j.open("interval", '{')
	s.Each(func(f *sheet.Figure) {
		if _, ends, ok := exported(f); ok {
			j.open(f.Key, '{')
			j.number("low", ends.Low)
			j.number("high", ends.High)
			j.close('}')
		}
	})
	j.close('}')
	j.open("may_be", '{')
	s.Each(func(f *sheet.Figure) {
		if f.Doubt != nil && len(f.Doubt.Words) > 1 {
			j.list(f.Key, f.Doubt.Words)
		}
	})
	j.close('}')
}

func (e *Encoder) findings(j *object, fs []sheet.Finding) {
	j.open("findings", '[')
	for _, f := range fs {
		j.openElement('{')
		j.word("code", f.Code)
		j.word("severity", f.Severity.String())
		e.scratch = f.Text.Append(e.scratch[:0], metric)
		j.name("text")
		j.b = appendQuoted(j.b, e.scratch)
		j.close('}')
	}
	j.close(']')
}

func (e *Encoder) steps(j *object, s *sheet.Sheet) {
	j.open("steps", '[')
	s.Worked(func(f *sheet.Figure, step bool) {
		j.openElement('{')
		j.text("figure", cmp.Or(f.Key, f.Letter))
		j.text("formula", s.Formula(f))
		j.text("numbers", s.Sum(f, metric))
		j.text("result", result(f, step, metric))
		if !e.Lean {
			j.text("source", f.Source)
		}
		j.close('}')
	})
	j.close(']')
}

// AppendFault appends the object that stands in the place of an answer: the
// file if there are several, the number of the line, what is wrong with it and,
// where there is one, a hint.
func AppendFault(b []byte, file string, line int, text, hint string) []byte {
	j := object{b: append(b, '{')}
	if file != "" {
		j.text("file", file)
	}
	j.raw("line", strconv.Itoa(line))
	j.text("error", text)
	if hint != "" {
		j.text("hint", hint)
	}
	return append(j.b, '}')
}

// AppendErrors appends the object that stands on standard error where the answer was to
// be JSON: what is wrong, all of it, the hints, the exit status, where the first fault
// stands, and the faults one by one.
func AppendErrors(b []byte, faults fault.List) []byte {
	j := object{b: append(b, '{')}
	j.raw("schema", strconv.Itoa(Schema))
	var texts, hints []string
	for _, f := range faults {
		texts = append(texts, f.Message())
		if f.Hint != "" {
			hints = append(hints, f.Hint)
		}
	}
	j.text("error", strings.Join(texts, "; "))
	j.textOrNull("hint", strings.Join(hints, "; "))
	j.raw("status", strconv.Itoa(int(faults.Exit())))
	j.place(faults[0].At)
	j.open("faults", '[')
	for _, f := range faults {
		j.openElement('{')
		j.text("error", f.Message())
		j.textOrNull("hint", f.Hint)
		j.place(f.At)
		j.close('}')
	}
	j.close(']')
	return append(j.b, '}')
}

func (j *object) place(at fault.Place) {
	j.textOrNull("flag", at.Flag)
	j.textOrNull("file", at.File)
	j.numberOrNull("line", at.Line)
	j.numberOrNull("column", at.Column)
}

// Encoder appends sheets as JSON. It remembers what one sheet after the other
// repeats, so a run of many has one of its own; it is for one goroutine.
type Encoder struct {
	Version string // of the program
	Explain bool   // with the working behind each figure
	Lean    bool   // without cautions, and without where anything comes from

	texts     map[string]*sourceText
	sources   map[*handbook.Source]*sourceText
	sheets    int // how many were appended
	cautions  []string
	cautioned []byte // the cautions as JSON
	scratch   []byte
}

// sourceText is what is known of a source.
type sourceText struct {
	quoted []byte
	sheet  int // the last one that listed it
}

// mostSources bounds what an encoder remembers. There are some hundred, and a
// source that is made anew for each sheet is none of them.
const mostSources = 1000

// source finds a source again.
func (e *Encoder) source(src *handbook.Source) *sourceText {
	if known, ok := e.sources[src]; ok {
		return known
	}
	if e.sources == nil || len(e.sources) >= mostSources {
		e.sources = map[*handbook.Source]*sourceText{}
	}
	known := e.sourceText(src.String())
	e.sources[src] = known
	return known
}

func (e *Encoder) sourceText(text string) *sourceText {
	if known, ok := e.texts[text]; ok {
		return known
	}
	if e.texts == nil || len(e.texts) >= mostSources {
		e.texts = map[string]*sourceText{}
	}
	known := &sourceText{quoted: appendQuoted(nil, text)}
	e.texts[text] = known
	return known
}

// list appends the text where the sheet has not listed it yet.
func (e *Encoder) list(j *object, src *sourceText) {
	if src.sheet == e.sheets {
		return
	}
	src.sheet = e.sheets
	j.comma()
	j.b = append(j.b, src.quoted...)
}

// listSources lists, once each, where the limits and the working come from.
func (e *Encoder) listSources(j *object, s *sheet.Sheet) {
	j.open("sources", '[')
	worked(s).Each(func(f *sheet.Figure) {
		if f.Limit != nil && f.Limit.Source != nil {
			e.list(j, e.source(f.Limit.Source))
		}
		if s.Explaining && f.Work != "" {
			e.list(j, e.sourceText(f.Source))
		}
	})
	for _, src := range s.Extra {
		if src != nil {
			e.list(j, e.source(src))
		}
	}
	j.close(']')
}

// listCautions appends the cautions, which are mostly those of the sheet before.
func (e *Encoder) listCautions(j *object, cautions []string) {
	same := len(cautions) > 0 && len(cautions) == len(e.cautions) && &cautions[0] == &e.cautions[0]
	if !same {
		list := object{b: []byte{'{'}}
		list.list("cautions", cautions)
		e.cautions, e.cautioned = cautions, list.b[1:]
	}
	j.comma()
	j.b = append(j.b, e.cautioned...)
}
