package rehearsal

import "pappus/timing"

// What tests ask errors for.
var (
	ErrSetting = errSetting
)

// Channel returns what a channel gives at frequencies in Hz, in a setting, as a microphone without
// noise would have it.
func (g *Stage) Channel(set Setting, channel int, frequency []float64) ([]complex128, error) {
	given, err := g.hear(set.Case, frequency)
	out := make([]complex128, len(frequency))
	set.Channel = channel
	set.sum(out, given, frequency)
	return out, err
}

// Channels returns what each channel gives alone at frequencies in Hz.
func (g *Stage) Channels(c timing.Case, frequency []float64) ([][]complex128, error) {
	given, err := g.hear(c, frequency)
	out := make([][]complex128, len(given))
	for i, strings := range given {
		out[i] = make([]complex128, len(frequency))
		for _, one := range strings {
			for f, v := range one {
				out[i][f] += v
			}
		}
	}
	return out, err
}
