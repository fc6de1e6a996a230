package print

import (
	"evenlip/internal/handbook"
	"evenlip/internal/sheet"
)

// Encoder appends sheets as JSON. It remembers what one sheet after the other
// repeats, so a run of many has one of its own; it is for one goroutine.
type Encoder struct {
	Explain bool // with the working behind each figure
	Lean    bool // without cautions, and without where anything comes from

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
		if f.Working != nil && f.Working.Source != "" {
			e.list(j, e.sourceText(f.Working.Source))
		} else if s.Explaining && f.Work != "" {
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
