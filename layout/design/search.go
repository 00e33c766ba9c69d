package design

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"pappus/layout/prose"
)

// Search says what a search over layouts may use, what it must keep to and what it is
// after. All is SI but Price, which is in any money, and Hours. A limit of 0 is none.
type Search struct {
	Present bool // the file has the table

	Drivers      int // in stock: the most that a design may have
	LeastDrivers int
	Channels     int // that there are; 0 in a design that gives no number: a driver each

	Width, Height, Depth    float64  // m, of the body with its stand, at most
	Mass                    float64  // kg, of shell and drivers, at most
	Price                   float64  // of drivers and plastic, at most
	Hours                   float64  // of printing, at most
	LeastVolume, MostVolume float64  // m3, of the hollow
	Level                   *float64 // dB, the least loudest level; nil: the search's own
	Lowest                  float64  // Hz, the lowest frequency that must be played
	Pieces                  int      // printed segments, at most
	Aims                    []string // most wanted first

	Vary []Vary // in the order of the keys; empty: the search's own space
}

// Vary is a key that a search may set: to one of some choices, or to numbers from one to
// another. All are in the file's units.
type Vary struct {
	Key     string
	Choices []any // as Set takes them; nil where there is a range
	// A range from From to To, both in it; in steps of Step, or of 0 as the search likes.
	From, To, Step float64
	Whole          bool // a range of whole numbers
}

// What a search is after where the file does not say, and what it may be.
var (
	firstAims  = []string{"loss", "level", "cost"}
	searchAims = []string{"loss", "level", "cost", "evenness", "drivers", "price", "hours", "litres"}
)

// Stock is how many drivers there are where the file does not say, leastDrivers the fewest
// that make an array: a dodecahedron's, the usual source of omnidirectional sound (ISO
// 16283-1, ISO 10140-5, ISO 3382-1).
const (
	Stock        = 120
	leastDrivers = 12
)

// MostChoices is the most values that one key may have in a search.
const MostChoices = 1000

// aimsLimits limit the aims; they are in square brackets.
var aimsLimits = Limits{words: searchAims, Says: "a list in square brackets of " + oneOf(searchAims) + ", none twice"}

// rows lists the keys of [search].
func (s *Search) rows() []Row {
	return []Row{
		{"drivers", &s.Drivers, From(1, MaxDrivers), 1, Stock, "drivers in stock"},
		{"least_drivers", &s.LeastDrivers, From(1, MaxDrivers), 1, leastDrivers, "fewest drivers"},
		{"channels", &s.Channels, From(1, MaxDrivers), 1, nil, "channels that there are"},
		{"width_mm", &s.Width, From(20, 10000), mm, nil, "width at most"},
		{"height_mm", &s.Height, From(20, 10000), mm, nil, "height at most, with its stand"},
		{"depth_mm", &s.Depth, From(20, 10000), mm, nil, "depth at most"},
		{"mass_kg", &s.Mass, From(0.01, 10000), 1, nil, "mass at most"},
		{"price", &s.Price, From(0.01, 1e9), 1, nil, "price at most"},
		{"hours", &s.Hours, From(0.1, 100000), 1, nil, "hours of printing at most"},
		{"litres_least", &s.LeastVolume, From(0.01, 100000), litre, nil, "litres at least"},
		{"litres_most", &s.MostVolume, From(0.01, 100000), litre, nil, "litres at most"},
		{"level_db", &s.Level, From(20, 160), 1, nil, "loudest level at least"},
		{"lowest_hz", &s.Lowest, From(20, 20000), 1, nil, "lowest frequency to play"},
		{"pieces", &s.Pieces, From(1, 1000), 1, nil, "printed parts at most"},
		{"aims", &s.Aims, aimsLimits, 1, nil, "what matters"},
	}
}

// varied lists the tables within [search]: every table of the file of which there is one,
// with a row for each of its keys.
func (d *Design) varied() []Table {
	var out []Table
	for _, t := range d.tables() {
		if t.Name == "" || t.Name == "search" || t.More != nil {
			continue
		}
		out = append(out, Table{Name: t.Name, Optional: true, Rows: func() []Row {
			rows := t.Rows()
			for i, r := range rows {
				rows[i] = Row{Name: r.Name, To: varying{&d.Search, join(t.Name, r.Name), r}}
			}
			return rows
		}})
	}
	return out
}

// varying is where the choices of a key go.
type varying struct {
	*Search
	key string
	of  Row
}

// value is what stands for the key, as the file would have it; nil where it is not varied.
func (v varying) value() any {
	i := slices.IndexFunc(v.Vary, func(a Vary) bool { return a.Key == v.key })
	switch {
	case i < 0:
		return nil
	case v.Vary[i].Choices != nil:
		return v.Vary[i].Choices
	case v.Vary[i].Step == 0:
		return map[string]any{"from": v.Vary[i].From, "to": v.Vary[i].To}
	}
	return map[string]any{"from": v.Vary[i].From, "to": v.Vary[i].To, "step": v.Vary[i].Step}
}

// choosing ends the sentence "must be" for the choices of a key.
func choosing(r Row) string {
	if k := r.kind(); k == Number || k == Whole {
		span := plain(r.low) + ", to = " + plain(r.high)
		return "a list of values in square brackets, each " + r.allowed() + ", or a range such as {from = " + span + "}"
	}
	return "a list of values in square brackets, each " + r.allowed()
}

// vary takes the choices of a key that a search may set.
func (r *Reader) vary(at string, v any, to varying) {
	switch v := v.(type) {
	case []any:
		r.choices(at, v, to)
	case map[string]any:
		r.span(at, v, to)
	default:
		r.Fault(at, v, "must be "+choosing(to.of)+"; write ["+literally(v)+"]", ErrType)
	}
}

// choices takes a list of values.
func (r *Reader) choices(at string, in []any, to varying) {
	if len(in) == 0 || len(in) > MostChoices {
		r.Fault(at, in, fmt.Sprintf("must be 1 to %d values", MostChoices), ErrRange)
		return
	}
	for i, v := range in {
		if err := to.of.refuses(v); err != nil {
			r.Fault(at, v, "must be "+choosing(to.of)+to.of.instead(v), err)
			return
		}
		if slices.ContainsFunc(in[:i], func(w any) bool { return literally(w) == literally(v) }) {
			r.Fault(at, v, "there twice; leave one of them out", ErrConflict)
			return
		}
	}
	to.Vary = append(to.Vary, Vary{Key: to.key, Choices: in})
}

// refuses says why a value cannot stand for a key; nil where it can.
func (r Row) refuses(v any) error {
	_, err := r.read(v)
	return err
}

// span takes a range, {from, to, step}.
func (r *Reader) span(at string, in map[string]any, to varying) {
	kind := to.of.kind()
	if kind != Number && kind != Whole {
		r.Fault(at, nil, "a range is for numbers only; must be "+choosing(to.of), ErrType)
		return
	}
	out := Vary{Key: to.key, Whole: kind == Whole}
	reach := to.of
	reach.Name, reach.To = "from", &out.From
	if kind == Whole {
		reach.To = new(int)
	}
	step := Row{Name: "step", To: &out.Step, Limits: From(1e-6, math.Abs(to.of.high-to.of.low)), Scale: 1}
	before := len(r.faults)
	for _, name := range slices.Sorted(maps.Keys(in)) {
		r.bound(join(at, name), name, in[name], reach, step, &out)
	}
	for _, name := range []string{"from", "to"} {
		if _, given := in[name]; !given {
			r.lacks(join(at, name), to.of.kindly())
		}
	}
	if len(r.faults) > before {
		return
	}
	if out.To < out.From {
		r.Fault(join(at, "to"), in["to"], "must be at least from, "+plain(out.From), ErrConflict)
		return
	}
	if out.Step > 0 && (out.To-out.From)/out.Step >= MostChoices {
		r.Fault(join(at, "step"), in["step"], fmt.Sprintf("must be larger: there may be %d steps at most", MostChoices), ErrRange)
		return
	}
	to.Vary = append(to.Vary, out)
}

// bound takes one of the values of a range.
func (r *Reader) bound(at, name string, v any, reach, step Row, out *Vary) {
	row := reach
	switch name {
	case "step":
		row = step
		if out.Whole {
			row.To, row.low = new(int), 1
		}
	case "from", "to":
	default:
		r.Fault(at, nil, "not a known key"+prose.DidYouMean(name, []string{"from", "to", "step"}), ErrUnknownKey)
		return
	}
	if err := row.refuses(v); err != nil {
		r.Fault(at, v, "must be "+row.kindly()+row.instead(v), err)
		return
	}
	n, err := From(math.Inf(-1), math.Inf(1)).number(v)
	if err != nil {
		panic("design: a range that is no number")
	}
	switch name {
	case "from":
		out.From = n
	case "to":
		out.To = n
	default:
		out.Step = n
	}
}

// fillSearch sets the defaults of a search that hang on other values: where the channels are
// to choose from, no number of them limits the choice. Its Vary is in the order of the keys.
func (r *reader) fillSearch() {
	s := &r.Search
	s.Present = r.has("search")
	if !s.Present {
		*s = Search{Drivers: s.Drivers, LeastDrivers: s.LeastDrivers}
	}
	if len(s.Aims) == 0 {
		s.Aims = slices.Clone(firstAims)
	}
	if s.Channels == 0 && !slices.ContainsFunc(s.Vary, func(v Vary) bool { return v.Key == "wiring.channels" }) {
		s.Channels = r.Wiring.Channels
	}
}

// checkSearch notes limits that contradict each other, and keys of tables that are not
// there.
func (r *reader) checkSearch() {
	s := r.Search
	if !s.Present {
		return
	}
	if r.has("search.least_drivers") {
		r.must(s.LeastDrivers <= s.Drivers, "search.least_drivers", "at most search.drivers, %d", s.Drivers)
	} else {
		r.must(s.LeastDrivers <= s.Drivers, "search.drivers", "at least %d, below which nothing is looked for unless search.least_drivers says so", s.LeastDrivers)
	}
	r.must(s.Mass == 0 || r.Driver.Mass > 0, "search.mass_kg", "left out where there is no driver.mass_g")
	r.must(s.Price == 0 || r.Driver.Price != nil, "search.price", "left out where there is no driver.price")
	r.must(!slices.Contains(s.Aims, "price") || r.Driver.Price != nil, "search.aims", `without "price" where there is no driver.price`)
	r.must(s.MostVolume == 0 || s.LeastVolume <= s.MostVolume, "search.litres_least", "at most search.litres_most, %s", r.Shown("search.litres_most"))
	there := map[string]bool{"surface": s.Present && r.Surface.Present, "room": r.Room.Present, "woofer": r.Woofer.Present}
	for _, v := range s.Vary {
		table, _, _ := cutLast(v.Key)
		if is, optional := there[table]; optional && !is {
			r.fault("search."+v.Key, "", "only where there is a ["+table+"]; leave it out, or put that in", ErrIdle)
		}
	}
}
