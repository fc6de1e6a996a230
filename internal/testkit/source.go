package testkit

// Source is a work that the program is held to, and how sure its figures are.
type Source struct{ Work, Sure string }

// How sure a figure is.
const (
	Print    = "read in print"
	Measured = "measured, as printed"
	Recalled = "recalled"
	Practice = "common practice"
	Again    = "worked out a second time"
)

// Recalled is the same work where a figure of it is remembered, not read: with
// high, medium or low confidence, or none that could be told.
func (s Source) Recalled(sure string) Source {
	s.Sure = Recalled
	if sure != "" {
		s.Sure += ", " + sure
	}
	return s
}

// The works that tests ask.
var (
	MachinerysHandbook = Source{"Machinery's Handbook, 31st ed.", Print}
	MachiningProcesses = Source{"Fundamentals of Machining Processes, CRC Press", Print}
	Navy               = Source{"US Navy, Machinery Repairman", Print}
	SafetyRule         = Source{"29 CFR 1910.215", Print}
	ModernMachining    = Source{"Modern Machining Technology (2011)", Measured}
	SubramanianCook    = Source{"Subramanian and Cook, J. Eng. Ind. 99 (1977)", Measured}
	JournalOfIndustry  = Source{"ASME J. Eng. Ind. 93 (1971)", Measured}
	ToolHandbook       = Source{"A US cutting-tool handbook", Recalled + ", medium to high"}
	OldToolHandbook    = Source{"An old US cutting-tool handbook", Recalled + ", medium"}
	ASME               = Source{"ASME B94.11M", Recalled + ", medium"}
	DIN1414            = Source{"DIN 1414, ISO 10899", Recalled + ", medium"}
	ToolDesign         = Source{"Fundamentals of Tool Design", Recalled}
	Fugelso            = Source{"Fugelso (2001)", Recalled}
	ANSIB7             = Source{"ANSI B7.1", Recalled}
	Metrology          = Source{"JCGM 100:2008", Recalled}
	JigDrilling        = Source{"AND10387, as the trade quotes it", Practice}
	Trade              = Source{"The trade", Practice}
	Derived            = Source{"The point's geometry", Again}
	SecondCopy         = Source{"The tables, typed a second time", Again}
)
