package verdict_test

import (
	"math"
	"testing"

	"pappus/timing"
	"pappus/timing/recording"
	"pappus/timing/verdict"
)

// TestRepeats: of a channel that was recorded three times, 0, 2 and 4 dB up and 0, 20 and 40
// microseconds late, the mean is told, with the standard error of three such values; that of
// the others is as it was. Of two recordings it is the same.
func TestRepeats(t *testing.T) {
	const up, late = 2.0, 20e-6
	p := demo(t)
	c := newOwn(t, p)
	const again = 2
	var takes [][]*recording.Measured
	for take := range 3 {
		measured, _ := c.record(t, 1, timing.Aligned, crudeNoise, map[int]fault{again: {level: up * float64(take), late: late * float64(take)}})
		takes = append(takes, measured)
	}
	set := verdict.Setting{Case: timing.Aligned}
	once, err := verdict.OfChannels(p, takes[0], set)
	if err != nil {
		t.Fatal(err)
	}
	set.Repeats = make([][]*recording.Measured, len(p.Channels))
	set.Repeats[again] = []*recording.Measured{takes[1][again], takes[2][again], nil}
	thrice, err := verdict.OfChannels(p, takes[0], set)
	if err != nil {
		t.Fatal(err)
	}
	// Student's t for two degrees of freedom, 4.303 (JCGM 100:2008, table G.2), over two.
	const wide = 4.303 / 2
	for i := range p.Channels {
		a, b := once.Channels[i], thrice.Channels[i]
		if i != again {
			if math.Abs(a.LevelError-b.LevelError) > 0.02 || math.Abs(a.Level-b.Level) > 0.3 {
				t.Errorf("channel %d: once %+v, thrice %+v", i+1, a, b)
			}
			continue
		}
		if up := b.Level - a.Level; math.Abs(up-2) > 0.1 {
			t.Errorf("the mean is %.2f dB up", up)
		}
		if by := 1e6 * (b.Late - a.Late); math.Abs(by-20) > 2 {
			t.Errorf("the mean is %.1f us late", by)
		}
		if want := math.Hypot(a.LevelError, wide*up/math.Sqrt(3)); math.Abs(b.LevelError-want) > 0.05 {
			t.Errorf("an error of %.2f dB, want %.2f", b.LevelError, want)
		}
		if want := 1e6 * math.Hypot(a.Error, wide*late/math.Sqrt(3)); math.Abs(1e6*b.Error-want) > 1 {
			t.Errorf("an error of %.1f us, want %.1f", 1e6*b.Error, want)
		}
	}
	// Of two recordings, 2 dB apart, the mean is 1 dB up, and Student's t is 12.706.
	set.Repeats[again] = takes[1][again : again+1]
	twice, err := verdict.OfChannels(p, takes[0], set)
	if err != nil {
		t.Fatal(err)
	}
	a, b := once.Channels[again], twice.Channels[again]
	if want := math.Hypot(a.LevelError, 12.706/2); math.Abs(b.Level-a.Level-1) > 0.1 || math.Abs(b.LevelError-want) > 0.05 {
		t.Errorf("of two: %.2f dB up with an error of %.2f dB, want %.2f", b.Level-a.Level, b.LevelError, want)
	}
}
