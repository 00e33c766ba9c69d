package document

import (
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/loom"
)

// Bench is what is soldered, string by string, with what a meter then shows: DC resistance
// at 20 C of coils and wire; coils may be off by loom.Tolerance.
type Bench struct {
	Tolerance Number         `json:"tolerance_percent"`
	Halves    bool           `json:"halves"` // drivers are on two discs, those of the upper half and of the lower
	Channels  []BenchChannel `json:"channels"`
	Joints    []BenchJoint   `json:"joints"`
	Say       []string       `json:"say"` // how to measure, and what to mind, in sentences
}

// BenchChannel is the strings of one channel, in the order in which they are joined.
type BenchChannel struct {
	Channel int           `json:"channel"`
	Strings []BenchString `json:"strings"`
	Whole   Reading       `json:"whole"` // at the amplifier's end of its wire
}

// BenchString is one string: its plus is the first driver's, its minus the last one's.
type BenchString struct {
	Drivers []int   `json:"drivers"` // in the order of their joints
	Wire    Number  `json:"wire_m"`  // with its slack
	Alone   Reading `json:"alone"`   // before it is joined to the others
	Joined  Reading `json:"joined"`  // in parallel with the channel's strings before it
}

// Reading is what a meter shows, and between which values it is good.
type Reading struct {
	Ohm  Number `json:"ohm"`
	Low  Number `json:"low_ohm"`
	High Number `json:"high_ohm"`
}

// BenchJoint is where a driver is seen from inside the body: loom.Place.
type BenchJoint struct {
	ID    int    `json:"id"`
	Body  int    `json:"body"` // from 0
	Right Number `json:"right"`
	Up    Number `json:"up"`
	Lower bool   `json:"lower"`
}

// OfBench returns what is soldered for a plan.
func OfBench(p *timing.Plan) Bench {
	out := Bench{Tolerance: To(1, 100*loom.Tolerance), Say: words.Bench(loom.Tolerance)}
	for _, c := range p.Channels {
		out.Channels = append(out.Channels, BenchChannel{Channel: c.ID})
	}
	before := make([][]loom.String, len(p.Channels))
	for _, s := range loom.Strings(p) {
		c := &out.Channels[s.Channel]
		before[s.Channel] = append(before[s.Channel], s)
		joined := loom.Joined(p, before[s.Channel])
		c.Strings = append(c.Strings, BenchString{p.Array.IDs(s.Order), m(s.Length()), reading(loom.ReadString(p, s).Whole), reading(joined)})
		c.Whole = reading(joined.Behind(p.Banks[s.Channel].WireOhm))
	}
	places, halves := loom.Places(p.Array)
	for i, at := range places {
		one := p.Array.Mounts[i]
		out.Joints = append(out.Joints, BenchJoint{one.ID, one.Body, To(4, at.Right), To(4, at.Up), at.Lower})
	}
	out.Halves = halves
	return out
}

func reading(r loom.Range) Reading { return Reading{To(2, r.Ohm), To(2, r.Least), To(2, r.Most)} }
