package rehearsal

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
