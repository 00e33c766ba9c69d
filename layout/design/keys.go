package design

// The words that a design may use.
var (
	solids = []string{"tetrahedron", "cube", "octahedron", "dodecahedron", "icosahedron"}
	bases  = []string{"icosahedron", "octahedron", "tetrahedron"}
	places = []string{"faces", "vertices", "edges", "even", "list"}
	models = []string{"point", "baffle"}
	ways   = []string{"path", "straight"}
)

const (
	geodesic = "geodesic"
	ball     = "ball"
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

// table is one table of the design file; the nameless one is the top.
type table struct {
	name string
	keys []key
}

// tables lists every key of the file but those of [[channel]], with where in
// the design its value goes.
func (d *Design) tables() []table {
	shapes := append(append([]string{}, solids...), geodesic, ball)
	return []table{
		{"", []key{
			{"name", false, text(&d.Name, 120)},
		}},
		{"air", []key{
			{"temperature_c", false, number(&d.Air.TemperatureC, -20, 50)},
			{"humidity_percent", false, number(&d.Air.HumidityPercent, 0, 100)},
			{"pressure_kpa", false, number(&d.Air.PressureKPa, 50, 110)},
		}},
		{"body", []key{
			{"shape", true, choice(&d.Body.Shape, shapes)},
			{"base", false, choice(&d.Body.Base, bases)},
			{"subdivision", false, whole(&d.Body.Subdivision, 1, 16)},
			{"radius_mm", true, number(&d.Body.RadiusMM, 20, 5000)},
			{"cut_height_mm", false, number(&d.Body.CutHeightMM, -5000, 5000)},
			{"stand_height_mm", false, number(&d.Body.StandHeightMM, 0, 3000)},
			{"wall_mm", false, number(&d.Body.WallMM, 0.4, 100)},
		}},
		{"mounts", []key{
			{"on", false, choice(&d.Mounts.On, places)},
			{"count", false, whole(&d.Mounts.Count, 0, MaxDrivers)},
			{"list", false, text(&d.Mounts.List, 1000)},
			{"keep_clear_below_deg", false, optional(&d.Mounts.KeepClearBelowDeg, -90, 90)},
			{"skip", false, wholes(&d.Mounts.Skip, 1, maxNumber)},
		}},
		{"driver", []key{
			{"diameter_mm", true, number(&d.Driver.DiameterMM, 5, 500)},
			{"cutout_mm", false, number(&d.Driver.CutoutMM, 5, 600)},
			{"flange_mm", false, number(&d.Driver.FlangeMM, 5, 800)},
			{"depth_mm", false, number(&d.Driver.DepthMM, 0, 500)},
			{"nominal_ohm", false, number(&d.Driver.NominalOhm, 1, 1000)},
			{"dc_ohm", false, number(&d.Driver.DCOhm, 0.3, 1000)},
			{"sensitivity_db", false, optional(&d.Driver.SensitivityDB, 50, 120)},
			{"power_w", false, number(&d.Driver.PowerW, 0.05, 2000)},
		}},
		{"timing", []key{
			{"model", false, choice(&d.Timing.Model, models)},
			{"delays_by", false, choice(&d.Timing.DelaysBy, ways)},
		}},
		{"wiring", []key{
			{"channels", false, whole(&d.Wiring.Channels, 0, MaxDrivers)},
			{"minimum_load_ohm", false, number(&d.Wiring.MinimumLoadOhm, 0.5, 100)},
		}},
		{"spot", []key{
			{"x_m", true, number(&d.Spot.XM, -100, 100)},
			{"y_m", true, number(&d.Spot.YM, -100, 100)},
			{"z_m", true, number(&d.Spot.ZM, -100, 100)},
		}},
		{"coverage", []key{
			{"half_width_m", false, number(&d.Coverage.HalfWidthM, 0.2, 100)},
			{"cells", false, whole(&d.Coverage.Cells, 8, 512)},
		}},
	}
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
		Driver:   Driver{NominalOhm: 8, PowerW: 1},
		Timing:   Timing{Model: "point", DelaysBy: "path"},
		Wiring:   Wiring{MinimumLoadOhm: 4},
		Coverage: Coverage{Cells: 64},
	}
}
