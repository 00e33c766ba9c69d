package design

// The words that a design may use.
var (
	solids = []string{"tetrahedron", "cube", "octahedron", "dodecahedron", "icosahedron"}
	bases  = []string{"icosahedron", "octahedron", "tetrahedron"}
	places = []string{"faces", "vertices", "edges", "even", "list"}
	models = []string{"sphere", point, "baffle"}
	ways   = []string{"path", "field", straight}
	walls  = []string{"back", "front", "right", "left", "floor", "ceiling"}
)

const (
	geodesic = "geodesic"
	ball     = "ball"
	point    = "point"
	straight = "straight"
)

// MaxDrivers is the most drivers that one design may have.
const MaxDrivers = 2000

// maxNumber is the highest mount number that a design may name: that of the
// finest geodesic's edges.
const maxNumber = 10000

// key is one key of a table. A key without a default is needed.
type key struct {
	name   string
	needed bool
	kind
}

// table is one table of the design file; the nameless one is the top. The keys
// that an optional one needs are needed only where it is there.
type table struct {
	name     string
	optional bool
	keys     []key
}

// tables lists every key of the file but those of [[channel]], with where in
// the design its value goes.
func (d *Design) tables() []table {
	shapes := append(append([]string{}, solids...), geodesic, ball)
	return []table{
		{"", false, []key{
			{"name", false, text(&d.Name, 120)},
		}},
		{"air", false, []key{
			{"temperature_c", false, number(&d.Air.TemperatureC, -20, 50)},
			{"humidity_percent", false, number(&d.Air.HumidityPercent, 0, 100)},
			{"pressure_kpa", false, number(&d.Air.PressureKPa, 50, 110)},
		}},
		{"body", false, []key{
			{"shape", true, choice(&d.Body.Shape, shapes)},
			{"base", false, choice(&d.Body.Base, bases)},
			{"subdivision", false, whole(&d.Body.Subdivision, 1, 16)},
			{"radius_mm", true, number(&d.Body.RadiusMM, 20, 5000)},
			{"cut_height_mm", false, number(&d.Body.CutHeightMM, -5000, 5000)},
			{"stand_height_mm", false, number(&d.Body.StandHeightMM, 0, 3000)},
			{"wall_mm", false, number(&d.Body.WallMM, 0.4, 100)},
		}},
		{"mounts", false, []key{
			{"on", false, choice(&d.Mounts.On, places)},
			{"count", false, whole(&d.Mounts.Count, 0, MaxDrivers)},
			{"list", false, text(&d.Mounts.List, 1000)},
			{"keep_clear_below_deg", false, optional(&d.Mounts.KeepClearBelowDeg, -90, 90)},
			{"skip", false, wholes(&d.Mounts.Skip, 1, maxNumber)},
		}},
		{"driver", false, []key{
			{"diameter_mm", true, number(&d.Driver.DiameterMM, 5, 500)},
			{"cutout_mm", false, number(&d.Driver.CutoutMM, 5, 600)},
			{"flange_mm", false, number(&d.Driver.FlangeMM, 5, 800)},
			{"depth_mm", false, number(&d.Driver.DepthMM, 0, 500)},
			{"nominal_ohm", false, number(&d.Driver.NominalOhm, 1, 1000)},
			{"dc_ohm", false, number(&d.Driver.DCOhm, 0.3, 1000)},
			{"sensitivity_db", false, optional(&d.Driver.SensitivityDB, 50, 120)},
			{"power_w", false, number(&d.Driver.PowerW, 0.05, 2000)},
			{"response", false, text(&d.Driver.Response, 1000)},
			{"resonance_hz", false, number(&d.Driver.ResonanceHz, 20, 20000)},
			{"resonance_q", false, number(&d.Driver.ResonanceQ, 0.2, 10)},
		}},
		{"timing", false, []key{
			{"model", false, choice(&d.Timing.Model, models)},
			{"delays_by", false, choice(&d.Timing.DelaysBy, ways)},
			{"field_low_hz", false, number(&d.Timing.FieldLowHz, 50, 20000)},
			{"field_high_hz", false, number(&d.Timing.FieldHighHz, 50, 20000)},
		}},
		{"wiring", false, []key{
			{"channels", false, whole(&d.Wiring.Channels, 0, MaxDrivers)},
			{"minimum_load_ohm", false, number(&d.Wiring.MinimumLoadOhm, 0.5, 100)},
			{"amplifier_volt", false, number(&d.Wiring.AmplifierVolt, 0.1, 200)},
		}},
		{"spot", false, []key{
			{"x_m", true, number(&d.Spot.XM, -100, 100)},
			{"y_m", true, number(&d.Spot.YM, -100, 100)},
			{"z_m", true, number(&d.Spot.ZM, -100, 100)},
		}},
		{"surface", true, []key{
			{"absorption", false, octaves(&d.Surface.Absorption, 0, 1)},
		}},
		{"room", true, append([]key{
			{"size_m", true, three(&d.Room.SizeM, 1, 100)},
			{"body_at_m", true, three(&d.Room.BodyAtM, 0, 100)},
			{"absorption", true, everywhere(&d.Room.Absorption, 0, 1)},
			{"order", false, whole(&d.Room.Order, 0, 10)},
		}, d.Room.walls()...)},
		{"coverage", false, []key{
			{"half_width_m", false, number(&d.Coverage.HalfWidthM, 0.2, 100)},
			{"cells", false, whole(&d.Coverage.Cells, 8, 512)},
			{"smear_limit_us", false, number(&d.Coverage.SmearLimitUS, 1, 10000)},
		}},
	}
}

// walls lists the keys for walls that are not like the others. They come after
// the one for all walls, which they override.
func (r *Room) walls() []key {
	keys := make([]key, len(walls))
	for i, name := range walls {
		keys[i] = key{name + "_absorption", false, octaves(&r.Absorption[i], 0, 1)}
	}
	return keys
}

// keys lists the keys of one [[channel]].
func (c *Channel) keys() []key {
	return []key{
		{"drivers", true, wholes(&c.Drivers, 1, maxNumber)},
		{"gain_db", false, number(&c.GainDB, -60, 12)},
		{"invert", false, flag(&c.Invert)},
		{"delay_us", false, optional(&c.DelayUS, 0, 1e6)},
	}
}

// defaults gives a design before anything is read into it. Defaults that hang
// on other values are filled in afterwards, by fill.
func defaults() *Design {
	return &Design{
		Name:     "Unnamed array",
		Air:      Air{TemperatureC: 20, HumidityPercent: 50, PressureKPa: 101.325},
		Body:     Body{WallMM: 3},
		Driver:   Driver{NominalOhm: 8, PowerW: 1, ResonanceQ: 0.707},
		Timing:   Timing{Model: "sphere", DelaysBy: "path", FieldLowHz: 500, FieldHighHz: 8000},
		Wiring:   Wiring{MinimumLoadOhm: 4, AmplifierVolt: 2.83},
		Room:     Room{Order: 3},
		Coverage: Coverage{Cells: 64, SmearLimitUS: 100},
	}
}
