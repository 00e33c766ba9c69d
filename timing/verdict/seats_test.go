package verdict_test

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"math/cmplx"
	"slices"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"
	"pappus/timing/rehearsal"
	"pappus/timing/seats"
	"pappus/timing/sweep"
	"pappus/timing/verdict"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// seated is a plan with three seats, which it was not made for: only its thirds count.
func seated(t *testing.T) *timing.Plan {
	t.Helper()
	p := planOf(t, strings.Replace(string(design.DefaultTOML()), "\nchannels = 8", "", 1)+byHand)
	_, thirds, _ := seats.Frequencies()
	p.Seating = &timing.Seating{Thirds: thirds}
	for i, degrees := range []float64{-60, 0, 60} {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		p.Array.Seats = append(p.Array.Seats, layout.Seat{Name: []string{"left", "middle", "right"}[i], At: r3.Vec{X: 2 * cos, Y: 2 * sin, Z: 0.6}, Weight: 1})
	}
	p.Array.Seating.Head = 0.15 // which no microphone moves
	return p
}

// still is what the seats of a plan lose.
func still(t *testing.T, p *timing.Plan, c timing.Case) seats.Figures {
	t.Helper()
	f, err := p.Still(c)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestSeats: what was built as planned loses what was planned; a channel that is turned round
// loses more by as much as the model says, in the mean where the channels were recorded, too;
// without a wire one recording's gain does not count.
func TestSeats(t *testing.T) {
	p := seated(t)
	s := brief(t, 2)
	record := func(set rehearsal.Setting) takes {
		recorded, stage := takes{}, rehearsal.NewStage(p)
		one := func(name string, g *rehearsal.Stage, channel int) {
			set.Channel, set.Seed = channel, set.Seed+1
			var err error
			if recorded[name+".wav"], err = g.Record(s, set); err != nil {
				t.Fatal(err)
			}
		}
		for c := range p.Channels {
			one(sweep.RecordedChannelName(c+1, 1), stage, c)
		}
		for i, seat := range p.Array.Seats {
			g, err := stage.At(seat.At)
			if err != nil {
				t.Fatal(err)
			}
			one(sweep.RecordedSeatName(i+1), g, rehearsal.All)
		}
		return recorded
	}
	usual := rehearsal.Setting{Case: timing.Aligned, Rate: rate, Drift: 40, SNR: 60, Latency: 0.02}
	turned := usual
	turned.Reversed = []int{3}
	dead := usual
	dead.DeadStrings = [][2]int{{1, 0}, {1, 1}}
	well, wrong, without := record(usual), record(turned), record(dead)
	more, silent := make([][]float64, 3), make([][]float64, 3) // dB that is lost by it, by seat and third
	for i, seat := range p.Array.Seats {
		there, err := p.At(seat.At)
		if err != nil {
			t.Fatal(err)
		}
		more[i], silent[i] = changed(there, 3, -1, p.Seating.Thirds), changed(there, 1, 0, p.Seating.Thirds)
	}
	planned := still(t, p, timing.Aligned).Band
	seatsOnly := func(k takes) {
		maps.DeleteFunc(k, func(name string, _ recording.Take) bool { return !strings.HasPrefix(name, "seat") })
	}
	for _, test := range []struct {
		name    string
		from    takes
		change  func(k takes)
		more    [][]float64 // nil: nothing
		own     bool
		wired   bool
		within  float64 // dB, of a seat's loss
		heard   []int
		faults  []string
		gated   bool
		furtive bool // the mean of what is lost is taken to be as planned
	}{
		{"as planned", well, func(takes) {}, nil, true, true, 0.1, []int{0, 1, 2}, nil, false, false},
		{"as planned, gated", well, func(takes) {}, nil, true, true, 0.1, []int{0, 1, 2}, nil, true, false},
		{"seats only", well, seatsOnly, nil, false, true, 0.1, []int{0, 1, 2}, nil, false, true},
		{"two of three", well, func(k takes) { seatsOnly(k); delete(k, "seat_2.wav") }, nil, false, true, 0.1, []int{0, 2}, nil, false, true},
		{"louder, without a wire", well, func(k takes) {
			for name, x := range k {
				x.Reference = nil
				if name == "seat_1.wav" {
					x.Samples = slices.Clone(x.Samples)
					for i := range x.Samples {
						x.Samples[i] *= 2
					}
				}
				k[name] = x
			}
		}, nil, false, false, 0.1, []int{0, 1, 2}, nil, false, true},
		{"one turned round", wrong, func(takes) {}, more, true, true, 0.3, []int{0, 1, 2}, []string{"reversed [4]"}, false, false},
		{"one turned round, seats only", wrong, seatsOnly, more, false, true, 0.3, []int{0, 1, 2}, []string{"seems reversed [4]"}, false, true},
		{"one silent, seats only", without, seatsOnly, silent, false, true, 0.3, []int{0, 1, 2}, []string{"seems silent [2]"}, false, true},
		{"heard at a seat", wrong, func(k takes) {
			for c := range p.Channels {
				name := sweep.RecordedChannelName(c+1, 1) + ".wav"
				k["seat_3_"+name] = k[name] // the spot is no great way from it
				delete(k, name)
			}
		}, more, false, true, 0.3, []int{0, 1, 2}, []string{"reversed [4] at right"}, false, true},
	} {
		t.Run(test.name, func(t *testing.T) {
			k := maps.Clone(test.from)
			test.change(k)
			f, err := verdict.Takes{Sweep: s, Read: k.wired, Level: verdict.LevelSetting{Case: timing.Aligned, Gated: test.gated}}.Judge(p)
			if err != nil {
				t.Fatal(err)
			}
			v := f.Seats
			if v == nil || v.OwnMean != test.own || v.Wired != test.wired || len(v.Thirds) != len(p.Seating.Thirds) {
				t.Fatalf("%+v", v)
			}
			var told []string
			for _, fault := range f.Faults {
				if strings.Contains("reversed seems silent", string(fault.Code)) || fault.Code == verdict.SeemsReversed {
					at := ""
					if fault.Seat != "" {
						at = " at " + fault.Seat
					}
					told = append(told, fmt.Sprint(fault.Code, " ", fault.Channels, at))
				}
			}
			if diff := cmp.Diff(test.faults, told); diff != "" {
				t.Error(diff)
			}
			var want [][]float64
			var heard []int
			for _, h := range v.Heard {
				heard = append(heard, h.Index)
				want = append(want, slices.Clone(planned[h.Index]))
				for b := range want[len(want)-1] {
					if test.more != nil {
						want[len(want)-1][b] += test.more[h.Index][b]
					}
				}
			}
			if !slices.Equal(heard, test.heard) {
				t.Fatalf("heard at %v", heard)
			}
			if test.furtive {
				for b := range v.Thirds {
					mean := 0.0
					for i, h := range v.Heard {
						mean += (want[i][b] - planned[h.Index][b]) / float64(len(v.Heard))
					}
					for i := range v.Heard {
						want[i][b] -= mean
					}
				}
			}
			expect := seats.OfBands(want, v.Thirds, []float64{1, 1, 1}[:len(want)])
			for i, h := range v.Heard {
				if off := v.Measured.Seat[i] - expect.Seat[i]; math.Abs(off) > test.within {
					t.Errorf("%s: %.2f dB lost, want %.2f", h.Name, v.Measured.Seat[i], expect.Seat[i])
				}
				if test.more == nil && math.Abs(v.Measured.Seat[i]-v.Planned.Seat[i]) > verdict.Expanded*h.Error {
					t.Errorf("%s: off by %.2f dB, with an error of %.2f", h.Name, v.Measured.Seat[i]-v.Planned.Seat[i], h.Error)
				}
			}
			if math.Abs(v.Measured.Mean-expect.Mean) > test.within || math.Abs(v.Measured.Between-expect.Between) > test.within {
				t.Errorf("mean %.2f, between %.2f; want %.2f, %.2f", v.Measured.Mean, v.Measured.Between, expect.Mean, expect.Between)
			}
		})
	}
}

// TestSeatsOtherCase: recordings without delays are held against the plan without them; said to
// be with them they are told of, and with channels that tell it first nothing is judged. A wire
// of another level is told of, too.
func TestSeatsOtherCase(t *testing.T) {
	p := seated(t)
	var err error
	if p, err = p.At(p.Array.Seats[1].At); err != nil {
		t.Fatal(err)
	}
	s := brief(t, 2)
	k, stage := takes{}, rehearsal.NewStage(p)
	set := rehearsal.Setting{Case: timing.AsBuilt, Channel: rehearsal.All, Rate: rate, SNR: 60, Latency: 0.02}
	for i, seat := range p.Array.Seats {
		g, err := stage.At(seat.At)
		if err != nil {
			t.Fatal(err)
		}
		if k[sweep.RecordedSeatName(i+1)+".wav"], err = g.Record(s, set); err != nil {
			t.Fatal(err)
		}
	}
	with := maps.Clone(k)
	for c := range p.Channels {
		set.Channel = c
		if with[sweep.RecordedChannelName(c+1, 1)+".wav"], err = stage.Record(s, set); err != nil {
			t.Fatal(err)
		}
	}
	louder := maps.Clone(k)
	wire := louder["seat_2.wav"]
	wire.Reference = slices.Clone(wire.Reference)
	for i := range wire.Reference {
		wire.Reference[i] *= 1.2 // 1.6 dB
	}
	louder["seat_2.wav"] = wire
	_, err = verdict.Takes{Sweep: s, Read: takes{"seat_1.wav": k["seat_1.wav"]}.wired, Level: verdict.LevelSetting{Case: timing.AsBuilt}}.Judge(p)
	if !errors.Is(err, verdict.ErrNone) || !strings.Contains(err.Error(), "but one at a seat") {
		t.Errorf("one alone: %v", err)
	}
	alone := takes{"seat_1.wav": k["seat_1.wav"], "all.wav": k["seat_2.wav"]}
	p.Array.Spot.X += 0.01 // no seat is there
	middle := *p
	a := *p.Array
	middle.Array, a.Spot.X = &a, a.Seats[1].At.X
	atSpot := takes{"seat_1.wav": k["seat_1.wav"], "seat_3.wav": k["seat_3.wav"], "all.wav": k["seat_2.wav"]}
	for _, test := range []struct {
		name   string
		from   takes
		played timing.Case
		told   []verdict.Code // of faults and notes
		judged bool
	}{
		{"as said", k, timing.AsBuilt, nil, true},
		{"one alone", alone, timing.AsBuilt, []verdict.Code{verdict.SeatAlone}, false},
		{"the middle one at the spot", atSpot, timing.AsBuilt, nil, true},
		{"another wire", louder, timing.AsBuilt, []verdict.Code{verdict.SeatWireLevel}, true},
		{"the other way", k, timing.Aligned, []verdict.Code{verdict.SeatsOtherCase}, true},
		{"told by the channels", with, timing.Aligned, []verdict.Code{verdict.NoDelaysSet, verdict.LevelUnjudged}, false},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := p
			if test.name == "the middle one at the spot" {
				p = &middle
			}
			f, err := verdict.Takes{Sweep: s, Read: test.from.wired, Level: verdict.LevelSetting{Case: test.played}}.Judge(p)
			if err != nil {
				t.Fatal(err)
			}
			var told []verdict.Code
			for _, x := range slices.Concat(f.Faults, f.Notes) {
				told = append(told, x.Code)
			}
			if diff := cmp.Diff(test.told, told); diff != "" {
				t.Error(diff)
			}
			if (f.Seats != nil) != test.judged {
				t.Fatalf("%+v", f.Seats)
			}
			if want := still(t, p, test.played); test.judged && (len(f.Seats.Heard) != 3 || math.Abs(f.Seats.Planned.Worst-want.Worst) > 1e-9) {
				t.Errorf("heard at %d, planned %.2f dB, want %.2f", len(f.Seats.Heard), f.Seats.Planned.Worst, want.Worst)
			}
		})
	}
}

// TestSeatNames: recordings at seats are parts of a set, but not at seats that there are not.
func TestSeatNames(t *testing.T) {
	p := seated(t)
	for name, want := range map[string]bool{"SEAT_2.WAV": true, "seat_3_channel_1.wav": true, "seat_4.wav": false, "seat.wav": false} {
		if verdict.IsPart(p, name) != want {
			t.Errorf("%s: %v", name, !want)
		}
	}
}

// wired is read, but a recording without a reference has one channel.
func (k takes) wired(path string) (int, [][]float64, error) {
	hz, channels, err := k.read(path)
	if err == nil && channels[1] == nil {
		channels = channels[:1]
	}
	return hz, channels, err
}

// changed returns by how much in dB each third is lower at a plan's spot with a gain of a
// channel.
func changed(p *timing.Plan, channel int, gain complex128, thirds []float64) []float64 {
	const each = 64
	frequency := band.Frequencies(thirds, 3, each)
	right, wrong := make([]float64, len(thirds)), make([]float64, len(thirds))
	given := p.StringTransfers(timing.Aligned, frequency)
	for f := range frequency {
		var a, b complex128
		for c, strings := range given {
			for _, one := range strings {
				a += one[f]
				if c == channel {
					b += gain * one[f]
				} else {
					b += one[f]
				}
			}
		}
		right[f/each] += cmplx.Abs(a) * cmplx.Abs(a)
		wrong[f/each] += cmplx.Abs(b) * cmplx.Abs(b)
	}
	for b := range right {
		right[b] = 10 * math.Log10(right[b]/wrong[b])
	}
	return right
}
