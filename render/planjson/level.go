package planjson

import (
	"io"

	"pappus/render/words"
	"pappus/timing"
)

// WriteLevel writes what levels the spot:
//
//	level_unit, target_db, uneven_before_db, uneven_after_db, boost_db (the most anywhere)
//	sections[]  name, frequency_hz, q, gain_db, b0, b1, b2, a1, a2: the same on every channel
//	rate_hz     of the coefficients and the filters
//	signs       how the five coefficients are meant
//	filters[]   name, taps, latency_ms, off_db (at most, from the sections, above 100 Hz)
//	nulls[]     low_hz, high_hz, loss_db, why: left alone
//	curve       frequency_hz, before_db, after_db; model_error_db: what is within it of the mean is left alone
//	findings[]  what to look out for in the plan, worst first
func WriteLevel(w io.Writer, p *timing.Plan, l timing.Levelling, c timing.Correction) error {
	out := levelPlan{Unit: unit(p), Target: db(l.Target), Before: db(l.UnevenBefore), After: db(l.UnevenAfter), Boost: db(l.Boost()),
		Sections: []filter{}, Rate: to(3, c.Rate), Signs: words.Signs, Nulls: []null{},
		Filters:  []firFilter{firOf("minimum phase", c.Minimum), firOf("linear phase", c.Linear)},
		Findings: Findings(p.Warnings),
		Curve:    levelCurve{all(2, l.Frequency), all(3, l.Before), all(3, l.After), all(3, l.Error)}}
	for _, s := range c.Sections {
		k := s.Coefficients
		out.Sections = append(out.Sections, filter{s.Name, to(3, s.Frequency), to(5, s.Q), db(s.Gain),
			number(k.B0), number(k.B1), number(k.B2), number(k.A1), number(k.A2)})
	}
	for _, n := range l.Nulls {
		out.Nulls = append(out.Nulls, null{to(1, n.Low), to(1, n.High), db(n.Loss), words.Nulls([]timing.Null{n})})
	}
	return encode(w, out)
}

type levelPlan struct {
	Unit     string      `json:"level_unit"`
	Target   number      `json:"target_db"`
	Before   number      `json:"uneven_before_db"`
	After    number      `json:"uneven_after_db"`
	Boost    number      `json:"boost_db"`
	Sections []filter    `json:"sections"`
	Rate     number      `json:"rate_hz"`
	Signs    string      `json:"signs"`
	Filters  []firFilter `json:"filters"`
	Nulls    []null      `json:"nulls"`
	Curve    levelCurve  `json:"curve"`
	Findings []Finding   `json:"findings"`
}

type firFilter struct {
	Name    string `json:"name"`
	Taps    int    `json:"taps"`
	Latency number `json:"latency_ms"`
	Off     number `json:"off_db"`
}

func firOf(name string, t timing.Taps) firFilter {
	return firFilter{name, len(t.Samples), to(4, 1000*t.Latency), to(4, t.Off)}
}

type null struct {
	Low  number `json:"low_hz"`
	High number `json:"high_hz"`
	Loss number `json:"loss_db"`
	Why  string `json:"why"`
}

type levelCurve struct {
	Frequency []number `json:"frequency_hz"`
	Before    []number `json:"before_db"`
	After     []number `json:"after_db"`
	Error     []number `json:"model_error_db"`
}
