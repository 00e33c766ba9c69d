package document

import (
	"cmp"
	"slices"

	"pappus/layout"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// Plan is plan.json.
type Plan struct {
	Name       string     `json:"name"`
	Model      string     `json:"model"`     // how the sound of a driver was computed
	DelaysBy   string     `json:"delays_by"` // and the delays
	Air        Air        `json:"air"`
	Spot       Point      `json:"spot"`           // the listening spot, from the body's centre
	Held       []Held     `json:"held,omitempty"` // how each body is held; left out where all stand as designed
	Ball       Ball       `json:"ball"`
	LevelError LevelError `json:"level_error"`
	Field      *Field     `json:"field,omitempty"` // only of the model body
	Drivers    []Driver   `json:"drivers"`
	Channels   []Channel  `json:"channels"`
	Amplifier  Amplifier  `json:"amplifier"`
	Front      []Strung   `json:"front"` // what shorter strings cost and bring, from the shortest to the least smear
	Protection Protection `json:"protection"`
	Choices    []Choice   `json:"choices"`
	Level      string     `json:"level_unit"`
	Response   Response   `json:"response"`
	Phase      Phase      `json:"phase"`
	*Survey
	Measures Measures `json:"measures"`
	Seats    *Seats   `json:"seats,omitempty"` // only where there are several
	Echoes   []Echo   `json:"echoes"`          // the deepest dip first
	Found
}

// OfPlan returns the document of a plan, with what a survey of the room found; nil: none.
func OfPlan(p *timing.Plan, s *timing.Survey) Plan {
	a := p.Array
	octaves, errors := p.LevelErrors()
	out := Plan{
		Name: a.Name, Model: a.Timing.Model, DelaysBy: a.Timing.DelaysBy,
		Air:        Air{To(3, a.Air.Temperature-273.15), To(3, 100*a.Air.Humidity), To(3, a.Air.Pressure/1000), To(3, p.SpeedOfSound)},
		Spot:       Point{m(a.Spot.X), m(a.Spot.Y), m(a.Spot.Z)},
		Ball:       Ball{mm(a.Body.BallRadius), mm(a.Body.BallCentre.X), mm(a.Body.BallCentre.Y), mm(a.Body.BallCentre.Z)},
		LevelError: LevelError{All(2, octaves), All(3, errors)}, Field: fieldOf(&p.Spot),
		Channels:  channelsOf(p),
		Amplifier: amplifierOf(a.Wiring), Front: frontOf(p), Protection: protectionOf(p),
		Choices:  each(p.Choices, func(c timing.Choice) Choice { return Choice{c.By, All(2, c.Band), All(3, c.Short)} }),
		Level:    unit(p),
		Response: responseOf(&p.Spot), Phase: OfPhase(p.Phase, 1), Measures: measuresOf(&p.Spot), Seats: seatsOf(&p.Spot), Echoes: echoesOf(&p.Spot),
		Found: foundOf(p.Warnings),
	}
	for i, mount := range a.Mounts {
		d := Driver{heardOf(&p.Spot, i), mm(mount.Point.X), mm(mount.Point.Y), mm(mount.Point.Z),
			TripleOf(6, 1, mount.Normal), us(p.Peaks[i]), nil}
		if a.PlacingOf(mount).Placed() {
			at := TripleOf(6, 1, a.PlaceOf(mount))
			d.At = &at
		}
		out.Drivers = append(out.Drivers, d)
	}
	out.Held = placedOf(p)
	if s != nil {
		survey := OfSurvey(s)
		out.Survey = &survey
	}
	return out
}

// Air is what the sound travels through.
type Air struct {
	Temperature  Number `json:"temperature_c"`
	Humidity     Number `json:"humidity_percent"`
	Pressure     Number `json:"pressure_kpa"`
	SpeedOfSound Number `json:"speed_of_sound_m_s"`
}

// Point is a place in the room.
type Point struct {
	X Number `json:"x_m"`
	Y Number `json:"y_m"`
	Z Number `json:"z_m"`
}

// Ball is what stands for the body in the sphere model.
type Ball struct {
	Radius Number `json:"radius_mm"`
	X      Number `json:"x_mm"`
	Y      Number `json:"y_mm"`
	Z      Number `json:"z_mm"`
}

// LevelError is by how much the level of one driver can be off: because a ball stands for
// the body, most near its front (by boundary elements), or, where the body's
// own field is solved for, by what a finer mesh changes of it.
type LevelError struct {
	Band Numbers `json:"octave_hz"`
	DB   Numbers `json:"db"` // 0 for a ball, null in the models without a body
}

// Field is how far up the field of the body as it is was solved for.
type Field struct {
	To    Number `json:"solved_to_hz"` // above it the ball stands for the body
	From  Number `json:"join_from_hz"` // from here to there the ball takes over
	Asked Number `json:"asked_to_hz"`  // what the design asks for
	Short bool   `json:"cut_short"`    // solving so far would have taken too long
}

func fieldOf(p *timing.Spot) *Field {
	s := p.Solved()
	if s == nil {
		return nil
	}
	return &Field{To(1, s.To), To(1, s.From), To(1, p.Array.Timing.SolveTo), s.Short}
}

// Held is how a body is held in the room, whose origin is the middle of the first body: forward,
// left and up are the room's.
type Held struct {
	On    string `json:"on"` // what it is fixed to: surface, ceiling or wall
	At    Triple `json:"at_m"`
	Front Triple `json:"front"` // where its front mark points, its own x
	Left  Triple `json:"left"`  // its own y
	Top   Triple `json:"top"`   // its own z

	First    int    `json:"first_driver"` // the number that its drivers begin with
	Shared   bool   `json:"shared"`       // it is on the channels of the first body
	Distance Number `json:"distance_m"`   // of its centre from the spot
	Arrival  Number `json:"arrival_us"`   // mean of its drivers, by energy, without delays
	Delay    Number `json:"delay_us"`     // mean of its drivers, alike: what differs is the programme delay
	Level    Number `json:"level_db"`     // of its direct sound, over that of all bodies, by energy
}

func placedOf(p *timing.Plan) []Held {
	a := p.Array
	bodies := a.Bodies()
	if !slices.ContainsFunc(bodies, layout.Placing.Placed) {
		return nil
	}
	var out []Held
	for i, h := range p.Bodies() {
		at := bodies[i]
		axis := func(v r3.Vec) Triple { return TripleOf(6, 1, at.Out(v)) }
		out = append(out, Held{cmp.Or(a.On, layout.OnSurface), TripleOf(6, 1, at.At), axis(r3.Vec{X: 1}), axis(r3.Vec{Y: 1}), axis(r3.Vec{Z: 1}),
			a.Mounts[i*len(a.Own())].ID, at.Shared, m(h.Distance), us(h.Arrival), us(h.Delay), db(h.Level)})
	}
	return out
}

// Driver is where a driver sits, from the body's centre along its own axes, and how it is
// heard.
type Driver struct {
	Heard
	X      Number  `json:"x_mm"`
	Y      Number  `json:"y_mm"`
	Z      Number  `json:"z_mm"`
	Normal Triple  `json:"normal"`          // outward
	Peak   Number  `json:"peak_arrival_us"` // peak of the model's impulse response; null: not computed
	At     *Triple `json:"at_m,omitempty"`  // in the room; left out where the body stands as designed
}

// Channel is one amplifier output.
type Channel struct {
	Output
	Inverted   bool   `json:"inverted"`
	Series     int    `json:"series"`   // drivers in a string
	Parallel   int    `json:"parallel"` // strings
	NominalOhm Number `json:"nominal_ohm"`
	DCOhm      Number `json:"dc_ohm"`
	Load
}

func channelsOf(p *timing.Plan) []Channel {
	out := make([]Channel, len(p.Channels))
	for i, c := range p.Channels {
		out[i] = Channel{outputOf(p.Array, c), c.Invert, c.Series, c.Parallel, To(3, c.NominalOhm), To(3, c.DCOhm), loadOf(p.Banks[i])}
	}
	return out
}

// Amplifier is what the loads are computed for.
type Amplifier struct {
	Volt    Number  `json:"volt"`     // RMS, what levels are for
	Given   bool    `json:"given"`    // it is the amplifier's own
	Watt    *Number `json:"watt"`     // as it is sold; null: not given
	IntoOhm *Number `json:"into_ohm"` // null: not given
	Minimum Number  `json:"minimum_ohm"`
}

func amplifierOf(w layout.Wiring) Amplifier {
	out := Amplifier{Volt: To(4, w.Voltage), Given: w.HasAmplifier, Minimum: To(3, w.MinimumLoad)}
	if w.Watt > 0 {
		watt, into := To(3, w.Watt), To(3, w.IntoOhm)
		out.Watt, out.IntoOhm = &watt, &into
	}
	return out
}

// Choice is what delays taken so, one for each driver, leave at the spot.
type Choice struct {
	By    string  `json:"by"` // straight, path, field or peak
	Band  Numbers `json:"octave_hz"`
	Short Numbers `json:"short_of_in_step_db"`
}

// unit names what levels are in.
func unit(p *timing.Plan) string {
	if p.IsAbsolute() {
		return "dB SPL"
	}
	return "dB over one driver at 1 m"
}
