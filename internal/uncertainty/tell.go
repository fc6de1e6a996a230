package uncertainty

import (
	"math"
	"slices"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Tell says in s, the sheet of d, what the gauges leave in doubt: of each figure an
// interval, whether its state or its word can be told, and of the verdict whether it
// is borne out; of the figures that the answer rests on, whether their states can be
// told. again makes the sheet of a draw, of which only figures and verdict are looked at; its verdict has all the reasons that hold. Lists carry no uncertainty.
func Tell(s *sheet.Sheet, d *drill.Drill, g quantity.Gauges, again func(*drill.Drill) *sheet.Sheet) {
	s.Gauged = true
	draws := Draws(d, g)
	t := teller{draws: draws, explaining: s.Explaining}
	s.Each(t.place)
	found := teller{draws: draws}
	if s.Found != nil {
		s.Found.Each(found.place)
	}
	var verdicts *Verdicts
	if s.Verdict != nil {
		verdicts = NewVerdicts(s.Verdict)
	}
	for moved := range Each(d, draws) {
		on := again(moved)
		t.add(on)
		if s.Found != nil {
			found.add(on.Found)
		}
		if verdicts != nil {
			verdicts.Add(on.Verdict)
		}
		on.Free()
	}
	for i := range t.places {
		t.tell(i)
	}
	for i := range found.places {
		found.tell(i)
	}
	t.remark(s)
	if verdicts != nil {
		before := s.Verdict.Reasons
		verdicts.Settle(draws)
		verdicts.tell(s, before)
	}
}

// teller tallies the figures of a sheet: their values, and of those that have a word
// or a state whether it is that of the readings by themselves.
type teller struct {
	draws      []Draw
	explaining bool
	places     []place
	figures    []float64 // of a draw
	words      []string
	tally      Tally
}

// place is where a figure stands in the tally.
type place struct {
	*sheet.Figure
	state sheet.State // of the readings by themselves
	same  int         // the column that tells whether word or state are the same, else 0
	word  int         // the place of its word, else -1
}

func (t *teller) place(f *sheet.Figure) {
	t.places = append(t.places, place{Figure: f, state: f.State(), word: -1})
	t.figures = append(t.figures, 0)
}

// settle gives places in the tally to words and states, once all figures have theirs.
func (t *teller) settle() {
	for i := range t.places {
		p := &t.places[i]
		if p.Word != "" {
			p.word = len(t.words)
			t.words = append(t.words, "")
		}
		if p.Word != "" || p.state != sheet.Unjudged {
			p.same = len(t.figures)
			t.figures = append(t.figures, 0)
		}
	}
}

// add adds the figures of a draw. Those that the sheet has not are passed over.
func (t *teller) add(on *sheet.Sheet) {
	if t.tally.n == 0 {
		t.settle()
	}
	for i := range t.figures {
		t.figures[i] = math.NaN()
	}
	clear(t.words)
	next := 0
	on.Each(func(f *sheet.Figure) {
		i := t.find(f.Key, next)
		if i < 0 {
			return
		}
		next = i + 1
		p := &t.places[i]
		t.figures[i] = f.Value
		if p.word >= 0 {
			t.words[p.word] = f.Word
		}
		if p.same > 0 && f.Word == p.Word && f.State() == p.state {
			t.figures[p.same] = 1
		}
	})
	for i := range t.places {
		if same := t.places[i].same; same > 0 && math.IsNaN(t.figures[same]) {
			t.figures[same] = 0
		}
	}
	t.tally.Add(t.figures, t.words)
}

// find returns which figure has the key, looking first where it stands if the sheets
// are alike; -1 for none.
func (t *teller) find(key string, next int) int {
	if next < len(t.places) && t.places[next].Key == key {
		return next
	}
	return slices.IndexFunc(t.places, func(p place) bool { return p.Key == key })
}

// tell gives the figure in a place what is in doubt of it.
func (t *teller) tell(i int) {
	p := &t.places[i]
	doubt := &sheet.Doubt{Low: math.NaN(), High: math.NaN()}
	blamed := i
	if p.same > 0 && t.tally.Mean(p.same) < Tells {
		doubt.Unsure, blamed = true, p.same
	}
	if p.Word != "" {
		doubt.Known = 1 - t.tally.Share(p.word, "")
		if doubt.Unsure {
			doubt.Words = t.maybe(p)
		}
	} else {
		interval := t.tally.Interval(i)
		doubt.Low, doubt.High, doubt.Known = interval.Low, interval.High, t.tally.Known(i)
	}
	if doubt.Unsure {
		doubt.Finer = t.tally.Finer(blamed, t.draws)
	}
	if k := -1; t.explaining {
		if k = t.tally.Blame(i, len(t.draws)); k >= 0 {
			doubt.Mostly = t.draws[k].Reading.String()
		}
	}
	p.Doubt = doubt
	if len(doubt.Words) > 1 {
		p.Word = strings.Join(doubt.Words, " or ")
	}
}

// maybe are the words that a figure may be: that of the readings by themselves, then
// the most frequent, until they are enough.
func (t *teller) maybe(p *place) []string {
	words := []string{p.Word}
	sum := t.tally.Share(p.word, p.Word)
	for _, word := range t.tally.Words(p.word) {
		if sum >= Tells {
			break
		}
		if word != "" && word != p.Word {
			words = append(words, word)
			sum += t.tally.Share(p.word, word)
		}
	}
	return words
}

// remark says which limits cannot be told, and which figures only some draws have. An
// answer in short rests on the readings by themselves, and says so where they do not
// tell all.
func (t *teller) remark(s *sheet.Sheet) {
	var parts []string
	if s.Answer != nil && slices.ContainsFunc(t.places, func(p place) bool { return p.Doubt.Unsure }) {
		s.Answer.Format += "; these gauges cannot tell for sure"
	}
	for i := range t.places {
		f := t.places[i].Figure
		if f.State() == sheet.Unsure {
			s.Find("cannot-tell", sheet.Warn, "{}: {} is too near its limit for this gauge to tell; read {}",
				quantity.Say(f.Label), quantity.Arg{Kind: f.Kind, Gauge: f.Gauge, Value: f.Value}, quantity.Say(f.Doubt.Finer))
		}
		if known := f.Doubt.Known; f.Label != "" && (f.Known() && known < Tells || !f.Known() && known > 1-Tells) {
			parts = append(parts, f.Label+", in "+percent(known))
		}
	}
	if len(parts) > 0 {
		s.Find("known-in-part", sheet.Note, "only some of the draws have these figures: {}", quantity.Say(strings.Join(parts, "; ")))
	}
}
