package timing

// ofCrossover stands before the names of a crossover's sections.
const ofCrossover = "crossover "

// wooferRow returns the settings of the woofer, and what its crossover puts on every
// channel of the array.
func (p *Spot) wooferRow() (row ProcessorRow, high []ProcessorFilter, err error) {
	w, err := WithWoofer(p)
	if err != nil {
		return row, nil, err
	}
	rate := p.Array.Processor.Rate
	row = ProcessorRow{Name: WooferName, Gain: p.Array.Woofer.Gain, Invert: w.Invert}
	row.setDelay(p, w.Delay, w.Exact)
	for _, c := range p.Channels {
		row.Channel = max(row.Channel, c.ID+1)
	}
	if row.Filters, err = sectionsOf(w.LowPass, ofCrossover, rate); err != nil {
		return row, nil, err
	}
	high, err = sectionsOf(w.HighPass, ofCrossover, rate)
	return row, high, err
}
