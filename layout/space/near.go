package space

import (
	"math"

	"pappus/layout/design"
	"pappus/layout/fit"
)

// How many drivers a ball takes is looked for between these shares of what its area says: on a
// dome more fit than its share of the area, for half of a flange's surroundings lies beyond its
// border.
const fullFrom, fullTo, fullDome = 0.85, 1.1, 1.3

// singly is up to how many drivers every count is tried; of more, every percent.
const singly = 100

// fullest are balls and domes as wide as is allowed, a radius in m, with about as many drivers
// as there is room for: to tell the most that fit.
func (u *usuals) fullest(wide float64) []block {
	size := math.Floor(2*min(wide, u.most)/mm+rounding) / 2
	angle, err := fit.LeastAngle(size*mm, u.d.Driver.Outline, fit.Limits{Wall: u.d.Body.Wall, Apart: u.d.Fit.Apart, Edge: u.d.Fit.Edge})
	if err != nil || !(angle < math.Pi) {
		return nil
	}
	room := evenAngle * evenAngle / (angle * angle) // on the whole ball
	var out []block
	add := func(most float64, sizes ...[]design.Setting) {
		for n := int(math.Ceil(fullFrom * room * most)); n <= min(u.many, int(fullTo*room*most)); n += 1 + n/singly {
			if n > 0 {
				out = append(out, block{always: u.evenly(n), axes: []axis{sizes}})
			}
		}
	}
	add(1, []design.Setting{radius(size), {Key: "body.cut_height_mm"}})
	for _, cut := range domeCuts {
		if dome, area := u.dome(size, cut); dome != nil {
			add(fullDome*area, dome)
		}
	}
	return out
}

// narrow are bodies of all families with as many drivers as are asked for, each as small as it
// can be, however wide.
func (u *usuals) narrow() []block {
	d := *u.d
	d.Search.Width, d.Search.Depth = 0, 0
	free := newUsuals(&d)
	var out []block
	for _, b := range free.all() {
		if len(b.axes[0]) > 0 {
			out = append(out, block{always: b.always, axes: []axis{b.axes[0][:1], b.axes[1][:1]}})
		}
	}
	return out
}
