package design_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pappus/layout/design"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// spotless is the least design without a spot.
var spotless = least[:strings.Index(least, "[spot]")]

func seat(lines ...string) string { return "[[seat]]\n" + strings.Join(lines, "\n") + "\n" }
func area(lines ...string) string { return "[[area]]\n" + strings.Join(lines, "\n") + "\n" }

// seatAt is a seat at a place.
func seatAt(x, y, z float64, lines ...string) string {
	return seat(append(lines, fmt.Sprintf("x_m = %v\ny_m = %v\nz_m = %v", x, y, z))...)
}

func parsed(t *testing.T, text string) *design.Design {
	t.Helper()
	d, err := design.Parse("a.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestAreas(t *testing.T) {
	third := math.Sqrt(3)
	for _, test := range []struct {
		name, text string
		want       []design.Seat
	}{
		{"a line, its ends and its middle", area(`shape = "line"`, "count = 3", `name = "row"`, "from_m = [2, -1, 0.5]", "to_m = [2, 1, 0.7]"), []design.Seat{
			{Name: "row 1", At: r3.Vec{X: 2, Y: -1, Z: 0.5}, Weight: 1}, {Name: "row 2", At: r3.Vec{X: 2, Z: 0.6}, Weight: 1}, {Name: "row 3", At: r3.Vec{X: 2, Y: 1, Z: 0.7}, Weight: 1}}},
		{"one alone is in the middle", area(`shape = "line"`, "count = 1", `name = "bench"`, "from_m = [2, -1, 0.5]", "to_m = [2, 1, 0.7]"), []design.Seat{
			{Name: "bench", At: r3.Vec{X: 2, Z: 0.6}, Weight: 1}}},
		{"an arc, weights shared, names by number", area(`shape = "arc"`, "count = 3", "weight = 1.5", "radius_m = 2", "z_m = 0.5", "from_deg = -60", "to_deg = 60"), []design.Seat{
			{Name: "seat 1", At: r3.Vec{X: 1, Y: -third, Z: 0.5}, Weight: 0.5}, {Name: "seat 2", At: r3.Vec{X: 2, Z: 0.5}, Weight: 0.5}, {Name: "seat 3", At: r3.Vec{X: 1, Y: third, Z: 0.5}, Weight: 0.5}}},
		{"a ring begins at the front and goes by the left", area(`shape = "ring"`, "count = 4", `name = "r"`, "radius_m = 2", "z_m = 0.5"), []design.Seat{
			{Name: "r 1", At: r3.Vec{X: 2, Z: 0.5}, Weight: 1}, {Name: "r 2", At: r3.Vec{Y: 2, Z: 0.5}, Weight: 1}, {Name: "r 3", At: r3.Vec{X: -2, Z: 0.5}, Weight: 1}, {Name: "r 4", At: r3.Vec{Y: -2, Z: 0.5}, Weight: 1}}},
		{"a rectangle twice as wide as deep, in two rows", area(`shape = "rectangle"`, "count = 6", `name = "r"`, "from_m = [1, -1, 0.5]", "to_m = [2, 1, 0.5]"), []design.Seat{
			{Name: "r 1", At: r3.Vec{X: 1, Y: -1, Z: 0.5}, Weight: 1}, {Name: "r 2", At: r3.Vec{X: 1, Z: 0.5}, Weight: 1}, {Name: "r 3", At: r3.Vec{X: 1, Y: 1, Z: 0.5}, Weight: 1},
			{Name: "r 4", At: r3.Vec{X: 2, Y: -1, Z: 0.5}, Weight: 1}, {Name: "r 5", At: r3.Vec{X: 2, Z: 0.5}, Weight: 1}, {Name: "r 6", At: r3.Vec{X: 2, Y: 1, Z: 0.5}, Weight: 1}}},
		{"seats before areas", area(`shape = "line"`, "count = 1", "from_m = [2, 0, 0.5]", "to_m = [2, 1, 0.5]") + seatAt(1, 0, 0.5, `name = "door"`, "weight = 2"), []design.Seat{
			{Name: "door", At: r3.Vec{X: 1, Z: 0.5}, Weight: 2}, {Name: "seat 2", At: r3.Vec{X: 2, Y: 0.5, Z: 0.5}, Weight: 1}}},
	} {
		t.Run(test.name, func(t *testing.T) {
			got := parsed(t, spotless+test.text).AllSeats()
			if diff := cmp.Diff(test.want, got, cmpopts.EquateApprox(0, 1e-12)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// Five on an arc are to the bit five seats written out.
func TestAreaIsSeatsWrittenOut(t *testing.T) {
	whole := parsed(t, spotless+area(`shape = "arc"`, "count = 5", "radius_m = 2", "z_m = 0.6", "from_deg = -60", "to_deg = 60"))
	text := spotless
	for _, s := range whole.AllSeats() {
		text += seatAt(s.At.X, s.At.Y, s.At.Z)
	}
	each := parsed(t, text)
	if diff := cmp.Diff(whole.AllSeats(), each.AllSeats()); diff != "" || whole.Spot != each.Spot {
		t.Errorf("spots %v and %v; %s", whole.Spot, each.Spot, diff)
	}
}

// Whatever an area is, it gives as many seats as it says, inside it, no two at one place,
// mirrored where it is mirrored, and of its weight.
func TestAreaIsFilled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 64).Draw(t, "count")
		depth, width := rapid.Float64Range(0.2, 10).Draw(t, "depth"), rapid.Float64Range(0.2, 10).Draw(t, "width")
		text := area(`shape = "rectangle"`, fmt.Sprintf("count = %d\nweight = 3\nfrom_m = [1, %v, 1]\nto_m = [%v, %v, 1]", n, -width/2, 1+depth, width/2))
		d, err := design.Parse("a.toml", []byte(spotless+text))
		if err != nil {
			t.Fatal(err)
		}
		seats, weight := d.AllSeats(), 0.0
		for _, s := range seats {
			weight += s.Weight
			if s.At.X < 1 || s.At.X > 1+depth+1e-12 || math.Abs(s.At.Y) > width/2+1e-12 || s.At.Z != 1 {
				t.Fatalf("%v is outside", s.At)
			}
			mirrored := false
			for _, o := range seats {
				mirrored = mirrored || r3.Norm(r3.Sub(o.At, r3.Vec{X: s.At.X, Y: -s.At.Y, Z: 1})) < 1e-9
			}
			if !mirrored {
				t.Fatalf("nobody opposite %v", s.At)
			}
		}
		if len(seats) != n || math.Abs(weight-3) > 1e-9 {
			t.Fatalf("%d seats of %g", len(seats), weight)
		}
	})
}

// The spot is the middle seat's where the file has none.
func TestMiddleSeat(t *testing.T) {
	for _, test := range []struct {
		name, text string
		want       r3.Vec
	}{
		{"one seat is the spot", seatAt(2, 0.5, 1), r3.Vec{X: 2, Y: 0.5, Z: 1}},
		{"the one between", seatAt(2, -1, 1) + seatAt(2, 1, 1) + seatAt(2, 0.1, 1), r3.Vec{X: 2, Y: 0.1, Z: 1}},
		{"the first of two", seatAt(2, 1, 1) + seatAt(2, -1, 1), r3.Vec{X: 2, Y: 1, Z: 1}},
		{"the heavier of two", seatAt(2, 1, 1) + seatAt(2, -1, 1, "weight = 1.1"), r3.Vec{X: 2, Y: -1, Z: 1}},
		{"the front one of a ring", area(`shape = "ring"`, "count = 12", "radius_m = 2", "z_m = 1"), r3.Vec{X: 2, Z: 1}},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := parsed(t, spotless+test.text)
			if d.Spot != test.want {
				t.Errorf("spot %v, want %v", d.Spot, test.want)
			}
			if both := parsed(t, least+seatAt(3, 3, 1)+seatAt(3, 3.1, 1)); both.Spot != (r3.Vec{X: 2, Z: 1}) {
				t.Errorf("a spot that is given is %v", both.Spot)
			}
		})
	}
}

// Without seats, the aim round is for twelve people at the spot's distance.
func TestAllRound(t *testing.T) {
	seats := parsed(t, least+"[seats]\naim = \"round\"\n").AllSeats()
	if len(seats) != 12 || seats[0] != (design.Seat{Name: "all round 1", At: r3.Vec{X: 2, Z: 1}, Weight: 1}) || math.Abs(seats[1].At.Y-1) > 1e-12 {
		t.Errorf("%v", seats)
	}
	if seats := parsed(t, least+"[seats]\naim = \"worst\"\n").AllSeats(); len(seats) > 0 {
		t.Errorf("seats that nobody gave: %v", seats)
	}
}

// The map reaches beyond the furthest seat as beyond the spot.
func TestSeatsOnTheMap(t *testing.T) {
	if got := parsed(t, spotless+seatAt(1, 0, 0)+seatAt(0, 4, 0)).Coverage.HalfWidth; got != 6 {
		t.Errorf("half width %g", got)
	}
}

func TestSeatFaults(t *testing.T) {
	line := []string{`shape = "line"`, "count = 3", "from_m = [2, -1, 0.5]", "to_m = [2, 1, 0.5]"}
	for _, test := range []struct {
		name, text string
		kind       error
		want       string
	}{
		{"neither spot nor seat", spotless, design.ErrMissing, "a.toml: spot.x_m: missing; must be a number from -100 to 100"},
		{"a seat without a place", spotless + seat("x_m = 1\ny_m = 2"), design.ErrMissing, "a.toml:8: seat[1].z_m: missing; must be a number from -100 to 100"},
		{"a seat of no weight", spotless + seatAt(1, 1, 1, "weight = 0"), design.ErrRange, "a.toml:9: seat[1].weight = 0: must be from 0.01 to 100"},
		{"one table for seats", spotless + "[seat]\nx_m = 1\n", design.ErrType, "a.toml:8: seat = {…}: must be tables that begin with [[seat]]"},
		{"an aim that is none", least + "[seats]\naim = \"best\"\n", design.ErrRange, `a.toml:13: seats.aim = "best": must be "even", "worst", "mean" or "round"`},
		{"a head that moves a mile", least + "[seats]\nhead_mm = 1001\n", design.ErrRange, "a.toml:13: seats.head_mm = 1001: must be from 0 to 1000"},
		{"loud for seats", least + "[seats]\nloud = 0.3\n", design.ErrIdle, `a.toml:13: seats.loud: only for seats.aim = "round"; leave it out`},
		{"a line without an end", spotless + area(line[:3]...), design.ErrMissing, `a.toml:8: area[1].to_m: missing; must be three numbers from -100 to 100 in square brackets where the shape is "line"`},
		{"a line with a radius", spotless + area(append(line, "radius_m = 2")...), design.ErrIdle, `a.toml:13: area[1].radius_m: only for area[1].shape = "arc" or "ring"; leave it out`},
		{"a ring with angles", spotless + area(`shape = "ring"`, "count = 3", "radius_m = 2", "z_m = 1", "to_deg = 90"), design.ErrIdle, `a.toml:13: area[1].to_deg: only for area[1].shape = "arc"; leave it out`},
		{"an arc all round", spotless + area(`shape = "arc"`, "count = 3", "radius_m = 2", "z_m = 1", "from_deg = -180", "to_deg = 180"), design.ErrConflict,
			`a.toml:14: area[1].to_deg = 180: must be less than 360 from from_deg; a "ring" goes all the way round`},
		{"a rectangle on edge", spotless + area(`shape = "rectangle"`, "count = 3", "from_m = [2, -1, 0.5]", "to_m = [2, 1, 0.5]"), design.ErrConflict,
			"a.toml:12: area[1].to_m = [2, 1, 0.5]: must be the opposite corner of from_m, another in x and in y"},
		{"a rectangle that leans", spotless + area(`shape = "rectangle"`, "count = 3", "from_m = [2, -1, 0.5]", "to_m = [3, 1, 0.6]"), design.ErrConflict,
			"a.toml:12: area[1].to_m = [3, 1, 0.6]: must be as high as from_m: a rectangle is level"},
		{"more seats than 64", spotless + area(append(line, "count = 65")[2:]...) + "", design.ErrRange, ""},
		{"more seats than 64 in two areas", spotless + area(`shape = "line"`, "count = 64", "from_m = [2, -1, 0.5]", "to_m = [2, 1, 0.5]") + seatAt(1, 1, 1), design.ErrConflict,
			"a.toml:8: area[1]: this makes 65 seats; must be at most 64, with those of areas"},
		{"a long name", spotless + seatAt(1, 1, 1, `name = "`+strings.Repeat("a", 41)+`"`), design.ErrRange, ""},
		{"a ring through the axis, for nobody", strings.Replace(least, "x_m = 2", "x_m = 0", 1) + "[seats]\naim = \"round\"\n", design.ErrConflict,
			`a.toml:13: seats.aim = "round": seat "all round 2" is at the place of seat "all round 1"; must be 1 mm away or more`},
		{"a seat in the body", spotless + seatAt(1, 1, 1) + seatAt(0.03, 0, 0.04, `name = "mat"`), design.ErrConflict,
			`a.toml:14: seat[2].x_m = 0.03: seat "mat" is 0.05 m from the body's centre and so inside the body; must be further than body.radius_mm, 100 mm`},
		{"an area through the body", spotless + area(`shape = "line"`, "count = 3", `name = "row"`, "from_m = [2, 0, 0]", "to_m = [-2, 0, 0]"), design.ErrConflict,
			`a.toml:8: area[1]: seat "row 2" is 0 m from the body's centre and so inside the body; must be further than body.radius_mm, 100 mm`},
		{"two seats at one place", spotless + seatAt(1, 1, 1) + seatAt(1, 1, 1.0009), design.ErrConflict,
			`a.toml:13: seat[2].x_m = 1: seat "seat 2" is at the place of seat "seat 1"; must be 1 mm away or more`},
		{"two seats of one name", spotless + seatAt(1, 1, 1, `name = "a"`) + seatAt(1, 2, 1, `name = "a"`), design.ErrConflict, `a.toml:14: seat[2].name = "a": seat 1 is called "a" too; must be another name`},
		{"a name that another goes by", spotless + seatAt(1, 1, 1, `name = "seat 2"`) + seatAt(1, 2, 1), design.ErrConflict, `a.toml:13: seat[2]: seat 1 is called "seat 2" too; must be another name`},
		{"all round two bodies", least + "[seats]\naim = \"round\"\n[[body_at]]\nx_m = 0\ny_m = 3\nz_m = 0\n", design.ErrConflict,
			`a.toml:13: seats.aim = "round": must be "even", "worst" or "mean" where there are [[body_at]] tables: nobody sits all round several bodies`},
		{"one seat beside a spot", least + seatAt(1, 1, 1), design.ErrConflict, "a.toml:8: spot: the one seat is another place; must be left out where there is one seat, which is the spot, or give more seats"},
		{"a seat in the next room", spotless + box("size_m = [4, 4, 4]", "body_at_m = [1, 1, 1]") + seatAt(1, 1, 1) + seatAt(3.5, 1, 1), design.ErrConflict, "a.toml:17: seat[2].x_m = 3.5: must be from -1 to 3, inside the room"},
		{"a row in the next room", spotless + box("size_m = [3, 4, 4]", "body_at_m = [1.5, 1, 1]") + area(line...), design.ErrConflict, "a.toml:12: area[1]: must be from -1.5 to 1.5, inside the room"},
		{"a woofer at a seat", spotless + seatAt(1, 1, 1) + seatAt(1, 0.05, 1) + "[woofer]\nx_m = 1\ny_m = 0\nz_m = 1\ncrossover_hz = 300\n", design.ErrConflict,
			`a.toml:17: woofer.x_m = 1: must be such that the woofer is 0.1 m or more from seat "seat 2", not 0.05 m`},
	} {
		t.Run(test.name, func(t *testing.T) {
			_, err := design.Parse("a.toml", []byte(test.text))
			if !errors.Is(err, test.kind) && !(test.kind == design.ErrIdle && errors.Is(err, design.ErrConflict)) {
				t.Errorf("kind %v", errors.Unwrap(err))
			}
			if test.want != "" && (err == nil || err.Error() != test.want) {
				t.Errorf("\n got %v\nwant %s", err, test.want)
			}
		})
	}
}

// Two seats that a tape tells apart are two; 64 are not too many.
func TestSeatsThatAreFine(t *testing.T) {
	for name, text := range map[string]string{
		"two millimetres apart": spotless + seatAt(1, 1, 1) + seatAt(1, 1, 1.0011),
		"64 in an area":         spotless + area(`shape = "line"`, "count = 64", "from_m = [2, -1, 0.5]", "to_m = [2, 1, 0.5]"),
		"a spot at its seat":    least + seatAt(2, 0, 1),
		"a spot beside seats":   least + seatAt(1, 0, 1) + seatAt(1, 1, 1),
		"longest name":          least + seatAt(2, 0, 1, `name = "`+strings.Repeat("a", 40)+`"`),
	} {
		if _, err := design.Parse("a.toml", []byte(text)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}
