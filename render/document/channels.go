package document

import (
	"pappus/layout/advice"
	"pappus/render/words"
	"pappus/timing"
)

// Channels is what each channel is to be set to: processor.json.
type Channels struct {
	// What the design's way of splitting into so many channels leaves; where the plan's own are
	// none of these they are the last, by hand.
	Counts     []Count    `json:"counts"`
	Seats      *Seats     `json:"seats,omitempty"` // only where there are several
	Front      []Strung   `json:"front"`
	Signs      string     `json:"signs"`     // how the five coefficients are meant
	Processor  []Setting  `json:"processor"` // the woofer's is the last
	Rounding   Rounding   `json:"rounding"`
	Held       *HeldDown  `json:"held_down,omitempty"` // only where channels hold the others down
	Protection Protection `json:"protection"`
	Woofer     *Woofer    `json:"woofer,omitempty"` // only where there is one
	Found
}

// OfChannels returns the document of a plan's channels and the processor's rows.
func OfChannels(p *timing.Plan, rows []timing.ProcessorRow) (Channels, error) {
	count := func(c timing.Count) Count {
		return Count{c.Channels, c.Split, us(c.Smear), us(c.Plain), To(1, c.CombOnset), c.Longest}
	}
	out := Channels{Counts: each(p.Counts, count), Seats: seatsOf(&p.Spot), Front: frontOf(p), Signs: words.Signs, Processor: each(rows, settingOf),
		Rounding: roundingOf(p), Held: heldOf(p), Protection: protectionOf(p), Found: foundOf(p.Warnings)}
	if own, at := p.Own(); at < 0 {
		out.Counts = append(out.Counts, count(own))
	}
	if p.Array.Woofer.Present {
		w, err := timing.WithWoofer(&p.Spot)
		if err != nil {
			return Channels{}, err
		}
		out.Woofer = wooferOf(w)
	}
	return out, nil
}

// Count is what so many channels leave.
type Count struct {
	Channels  int    `json:"channels"`
	Split     string `json:"split"`
	Smear     Number `json:"smear_us"`
	Plain     Number `json:"plain_smear_us"` // all drivers counting alike
	CombOnset Number `json:"comb_onset_hz"`  // null: none up to the highest frequency
	Longest   int    `json:"longest_string"` // drivers
}

// Setting is what the processor is set to for one channel.
type Setting struct {
	Channel    int      `json:"channel"`
	Name       string   `json:"name,omitempty"` // the woofer's
	Delay      Number   `json:"delay_ms"`       // what can be set
	Samples    Number   `json:"delay_samples"`
	Millimetre Number   `json:"delay_mm"`
	Exact      Number   `json:"exact_us"`       // before rounding
	Residual   Number   `json:"residual_us"`    // what is set less that
	Cost4k     Number   `json:"cost_4k_db"`     // null: out of step, or from half the rate on
	Cost8k     Number   `json:"cost_8k_db"`     // null: out of step, or from half the rate on
	OutOfStep  Number   `json:"out_of_step_hz"` // where the residual is a quarter of a period; null: from half the rate on
	Gain       Number   `json:"gain_db"`
	Inverted   bool     `json:"inverted"`
	Filters    []Filter `json:"filters"`
}

func settingOf(r timing.ProcessorRow) Setting {
	return Setting{r.Channel, r.Name, ms(r.Delay), To(4, r.Samples), mm(r.Metre), us(r.Exact), us(r.Residual),
		db(r.Cost4k), db(r.Cost8k), To(0, r.OutOfStep), db(r.Gain), r.Invert, each(r.Filters, filterOf)}
}

// Filter is one second-order section.
type Filter struct {
	Name      string `json:"name"`
	Frequency Number `json:"frequency_hz"`
	Q         Number `json:"q"`
	Gain      Number `json:"gain_db"`
	B0        Number `json:"b0"`
	B1        Number `json:"b1"`
	B2        Number `json:"b2"`
	A1        Number `json:"a1"`
	A2        Number `json:"a2"`
}

// Rounding is what setting the delays to the processor's step does.
type Rounding struct {
	Rate   Number  `json:"rate_hz"`
	Step   Number  `json:"step_us"`
	Common Number  `json:"common_us"` // in every delay, to make rounding cheap
	Worst  Number  `json:"worst_us"`
	Band   Numbers `json:"octave_hz"`
	Loss   Numbers `json:"loss_db"` // what it costs the direct sound at the spot; null: from half the rate on
}

func roundingOf(p *timing.Plan) Rounding {
	x, cost := p.Array.Processor, p.Rounding
	return Rounding{To(3, x.Rate), us(x.Step), us(cost.Common), us(cost.Worst), All(2, cost.Band), All(3, cost.Loss)}
}

// Protection is the high-pass, the level and what limits it.
type Protection struct {
	Family  string    `json:"family"`
	Order   int       `json:"order"`
	Corner  Number    `json:"corner_hz"` // 0: none
	Least   Number    `json:"least_hz"`  // the lowest corner that protects; null: none does
	Level   Number    `json:"level_dba"`
	Hours   Number    `json:"hours_a_day"` // null: as long as you like
	Highest []Highest `json:"highest"`
	Loudest Number    `json:"loudest_db"` // mean of the octaves from 500 Hz to 4 kHz; null: not known
}

// Highest is the loudest tone of an octave.
type Highest struct {
	Band  Number `json:"octave_hz"`
	Level Number `json:"level_db"`
	By    string `json:"limited_by"`
}

func protectionOf(p *timing.Plan) Protection {
	x, most := p.Protection, p.Maximum
	return Protection{x.Family, x.Order, To(2, x.Corner), To(2, x.Least), To(1, most.Noise), To(2, most.Hours),
		each(most.Levels, func(h timing.MaxLevel) Highest { return Highest{To(2, h.Band), db(h.Level), h.By.String()} }), db(p.Loudest)}
}

// Woofer is what crosses over to the array.
type Woofer struct {
	Crossover    Number   `json:"crossover_hz"`
	Order        int      `json:"order"`
	Arrival      Number   `json:"arrival_ms"`
	ArrayArrival Number   `json:"array_arrival_ms"`
	Delay        Number   `json:"delay_ms"`
	ArrayDelay   Number   `json:"array_delay_ms"` // in all channels' delays already
	Inverted     bool     `json:"inverted"`
	Meets        Number   `json:"meets_hz"` // where both are as loud
	Lost         Number   `json:"lost_db"`  // there
	LostOther    Number   `json:"lost_other_polarity_db"`
	Louder       Number   `json:"louder_db"` // than the array at the crossover
	Matched      bool     `json:"matched"`   // its level is the array's
	Frequency    Numbers  `json:"frequency_hz"`
	Array        Numbers  `json:"array_db"` // at the spot
	Woofer       Numbers  `json:"woofer_db"`
	Sum          Numbers  `json:"sum_db"`
	Other        Numbers  `json:"sum_other_polarity_db"`
	Warnings     []string `json:"warnings"`
}

func wooferOf(w timing.Woofer) *Woofer {
	return &Woofer{
		Crossover: To(2, w.LowPass.Corner()), Order: w.LowPass.Order(),
		Arrival: ms(w.Arrival), ArrayArrival: ms(w.ArrayArrival), Delay: ms(w.Delay), ArrayDelay: ms(w.ArrayDelay), Inverted: w.Invert,
		Meets: To(2, w.Meets), Lost: db(w.Loss), LostOther: db(w.OtherLoss), Louder: db(w.Louder), Matched: w.Matched,
		Frequency: All(2, w.Frequency), Array: All(3, w.ArrayLevel), Woofer: All(3, w.WooferLevel), Sum: All(3, w.Sum),
		Other: All(3, w.SumOtherPolarity), Warnings: advice.Lines(words.Findings(w.Warnings)),
	}
}

func filterOf(f timing.ProcessorFilter) Filter {
	c := f.Coefficients
	return Filter{f.Name, To(3, f.Frequency), To(5, f.Q), db(f.Gain), Number(c.B0), Number(c.B1), Number(c.B2), Number(c.A1), Number(c.A2)}
}
