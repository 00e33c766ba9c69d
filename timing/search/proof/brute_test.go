package proof

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
	"pappus/timing/seats"

	"github.com/pelletier/go-toml/v2"
)

// space is a design file and all that its [search.X] say, read without the program's own eyes.
type space struct {
	name   string
	base   []byte // the design without [search]
	limits []byte // [search] without the tables in it
	stock  int    // drivers
	keys   []string
	may    map[string][]any
}

// row is what brute force made of one design.
type row struct {
	whyNot  string  // code of a finding or key of an error; empty: it can be built as it is
	loss    float64 // dB, at the spot, or what the aim makes of the seats
	level   float64 // dB, the plan's loudest
	drivers int
}

// notOffered are the findings under misfits that a search holds against a design.
var notOffered = []string{"channels_unused", "channels_fewer"}

func readSpace(t testing.TB, name string) *space {
	text, err := os.ReadFile(filepath.Join("testdata", name+".toml"))
	if err != nil {
		t.Fatal(err)
	}
	var all struct {
		Search map[string]any `toml:"search"`
	}
	if err := toml.Unmarshal(text, &all); err != nil {
		t.Fatal(name, err)
	}
	s := &space{name: name, may: make(map[string][]any)}
	s.base, s.limits, _ = bytes.Cut(text, []byte("[search]\n"))
	s.limits, _, _ = bytes.Cut(s.limits, []byte("\n[search."))
	for table, keys := range all.Search {
		keys, _ := keys.(map[string]any)
		for key, values := range keys {
			s.may[table+"."+key] = values.([]any)
		}
	}
	s.keys = slices.Sorted(maps.Keys(s.may))
	stock, _ := all.Search["drivers"].(int64)
	s.stock = int(stock)
	return s
}

// only returns the part of a space where a key is one of some values.
func (s *space) only(key string, values ...any) *space {
	part := *s
	part.may = maps.Clone(s.may)
	for i, v := range values {
		if n, ok := v.(int); ok {
			values[i] = int64(n)
		}
	}
	part.may[key] = values
	return &part
}

// limit returns a space with a limit of [search] more, or another one.
func (s *space) limit(key string, value any) *space {
	part := *s
	text, err := design.Set(append(slices.Clone(s.base), "[search]\n"+string(s.limits)...), key, value)
	if err != nil {
		panic(err)
	}
	_, part.limits, _ = bytes.Cut(text, []byte("[search]\n"))
	return &part
}

// text is the design file with [search] and all.
func (s *space) text() []byte {
	out := append(slices.Clone(s.base), "[search]\n"+string(s.limits)...)
	within := ""
	for _, key := range s.keys {
		table, name, _ := strings.Cut(key, ".")
		if table != within {
			out = fmt.Appendf(out, "\n[search.%s]\n", table)
			within = table
		}
		out = fmt.Appendf(out, "%s = %s\n", name, design.Literal(s.may[key]))
	}
	return out
}

func (s *space) len() int {
	n := 1
	for _, key := range s.keys {
		n *= len(s.may[key])
	}
	return n
}

// settings are the values of a design's keys.
func (s *space) settings(i int) map[string]any {
	out := make(map[string]any)
	for _, key := range slices.Backward(s.keys) {
		may := s.may[key]
		out[key] = may[i%len(may)]
		i /= len(may)
	}
	return out
}

// design is the text of one.
func (s *space) design(t testing.TB, i int) []byte {
	text, settings := s.base, s.settings(i)
	for _, key := range s.keys {
		var err error
		if text, err = design.Set(text, key, settings[key]); err != nil {
			t.Fatal(err)
		}
	}
	return text
}

// brute plans one design.
func (s *space) brute(t testing.TB, i int) row {
	return planned(design.Parse(s.name+".toml", s.design(t, i)))
}

// planned plans a design that was parsed, or says why not.
func planned(d *design.Design, err error) row {
	var a *layout.Array
	if err == nil {
		a, err = layout.Build(d)
	}
	var p *timing.Plan
	if err == nil {
		if p, err = timing.Make(context.Background(), a); err == nil {
			for _, f := range p.Warnings {
				if f.Rank.Stops() || slices.Contains(notOffered, f.Code) {
					return row{whyNot: f.Code}
				}
			}
			return row{loss: loss(p), level: p.Loudest, drivers: len(a.Mounts)}
		}
	}
	var fault *design.Error
	if errors.As(err, &fault) {
		return row{whyNot: fault.Key}
	}
	return row{whyNot: strings.ReplaceAll(err.Error(), ",", ";")}
}

// loss is what a search makes small.
func loss(p *timing.Plan) float64 {
	if p.Seating == nil {
		return p.Aligned.Loss
	}
	return seats.Aim(p.Seating.Aim).Of(p.Seating.Planned)
}

func (s *space) path() string { return filepath.Join("testdata", s.name+".csv") }

// write writes the table of all designs.
func write(t testing.TB, s *space, rows []row) {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	_ = w.Write([]string{"design", "why_not", "loss_db", "level_db", "drivers"})
	for i, r := range rows {
		line := []string{strconv.Itoa(i), r.whyNot, "", "", ""}
		if r.whyNot == "" {
			line = []string{line[0], "", fmt.Sprintf("%.10g", r.loss), fmt.Sprintf("%.10g", r.level), strconv.Itoa(r.drivers)}
		}
		_ = w.Write(line)
	}
	w.Flush()
	if err := os.WriteFile(s.path(), out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

// part returns the rows of a space that is a part of another.
func (s *space) part(whole *space, rows []row) []row {
	out := make([]row, s.len())
	for i := range out {
		at, set := 0, s.settings(i)
		for _, key := range whole.keys {
			at = at*len(whole.may[key]) + slices.Index(whole.may[key], set[key])
		}
		out[i] = rows[at]
	}
	return out
}

// table reads the rows of all designs.
func table(t testing.TB, s *space) []row {
	data, err := os.ReadFile(s.path())
	if err != nil {
		t.Fatal(err)
	}
	lines, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil || len(lines) != s.len()+1 {
		t.Fatalf("%s: %d lines for %d designs: %v", s.name, len(lines), s.len(), err)
	}
	rows := make([]row, s.len())
	for i, l := range lines[1:] {
		rows[i].whyNot = l[1]
		if l[1] != "" {
			continue
		}
		for k, v := range []*float64{&rows[i].loss, &rows[i].level} {
			if *v, err = strconv.ParseFloat(l[2+k], 64); err != nil {
				t.Fatal(err)
			}
		}
		if rows[i].drivers, err = strconv.Atoi(l[4]); err != nil {
			t.Fatal(err)
		}
	}
	return rows
}

// near tells whether two rows are the same to 1e-9.
func (r row) near(q row) bool {
	same := func(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(1, math.Abs(a)) }
	return r.whyNot == q.whyNot && r.drivers == q.drivers && same(r.loss, q.loss) && same(r.level, q.level)
}
