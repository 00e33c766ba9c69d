// Package planjson writes a plan as JSON, for other programs to read.
//
// The keys are stable; their names carry the unit. A number that there is not
// (no comb onset up to the highest frequency, silence) is null. Lengths are
// rounded to a micrometre, times to a nanosecond, levels to a millidecibel, so
// that the file does not change with the machine.
//
//	name                     the design's
//	model, delays_by         how the sound of a driver and the delays were computed
//	air                      temperature_c, humidity_percent, pressure_kpa, speed_of_sound_m_s
//	spot                     x_m, y_m, z_m: the listening spot, from the body's centre
//	ball                     the ball that stands for the body in the sphere model: radius_mm, centre x_mm, y_mm, z_mm
//	level_error              octave_hz, db: by how much the level of one driver can be off because of
//	                         that, most near its front (an independent boundary-element
//	                         solution; 0 for a ball, null in the other models)
//	drivers[]                id, place (x_mm, y_mm, z_mm), outward normal, channel (its id),
//	                         path_m round the ball that stands for the body, arrival_us by that path,
//	                         straight_path_m from the driver itself, field_arrival_us (what delays go by unless
//	                         delays_by says otherwise, and what smear is measured by) and peak_arrival_us of
//	                         the model's own field, delay_us that its channel is set to, level_db of its direct
//	                         sound at the spot, seen from the spot or not
//	channels[]               id, drivers (ids), delay_us (what can be set), exact_us (before rounding), gain_db, inverted, series (drivers in
//	                         a string), parallel (strings), nominal_ohm, dc_ohm, lowest_ohm and
//	                         lowest_hz where the load is least (null: not known); the most that a
//	                         tone draws: amplifier_v, amplifier_a, amplifier_w, and of the driver
//	                         that gets most driver_v, driver_a, driver_w
//	amplifier                volt (RMS, what levels are for), given: it is the amplifier's own, watt and
//	                         into_ohm as it is sold (null: not given), minimum_ohm
//	front[]                  what shorter strings cost and bring, from the shortest to the least smear:
//	                         longest_string (drivers), smear_us, comb_onset_hz, louder_db than the last at
//	                         the spot, driver_v (the most over each driver), limited_by (amplifier, or
//	                         driver: it stands no more), least_ohm of any channel, most_drivers in one,
//	                         in_step (the rule allows it), rule (its choice), chosen (the plan's own)
//	protection               the high-pass, the level and what limits it: as WriteChannels has it
//	choices[]                by (straight, path, field, peak), octave_hz, short_of_in_step_db: what
//	                         delays taken so, one for each driver, leave at the spot
//	response                 frequency_hz and levels in dB: aligned_db with the delays,
//	                         unaligned_db without, in_step_db the most that timing can give
//	octaves[]                octave_hz; directivity_db towards the spot and power_db over one
//	                         driver, both in open air; unevenness_db round the listening
//	                         circle; within_3_db_m2, the area round the spot; omni_as_built_deviation_db
//	                         and omni_as_built_pass by ISO 3382-1, all drivers in parallel as the
//	                         standard has it, and omni_deviation_db and omni_pass with the delays,
//	                         which aim at the spot (null where it has no limit); reverb_sabine_s, reverb_eyring_s of
//	                         the room (null where there is none)
//	in_step_area_m2          area round the spot with the smear under the design's limit
//	measures                 aligned and unaligned, of the direct sound, without the surface below or
//	                         the room: smear_us, spread_us, comb_onset_hz
//	echoes[]                 what the surface below or each wall of the room sends back to the spot,
//	                         the deepest dip first: by (its name), extra_mm of way and late_us
//	                         behind the direct sound, dip_hz (the first of its comb) and depth_db
//	                         there, at_m (where it is thrown back: x, y, z), and about where the dip
//	                         goes with the body nearer to it or further away:
//	                         dip_100_mm_nearer_hz (null: there is no room), dip_100_mm_further_hz
//	findings                 what to look out for, worst first: code, rank (danger, misfit,
//	                         caution, cost or note), what, cure
//	warnings                 the same in lines
//
// Levels are in level_unit: dB SPL where the driver's sensitivity is given, else
// over a point source of one driver's volume velocity from 1 m.
package planjson

import (
	"encoding/json"
	"io"
	"math"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/omni"

	"gonum.org/v1/gonum/spatial/r3"
)

// Write writes a plan and its survey, indented, with a final newline. The error
// is the writer's.
func Write(w io.Writer, p *timing.Plan, s *timing.Survey) error {
	return encode(w, document(p, s))
}

type plan struct {
	Name       string     `json:"name"`
	Model      string     `json:"model"`
	DelaysBy   string     `json:"delays_by"`
	Air        air        `json:"air"`
	Spot       spot       `json:"spot"`
	Ball       ball       `json:"ball"`
	LevelError levelError `json:"level_error"`
	Drivers    []driver   `json:"drivers"`
	Channels   []channel  `json:"channels"`
	Amplifier  amplifier  `json:"amplifier"`
	Front      []strung   `json:"front"`
	Protection protection `json:"protection"`
	Choices    []choice   `json:"choices"`
	Level      string     `json:"level_unit"`
	Response   response   `json:"response"`
	Octaves    []octave   `json:"octaves"`
	InStep     number     `json:"in_step_area_m2"`
	Measures   measures   `json:"measures"`
	Echoes     []echo     `json:"echoes"`
	Warnings   []string   `json:"warnings"`
	Findings   []Finding  `json:"findings"`
}

type amplifier struct {
	Volt    number  `json:"volt"`
	Given   bool    `json:"given"`
	Watt    *number `json:"watt"`
	IntoOhm *number `json:"into_ohm"`
	Minimum number  `json:"minimum_ohm"`
}

func amplifierOf(w layout.Wiring) amplifier {
	out := amplifier{Volt: to(4, w.Voltage), Given: w.HasAmplifier, Minimum: to(3, w.MinimumLoad)}
	if w.Watt > 0 {
		watt, into := to(3, w.Watt), to(3, w.IntoOhm)
		out.Watt, out.IntoOhm = &watt, &into
	}
	return out
}

type air struct {
	Temperature  number `json:"temperature_c"`
	Humidity     number `json:"humidity_percent"`
	Pressure     number `json:"pressure_kpa"`
	SpeedOfSound number `json:"speed_of_sound_m_s"`
}

type spot struct {
	X number `json:"x_m"`
	Y number `json:"y_m"`
	Z number `json:"z_m"`
}

// echo is a timing.Echo.
type echo struct {
	By      string    `json:"by"`
	Extra   number    `json:"extra_mm"`
	Late    number    `json:"late_us"`
	Dip     number    `json:"dip_hz"`
	Depth   number    `json:"depth_db"`
	At      [3]number `json:"at_m"`
	Nearer  number    `json:"dip_100_mm_nearer_hz"`
	Further number    `json:"dip_100_mm_further_hz"`
}

type driver struct {
	ID       int       `json:"id"`
	X        number    `json:"x_mm"`
	Y        number    `json:"y_mm"`
	Z        number    `json:"z_mm"`
	Normal   [3]number `json:"normal"`
	Channel  int       `json:"channel"`
	Path     number    `json:"path_m"`
	Arrival  number    `json:"arrival_us"`
	Straight number    `json:"straight_path_m"`
	Field    number    `json:"field_arrival_us"`
	Peak     number    `json:"peak_arrival_us"`
	Delay    number    `json:"delay_us"`
	Level    number    `json:"level_db"`
	Seen     bool      `json:"seen"`
}

type channel struct {
	ID         int    `json:"id"`
	Drivers    []int  `json:"drivers"`
	Delay      number `json:"delay_us"`
	Exact      number `json:"exact_us"`
	Gain       number `json:"gain_db"`
	Inverted   bool   `json:"inverted"`
	Series     int    `json:"series"`
	Parallel   int    `json:"parallel"`
	NominalOhm number `json:"nominal_ohm"`
	DCOhm      number `json:"dc_ohm"`
	load
}

// load is what a channel's amplifier sees and gives, and what a driver gets.
type load struct {
	Lowest       number `json:"lowest_ohm"`
	LowestAt     number `json:"lowest_hz"`
	Volt         number `json:"amplifier_v"`
	Ampere       number `json:"amplifier_a"`
	Watt         number `json:"amplifier_w"`
	DriverVolt   number `json:"driver_v"`
	DriverAmpere number `json:"driver_a"`
	DriverWatt   number `json:"driver_w"`
}

func loadOf(b timing.Bank) load {
	return load{to(3, b.LowestOhm), to(1, b.LowestHz), to(4, b.Volt), to(5, b.Ampere), to(4, b.Watt),
		to(4, b.DriverVolt), to(5, b.DriverAmpere), to(5, b.DriverWatt)}
}

type octave struct {
	Band           number  `json:"octave_hz"`
	Directivity    number  `json:"directivity_db"`
	Power          number  `json:"power_db"`
	Unevenness     number  `json:"unevenness_db"`
	Reach          number  `json:"within_3_db_m2"`
	BuiltDeviation *number `json:"omni_as_built_deviation_db"`
	BuiltPass      *bool   `json:"omni_as_built_pass"`
	Deviation      *number `json:"omni_deviation_db"`
	Pass           *bool   `json:"omni_pass"`
	Sabine         *number `json:"reverb_sabine_s"`
	Eyring         *number `json:"reverb_eyring_s"`
}

type choice struct {
	By    string   `json:"by"`
	Band  []number `json:"octave_hz"`
	Short []number `json:"short_of_in_step_db"`
}

type response struct {
	Frequency []number `json:"frequency_hz"`
	Aligned   []number `json:"aligned_db"`
	Unaligned []number `json:"unaligned_db"`
	InStep    []number `json:"in_step_db"`
}

type measures struct {
	Aligned   atSpot `json:"aligned"`
	Unaligned atSpot `json:"unaligned"`
}

type atSpot struct {
	Smear     number `json:"smear_us"`
	Spread    number `json:"spread_us"`
	CombOnset number `json:"comb_onset_hz"`
}

// number is a float that may be null.
type number float64

func (n number) MarshalJSON() ([]byte, error) {
	if v := float64(n); math.IsNaN(v) || math.IsInf(v, 0) {
		return []byte("null"), nil
	}
	return json.Marshal(float64(n))
}

// to rounds a value to so many places after the point; no zero is negative.
func to(places int, v float64) number {
	scale := math.Pow(10, float64(places))
	return number(math.Round(v*scale)/scale + 0)
}

func mm(v float64) number { return to(3, 1000*v) }
func us(v float64) number { return to(3, 1e6*v) }
func m(v float64) number  { return to(6, v) }
func db(v float64) number { return to(3, v) }

func document(p *timing.Plan, s *timing.Survey) plan {
	a := p.Array
	out := plan{
		Name:     a.Name,
		Model:    a.Timing.Model,
		DelaysBy: a.Timing.DelaysBy,
		Air: air{
			Temperature:  to(3, a.Air.Temperature-273.15),
			Humidity:     to(3, 100*a.Air.Humidity),
			Pressure:     to(3, a.Air.Pressure/1000),
			SpeedOfSound: to(3, p.SpeedOfSound),
		},
		Spot:     spot{m(a.Spot.X), m(a.Spot.Y), m(a.Spot.Z)},
		Response: response{all(3, p.Response.Frequency), all(3, p.Response.Aligned), all(3, p.Response.Unaligned), all(3, p.Response.InStep)},
		Echoes:   []echo{},
		Measures: measures{figures(p.Aligned), figures(p.Unaligned)},
		Warnings: lines(p.Warnings),
		Findings: Findings(p.Warnings),
	}
	out.Ball, out.LevelError = ballOf(p), levelErrorOf(p)
	for _, e := range p.Echoes {
		out.Echoes = append(out.Echoes, echo{e.Wall, mm(e.Extra), us(e.Late), to(1, e.Dip), db(e.Depth),
			[3]number{m(e.At.X), m(e.At.Y), m(e.At.Z)}, to(1, e.Nearer), to(1, e.Further)})
	}
	out.Level, out.InStep, out.Protection = unit(p), to(4, s.InStep), protectionOf(p.Protection)
	out.Amplifier, out.Front = amplifierOf(a.Wiring), frontOf(p)
	for b, o := range s.Octaves {
		out.Octaves = append(out.Octaves, octaveOf(s, b, o))
	}
	for i, r := range p.Arrivals {
		mount := a.Mounts[i]
		out.Drivers = append(out.Drivers, driver{
			ID: mount.ID, X: mm(mount.Point.X), Y: mm(mount.Point.Y), Z: mm(mount.Point.Z),
			Normal: direction(mount.Normal), Channel: p.Channels[r.Channel].ID,
			Path: m(r.Path), Arrival: us(r.Time), Straight: m(r.Straight),
			Field: us(r.Field), Peak: us(r.Peak),
			Delay: us(r.Delay), Level: db(r.Level), Seen: r.Seen,
		})
	}
	for _, c := range p.Choices {
		out.Choices = append(out.Choices, choice{c.By, all(2, c.Band), all(3, c.Short)})
	}
	for _, c := range p.Channels {
		out.Channels = append(out.Channels, channel{
			ID: c.ID, Drivers: ids(a.Mounts, c.Mounts), Delay: us(c.Delay), Exact: us(c.Exact), Gain: db(c.Gain), Inverted: c.Invert,
			Series: c.Series, Parallel: c.Parallel, NominalOhm: to(3, c.NominalOhm), DCOhm: to(3, c.DCOhm),
			load: loadOf(c.Bank),
		})
	}
	return out
}

func direction(v r3.Vec) [3]number { return [3]number{to(6, v.X), to(6, v.Y), to(6, v.Z)} }

func all(places int, values []float64) []number {
	out := make([]number, len(values))
	for i, v := range values {
		out[i] = to(places, v)
	}
	return out
}

func figures(f timing.Measures) atSpot {
	return atSpot{us(f.Smear), us(f.Spread), to(1, f.CombOnset)}
}

// ids returns the numbers of the mounts at some indices.
func ids(mounts []layout.Mount, index []int) []int {
	out := make([]int, len(index))
	for i, at := range index {
		out[i] = mounts[at].ID
	}
	return out
}

// unit names what levels are in.
func unit(p *timing.Plan) string {
	if p.IsAbsolute() {
		return "dB SPL"
	}
	return "dB over one driver at 1 m"
}

// judged returns the judgement of an octave; nil where the standard has none.
func judged(results []omni.Result, centre float64) (*number, *bool) {
	for _, r := range results {
		if r.Band == centre {
			deviation := db(r.Deviation)
			return &deviation, &r.Pass
		}
	}
	return nil, nil
}

func octaveOf(s *timing.Survey, b int, o timing.Octave) octave {
	out := octave{Band: to(2, o.Band), Directivity: db(o.Directivity), Power: db(o.Power), Unevenness: db(o.Unevenness), Reach: to(4, o.Reach)}
	out.Deviation, out.Pass = judged(s.Omni.Aligned, o.Band)
	out.BuiltDeviation, out.BuiltPass = judged(s.Omni.AsBuilt, o.Band)
	if len(s.Reverb) > 0 {
		sabine, eyring := to(3, s.Reverb[b].Sabine), to(3, s.Reverb[b].Eyring)
		out.Sabine, out.Eyring = &sabine, &eyring
	}
	return out
}
