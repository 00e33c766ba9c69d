package document_test

import (
	"fmt"
	"strings"
	"testing"

	"pappus/layout/design"
	"pappus/render/document"
	"pappus/testdata/planned"
)

// TestTerminals: each channel of a body has its plus and its minus in the body's row, one after the
// other, with the leads of all its strings there, and none of another's.
func TestTerminals(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*design.Design)
		rows   []int // terminals of each body
	}{
		"the demo":        {nil, []int{16}},
		"one driver each": {func(d *design.Design) { d.Wiring.Channels = 0 }, []int{78}},
		"two bodies with their channels": {func(d *design.Design) {
			d.Copies = []design.Copy{{Channels: design.OwnChannels}}
			d.Copies[0].At.Y = -1.5
		}, []int{16, 16}},
		"two bodies that share all eight": {func(d *design.Design) {
			d.Copies = []design.Copy{{Channels: design.SharedChannels}}
			d.Copies[0].At.Y = -1.5
		}, []int{16, 16}},
	} {
		b := document.OfBook(planned.Demo(t, c.change))
		leads := map[string]int{}
		for _, x := range b.Terminals {
			c.rows[x.Body]--
			for _, lead := range strings.Split(strings.TrimSuffix(strings.TrimSuffix(x.Leads, " red"), " black"), ", ") {
				leads[fmt.Sprint(x.Body, lead, x.Sign)]++
			}
			if plus := x.Number%2 == 1; plus != (x.Sign == "+") || plus != strings.HasSuffix(x.Leads, " red") || x.Number < 1 {
				t.Errorf("%s: %+v", name, x)
			}
		}
		for i, left := range c.rows {
			if left != 0 {
				t.Errorf("%s: %d terminals lack on body %d", name, left, i)
			}
		}
		for _, s := range b.Strings {
			for _, sign := range []string{"+", "−"} {
				if n := leads[fmt.Sprint(s.Body, s.Name, sign)]; n != 1 {
					t.Errorf("%s: string %s of body %d is %d times at %s", name, s.Name, s.Body, n, sign)
				}
			}
		}
		if len(leads) != 2*len(b.Strings) {
			t.Errorf("%s: %d leads for %d strings", name, len(leads), len(b.Strings))
		}
	}
}

// TestBookByHand: the built-in design's string 1.1 has three pieces of 270, 210 and 270 mm of 0.5 mm2, so
// 0.75 m by 1/58 ohm mm2/m (IEC 60028) = 0.0259 ohm, less than the 0.0270 that IEC 60228 allows (36.0
// ohm/km at 20 C for 0.5 mm2, table 1; from memory). Into 14.2 ohm that is 20 lg(1 + 0.0259/14.2) =
// 0.016 dB; two drivers of 7.1 ohm within 10 percent read 12.8 to 15.6 ohm, three such strings 4.3 to
// 5.2, two 6.4 to 7.8. 5 m of cable of 0.75 mm2 have 10/58/0.75 = 0.23 ohm (IEC 60228, class 5: 26.0 ohm/km
// at most, 0.26), which take 20 lg(1 + 0.2299/(14.226/3)) = 0.41 dB off channel 1, whose load is the least.
func TestBookByHand(t *testing.T) {
	p := planned.Demo(t, func(d *design.Design) { d.Wiring.WireLength = 5 })
	b := document.OfBook(p)
	one := b.Strings[0]
	var lengths []float64
	for _, p := range one.Pieces {
		lengths = append(lengths, float64(p.Length))
	}
	if cable := "5 m of two cores of 0.75 mm2 (gauge 18 or thicker) for each channel: 0.23 ohm out and back, which take 0.41 dB at most"; !strings.Contains(b.Copper, cable) {
		t.Errorf("%q is not in %q", cable, b.Copper)
	}
	for _, c := range []struct{ got, want string }{
		{one.Name, "1.1"},
		{fmt.Sprint(lengths), "[270 210 270]"},
		{one.Takes, "0.8 m: 0.03 ohm, 0.02 dB"},
		{b.Alone[0].Ohm, "12.8 to 15.6"},
		{b.Alone[0].Else, "no reading: a joint is open or a coil broken; more: a poor joint; 6.4 to 7.8: one driver is shorted or left out"},
		{b.Whole[0].Ohm, "4.3 to 5.2"},
		{b.Whole[0].Else, "6.4 to 7.8 or more: a string is not joined; less than the least: two leads touch"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
