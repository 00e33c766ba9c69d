package page

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/layout/wholefile"
	"pappus/render/document"
)

// mostTicked is the most strings of whose joints is kept what is done, and the most drivers of
// one: as many as a design may have drivers.
const mostTicked = 10000

// ticks keeps, in a file beside the design, which joints are soldered and which readings were
// good. It is the bench's own: nothing is planned by it.
type ticks struct {
	design string // the design's path; empty: the demo's, whose ticks the browser keeps
	path   string
	mu     sync.Mutex
}

// ticksOf are those of a design: in mine.bench.toml for mine.toml.
func ticksOf(design string) ticks {
	if design == "" {
		return ticks{}
	}
	return ticks{design: design, path: strings.TrimSuffix(design, filepath.Ext(design)) + ".bench.toml"}
}

// ticked is what is done of a string of drivers. Where the design strings drivers otherwise, it
// is another string, of which nothing is done.
type ticked struct {
	Drivers  []int `json:"drivers"`  // in the order of their joints
	Soldered []int `json:"soldered"` // of these
	Alone    bool  `json:"alone"`    // it read well by itself
	Joined   bool  `json:"joined"`   // and together with the others
}

// ticking is a step that somebody has done, or takes back.
type ticking struct {
	Drivers []int  `json:"drivers"`                                 // of its string, in the order of their joints
	Step    string `json:"step" ts:"'driver' | 'alone' | 'joined'"` // a driver is soldered, or the string read well
	Driver  int    `json:"driver"`                                  // which is soldered; 0: none
	Done    bool   `json:"done"`
}

// ticksAnswer is all that is ticked.
type ticksAnswer struct {
	File    string   `json:"file"` // where it stands; empty: nowhere, keep it yourself
	Strings []ticked `json:"strings"`
	Read    string   `json:"read"` // what the design's file is now, as in started; empty: it is gone
}

func (t *ticked) rows() []design.Row {
	ids := design.From(1, mostTicked)
	return []design.Row{
		{Name: "drivers", To: &t.Drivers, Limits: ids},
		{Name: "soldered", To: &t.Soldered, Limits: ids},
		{Name: "alone", To: &t.Alone},
		{Name: "joined", To: &t.Joined},
	}
}

// read returns what is ticked; where there is no file, nothing.
func (t *ticks) read() ([]ticked, error) {
	out := []ticked{}
	if t.path == "" {
		return out, nil
	}
	data, err := design.ReadFile(t.path, mostText)
	if errors.Is(err, fs.ErrNotExist) {
		return out, nil
	}
	if err != nil {
		return nil, err
	}
	r := design.Decode(t.path, data, func() []design.Table {
		return []design.Table{design.Many("string", mostTicked, &out, (*ticked).rows)}
	})
	if faults := r.Faults(); len(faults) > 0 {
		return nil, &failure{http.StatusConflict, fmt.Sprintf("the ticks cannot be read: %s; mend the file or move it away", prose.Error(faults[0]))}
	}
	for i := range out {
		out[i].Soldered = append([]int{}, out[i].Soldered...)
	}
	return out, nil
}

// put notes one step, and leaves what else is ticked as it is on the disk: two may be at it.
func (t *ticks) put(in ticking) ([]ticked, error) {
	t.mu.Lock()
	defer t.mu.Unlock()
	draft, err := wholefile.Begin(t.path) // another program may serve the same design
	if err != nil {
		return nil, fmt.Errorf("the ticks cannot be written: %w", prose.Reason(err))
	}
	defer draft.Abandon()
	all, err := t.read()
	if err != nil {
		return nil, err
	}
	at := slices.IndexFunc(all, func(o ticked) bool { return slices.Equal(o.Drivers, in.Drivers) })
	if at < 0 && len(all) == mostTicked {
		return nil, &failure{http.StatusRequestEntityTooLarge, "too many strings are ticked; move the file away to begin anew"}
	}
	if at < 0 {
		at, all = len(all), append(all, ticked{Drivers: in.Drivers, Soldered: []int{}})
	}
	all[at].note(in)
	return all, t.write(draft, all)
}

// note puts a step among what is done.
func (t *ticked) note(in ticking) {
	switch in.Step {
	case "alone":
		t.Alone = in.Done
	case "joined":
		t.Joined = in.Done
	default:
		was := t.Soldered
		t.Soldered = []int{}
		for _, id := range t.Drivers {
			if id == in.Driver && in.Done || id != in.Driver && slices.Contains(was, id) {
				t.Soldered = append(t.Soldered, id)
			}
		}
	}
}

// write replaces the file by its draft, whole or not at all.
func (t *ticks) write(draft *wholefile.Draft, all []ticked) error {
	var b bytes.Buffer
	fmt.Fprintf(&b, "# What is soldered of %s, ticked at the bench. Each string has its drivers in the order of\n"+
		"# their joints; where the design strings them otherwise, its ticks count no more.\n", filepath.Base(t.design))
	for _, s := range all {
		fmt.Fprintf(&b, "\n[[string]]\ndrivers = %s\nsoldered = %s\nalone = %t  # it read well by itself\njoined = %t  # and together with those before it\n",
			listed(s.Drivers), listed(s.Soldered), s.Alone, s.Joined)
	}
	var mode fs.FileMode // that of a new file
	if info, err := os.Stat(t.path); err == nil {
		mode = info.Mode()
	}
	if err := draft.Put(b.Bytes(), mode); err != nil {
		return fmt.Errorf("the ticks cannot be written: %w", prose.Reason(err))
	}
	return nil
}

// listed is a list as TOML has it.
func listed(ids []int) string { return strings.ReplaceAll(fmt.Sprint(ids), " ", ", ") }

// check tells what is wrong with a tick.
func (t ticking) check() error {
	if len(t.Drivers) == 0 || len(t.Drivers) > mostTicked {
		return &failure{http.StatusBadRequest, fmt.Sprintf("drivers: must be from 1 to %d", mostTicked)}
	}
	seen := map[int]bool{}
	for _, id := range t.Drivers {
		if id < 1 || id > mostTicked || seen[id] {
			return &failure{http.StatusBadRequest, fmt.Sprintf("drivers: %d must be from 1 to %d, and there once", id, mostTicked)}
		}
		seen[id] = true
	}
	switch t.Step {
	case "driver":
		if !seen[t.Driver] {
			return &failure{http.StatusBadRequest, "driver: must be one of the string's"}
		}
	case "alone", "joined":
		if t.Driver != 0 {
			return &failure{http.StatusBadRequest, "driver: must be 0 where a string is read"}
		}
	default:
		return &failure{http.StatusBadRequest, "step: must be driver, alone or joined"}
	}
	return nil
}

// ticksAsked asks for all that is ticked.
type ticksAsked struct{}

func (p *Page) readTicks(http.ResponseWriter, *http.Request, ticksAsked) (any, error) {
	all, err := p.ticks.read()
	return p.allTicks(all), err
}

func (p *Page) tick(_ http.ResponseWriter, _ *http.Request, in ticking) (any, error) {
	if err := in.check(); err != nil {
		return nil, err
	}
	if p.ticks.path == "" {
		return nil, &failure{http.StatusForbidden, "the built-in design has no folder; the browser keeps its ticks"}
	}
	if _, err := os.Stat(p.ticks.design); err != nil {
		return nil, &failure{http.StatusConflict, "the design is gone from the disk, so nothing is ticked beside it"}
	}
	all, err := p.ticks.put(in)
	return p.allTicks(all), err
}

func (p *Page) allTicks(all []ticked) ticksAnswer {
	out := ticksAnswer{Strings: all}
	if p.ticks.path != "" {
		out.File = filepath.Base(p.ticks.path)
	}
	if text, err := p.disk.read(); err == nil {
		out.Read = hashOf(text)
	}
	return out
}

// bench answers with what is soldered.
func (p *Page) bench(_ http.ResponseWriter, r *http.Request, in asked) (any, error) {
	made, err := p.plans.of(r.Context(), in.Text, p.work)
	if err == nil {
		err = made.built()
	}
	if err != nil {
		return nil, err
	}
	return benchAnswer{made.array.Name, document.OfBench(made.plan)}, nil
}

// hasString tells whether a string of these drivers, in this order, is soldered.
func hasString(b document.Bench, drivers []int) bool {
	return slices.ContainsFunc(b.Channels, func(c document.BenchChannel) bool {
		return slices.ContainsFunc(c.Strings, func(s document.BenchString) bool { return slices.Equal(s.Drivers, drivers) })
	})
}

// benchAnswer is what is soldered of a design.
type benchAnswer struct {
	Name string `json:"name"`
	document.Bench
}
