package design

import (
	"maps"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// Who begins a design sees every key there is and no other, and what a key is that is
// left out.
func TestStarterShowsEveryKey(t *testing.T) {
	shown := map[string]entry{}
	for _, n := range findOutline([]byte(lantern), true) {
		shown[anyRow.ReplaceAllString(n.path, "")] = n
	}
	tables := defaults().tables()
	for _, table := range unfolded(tables) {
		if inner := strings.HasPrefix(table.Name, "search."); inner { // of which it has some
			delete(shown, table.Name)
			for _, r := range table.Rows() {
				path := join(table.Name, r.Name)
				maps.DeleteFunc(shown, func(p string, _ entry) bool { return p == path || under(p, path) })
			}
		}
	}
	for _, table := range tables {
		lacks := slices.ContainsFunc(table.Rows(), func(r Row) bool { return r.Default == needed })
		if !table.Optional && lacks != table.Needs {
			t.Errorf("[%s] needs keys: %t, and says %t", table.Name, lacks, table.Needs)
		}
		if _, ok := shown[table.Name]; !ok && table.Name != "" {
			t.Errorf("[%s] is not in the starter", table.Name)
		}
		delete(shown, table.Name)
		for _, r := range table.Rows() {
			path := join(table.Name, r.Name)
			n, ok := shown[path]
			if !ok {
				t.Errorf("%s is not in the starter", path)
				continue
			}
			if text := lantern[n.value:n.to]; !n.live && r.Default != nil && r.Default != needed && text != Literal(r.value()) {
				t.Errorf("the starter says %s = %s where none is given, and that is %s", path, text, Literal(r.value()))
			}
			delete(shown, path)
		}
	}
	for path := range shown {
		t.Errorf("%s is in the starter and no key", path)
	}
}

// The room that the starter shows in remarks is a good one.
func TestStarterRoom(t *testing.T) {
	text := string(DefaultTOML())
	from, to := strings.Index(text, "[surface]\n"), strings.Index(text, "# [room]\n")
	if from < 0 || to < from {
		t.Fatal("no surface or no room")
	}
	room, rest, _ := strings.Cut(text[to:], "\n\n")
	d, err := Parse("a.toml", []byte(text[:from]+strings.ReplaceAll("\n"+room, "\n# ", "\n")+"\n\n"+rest))
	if err != nil {
		t.Fatal(err)
	}
	if !d.Room.Present || d.Surface.Present {
		t.Errorf("room %+v, surface %+v", d.Room, d.Surface)
	}
}

// So is the woofer.
func TestStarterWoofer(t *testing.T) {
	head, rest, found := strings.Cut(string(DefaultTOML()), "# [woofer]\n")
	if !found {
		t.Fatal("no woofer")
	}
	woofer, rest, _ := strings.Cut(rest, "\n\n")
	d, err := Parse("a.toml", []byte(head+"[woofer]"+strings.ReplaceAll("\n"+woofer, "\n# ", "\n")+"\n\n"+rest))
	if err != nil {
		t.Fatal(err)
	}
	if w := d.Woofer; !w.Present || w.Order != 4 || w.Sensitivity == 0 {
		t.Errorf("woofer %+v", w)
	}
}

// The seats that it shows in remarks are good, with the spot and in its place, and so are
// those of its area.
func TestStarterSeats(t *testing.T) {
	text := string(DefaultTOML())
	begin, end := strings.Index(text, "[spot]\n"), strings.Index(text, "# A large flat surface")
	live := strings.NewReplacer("\n# [", "\n[")
	keys := regexp.MustCompile(`(?m)^# ([a-z_]+ = )`)
	shown := keys.ReplaceAllString(live.Replace(text[begin:end]), "$1")
	shown = regexp.MustCompile(`(?m)^(loud|from_m|to_m) = .*\n`).ReplaceAllString(shown, "") // of another aim and another shape
	for name, part := range map[string]string{"with the spot": shown, "in its place": shown[strings.Index(shown, "# Or where"):]} {
		d, err := Parse("a.toml", []byte(text[:begin]+part+text[end:]))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if seats := d.AllSeats(); len(seats) != 7 || seats[1].Name != "cushion by the door" || seats[4].Name != "cushion 3" || seats[6].Weight != 1 {
			t.Errorf("%s: %+v", name, seats)
		}
	}
}

// The starter for seats has five cushions 2 m round the lantern and no spot of its own, and
// all else as the starter has it, letter by letter but for marks of remarks.
func TestSeatsTOML(t *testing.T) {
	d, err := Parse("seats.toml", SeatsTOML())
	if err != nil {
		t.Fatal(err)
	}
	seats := d.AllSeats()
	if len(seats) != 5 || seats[0].Name != "cushion 1" || seats[2].At != d.Spot || math.Abs(d.Spot.X-2) > 1e-12 || d.Spot.Z != 0.6 || d.Seating.Aim != "even" {
		t.Errorf("spot %v, seats %+v", d.Spot, seats)
	}
	bare := func(text []byte) string {
		lines := strings.Split(string(text), "\n")
		for i, l := range lines {
			lines[i] = strings.Join(strings.Fields(strings.TrimPrefix(l, "# ")), " ")
		}
		return strings.Join(lines, "\n")
	}
	if bare(SeatsTOML()) != bare(DefaultTOML()) {
		t.Errorf("another text:\n%s", SeatsTOML())
	}
}
