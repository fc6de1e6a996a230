package verify

// Kind is what sort of work a source is.
type Kind string

// The kinds of sources.
const (
	Standard Kind = "standard"
	Handbook Kind = "handbook"
	Textbook Kind = "textbook"
	Course   Kind = "training course"
	Paper    Kind = "paper"
	Rule     Kind = "safety rule"
	Practice Kind = "common practice"
	Geometry Kind = "second computation"
	Copy     Kind = "second copy"
)

// Known is how the figures of a source came here.
type Known string

// The ways figures came here.
const (
	InPrint Known = "read in print"
	Memory  Known = "from memory"
	Apart   Known = "worked apart from the program"
)

// Source is a work that the program is held to.
type Source struct {
	Work  string // author or title, edition, year
	Kind  Kind
	Known Known  // empty for common practice, which has no one place
	Sure  string // of a remembered figure: "high", "medium", "low"
}

// Label says what the source is and how its figures came here: "handbook, read
// in print", "standard, from memory (medium)", "common practice".
func (s Source) Label() string {
	out := string(s.Kind)
	if s.Known != "" {
		out += ", " + string(s.Known)
	}
	if s.Sure != "" {
		out += " (" + s.Sure + ")"
	}
	return out
}

// Recalled is the same work where a figure of it is remembered, not read.
func (s Source) Recalled(sure string) Source {
	s.Known, s.Sure = Memory, sure
	return s
}

// The works that tests ask.
var (
	MachinerysHandbook = Source{Work: "Machinery's Handbook, 31st ed.", Kind: Handbook, Known: InPrint}
	ToolHandbook       = Source{Work: "a US cutting-tool handbook", Kind: Handbook, Known: Memory, Sure: "medium to high"}
	OldToolHandbook    = Source{Work: "an old US cutting-tool handbook", Kind: Handbook, Known: Memory, Sure: "medium"}
	ModernMachining    = Source{Work: "Modern Machining Technology (2011)", Kind: Textbook, Known: InPrint}
	ToolDesign         = Source{Work: "Fundamentals of Tool Design", Kind: Textbook, Known: Memory}
	MachiningProcesses = Source{Work: "Fundamentals of Machining Processes, CRC Press", Kind: Textbook, Known: InPrint}
	Navy               = Source{Work: "US Navy, Machinery Repairman", Kind: Course, Known: InPrint}
	JournalOfIndustry  = Source{Work: "ASME J. Eng. Ind. 93 (1971)", Kind: Paper, Known: InPrint}
	Fugelso            = Source{Work: "Fugelso (2001)", Kind: Paper, Known: Memory}
	ASME               = Source{Work: "ASME B94.11M", Kind: Standard, Known: Memory, Sure: "medium"}
	DIN1414            = Source{Work: "DIN 1414, ISO 10899", Kind: Standard, Known: Memory, Sure: "medium"}
	ANSIB7             = Source{Work: "ANSI B7.1", Kind: Standard, Known: Memory}
	Metrology          = Source{Work: "JCGM 100:2008", Kind: Standard, Known: Memory}
	JigDrilling        = Source{Work: "AND10387, as the trade quotes it", Kind: Practice}
	SafetyRule         = Source{Work: "29 CFR 1910.215", Kind: Rule, Known: InPrint}
	Trade              = Source{Work: "the trade", Kind: Practice}
	SecondCopy         = Source{Work: "the tables, typed a second time", Kind: Copy, Known: Apart}
	Derived            = Source{Work: "the point's geometry", Kind: Geometry, Known: Apart}
)
