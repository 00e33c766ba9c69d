package search

import (
	"pappus/layout/design"
	"pappus/timing"
)

// Job is what is asked. The same job gives the same answer to the bit, on any number of cores
// and however it is shared.
type Job struct {
	Design *design.Design // as read from Text
	Text   []byte         // the design file: what is offered is this with other values
	Seed   uint64         // of what is tried at random
	// NoStart tells that the design is there for its driver alone, and not to be held against
	// what is found.
	NoStart bool

	// Share and Shares are which part of the candidates to screen, of how many: 3 of 16.
	// Shares 0 or 1: all, and then what follows on screening.
	Share, Shares int
}

// Stage is what a run is at.
type Stage string

const (
	Screening Stage = "screening" // all candidates, by what is cheap to find
	Full      Stage = "full"      // some, by whole plans
	Polishing Stage = "polishing" // the front's, by small changes
)

// Progress is how far a run is.
type Progress struct {
	Stage   Stage
	Done    int // of Of
	Of      int
	Front   int     // how many designs no other beats, so far
	Loss    float64 // dB, the least so far; NaN: none yet
	Level   float64 // dB, the loudest so far; NaN: none yet
	Drivers int     // the fewest so far; 0: none yet
}

// Result is what a run found.
type Result struct {
	Job      Job
	Space    int  // candidates in all
	Screened int  // that were looked at
	Fit      int  // of these, that keep all limits and can be built
	Full     int  // with full figures, those of polishing left out
	Polished int  // tried in polishing
	Stopped  bool // ended before all was done
	Shared   bool // a part alone was screened, and nothing else done

	Lowest float64 // Hz, that designs had to play, the file's or the search's own; 0: any

	Aims  []Aim   // what was sought, in order
	Found []Found // that stand for the front, at most ten, the loudest first
	Tried []Point // all with full figures, and a sample of those screened alone
	Short []Shortfall
	Start *Start // nil: no whole design was given
}

// Aim is something to be made small, or large.
type Aim string

const (
	Loss     Aim = "loss"     // dB
	Level    Aim = "level"    // dB, to be made large
	Cost     Aim = "cost"     // the price where it is known, else the drivers
	Evenness Aim = "evenness" // dB
	Drivers  Aim = "drivers"
	Price    Aim = "price"
	Hours    Aim = "hours"
	Litres   Aim = "litres"
)

// Figures are what a candidate is judged by, and what is told of it.
type Figures struct {
	Loss     float64 // dB, Spot.Aligned.Loss; of several seats what their aim makes of Seating.Planned
	Level    float64 // dB, Plan.Loudest
	Onset    float64 // Hz, comb onset at the spot; +Inf: none
	Evenness float64 // dB, Plan.Unevenness; NaN: not known of what was screened alone
	Lowest   float64 // Hz, resonance in the body or the high-pass, whichever is higher; NaN: not known
	Drivers  int
	Channels int
	Price    float64 // in the design's money; NaN: not known
	Plastic  float64 // kg
	Mass     float64 // kg, of all; NaN: not known
	Hours    float64 // of printing
	Litres   float64 // of air inside
	Width    float64 // m
	Height   float64 // m, with its stand
	Depth    float64 // m
	Pieces   int     // that are printed; 0: more than one, and not counted
}

// Point is a candidate that was tried.
type Point struct {
	Name string // in a few words: "dodecahedron of 120 mm, 12 drivers on 4 channels"
	Figures
	Full    bool // else screened alone
	Random  bool // tried at random
	Front   bool // no other with full figures beats it in all aims
	Found   int  // its number among those found, from 1; 0: it is none of them
	Set     []Setting
	Variant int // index in the space; -1: made by polishing, or the design given
}

// Setting is a key of the design file and its value, nil for a key taken out.
type Setting = design.Setting

// Found is a design that is offered.
type Found struct {
	Point
	Text []byte // the design file
	Plan *timing.Plan
	Why  []Reason // the most telling first
}

// Reason is why a design is offered: it is first by Code among those that Among takes.
type Reason struct {
	Code  Code
	Among Group
	Value float64 // the figure it is first by, in SI; NaN: none
	Limit float64 // what Among is about: the drivers at most; 0: nothing
}

// Code says what a design is first by.
type Code string

const (
	Loudest   Code = "loudest"
	LeastLoss Code = "least_loss"
	Cheapest  Code = "cheapest"
	Evenest   Code = "evenest"
	Fewest    Code = "fewest_drivers"
	Quickest  Code = "quickest" // to print
	Smallest  Code = "smallest" // least litres
	Middle    Code = "middle"   // between the others: nearest to the best in all aims at once
	OneOf     Code = "one_of"   // first by nothing; it stands for its part of the front
)

// Group is among which designs one is first.
type Group string

const (
	All      Group = ""          // all on the front
	OnePiece Group = "one_piece" // that print in one piece
	UpTo     Group = "up_to"     // with as many drivers or fewer
)

// Shortfall is a limit that took candidates, each of which keeps all others.
type Shortfall struct {
	Key     string  // of the file, such as search.width_mm, or the code of a finding
	Asked   float64 // in the key's unit; NaN of a finding
	Nearest float64 // that any of them came to; NaN of a finding
	By      Point   // which
	Broken  int     // how many broke it alone
	None    bool    // none keeps it and all others
}

// Start is the design that was given, and how it stands.
type Start struct {
	Figures
	OnFront bool // nothing found beats it in all aims
	Better  int  // number of a design found that is nowhere worse, from 1; 0: none
	Broken  []Shortfall
}
