package search

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

const (
	keyLevel  = "search.level_db"
	keyLowest = "search.lowest_hz"
)

// mostShort is how many shortfalls are told at most.
const mostShort = 5

// shortfalls are what limits took of the candidates that keep all others.
type shortfalls struct {
	of map[string]*Shortfall
	by map[string]int // variant that comes nearest
}

// take takes in a candidate that breaks limits; what breaks several says nothing of any.
func (t *shortfalls) take(s screened) {
	if strings.Contains(s.Broken, " ") {
		return
	}
	if t.of == nil {
		t.of, t.by = map[string]*Shortfall{}, map[string]int{}
	}
	f := t.of[s.Broken]
	if f == nil {
		f = &Shortfall{Key: s.Broken, Asked: math.NaN(), Nearest: math.NaN()}
		t.of[s.Broken] = f
	}
	f.Broken++
	l, known := limitFigures[s.Broken]
	if !known {
		return
	}
	has := l.has(s.Figures)
	closer := has < f.Nearest
	if l.least {
		closer = has > f.Nearest
	}
	if closer || math.IsNaN(f.Nearest) || has == f.Nearest && s.variant < t.by[s.Broken] {
		f.Nearest, f.By.Figures, t.by[s.Broken] = has, s.Figures, s.variant
	}
}

// list returns the shortfalls, those that took most first.
func (t *shortfalls) list(r *run) []Shortfall {
	var out []Shortfall
	for key, f := range t.of {
		if key == notBuilt || key == notPlanned {
			continue
		}
		if f.None = len(r.full) == 0; !math.IsNaN(f.Nearest) {
			f.Asked = r.asked(key)
			f.By.Variant = t.by[key]
			f.By.Set = r.space.Variant(f.By.Variant).Settings
			if a, err := r.array(f.By.Set); err == nil {
				f.By.Name = nameOf(a)
			}
		}
		out = append(out, *f)
	}
	slices.SortFunc(out, func(a, b Shortfall) int { return cmp.Or(b.Broken-a.Broken, cmp.Compare(a.Key, b.Key)) })
	return out[:min(len(out), mostShort)]
}

// asked is a limit in its key's unit.
func (r *run) asked(key string) float64 {
	if key == keyLowest {
		return r.Lowest
	}
	switch v := r.Job.Design.Get(key).(type) {
	case int:
		return float64(v)
	case float64:
		return v
	}
	return math.NaN()
}

// limitFigure is what a limit is about, in the key's unit; least: at least, not at most.
type limitFigure struct {
	has   func(f Figures) float64
	least bool
}

var limitFigures = map[string]limitFigure{
	"search.drivers":       {func(f Figures) float64 { return float64(f.Drivers) }, false},
	"search.least_drivers": {func(f Figures) float64 { return float64(f.Drivers) }, true},
	"search.channels":      {func(f Figures) float64 { return float64(f.Channels) }, false},
	"search.width_mm":      {func(f Figures) float64 { return 1000 * f.Width }, false},
	"search.height_mm":     {func(f Figures) float64 { return 1000 * f.Height }, false},
	"search.depth_mm":      {func(f Figures) float64 { return 1000 * f.Depth }, false},
	"search.mass_kg":       {func(f Figures) float64 { return f.Mass }, false},
	"search.price":         {func(f Figures) float64 { return f.Price }, false},
	"search.hours":         {func(f Figures) float64 { return f.Hours }, false},
	"search.litres_least":  {func(f Figures) float64 { return f.Litres }, true},
	"search.litres_most":   {func(f Figures) float64 { return f.Litres }, false},
	keyLevel:               {func(f Figures) float64 { return f.Level }, true},
	keyLowest:              {func(f Figures) float64 { return f.Lowest }, false},
}

// broken are the limits that a design breaks, as shortfalls of its own.
func (r *run) broken(s screened) (out []Shortfall) {
	for _, key := range strings.Fields(s.Broken) {
		f := Shortfall{Key: key, Asked: math.NaN(), Nearest: math.NaN(), Broken: 1}
		if l, known := limitFigures[key]; known {
			f.Asked, f.Nearest = r.asked(key), l.has(s.Figures)
		}
		out = append(out, f)
	}
	return out
}
