package design

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// Most drivers give no direct current resistance; it is a little under the
// nominal impedance (common practice).
const dcOverNominal = 0.85

// fill sets the defaults that hang on other values.
func (r *reader) fill() {
	r.fillSeats()
	def := func(path string, to *float64, v float64) {
		if !r.has(path) {
			*to = v
		}
	}
	r.fillSearch()
	r.Surface.Present, r.Room.Present, r.Woofer.Present = r.has("surface"), r.has("room"), r.has("woofer")
	if r.Body.Shape == geodesic {
		r.Body.Base = cmp.Or(r.Body.Base, bases[0])
		if r.Body.M == 0 {
			r.Body.Subdivision = cmp.Or(r.Body.Subdivision, 2)
		}
	}
	switch {
	case r.Mounts.On == "" && r.Body.Shape == ball:
		r.Mounts.On = "even"
	case r.Mounts.On == "":
		r.Mounts.On = "faces"
	}
	if r.Mounts.On == "even" {
		r.Mounts.Over = cmp.Or(r.Mounts.Over, ball)
		r.Mounts.Symmetry = cmp.Or(r.Mounts.Symmetry, 1)
	}
	if !r.has("timing.delays_by") && r.Timing.Model != sphere && r.Timing.Model != bodyModel {
		r.Timing.DelaysBy = straight // in open air, and before a wall, nothing is in the way
	}
	def("driver.cutout_mm", &r.Driver.CutoutRadius, r.Driver.ConeRadius)
	def("driver.flange_mm", &r.Driver.FlangeRadius, r.Driver.CutoutRadius)
	def("driver.dc_ohm", &r.Driver.DCOhm, dcOverNominal*r.Driver.NominalOhm)
	w := &r.Wiring
	def("wiring.minimum_load_ohm", &w.MinimumLoad, cmp.Or(w.IntoOhm, w.MinimumLoad))
	w.HasAmplifier = r.has("wiring.amplifier_volt") || w.Watt > 0
	if w.Watt > 0 && w.IntoOhm > 0 {
		def("wiring.amplifier_volt", &w.Voltage, w.soldVolt())
	}
	furthest := 0.0
	for _, l := range r.Listeners() {
		furthest = max(furthest, length(l.At))
	}
	def("coverage.half_width_m", &r.Coverage.HalfWidth, min(max(1.5*furthest, 0.2), 100))
}

// length of a vector, as one after another hypotenuse.
func length(v r3.Vec) float64 { return math.Hypot(math.Hypot(v.X, v.Y), v.Z) }

// soldVolt is the RMS voltage at which an amplifier gives its watts into the load that
// they are for: the square root of W ohm.
func (w Wiring) soldVolt() float64 { return math.Sqrt(w.Watt * w.IntoOhm) }

// check notes values that are possible each but not together.
func (r *reader) check() {
	if r.checkAreas() {
		r.heard = r.Listeners()
		r.checkSeats()
	}
	r.checkBody()
	r.checkMounts()
	r.checkDriver()
	r.checkTiming()
	r.checkAmplifier()
	r.checkChannels()
	r.checkHighPass()
	r.checkRoom()
	r.checkWoofer()
	r.checkSearch()
	for _, l := range r.heard {
		if d := length(l.At); d <= r.Body.Radius {
			r.conflict(l.Axis("x"), "%s is %s m from the body's centre and so inside the body; must be further than body.radius_mm, %s mm",
				l.Who, plain(math.Round(d*1000)/1000), r.Shown("body.radius_mm"))
		}
	}
}

// conflict notes what is wrong with a key beside others.
func (r *reader) conflict(path, reason string, args ...any) {
	r.fault(path, r.Shown(path), prose.Sprintf(reason, args...), ErrConflict)
}

// must notes a conflict unless ok.
func (r *reader) must(ok bool, path, allowed string, args ...any) {
	if !ok {
		r.conflict(path, "must be "+allowed, args...)
	}
}

// only notes keys that are there though the value at path is none of those they
// are for.
func (r *reader) only(path, value string, forThese []string, keys ...string) {
	if slices.Contains(forThese, value) {
		return
	}
	for _, k := range keys {
		if r.has(k) {
			r.fault(k, "", fmt.Sprintf(`only for %s = "%s"; leave it out`, path, strings.Join(forThese, `" or "`)), ErrIdle)
		}
	}
}

func (r *reader) checkBody() {
	b := r.Body
	r.only("body.shape", b.Shape, []string{geodesic}, "body.base", "body.subdivision", "body.m", "body.n")
	r.only("body.shape", b.Shape, []string{prism, anti}, "body.sides", "body.height_mm")
	r.only("body.shape", b.Shape, []string{file}, "body.file")
	r.must(!r.has("body.m") || !r.has("body.subdivision"), "body.m", "left out where body.subdivision is given")
	r.must(!r.has("body.n") || r.has("body.m"), "body.n", "left out where there is no body.m")
	r.must(b.M+b.N <= 16, "body.n", "at most %d, so that m and n together are at most 16", 16-b.M)
	r.must(!b.Dual || b.Shape != ball && !b.HasCut, "body.dual", "false for a ball or a body that is cut")
	switch {
	case (b.Shape == prism || b.Shape == anti) && b.Sides == 0:
		r.lacks("body.sides", "a whole number from 3 to 64")
	case b.Shape == file && b.File == "":
		r.lacks("body.file", "the name of an OFF or STL file")
	}
	radius := r.Shown("body.radius_mm")
	r.must(!b.HasCut || math.Abs(b.Cut) < b.Radius, "body.cut_height_mm", "between -%[1]s and %[1]s, inside body.radius_mm", radius)
	r.must(b.Wall < b.Radius, "body.wall_mm", "less than body.radius_mm, %s", radius)
}

func (r *reader) checkMounts() {
	m := r.Mounts
	flat := m.On == "faces" || m.On == "vertices" || m.On == "edges"
	r.must(r.Body.Shape != ball || !flat, "mounts.on", `"even" or "list" for a ball: it has no faces, vertices or edges`)
	const count = "from 1 to %d where mounts are even"
	switch even := m.On == "even"; {
	case even && !r.has("mounts.count"):
		r.lacks("mounts.count", fmt.Sprintf(count, MaxDrivers))
	case even && m.Count == 0:
		r.fault("mounts.count", "0", fmt.Sprintf("must be "+count, MaxDrivers), ErrRange)
	case !even && m.Count > 0:
		r.fault("mounts.count", r.Shown("mounts.count"), `only for mounts.on = "even"; leave it out`, ErrIdle)
	}
	r.only("mounts.on", m.On, []string{"even"}, "mounts.over", "mounts.symmetry")
	r.must(m.Over != dome || r.Body.HasCut, "mounts.over", `"ball" where the body has no cut`)
	switch list := m.On == "list"; {
	case list && m.List == "":
		r.lacks("mounts.list", "the name of a CSV file of points and normals")
	case !list && m.List != "":
		r.fault("mounts.list", r.Shown("mounts.list"), `only for mounts.on = "list"; leave it out`, ErrIdle)
	}
}

func (r *reader) checkDriver() {
	d, body := r.Driver, r.Body.Radius
	width := plain(2 * r.Number("body.radius_mm"))
	r.must(d.ConeRadius < body, "driver.diameter_mm", "less than the width of the body, %s", width)
	// A driver let in from behind may show a little less than its cone.
	r.must(d.CutoutRadius >= 0.9*d.ConeRadius-slack, "driver.cutout_mm", "at least nine tenths of driver.diameter_mm, %s", r.Shown("driver.diameter_mm"))
	r.must(d.FlangeRadius >= d.CutoutRadius, "driver.flange_mm", "at least driver.cutout_mm, %s", r.Shown("driver.cutout_mm"))
	r.must(d.FlangeRadius < body, r.origin("driver.flange_mm", "driver.cutout_mm", "driver.diameter_mm"), "less than the width of the body, %s", width)
	r.must(d.MagnetHeight <= d.Depth, "driver.magnet_height_mm", "at most driver.depth_mm, %s", plain(r.Number("driver.depth_mm")))
	r.must(d.DCOhm >= 0.3*d.NominalOhm && d.DCOhm <= 1.25*d.NominalOhm, "driver.dc_ohm",
		"from 0.3 to 1.25 times driver.nominal_ohm, %s", plain(d.NominalOhm))
	if r.has("driver.resonance_q") && !r.has("driver.resonance_hz") {
		r.fault("driver.resonance_q", r.Shown("driver.resonance_q"), "only with driver.resonance_hz; leave it out", ErrIdle)
	}
}

func (r *reader) checkTiming() {
	low, high := r.Timing.FieldLow, r.Timing.FieldHigh
	wide := high >= 1.5*low
	if r.has("timing.field_low_hz") {
		r.must(wide, "timing.field_low_hz", "at most two thirds of timing.field_high_hz, %s", plain(high))
	} else {
		r.must(wide, "timing.field_high_hz", "at least one and a half times timing.field_low_hz, %s", plain(low))
	}
}

// sameVolt is by what share the amplifier's voltage may be off what its watts come to:
// a tenth of a dB, more than rounding.
const sameVolt = 0.012

// checkAmplifier notes watts without the load that they are for, and values of the
// amplifier that contradict each other.
func (r *reader) checkAmplifier() {
	w := r.Wiring
	switch watts, into := r.has("wiring.amplifier_w"), r.has("wiring.amplifier_into_ohm"); {
	case watts && !into:
		r.lacks("wiring.amplifier_into_ohm", "the load that wiring.amplifier_w is for, such as 4 or 8: see the amplifier's data")
		r.faults[len(r.faults)-1].Line = r.line("wiring.amplifier_w")
		return
	case into && !watts:
		r.conflict("wiring.amplifier_into_ohm", "only with wiring.amplifier_w; give the watts, or leave it out")
		return
	case !watts:
		return
	}
	sold, load := w.soldVolt(), plain(w.IntoOhm)
	r.must(math.Abs(w.Voltage/sold-1) <= sameVolt, "wiring.amplifier_volt",
		"left out, or %.3g: %s W into %s ohm are that many volts", sold, plain(w.Watt), load)
	r.must(sold >= leastVolt && sold <= mostVolt, "wiring.amplifier_w",
		"such that it comes to %s to %s V; into %s ohm it is %.3g V", plain(leastVolt), plain(mostVolt), load, sold)
	r.must(w.MinimumLoad <= w.IntoOhm, "wiring.minimum_load_ohm",
		"at most wiring.amplifier_into_ohm, %s: an amplifier bears the load that its watts are for", load)
}

// checkHighPass notes a high-pass that does not exist, or that the processor's rate
// cannot have: its corner must be below half of it.
func (r *reader) checkHighPass() {
	p := r.Protection
	r.must(p.Family != linkwitz || slices.Contains(highPassOrders, p.Order), "protection.order",
		`%s for protection.family = "%s"`, eitherWhole(highPassOrders), linkwitz)
	r.must(r.Processor.Rate > 2*p.Corner, "processor.rate_hz", "above %s, twice protection.corner_hz", plain(2*p.Corner))
}

// axes gives a vector's coordinates with their names.
func axes(v r3.Vec) map[string]float64 { return map[string]float64{"x": v.X, "y": v.Y, "z": v.Z} }

// checkRoom notes what does not fit into the room: the body, as it is turned and as far as
// what a cut leaves of it reaches, and the spot.
func (r *reader) checkRoom() {
	if !r.Room.Present {
		return
	}
	r.must(!r.Surface.Present, "surface", "left out where there is a [room]: its floor, walls and ceiling take its place")
	sizes, places := axes(r.Room.Size), axes(r.Room.Body)
	for i, axis := range []string{"x", "y", "z"} {
		low, high := r.Span(i)
		if low = max(0, low); sizes[axis]-high < low-slack {
			r.must(false, "room.size_m", "at least %s in %s, for the body to fit in", metres(high+low), axis)
			continue
		}
		r.must(places[axis] >= low-slack && places[axis] <= sizes[axis]-high+slack, "room.body_at_m",
			"from %s to %s in %s, for the body to be inside the room", metres(low), metres(sizes[axis]-high), axis)
	}
	for _, l := range r.heard {
		r.checkInside(l.Axis, l.At)
	}
}

// checkInside notes a place, counted from the body's centre, that is not in the room; key
// gives its key along an axis.
func (r *reader) checkInside(key func(axis string) string, place r3.Vec) {
	at, lows, highs := axes(place), axes(r3.Scale(-1, r.Room.Body)), axes(r3.Sub(r.Room.Size, r.Room.Body))
	for _, axis := range []string{"x", "y", "z"} {
		low, high := lows[axis], highs[axis]
		r.must(at[axis] >= low-slack && at[axis] <= high+slack, key(axis), "from %s to %s, inside the room", metres(low), metres(high))
	}
}

// besideSpot is the least distance in m of a woofer from somebody who listens: it is taken
// for a point, which no woofer is from nearer.
const besideSpot = 0.1

func (r *reader) checkWoofer() {
	w := r.Woofer
	if !w.Present {
		return
	}
	if r.Room.Present {
		r.checkInside(Listener{Key: "woofer"}.Axis, w.At)
	}
	for _, l := range r.heard {
		away := length(r3.Sub(w.At, l.At))
		r.must(away >= besideSpot, "woofer.x_m", "such that the woofer is %s m or more from %s, not %s m", plain(besideSpot), l.Who, metres(away))
	}
}

// metres writes a length without what rounding adds.
func metres(v float64) string { return plain(math.Round(v*1e6) / 1e6) }

// origin gives the first of the keys that the file has: the others took their
// value from it.
func (r *reader) origin(paths ...string) string {
	for _, p := range paths {
		if r.has(p) {
			return p
		}
	}
	return paths[len(paths)-1]
}

func (r *reader) checkChannels() {
	r.must(len(r.Channels) == 0 || r.Wiring.Channels == 0, "wiring.channels", "left out where there are [[channel]] tables")
	owner := map[int]int{}
	for i, c := range r.Channels {
		at := nth("channel", i+1) + ".drivers"
		if len(c.Drivers) == 0 {
			r.fault(at, "[]", "must be at least one mount number", ErrConflict)
		}
		for _, id := range c.Drivers {
			if j, taken := owner[id]; taken {
				r.fault(at, "", fmt.Sprintf("driver %d is in channel %d already; must be in one only", id, j), ErrConflict)
				break
			}
			owner[id] = i + 1
			if slices.Contains(r.Mounts.Skip, id) {
				r.fault(at, "", fmt.Sprintf("driver %d is in mounts.skip; must be a mount that has a driver", id), ErrConflict)
				break
			}
		}
	}
}
