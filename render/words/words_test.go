package words

import (
	"math"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/layout/body"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// says fails where a text lacks a part that it must have, or has one that it must not.
func says(t *testing.T, text string, has, not []string) {
	t.Helper()
	for _, part := range has {
		if !strings.Contains(text, part) {
			t.Errorf("no %q in %q", part, text)
		}
	}
	for _, part := range not {
		if strings.Contains(text, part) {
			t.Errorf("%q in %q", part, text)
		}
	}
}

func TestSentence(t *testing.T) {
	for _, c := range []struct {
		name string
		f    advice.Finding
		want string
	}{
		{"with a cure", advice.Finding{What: "too hot", Cure: "wait"}, "Too hot. Wait."},
		{"without", advice.Finding{What: "too hot"}, "Too hot."},
		{"nothing", advice.Finding{}, "."},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := Sentence(c.f); got != c.want {
				t.Errorf("says %q", got)
			}
		})
	}
}

// TestShown: seven findings at most, however many there are, and the rest counted.
func TestShown(t *testing.T) {
	for n, more := range map[int]int{0: 0, 7: 0, 8: 1, 30: 23} {
		shown, left := Shown(make([]timing.Finding, 0))
		if n > 0 {
			all := make([]timing.Finding, n)
			for i := range all {
				all[i].Fact = advice.Finding{}
			}
			shown, left = Shown(all)
		}
		if left != more || len(shown) != n-more {
			t.Errorf("of %d %d are shown and %d left", n, len(shown), left)
		}
	}
}

func TestLead(t *testing.T) {
	var got []string
	for r := advice.Note; r <= advice.Danger; r++ {
		got = append(got, Lead(r))
	}
	if d := cmp.Diff([]string{"Note", "Costs", "Take care", "Does not work", "Danger"}, got); d != "" {
		t.Error(d)
	}
}

// planned returns a plan of two drivers on two channels on a ball, as far as words need
// it.
func planned() *timing.Plan {
	a := &layout.Array{Mounts: make([]layout.Mount, 2), Body: body.Ball(0.15)}
	a.Wiring.Voltage, a.Wiring.MinimumLoad = 2.83, 4
	return &timing.Plan{Spot: timing.Spot{Array: a, SpeedOfSound: 344, Channels: make([]timing.Channel, 2)}, Banks: make([]timing.Bank, 2)}
}

func TestFound(t *testing.T) {
	for _, test := range []struct {
		name          string
		channels      int
		before, after float64
		has, not      []string
	}{
		{"both", 2, 500, 2000, []string{"As built the drivers begin to cancel at 500 Hz;\nwith the delays they do so from 2000 Hz.", "are worth 2.5 dB"}, []string{"none"}},
		{"cured", 2, 500, math.Inf(1), []string{"with the delays they do not up to 20 kHz."}, []string{"none"}},
		{"well as built", 2, math.Inf(1), math.Inf(1), []string{"Even as built the drivers do not cancel"}, []string{"none"}},
		{"one delay is no gain", 1, 252, 252, []string{"begin to cancel there at 252 Hz"}, []string{"worth", "with the delays"}},
		{"nor a loss", 1, math.Inf(1), math.Inf(1), []string{"They do not cancel there up to 20 kHz."}, []string{"worth"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := planned()
			p.Channels = p.Channels[:test.channels]
			p.Response = timing.Response{Frequency: []float64{400, 500, 4000, 4100}, Aligned: []float64{90, 1, 4, 90}, Unaligned: make([]float64, 4)}
			p.Unaligned.CombOnset, p.Aligned.CombOnset = test.before, test.after
			says(t, Found(p), test.has, test.not)
		})
	}
}

func TestInStep(t *testing.T) {
	if got := InStep(0.0049, 100e-6); got != "no place at the spot keeps the smear under 100 us" {
		t.Error(got)
	}
	if got := InStep(0.0051, 100e-6); got != "0.01 m2 round the spot keep the smear under 100 us" {
		t.Error(got)
	}
}

func TestCommon(t *testing.T) {
	p := planned()
	if p.Rounding.Common = 0.45e-6; Common(p) != "" {
		t.Errorf("half a microsecond is worth a word: %q", Common(p))
	}
	p.Rounding.Common = 0.55e-6
	says(t, Common(p), []string{"0.6 us are in every delay"}, nil)
}

func TestOutOfStep(t *testing.T) {
	rows := []timing.ProcessorRow{{Channel: 1, Cost8k: 0.1, OutOfStep: math.Inf(1)}, {Channel: 2, Cost8k: math.Inf(1), OutOfStep: 6250},
		{Channel: 3, Cost8k: math.Inf(1), OutOfStep: 7000}, {Channel: 4, Name: "woofer", Cost8k: math.Inf(1), OutOfStep: 5000}}
	says(t, OutOfStep(rows), []string{"the steps put channels 2 and 3 out of step at 8 kHz, channel 2 from 6.2 kHz on"}, nil)
	if got := OutOfStep(rows[:1]); got != "" {
		t.Error(got)
	}
}

func TestNulls(t *testing.T) {
	got := Nulls([]timing.Null{{Low: 628, High: 631, Loss: 6.6}, {Low: 800, High: 1250, Loss: 16}, {Low: 1260, High: 3150, Loss: 9}, {Low: 3160, High: 10000, Loss: 9}})
	// A stretch whose ends round to the same frequency is one place, and the reason is told once.
	const want = "near 630 Hz, 800 Hz to 10 kHz: up to 16 dB are lost because sounds arrive out of step; a boost would be spent on all of them alike and only heat the drivers"
	if got != want {
		t.Errorf("says %q, want %q", got, want)
	}
}

func TestNotBoosted(t *testing.T) {
	if got := NotBoosted(nil); got != "" {
		t.Error(got)
	}
	got := NotBoosted([]timing.Echo{{Dip: 500, Wall: "floor", Depth: 7}, {Dip: 900, Wall: "ceiling", Depth: 6}})
	if want := "Not boosted within half an octave of 500 Hz, where the echo of the floor takes 7 dB, nor of 900 Hz, where the echo of the ceiling takes 6 dB: a boost goes into the echo too, and the dip moves with the ear."; got != want {
		t.Errorf("says %q", got)
	}
}

// TestEchoes: what takes a tone is told by its wavelength (39 mm is a quarter of it at
// 2,185 Hz and 344 m/s), what only weakens it by a tenth; thicker than 200 mm, at 172 Hz, it
// is no panel any more. The place is on the surface, not at the body's centre.
func TestEchoes(t *testing.T) {
	at := r3.Vec{X: 0.29, Y: 0.06, Z: -0.05}
	for _, test := range []struct {
		name, wall      string
		dip, nearer     float64
		has, lacks      []string
		behind, toRight bool
	}{
		{"a table", "surface below", 2185, math.NaN(), []string{"With the body 100 mm higher it begins near 1089 Hz; a porous absorber weakens it from 16 mm thick (a tenth of the wavelength at 2185 Hz) and takes nearly all from 39 mm, where it is thrown back, on the table or floor, 0.29 m in front of the body's centre and 0.06 m to its left."}, []string{"NaN"}, false, false},
		{"a floor", "floor", 2185, 3000, []string{"100 mm higher it begins near 1089 Hz, lower near 3000 Hz", "on the floor, 0.29 m behind of the body's centre and 0.06 m to its right"}, nil, true, true},
		{"a ceiling", "ceiling", 2185, 3000, []string{"100 mm lower it begins near 1089 Hz, higher near 3000 Hz", "on the ceiling, 0.29 m in front of"}, nil, false, false},
		{"a front wall", "front wall", 2185, 3000, []string{"100 mm further from it it begins near 1089 Hz, closer to it near 3000 Hz", "on the front wall, 0.06 m to its left and 0.05 m down from the body's centre"}, nil, false, false},
		{"a left wall", "left wall", 2185, 3000, []string{"on the left wall, 0.29 m in front and 0.05 m down from the body's centre"}, nil, false, false},
		{"too low for a panel", "floor", 171, 300, []string{"a porous absorber would have to be 201 mm thick, a tenth of the wavelength at 171 Hz, to weaken it at all."}, []string{"thrown back"}, false, false},
		{"just not", "floor", 173, 300, []string{"weakens it from 199 mm thick"}, nil, false, false},
	} {
		t.Run(test.name, func(t *testing.T) {
			e := timing.Echo{Wall: test.wall, Dip: test.dip, Nearer: test.nearer, Further: 1089, At: at, Late: 1e-3, Extra: 0.344, Depth: 9}
			if test.behind {
				e.At.X = -e.At.X
			}
			if test.toRight {
				e.At.Y = -e.At.Y
			}
			says(t, EchoCure(e, 344), test.has, test.lacks)
			says(t, Echo(e), []string{"The " + test.wall + " sends an echo 1.00 ms late, 344 mm longer on its way, which combs from ", "by 9 dB there, whatever the delays."}, nil)
			says(t, Against(e, 344), []string{"Against the echo of the " + test.wall + ": with the body"}, nil)
		})
	}
	if got := len(Told(make([]timing.Echo, 6))); got != 2 {
		t.Errorf("%d of six echoes are told", got)
	}
}

func TestChannelCounts(t *testing.T) {
	none := math.Inf(1)
	tests := []struct {
		name         string
		smear, onset []float64
		ends         string
		want         []string
	}{
		{"one", []float64{1e-4}, []float64{400}, "more cannot be wired", []string{"One channel leaves a smear of 100 us.",
			"Its comb onset is at 400 Hz.", "The list ends at 1: more cannot be wired."}},
		{"all at once", []float64{1e-17, 2e-17}, []float64{none, none}, "", []string{
			"One channel is enough for the smear: it leaves 0 us, and no more lower it by a nanosecond.",
			"There is no comb onset even with one channel."}},
		{"two knees", []float64{2e-4, 1e-4, 9.5e-5, 9.4e-5, 9.4e-5}, []float64{400, 800, 1600, 3200, 3300}, "", []string{
			"More than 2 channels hardly pay for the smear: 2 lower it from 200 us to 100 us, and each further one gains less than 10 us, a tenth of what the second channel does.",
			"For the comb onset more than 4 hardly pay: 4 raise it from 400 Hz to 3.2 kHz, and no further one raises it by a tenth."}},
		{"wiring ends it", []float64{2e-4, 1e-4}, []float64{400, 800}, "too few drivers", []string{
			"For the smear every channel up to 2 pays: they lower it from 200 us to 100 us.",
			"For the comb onset every channel up to 2 pays: they raise it from 400 Hz to 800 Hz.",
			"The list ends at 2: too few drivers."}},
		{"the third is the best", []float64{2e-4, 2e-4, 1e-4, 1e-4}, []float64{400, 400, 400, 400}, "", []string{
			"More than 3 channels hardly pay for the smear: 3 lower it from 200 us to 100 us, and each further one gains less than 10 us, a tenth of what channel 3 does.",
			"The comb onset stays: no number of channels raises it by a tenth from 400 Hz."}},
		{"the last pays, not every one", []float64{2e-4, 1e-4, 1e-4, 1e-5}, []float64{400, 800, 800, none}, "", []string{
			"For the smear channels go on to pay up to the last, 4: they lower it from 200 us to 10 us.",
			"For the comb onset channels go on to pay up to the last, 4: they raise it from 400 Hz until there is none."}},
		{"no onset from three on", []float64{2e-4, 1e-4, 1e-5, 1e-6}, []float64{400, 800, none, none}, "", []string{
			"More than 3 channels hardly pay for the smear: 3 lower it from 200 us to 10 us, and each further one gains less than 10 us, a tenth of what the second channel does.",
			"For the comb onset more than 3 are of no use: 3 raise it from 400 Hz until there is none."}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if diff := cmp.Diff(test.want, channelCounts(test.smear, test.onset, test.ends)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestCountsEnd says why there are not as many channels as drivers.
func TestCountsEnd(t *testing.T) {
	counts := func(n int) []timing.Count { return make([]timing.Count, n) }
	for _, test := range []struct {
		name    string
		drivers int
		ohm     float64
		counts  int
		want    string
	}{
		{"none", 2, 1, 0, "No number of channels can be wired at or above the amplifier's 4 ohm."},
		{"all", 2, 8, 2, ""},
		{"the load", 4, 3, 2, "The list ends at 2: with more, a channel has fewer than 2 drivers and loads the amplifier below its 4 ohm."},
		{"too many", 200, 8, timing.MostCounts, "The list ends at 128: more were not looked at."},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := planned()
			p.Array.Mounts, p.Array.Driver.DCOhm = make([]layout.Mount, test.drivers), test.ohm
			p.Arrivals = make([]timing.Arrival, test.drivers)
			p.Counts = counts(test.counts)
			for i := range p.Counts {
				p.Counts[i] = timing.Count{Channels: i + 1, CombOnset: math.Inf(1)}
			}
			got := Counts(p)
			if test.want == "" && strings.Contains(got, "ends at") || !strings.HasSuffix(got, test.want) {
				t.Errorf("says %q", got)
			}
		})
	}
}

// TestProtection: which high-pass to set and how loud it may be.
func TestProtection(t *testing.T) {
	for _, test := range []struct {
		name         string
		level, hours float64
		corner       float64
		least        float64
		want, not    string
	}{
		{"quiet", 70, math.Inf(1), 0, 0, "comes to 70 dB(A) at the spot.", "NIOSH"},
		{"below the limit: no hours longer than a day at work", 82, 16, 0, 0, "below the 85 dB(A) that NIOSH allows grown-ups for eight hours", "16"},
		{"no day has 25 hours", 80, 25.4, 0, 0, "children need it quieter", "25"},
		{"loud: the time is in the finding", 100, 0.25, 0, 0, "comes to 100 dB(A) at the spot.", "NIOSH"},
		{"no sensitivity", math.NaN(), math.NaN(), 0, 0, "not known for want of sensitivity_db", "dB(A)"},
		{"no high-pass", 70, math.Inf(1), 0, 0, "High-pass: none is needed to keep the cones within 1.5 mm at 1.42 V.", "not known"},
		{"high-pass", 70, math.Inf(1), 150, 0, "High-pass to set: Butterworth high-pass of order 4 at 150 Hz.", "none is needed"},
		{"not known", 70, math.Inf(1), 0, math.NaN(), "High-pass: not known for want of fs_hz", "none is needed"},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := planned()
			p.Protection = timing.Protection{Family: "butterworth", Order: 4, Corner: test.corner, Least: test.least, Volt: 1.415, Xmax: 0.0015}
			p.Maximum = timing.Maximum{Noise: test.level, Hours: test.hours}
			says(t, HighPass(p)+" "+Noise(p), []string{test.want}, []string{test.not})
		})
	}
	p := planned()
	p.Array.Woofer.Present = true
	says(t, Noise(p), []string{"at the spot, the woofer with it."}, nil)
}

// TestVoltAndLimit: 2.83 V is called that, and an amplifier that the design describes by
// what it gives, with what keeps the array from more.
func TestVoltAndLimit(t *testing.T) {
	for _, test := range []struct {
		name     string
		wiring   layout.Wiring
		stands   float64
		travel   bool
		volt     string
		has, not []string
	}{
		{"none", layout.Wiring{Voltage: 2.83}, 2, false, "2.83 V (RMS)", nil, []string{"limit"}},
		{"volts", layout.Wiring{Voltage: 4, HasAmplifier: true}, 2, false, "4 V (RMS), the amplifier's full output,",
			[]string{"Each driver then gets up to 2 V and 0.56 W of the 2 W that it stands long: the amplifier's voltage is the limit."}, nil},
		{"watts", layout.Wiring{Voltage: 14.142, HasAmplifier: true, Watt: 50, IntoOhm: 4}, 0.5, false, "14.1 V (RMS), the full output of an amplifier of 50 W into 4 ohm,",
			[]string{"up to 2 V and 0.56 W, and stands 0.5 W long: the drivers are the limit, at 14.1 V from the amplifier."}, nil},
		{"travel", layout.Wiring{Voltage: 4, HasAmplifier: true}, 0, true, "4 V (RMS), the amplifier's full output,",
			[]string{"0.56 W: the amplifier's voltage is the limit, and for the lowest tones the cones' travel."}, []string{"stands"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := planned()
			p.Array.Wiring, p.Array.Driver.PowerHandling, p.Array.Driver.DCOhm = test.wiring, test.stands, 8
			p.Banks[1] = timing.Bank{DriverVolt: 2, DriverWatt: 0.56}
			if test.travel {
				p.Maximum.Levels = []timing.MaxLevel{{By: 1}, {By: 0}, {By: 2}}
			}
			if got := Volt(p); got != test.volt {
				t.Errorf("says %q", got)
			}
			says(t, Limit(p), test.has, test.not)
		})
	}
}

// TestWire: 10 m of 0.75 mm2 are 0.46 ohm (IEC 60028); 2.5 mm2 take off less than 0.3 dB of
// 4.73 ohm, for 1 ohm there is none.
func TestWire(t *testing.T) {
	for _, test := range []struct {
		name   string
		length float64
		ohm    float64
		has    []string
	}{
		{"thick enough", 10, 4.733, []string{"10 m of 0.75 mm2 to the body is 0.46 ohm out and back and takes up to 0.81 dB off; 2.5 mm2 (IEC 60228) or gauge 14 (ASTM B258) keeps it under 0.3 dB."}},
		{"too far", 100, 1, []string{"; no wire of up to 16 mm2 keeps that under 0.3 dB: come nearer."}},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := planned()
			if got := Wire(p); got != "" {
				t.Errorf("no wire, and yet %q", got)
			}
			p.Array.Wiring.WireLength, p.Array.Wiring.WireSection = test.length, 0.75e-6
			for i := range p.Channels {
				p.Channels[i].DCOhm, p.Banks[i].WireLoss = test.ohm, 0.81
			}
			says(t, Wire(p), test.has, nil)
		})
	}
}

func TestFront(t *testing.T) {
	p := planned()
	if got := Front(p); got != "" {
		t.Error(got)
	}
	p.Front = []timing.Strung{{Rule: true}, {Chosen: true}}
	says(t, Front(p), []string{"The best splits into 2 channels", "more than 1 dB against", "as loud within 1 dB", "; longest_string in the design overrides it."}, nil)
	p.Front[0].Chosen = true
	says(t, Front(p), []string{"the least smear."}, []string{"overrides"})
}

// TestNotes: what the model takes the array for.
func TestNotes(t *testing.T) {
	twelve, err := body.Platonic("dodecahedron", 0.15)
	if err != nil {
		t.Fatal(err)
	}
	raised := *twelve
	raised.BallCentre = r3.Vec{Z: 0.02}
	half := *twelve
	half.IsCut = true
	for _, test := range []struct {
		name     string
		with     func(*layout.Array)
		has, not []string
	}{
		{"points have none", func(a *layout.Array) { a.Timing.Model = "point" }, nil, []string{"."}},
		{"a ball", func(*layout.Array) {}, []string{"taken for a rigid ball of 150 mm radius, of the whole body's volume."}, []string{"off by"}},
		{"flat faces", func(a *layout.Array) { a.Body = twelve }, []string{"Since the body's faces are flat, the level of one driver can be off by 0.", "dB at 500 Hz", "dB at 1 kHz", "dB at 2 kHz", "dB at 4 kHz; most near its front", `model = "body" under [timing] knows better`}, []string{"8 kHz"}},
		{"cut and free", func(a *layout.Array) { a.Body = &raised }, []string{"its centre 20 mm over the uncut body's", "Since the body is cut and stands free"}, nil},
		{"a room", func(a *layout.Array) { a.Room.Present, a.Room.Order = true, 1 }, []string{"mirror the sound up to 1 time; polars"}, nil},
		{"half a ball", func(a *layout.Array) { a.Surface.Present, a.Body = true, &half }, []string{"exact for half a ball"}, nil},
		{"lifted", func(a *layout.Array) { a.Surface.Present, a.Surface.Height = true, -0.3 }, []string{"near, not exact"}, nil},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := planned()
			p.Array.Timing.Model, p.Array.Timing.SolveTo = "sphere", 4000
			test.with(p.Array)
			says(t, strings.Join(Notes(p), " "), test.has, test.not)
		})
	}
}

// TestSentences: the page leaves out what stands elsewhere on it.
func TestSentences(t *testing.T) {
	p := planned()
	p.Array.Timing.Model = "point"
	p.Response = timing.Response{Frequency: []float64{500}, Aligned: []float64{3}, Unaligned: []float64{1}}
	p.Counts = []timing.Count{{Channels: 1, CombOnset: math.Inf(1)}, {Channels: 2, CombOnset: math.Inf(1)}}
	p.Maximum.Noise, p.Maximum.Hours = 70, math.Inf(1)
	all := func() string { return strings.Join(Sentences(p), "\n") }
	says(t, all(), []string{"are worth 2.0 dB at the spot.\nOne channel is enough", "nanosecond.\nThere is no comb onset even with one channel.\nHigh-pass: none", "\nPink noise at 2.83 V (RMS)"}, nil)
	p.Protection.Corner = 100
	p.Warnings = []timing.Finding{{Code: "hearing", Fact: timing.HearingRisk{ByNoise: true}}}
	says(t, all(), []string{"nanosecond"}, []string{"High-pass", "Pink noise"})
	p.Warnings[0].Fact = timing.HearingRisk{}
	says(t, all(), []string{"Pink noise"}, nil)
}

// TestSpatial: how uneven it is over all directions, and that silence has no figure.
func TestSpatial(t *testing.T) {
	of := func(built, aligned float64) string {
		return Spatial(timing.Spatial{AsBuilt: timing.Deviations{Mean: built}, Aligned: timing.Deviations{Mean: aligned}})
	}
	if got := of(1.96, 4.24); !strings.HasSuffix(got, "from 100 Hz to 4 kHz 2.0 dB as built, 4.2 dB with the delays") {
		t.Errorf("says %q", got)
	}
	for _, none := range []string{of(math.Inf(1), math.Inf(1)), of(math.NaN(), 2)} {
		if !strings.HasSuffix(none, "; there is none where some directions are silent") {
			t.Errorf("says %q", none)
		}
	}
}
