package timing

// Candidate is one plan among those that are compared.
type Candidate struct {
	Plan       *Plan
	Unevenness float64 // dB over angle, on the level circle through the spot
	Within3DB  float64 // m2 at the ears' height where the level is within 3 dB of the spot's; mean from 500 Hz to 4 kHz
	Omni       Omni
}

// NewCandidate computes what a plan is compared by.
func NewCandidate(p *Plan) (Candidate, error) {
	c, err := Cover(&p.Spot, HorizontalSlice(&p.Spot))
	if err != nil {
		return Candidate{}, err
	}
	even, err := p.Omni()
	return Candidate{p, p.Unevenness(), MeanFrom500To4k(c.Band, c.AreaWithin(p.Array.Spot, 3)), even}, err
}
