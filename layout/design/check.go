package design

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
)

// Most drivers give no direct current resistance; it is a little under the
// nominal impedance (common practice).
const dcOverNominal = 0.85

// fill sets the defaults that hang on other values.
func (r *reader) fill() {
	def := func(path string, to *float64, v float64) {
		if !r.has(path) {
			*to = v
		}
	}
	r.Surface.Present, r.Room.Present, r.Woofer.Present = r.has("surface"), r.has("room"), r.has("woofer")
	if r.Body.Shape == geodesic {
		if r.Body.Base == "" {
			r.Body.Base = bases[0]
		}
		if r.Body.Subdivision == 0 && r.Body.M == 0 {
			r.Body.Subdivision = 2
		}
	}
	if r.Mounts.On == "" {
		r.Mounts.On = "faces"
		if r.Body.Shape == ball {
			r.Mounts.On = "even"
		}
	}
	if r.Mounts.On == "even" {
		r.Mounts.Over = cmp.Or(r.Mounts.Over, ball)
		r.Mounts.Symmetry = cmp.Or(r.Mounts.Symmetry, 1)
	}
	if !r.has("timing.delays_by") && r.Timing.Model != sphere {
		r.Timing.DelaysBy = straight // in open air, and before a wall, nothing is in the way
	}
	def("driver.cutout_mm", &r.Driver.CutoutMM, r.Driver.DiameterMM)
	def("driver.flange_mm", &r.Driver.FlangeMM, r.Driver.CutoutMM)
	def("driver.dc_ohm", &r.Driver.DCOhm, dcOverNominal*r.Driver.NominalOhm)
	w := &r.Wiring
	def("wiring.minimum_load_ohm", &w.MinimumLoadOhm, cmp.Or(w.AmplifierIntoOhm, w.MinimumLoadOhm))
	w.HasAmplifier = r.has("wiring.amplifier_volt") || w.AmplifierW > 0
	if w.AmplifierW > 0 && w.AmplifierIntoOhm > 0 {
		def("wiring.amplifier_volt", &w.AmplifierVolt, w.soldVolt())
	}
	def("coverage.half_width_m", &r.Coverage.HalfWidthM, min(max(1.5*r.Spot.distance(), 0.2), 100))
}

// soldVolt is the RMS voltage at which an amplifier gives its watts into the load that
// they are for: the square root of W ohm.
func (w Wiring) soldVolt() float64 { return math.Sqrt(w.AmplifierW * w.AmplifierIntoOhm) }

// distance of the spot from the body's centre, in m.
func (s Spot) distance() float64 { return math.Hypot(math.Hypot(s.XM, s.YM), s.ZM) }

// check notes values that are possible each but not together.
func (r *reader) check() {
	r.checkBody()
	r.checkMounts()
	r.checkDriver()
	r.checkTiming()
	r.checkAmplifier()
	r.checkChannels()
	r.checkHighPass()
	r.checkRoom()
	r.checkWoofer()
	if d := r.Spot.distance(); d*1000 <= r.Body.RadiusMM {
		r.fault("spot.x_m", plain(r.Spot.XM), fmt.Sprintf(
			"the spot is %s m from the body's centre and so inside the body; must be further than body.radius_mm, %s mm",
			plain(math.Round(d*1000)/1000), plain(r.Body.RadiusMM)), ErrConflict)
	}
}

// must notes a conflict unless ok.
func (r *reader) must(ok bool, path, value, allowed string, args ...any) {
	if !ok {
		r.fault(path, value, "must be "+fmt.Sprintf(allowed, args...), ErrConflict)
	}
}

func (r *reader) checkBody() {
	b := r.Body
	r.only("body.shape", b.Shape, []string{geodesic}, "body.base", "body.subdivision", "body.m", "body.n")
	r.only("body.shape", b.Shape, []string{prism, anti}, "body.sides", "body.height_mm")
	r.only("body.shape", b.Shape, []string{file}, "body.file")
	r.must(!r.has("body.m") || !r.has("body.subdivision"), "body.m", fmt.Sprint(b.M), "left out where body.subdivision is given")
	r.must(!r.has("body.n") || r.has("body.m"), "body.n", fmt.Sprint(b.N), "left out where there is no body.m")
	r.must(b.M+b.N <= 16, "body.n", fmt.Sprint(b.N), "at most %d, so that m and n together are at most 16", 16-b.M)
	r.must(!b.Dual || b.Shape != ball && !b.HasCut, "body.dual", "true", "false for a ball or a body that is cut")
	switch {
	case (b.Shape == prism || b.Shape == anti) && b.Sides == 0:
		r.lacks("body.sides", "a whole number from 3 to 64")
	case b.Shape == file && b.File == "":
		r.lacks("body.file", "the name of an OFF or STL file")
	}
	r.must(!b.HasCut || math.Abs(b.CutHeightMM) < b.RadiusMM, "body.cut_height_mm", plain(b.CutHeightMM),
		"between -%[1]s and %[1]s, inside body.radius_mm", plain(b.RadiusMM))
	r.must(b.WallMM < b.RadiusMM, "body.wall_mm", plain(b.WallMM), "less than body.radius_mm, %s", plain(b.RadiusMM))
}

// only notes keys that are there though the value at path is none of those they
// are for.
func (r *reader) only(path, value string, forThese []string, keys ...string) {
	if slices.Contains(forThese, value) {
		return
	}
	for _, k := range keys {
		if r.has(k) {
			r.fault(k, "", fmt.Sprintf("only for %s = %s; leave it out", path, quoted(forThese)), ErrIdle)
		}
	}
}

// quoted writes words in quotes with "or" between them.
func quoted(words []string) string { return `"` + strings.Join(words, `" or "`) + `"` }

func (r *reader) checkMounts() {
	m := r.Mounts
	flat := m.On == "faces" || m.On == "vertices" || m.On == "edges"
	r.must(r.Body.Shape != ball || !flat, "mounts.on", fmt.Sprintf("%q", m.On),
		`"even" or "list" for a ball: it has no faces, vertices or edges`)
	switch even := m.On == "even"; {
	case even && !r.has("mounts.count"):
		r.fault("mounts.count", "", fmt.Sprintf("missing; must be from 1 to %d where mounts are even", MaxDrivers), ErrMissing)
	case even && m.Count == 0:
		r.fault("mounts.count", "0", fmt.Sprintf("must be from 1 to %d where mounts are even", MaxDrivers), ErrRange)
	case !even && m.Count > 0:
		r.fault("mounts.count", fmt.Sprint(m.Count), `only for mounts.on = "even"; leave it out`, ErrIdle)
	}
	r.only("mounts.on", m.On, []string{"even"}, "mounts.over", "mounts.symmetry")
	r.must(m.Over != dome || r.Body.HasCut, "mounts.over", written(dome), `"ball" where the body has no cut`)
	switch list := m.On == "list"; {
	case list && m.List == "":
		r.fault("mounts.list", "", "missing; must be the name of a CSV file of points and normals", ErrMissing)
	case !list && m.List != "":
		r.fault("mounts.list", written(m.List), `only for mounts.on = "list"; leave it out`, ErrIdle)
	}
}

func (r *reader) checkDriver() {
	d, width := r.Driver, 2*r.Body.RadiusMM
	r.must(d.DiameterMM < width, "driver.diameter_mm", plain(d.DiameterMM),
		"less than the width of the body, %s", plain(width))
	// A driver let in from behind may show a little less than its cone.
	r.must(d.CutoutMM >= 0.9*d.DiameterMM, "driver.cutout_mm", plain(d.CutoutMM),
		"at least nine tenths of driver.diameter_mm, %s", plain(d.DiameterMM))
	r.must(d.FlangeMM >= d.CutoutMM, "driver.flange_mm", plain(d.FlangeMM),
		"at least driver.cutout_mm, %s", plain(d.CutoutMM))
	r.must(d.FlangeMM < width, r.origin("driver.flange_mm", "driver.cutout_mm", "driver.diameter_mm"), plain(d.FlangeMM),
		"less than the width of the body, %s", plain(width))
	r.must(d.MagnetHeightMM <= d.DepthMM, "driver.magnet_height_mm", plain(d.MagnetHeightMM),
		"at most driver.depth_mm, %s", plain(d.DepthMM))
	r.must(d.DCOhm >= 0.3*d.NominalOhm && d.DCOhm <= 1.25*d.NominalOhm, "driver.dc_ohm", plain(d.DCOhm),
		"from 0.3 to 1.25 times driver.nominal_ohm, %s", plain(d.NominalOhm))
	if r.has("driver.resonance_q") && !r.has("driver.resonance_hz") {
		r.fault("driver.resonance_q", plain(d.ResonanceQ), "only with driver.resonance_hz; leave it out", ErrIdle)
	}
}

func (r *reader) checkTiming() {
	low, high := r.Timing.FieldLowHz, r.Timing.FieldHighHz
	switch wide := high >= 1.5*low; {
	case !r.has("timing.field_low_hz"):
		r.must(wide, "timing.field_high_hz", plain(high), "at least one and a half times timing.field_low_hz, %s", plain(low))
	default:
		r.must(wide, "timing.field_low_hz", plain(low), "at most two thirds of timing.field_high_hz, %s", plain(high))
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
		r.fault("wiring.amplifier_into_ohm", "", "missing; must be the load that wiring.amplifier_w is for, such as 4 or 8: see the amplifier's data", ErrMissing)
		r.faults[len(r.faults)-1].Line = r.line("wiring.amplifier_w")
		return
	case into && !watts:
		r.fault("wiring.amplifier_into_ohm", plain(w.AmplifierIntoOhm), "only with wiring.amplifier_w; give the watts, or leave it out", ErrConflict)
		return
	case !watts:
		return
	}
	sold := w.soldVolt()
	r.must(math.Abs(w.AmplifierVolt/sold-1) <= sameVolt, "wiring.amplifier_volt", plain(w.AmplifierVolt),
		"left out, or %.3g: %s W into %s ohm are that many volts", sold, plain(w.AmplifierW), plain(w.AmplifierIntoOhm))
	r.must(sold >= leastVolt && sold <= mostVolt, "wiring.amplifier_w", plain(w.AmplifierW),
		"such that it comes to %s to %s V; into %s ohm it is %.3g V", plain(leastVolt), plain(mostVolt), plain(w.AmplifierIntoOhm), sold)
	r.must(w.MinimumLoadOhm <= w.AmplifierIntoOhm, "wiring.minimum_load_ohm", plain(w.MinimumLoadOhm),
		"at most wiring.amplifier_into_ohm, %s: an amplifier bears the load that its watts are for", plain(w.AmplifierIntoOhm))
}

// checkHighPass notes a high-pass that does not exist, or that the processor's rate
// cannot have: its corner must be below half of it.
func (r *reader) checkHighPass() {
	p := r.Protection
	r.must(p.Family != linkwitz || slices.Contains(highPassOrders, p.Order), "protection.order", fmt.Sprint(p.Order),
		`%s for protection.family = "%s"`, eitherWhole(highPassOrders), linkwitz)
	rate := r.Processor.RateHz
	r.must(rate > 2*p.CornerHz, "processor.rate_hz", plain(rate), "above %s, twice protection.corner_hz", plain(2*p.CornerHz))
}

// slack is how far a place may be off by rounding, in m.
const slack = 1e-9

// checkRoom notes what does not fit into the room: the body, all round by its
// radius and below by what is left of it, and the spot.
func (r *reader) checkRoom() {
	if !r.Room.Present {
		return
	}
	r.must(!r.Surface.Present, "surface", "", "left out where there is a [room]: its floor is the surface below the body")
	radius := r.Body.RadiusMM / 1000
	for axis, at := range r.Room.BodyAtM {
		size, low := r.Room.SizeM[axis], radius
		if axis == 2 && r.Body.HasCut {
			low = max(0, -r.Body.CutHeightMM/1000)
		}
		name, high := "xyz"[axis:axis+1], size-radius
		if high < low-slack {
			r.must(false, "room.size_m", bracketed(r.Room.SizeM), "at least %s in %s, for the body to fit in", metres(radius+low), name)
			continue
		}
		r.must(at >= low-slack && at <= high+slack, "room.body_at_m", bracketed(r.Room.BodyAtM),
			"from %s to %s in %s, for the body to be inside the room", metres(low), metres(high), name)
	}
	r.checkInside("spot", [3]float64{r.Spot.XM, r.Spot.YM, r.Spot.ZM})
}

// checkInside notes a place, counted from the body's centre, that is not in the
// room.
func (r *reader) checkInside(table string, place [3]float64) {
	for axis, at := range place {
		low, high := -r.Room.BodyAtM[axis], r.Room.SizeM[axis]-r.Room.BodyAtM[axis]
		r.must(at >= low-slack && at <= high+slack, table+"."+"xyz"[axis:axis+1]+"_m", plain(at),
			"from %s to %s, inside the room", metres(low), metres(high))
	}
}

// besideSpot is the least distance in m of a woofer from the spot: it is taken
// for a point, which no woofer is from nearer.
const besideSpot = 0.1

func (r *reader) checkWoofer() {
	w := r.Woofer
	if !w.Present {
		return
	}
	if r.Room.Present {
		r.checkInside("woofer", [3]float64{w.XM, w.YM, w.ZM})
	}
	away := Spot{w.XM - r.Spot.XM, w.YM - r.Spot.YM, w.ZM - r.Spot.ZM}.distance()
	r.must(away >= besideSpot, "woofer.x_m", plain(w.XM), "such that the woofer is %s m or more from the spot, not %s m", plain(besideSpot), metres(away))
}

// metres writes a length without what rounding adds.
func metres(v float64) string { return plain(math.Round(v*1e6) / 1e6) }

// bracketed writes three numbers as the file has them.
func bracketed(v [3]float64) string {
	return fmt.Sprintf("[%s, %s, %s]", plain(v[0]), plain(v[1]), plain(v[2]))
}

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
	r.must(len(r.Channels) == 0 || r.Wiring.Channels == 0, "wiring.channels", fmt.Sprint(r.Wiring.Channels),
		"left out where there are [[channel]] tables")
	owner := map[int]int{}
	for i, c := range r.Channels {
		at := nth("channel", i+1) + ".drivers"
		r.must(len(c.Drivers) > 0, at, "[]", "at least one mount number")
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
