package limiter

import (
	"slices"

	"pappus/timing"
)

// Limits is all that is told of what a loudspeaker stands, and the ears before it.
type Limits struct {
	Crest    float64   // dB, of the music that Places and amplifiers are told for
	Channels []Channel // in the plan's order
	Music    []Music   // of Crests and Crest, from the lowest
	Places   []Place   // the spot, or the seats; nothing where levels are relative
}

// Of returns a plan's limits for music of a crest factor in dB. Errors are those of Places.
func Of(p *timing.Plan, crest float64) (Limits, error) {
	l := Limits{Crest: crest, Channels: Channels(p)}
	crests := slices.Clone(Crests)
	at, found := slices.BinarySearch(crests, crest)
	if !found {
		crests = slices.Insert(crests, at, crest)
	}
	for _, c := range crests {
		l.Music = append(l.Music, Loudest(p, l.Channels, c))
	}
	var err error
	l.Places, err = l.Music[at].Places(p)
	return l, err
}
