package planjson

import (
	"encoding/json"
	"io"
	"math"

	"pappus/render/words"
	"pappus/timing"
)

// WriteChannels writes what each channel is to be set to:
//
//	counts[]      channels, split, smear_us, plain_smear_us (all drivers counting alike),
//	              comb_onset_hz, longest_string (drivers): what the design's way of splitting into so many leaves; where
//	              the plan's own channels are none of these they are the last, by hand
//	front[]       what shorter strings cost and bring, as Write has it
//	signs         how the five coefficients are meant
//	processor[]   channel, delay_ms, delay_samples and delay_mm of what can be set, exact_us
//	              (before rounding), residual_us (what is set less that), cost_4k_db, cost_8k_db (null where out of step, and from
//	              half the rate on), out_of_step_hz (where the residual is a quarter of a period;
//	              null from half the rate on), gain_db, inverted, filters[]
//	              (name, frequency_hz, q, gain_db, b0, b1, b2, a1, a2); the woofer's has a
//	              name, woofer, and is the last
//	rounding      rate_hz, step_us, common_us (in every delay, to make rounding cheap), worst_us,
//	              octave_hz and loss_db, what it costs the direct sound at the spot (null from half the
//	              rate on)
//	held_down     only where channels hold the others down: channels[] (ids), series (drivers in
//	              their strings), by_db; cure: longest_string (0: none found), louder_db, smear_us
//	protection    family, order, corner_hz (0: none), least_hz, level_dba, hours_a_day,
//	              highest[] (octave_hz, level_db, limited_by)
//	woofer        only where there is one: crossover_hz, order, arrival_ms, array_arrival_ms,
//	              delay_ms, array_delay_ms (in all channels' delays already), inverted,
//	              meets_hz, where both are as loud, lost_db there, lost_other_polarity_db,
//	              louder_db than the array at the crossover, matched (its level is the array's), levels at the spot over
//	              frequency_hz (array_db, woofer_db, sum_db, sum_other_polarity_db), warnings
//	findings[]    what to look out for in the plan, worst first: code, rank (danger, misfit,
//	              caution, cost, note), what, cure; warnings[] has the same in lines
func WriteChannels(w io.Writer, p *timing.Plan, rows []timing.ProcessorRow) error {
	out := channelPlan{Front: frontOf(p), Signs: words.Signs, Held: heldOf(p), Protection: protectionOf(p.Protection), Warnings: lines(p.Warnings), Findings: Findings(p.Warnings)}
	count := func(c timing.Count) {
		out.Counts = append(out.Counts, channelCount{c.Channels, c.Split, us(c.Smear), us(c.Plain), to(1, c.CombOnset), c.Longest})
	}
	for _, c := range p.Counts {
		count(c)
	}
	if own, at := p.Own(); at < 0 {
		count(own)
	}
	for _, r := range rows {
		s := setting{
			Channel: r.Channel, Name: r.Name, Delay: to(6, 1000*r.Delay), Samples: to(4, r.Samples), Millimetre: mm(r.Metre), Exact: us(r.Exact),
			Residual: us(r.Residual), Cost4k: db(r.Cost4k), Cost8k: db(r.Cost8k), OutOfStep: to(0, r.OutOfStep), Gain: db(r.Gain), Inverted: r.Invert, Filters: []filter{},
		}
		for _, f := range r.Filters {
			c := f.Coefficients
			s.Filters = append(s.Filters, filter{f.Name, to(3, f.Frequency), to(5, f.Q), db(f.Gain),
				number(c.B0), number(c.B1), number(c.B2), number(c.A1), number(c.A2)})
		}
		out.Processor = append(out.Processor, s)
	}
	x, cost := p.Array.Processor, p.Rounding
	out.Rounding = rounding{to(3, x.Rate), us(x.Step), us(cost.Common), us(cost.Worst), all(2, cost.Band), all(3, cost.Loss)}
	if p.Array.Woofer.Present {
		w, err := timing.WithWoofer(p)
		if err != nil {
			return err
		}
		out.Woofer = wooferOf(w)
	}
	return encode(w, out)
}

type channelPlan struct {
	Counts     []channelCount `json:"counts"`
	Front      []strung       `json:"front"`
	Signs      string         `json:"signs"`
	Processor  []setting      `json:"processor"`
	Rounding   rounding       `json:"rounding"`
	Held       *heldDown      `json:"held_down,omitempty"`
	Protection protection     `json:"protection"`
	Woofer     *woofer        `json:"woofer,omitempty"`
	Warnings   []string       `json:"warnings"`
	Findings   []Finding      `json:"findings"`
}

type channelCount struct {
	Channels  int    `json:"channels"`
	Split     string `json:"split"`
	Smear     number `json:"smear_us"`
	Plain     number `json:"plain_smear_us"`
	CombOnset number `json:"comb_onset_hz"`
	Longest   int    `json:"longest_string"`
}

type setting struct {
	Channel    int      `json:"channel"`
	Name       string   `json:"name,omitempty"`
	Delay      number   `json:"delay_ms"`
	Samples    number   `json:"delay_samples"`
	Millimetre number   `json:"delay_mm"`
	Exact      number   `json:"exact_us"`
	Residual   number   `json:"residual_us"`
	Cost4k     number   `json:"cost_4k_db"`
	Cost8k     number   `json:"cost_8k_db"`
	OutOfStep  number   `json:"out_of_step_hz"`
	Gain       number   `json:"gain_db"`
	Inverted   bool     `json:"inverted"`
	Filters    []filter `json:"filters"`
}

// heldDown is which channels hold the others down, and what cures it.
type heldDown struct {
	Channels []int  `json:"channels"`
	Series   int    `json:"series"`
	By       number `json:"by_db"`
	Cure     struct {
		Longest int    `json:"longest_string"`
		Louder  number `json:"louder_db"`
		Smear   number `json:"smear_us"`
	} `json:"cure"`
}

// heldOf returns nil where nothing is held down.
func heldOf(p *timing.Plan) *heldDown {
	h, held := p.Held()
	if !held {
		return nil
	}
	out := &heldDown{Channels: h.Channels, Series: h.Series, By: db(h.By)}
	out.Cure.Longest, out.Cure.Louder, out.Cure.Smear = h.Cure, db(h.Louder), us(h.Smear)
	return out
}

type rounding struct {
	Rate   number   `json:"rate_hz"`
	Step   number   `json:"step_us"`
	Common number   `json:"common_us"`
	Worst  number   `json:"worst_us"`
	Band   []number `json:"octave_hz"`
	Loss   []number `json:"loss_db"`
}

type filter struct {
	Name      string `json:"name"`
	Frequency number `json:"frequency_hz"`
	Q         number `json:"q"`
	Gain      number `json:"gain_db"`
	B0        number `json:"b0"`
	B1        number `json:"b1"`
	B2        number `json:"b2"`
	A1        number `json:"a1"`
	A2        number `json:"a2"`
}

type protection struct {
	Family  string    `json:"family"`
	Order   int       `json:"order"`
	Corner  number    `json:"corner_hz"`
	Least   number    `json:"least_hz"`
	Level   number    `json:"level_dba"`
	Hours   number    `json:"hours_a_day"`
	Highest []highest `json:"highest"`
}

type highest struct {
	Band  number `json:"octave_hz"`
	Level number `json:"level_db"`
	By    string `json:"limited_by"`
}

type woofer struct {
	Crossover    number   `json:"crossover_hz"`
	Order        int      `json:"order"`
	Arrival      number   `json:"arrival_ms"`
	ArrayArrival number   `json:"array_arrival_ms"`
	Delay        number   `json:"delay_ms"`
	ArrayDelay   number   `json:"array_delay_ms"`
	Inverted     bool     `json:"inverted"`
	Meets        number   `json:"meets_hz"`
	Lost         number   `json:"lost_db"`
	LostOther    number   `json:"lost_other_polarity_db"`
	Louder       number   `json:"louder_db"`
	Matched      bool     `json:"matched"`
	Frequency    []number `json:"frequency_hz"`
	Array        []number `json:"array_db"`
	Woofer       []number `json:"woofer_db"`
	Sum          []number `json:"sum_db"`
	Other        []number `json:"sum_other_polarity_db"`
	Warnings     []string `json:"warnings"`
}

func wooferOf(w timing.Woofer) *woofer {
	ms := func(s float64) number { return to(6, 1000*s) }
	return &woofer{
		Crossover: to(2, w.LowPass.Corner()), Order: w.LowPass.Order(),
		Arrival: ms(w.Arrival), ArrayArrival: ms(w.ArrayArrival), Delay: ms(w.Delay), ArrayDelay: ms(w.ArrayDelay), Inverted: w.Invert,
		Meets: to(2, w.Meets), Lost: db(w.Loss), LostOther: db(w.OtherLoss), Louder: db(w.Louder), Matched: w.Matched,
		Frequency: all(2, w.Frequency), Array: all(3, w.ArrayLevel), Woofer: all(3, w.WooferLevel), Sum: all(3, w.Sum),
		Other: all(3, w.SumOtherPolarity), Warnings: lines(w.Warnings),
	}
}

func protectionOf(p timing.Protection) protection {
	out := protection{p.Family, p.Order, to(2, p.Corner), to(2, p.Least), to(1, p.Level), to(2, p.Hours), []highest{}}
	for _, h := range p.Highest {
		out.Highest = append(out.Highest, highest{to(2, h.Band), db(h.Level), h.By.String()})
	}
	return out
}

// WriteWiring writes how the channels are strung and what a dead driver does:
//
//	channels[]  channel, dc_ohm, lowest_ohm, lowest_hz, amplifier_v, amplifier_a,
//	            amplifier_w, driver_v, driver_a, driver_w, strings[] (drivers in the order of their
//	            joints, wire_m), of_neighbours: strung so, for they lose less than spread ones
//	front[]     as Write has it; held_down as WriteChannels has it
//	dead[]      the worst of each kind: channel, string, driver (not of a whole string), fault,
//	            dc_ohm, lowest_ohm, under_minimum, quiet, power_times, louder, loss_db at the
//	            worst angle, angle_deg, and of an open string loss_spread_db,
//	            loss_with_neighbours_db
//	findings[]  what to look out for in the plan, worst first; warnings[] has the same in lines
func WriteWiring(w io.Writer, p *timing.Plan, deaths []timing.Death) error {
	out := wiringPlan{Front: frontOf(p), Held: heldOf(p), Dead: []dead{}, Warnings: lines(p.Warnings), Findings: Findings(p.Warnings)}
	for _, c := range p.Channels {
		out.Channels = append(out.Channels, bank{Channel: c.ID, DC: to(3, c.DCOhm), load: loadOf(c.Bank), Near: c.Near})
	}
	for _, r := range timing.Harness(p) {
		b := &out.Channels[r.Channel]
		b.Strings = append(b.Strings, stringOf{ids(p.Array.Mounts, r.Order), m(r.Length)})
	}
	for _, d := range deaths {
		one := dead{Channel: p.Channels[d.Channel].ID, String: d.String + 1, Fault: d.Fault(),
			DC: to(3, d.DCOhm), Lowest: to(3, d.LowestOhm), Under: d.Under(p.Array.Wiring.MinimumLoad), Quiet: ids(p.Array.Mounts, d.Quiet),
			Power: to(3, d.Power), Louder: ids(p.Array.Mounts, d.Hotter), Loss: db(d.Loss), Angle: to(1, d.Angle*180/math.Pi),
			Spread: db(d.LossSpread), Neighbours: db(d.LossNeighbours)}
		if !d.Whole {
			one.Driver = p.Array.Mounts[d.Mount].ID
		}
		out.Dead = append(out.Dead, one)
	}
	return encode(w, out)
}

type wiringPlan struct {
	Channels []bank    `json:"channels"`
	Front    []strung  `json:"front"`
	Held     *heldDown `json:"held_down,omitempty"`
	Dead     []dead    `json:"dead"`
	Warnings []string  `json:"warnings"`
	Findings []Finding `json:"findings"`
}

type bank struct {
	Channel int    `json:"channel"`
	DC      number `json:"dc_ohm"`
	load
	Near    bool       `json:"of_neighbours"`
	Strings []stringOf `json:"strings"`
}

type stringOf struct {
	Drivers []int  `json:"drivers"`
	Wire    number `json:"wire_m"`
}

type dead struct {
	Channel    int    `json:"channel"`
	String     int    `json:"string"`
	Driver     int    `json:"driver,omitempty"`
	Fault      string `json:"fault"`
	DC         number `json:"dc_ohm"`
	Lowest     number `json:"lowest_ohm"`
	Under      bool   `json:"under_minimum"`
	Quiet      []int  `json:"quiet"`
	Power      number `json:"power_times"`
	Louder     []int  `json:"louder"`
	Loss       number `json:"loss_db"`
	Angle      number `json:"angle_deg"`
	Spread     number `json:"loss_spread_db"`
	Neighbours number `json:"loss_with_neighbours_db"`
}

func encode(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}
