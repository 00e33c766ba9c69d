package timing

// ofCrossover stands before the names of a crossover's sections.
const ofCrossover = "crossover "

// wooferRow returns the settings of the woofer, what its crossover puts on every
// channel of the array, and by how many s it delays them all.
func (p *Plan) wooferRow() (row ProcessorRow, high []ProcessorFilter, delay float64, err error) {
	w, err := WithWoofer(p)
	if err != nil {
		return row, nil, 0, err
	}
	rate := p.Array.Processor.Rate
	row = ProcessorRow{Name: WooferName, Delay: w.Delay, Gain: p.Array.Woofer.Gain, Invert: w.Invert}
	for _, c := range p.Channels {
		row.Channel = max(row.Channel, c.ID+1)
	}
	if row.Filters, err = sectionsOf(w.LowPass, ofCrossover, rate); err != nil {
		return row, nil, 0, err
	}
	high, err = sectionsOf(w.HighPass, ofCrossover, rate)
	return row, high, w.ArrayDelay, err
}
