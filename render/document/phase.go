package document

import "pappus/timing"

// Phase is how the direct sound at the spot turns over frequency, behind the high-pass.
type Phase struct {
	Frequency Numbers `json:"frequency_hz"`
	Aligned   Turn    `json:"aligned"`   // with the delays
	Unaligned Turn    `json:"unaligned"` // without
	InStep    Turn    `json:"in_step"`   // as one driver does alone
}

// Turn is a phase whose first arrival is taken out, unwrapped over frequency, and its group delay
// after that.
type Turn struct {
	First Number  `json:"first_us"`       // after the instant of emission; null: silent
	Angle Numbers `json:"phase_deg"`      // null: silent, or too many arrivals to be followed
	Group Numbers `json:"group_delay_ms"` // null likewise
}

// OfPhase returns the document of a phase at every so manieth frequency.
func OfPhase(p timing.Phase, every int) Phase {
	of := func(t timing.Turn) Turn {
		return Turn{us(t.First), sparse(t.Angle, every, func(v float64) Number { return To(1, v*degrees) }), sparse(t.Group, every, func(v float64) Number { return To(4, 1000*v) })}
	}
	return Phase{sparse(p.Frequency, every, func(v float64) Number { return To(1, v) }), of(p.Aligned), of(p.Unaligned), of(p.InStep)}
}

// sparse returns every so manieth of some values.
func sparse(values []float64, every int, of func(float64) Number) Numbers {
	out := make(Numbers, 0, len(values)/every+1)
	for i := 0; i < len(values); i += every {
		out = append(out, of(values[i]))
	}
	return out
}
