package document

import (
	"pappus/render/words"
	"pappus/timing/search"
)

// Search is what a search found: search.json, and what the command prints with --json.
type Search struct {
	Title string `json:"title"`
	How   string `json:"how"` // how many designs were looked at, and how; a sentence without its full stop

	Seed     int  `json:"seed"`
	Space    int  `json:"space"`    // designs in all
	Screened int  `json:"screened"` // that were looked at
	Fit      int  `json:"fit"`      // of these, that can be built and keep all limits
	Full     int  `json:"full"`     // that were planned in full
	Polished int  `json:"polished"` // that were planned as small changes of the best
	Stopped  bool `json:"stopped"`  // ended before all was done

	Aims    []SearchAim   `json:"aims"`    // in the order of what matters
	Found   []SearchFound `json:"found"`   // the designs offered
	Tried   []SearchTried `json:"tried"`   // all that were planned in full, and a sample of those screened alone
	Short   []SearchShort `json:"short"`   // limits that bind, or that none keeps
	Reach   []string      `json:"reach"`   // sentences on what no design can reach
	Binding []string      `json:"binding"` // which limits take away how many designs
	Start   *SearchStart  `json:"start"`   // null: no whole design was given
}

// SearchAim is something that is sought.
type SearchAim struct {
	Aim  string `json:"aim"`            // loss, level, cost, evenness, drivers, price, hours or litres
	Key  string `json:"key"`            // the figure that it is about
	Axis string `json:"axis"`           // its name with its unit, and which way is better
	More bool   `json:"more_is_better"` // else less is
}

// SearchFigures are what designs are judged by, and what is told of them.
type SearchFigures struct {
	Drivers  int    `json:"drivers"`
	Channels int    `json:"channels"`
	Loss     Number `json:"lost_db"`       // against all drivers in step; of several seats what their aim makes of it
	Level    Number `json:"loudest_db"`    // mean of the octaves from 500 Hz to 4 kHz; null: not known
	Onset    Number `json:"comb_onset_hz"` // null: none
	Evenness Number `json:"unevenness_db"` // over angle; null: not known of what was screened alone
	Lowest   Number `json:"lowest_hz"`     // the resonance or the high-pass; null: not known
	Price    Number `json:"price"`         // null: not known
	Plastic  Number `json:"plastic_kg"`
	Mass     Number `json:"mass_kg"`     // null: not known
	Hours    Number `json:"print_hours"` // null: not known
	Litres   Number `json:"inside_l"`    // null: not known
	Width    Number `json:"width_mm"`
	Height   Number `json:"height_mm"` // with its stand
	Depth    Number `json:"depth_mm"`
	Pieces   int    `json:"pieces"` // that are printed; 0: more than one, and not counted
}

// SearchSetting is a key of the design file that was set.
type SearchSetting struct {
	Key   string `json:"key"`
	Value any    `json:"value" ts:"Value"` // null: the key is taken out
}

// SearchWhy is a reason why a design is offered.
type SearchWhy struct {
	Code  string `json:"code"`
	Among string `json:"among"` // "": all on the front; one_piece; up_to
	Limit Number `json:"limit"` // the drivers at most that up_to is about; else 0
	Value Number `json:"value"` // null: none
}

// SearchFound is a design that is offered.
type SearchFound struct {
	Number int         `json:"number"` // from 1
	File   string      `json:"file"`   // in the folder
	Name   string      `json:"name"`
	Why    string      `json:"why"` // a sentence without its full stop
	Whys   []SearchWhy `json:"reasons"`
	SearchFigures
	Set      []SearchSetting `json:"settings"`
	Findings []Finding       `json:"findings"` // in its plan, worst first
}

// SearchTried is a design that was tried.
type SearchTried struct {
	Name    string `json:"name"`    // may be empty
	Stage   string `json:"stage"`   // screened, full or polished
	Random  bool   `json:"random"`  // tried at random
	Front   bool   `json:"front"`   // no other that was planned in full beats it in all aims
	Number  int    `json:"number"`  // among those offered; 0: it is none of them
	Variant int    `json:"variant"` // index in the space; -1: none
	SearchFigures
	Set []SearchSetting `json:"settings"`
}

// SearchShort is a limit that no design keeps, or that binds.
type SearchShort struct {
	Key     string `json:"key"`
	Asked   Number `json:"asked"`   // in the key's unit
	Nearest Number `json:"nearest"` // that any design came to; null: not known
	By      string `json:"by"`      // which
	Broken  int    `json:"broken"`  // designs that broke it
	None    bool   `json:"none"`    // no design keeps it
}

// SearchStart is the design that was given, and how it stands.
type SearchStart struct {
	SearchFigures
	OnFront bool          `json:"on_front"` // nothing found beats it in all aims
	Better  int           `json:"better"`   // number of a design offered that is nowhere worse; 0: none
	Broken  []SearchShort `json:"broken"`   // limits that it breaks
	Words   string        `json:"words"`
}

// OfSearch returns the document of what a search found.
func OfSearch(r *search.Result) Search {
	return Search{
		Title: words.Searched(r), How: words.SearchedHow(r),
		Seed: int(r.Job.Seed), Space: r.Space, Screened: r.Screened, Fit: r.Fit, Full: r.Full, Polished: r.Polished, Stopped: r.Stopped,
		Aims: each(r.Aims, func(a search.Aim) SearchAim {
			return SearchAim{string(a), aimKey(words.Aimed(r, a)), words.AimAxis(r, a), a.More()}
		}),
		Found: each(r.Found, func(f search.Found) SearchFound { return searchFoundOf(r, f) }), Tried: each(r.Tried, searchTriedOf), Short: each(r.Short, searchShortOf),
		Reach: append([]string{}, words.OutOfReach(r)...), Binding: append([]string{}, words.Binding(r)...), Start: searchStartOf(r),
	}
}

// Searched is what a search found, and the files that it left.
type Searched struct {
	Written
	Search
}

// OfSearched returns the document of what a search found and left.
func OfSearched(files Written, r *search.Result) Searched { return Searched{files, OfSearch(r)} }

// Share is what a share of a search came to.
type Share struct {
	File     string `json:"file"` // its journal
	Share    int    `json:"share"`
	Shares   int    `json:"shares"`
	Screened int    `json:"screened"` // designs that were looked at
	Fit      int    `json:"fit"`      // of these, that can be built and keep all limits
}

// OfShare returns the document of a share whose journal is at a path.
func OfShare(path string, r *search.Result) Share {
	return Share{path, r.Job.Share, r.Job.Shares, r.Screened, r.Fit}
}

// aimKey is the key of the figure that an aim is about.
func aimKey(a search.Aim) string {
	return map[search.Aim]string{search.Loss: "lost_db", search.Level: "loudest_db", search.Evenness: "unevenness_db",
		search.Drivers: "drivers", search.Price: "price", search.Hours: "print_hours", search.Litres: "inside_l"}[a]
}

func searchFiguresOf(f search.Figures) SearchFigures {
	return SearchFigures{f.Drivers, f.Channels, db(f.Loss), db(f.Level), To(1, f.Onset), db(f.Evenness), To(2, f.Lowest), To(2, f.Price),
		To(3, f.Plastic), To(3, f.Mass), To(2, f.Hours), To(4, f.Litres), mm(f.Width), mm(f.Height), mm(f.Depth), f.Pieces}
}

func searchSetOf(set []search.Setting) []SearchSetting {
	return each(set, func(s search.Setting) SearchSetting { return SearchSetting{s.Key, s.Value} })
}

func searchFoundOf(r *search.Result, f search.Found) SearchFound {
	return SearchFound{f.Found, words.FileOf(f), f.Name, words.Why(r, f), each(f.Why, func(r search.Reason) SearchWhy {
		return SearchWhy{string(r.Code), string(r.Among), To(0, r.Limit), To(3, r.Value)}
	}), searchFiguresOf(f.Figures), searchSetOf(f.Set), Findings(f.Plan.Warnings)}
}

func searchTriedOf(p search.Point) SearchTried {
	return SearchTried{p.Name, words.SearchStage(p), p.Random, p.Front, p.Found, p.Variant, searchFiguresOf(p.Figures), searchSetOf(p.Set)}
}

func searchShortOf(s search.Shortfall) SearchShort {
	return SearchShort{s.Key, To(3, s.Asked), To(3, s.Nearest), s.By.Name, s.Broken, s.None}
}

func searchStartOf(r *search.Result) *SearchStart {
	if r.Start == nil {
		return nil
	}
	return &SearchStart{searchFiguresOf(r.Start.Figures), r.Start.OnFront, r.Start.Better, each(r.Start.Broken, searchShortOf), words.OfStart(r)}
}
