package layout

import "pappus/layout/fit"

// Fits is how the drivers fit the body, and which sizes just would.
type Fits struct {
	Reports []fit.Report // one for each mount
	// Largest is the largest driver of the same proportions that fits; its flange
	// radius is 0 where none does.
	Largest fit.Driver
	// Smallest is the least radius of the body in m that takes the driver; 0 where
	// none does.
	Smallest float64
}

// Fit looks for the sizes that just fit, beside how those of the design do.
func (a *Array) Fit() Fits {
	mounts := fitMounts(a.Mounts)
	out := Fits{Reports: a.Fits}
	// That no size fits is an answer, not a fault.
	if d, err := fit.LargestDriver(a.Body, mounts, a.Outline, a.Limits); err == nil {
		out.Largest = d
	}
	if factor, err := fit.SmallestBody(a.Body, mounts, a.Outline, a.Limits); err == nil {
		out.Smallest = factor * a.Body.Radius
	}
	return out
}

func fitMounts(m []Mount) []fit.Mount {
	out := make([]fit.Mount, len(m))
	for i, m := range m {
		out[i] = fit.Mount{Point: m.Point, Normal: m.Normal, Face: m.Face}
	}
	return out
}
