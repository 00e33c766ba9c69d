package impedancefit

import (
	"cmp"
	"fmt"
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout/impedance"
)

// Cause is something that may have become of a bank.
type Cause struct {
	State   impedance.State // Alive: all is as planned
	Strings int             // open ones; 1 where drivers are shorted
	Drivers int             // shorted ones, in one string
	Length  int             // drivers of the string in question
	Ratio   float64         // of the load to that of the whole bank; +Inf where no current flows
}

// String says it in words.
func (c Cause) String() string {
	switch {
	case c.State == impedance.Alive:
		return "all strings play"
	case math.IsInf(c.Ratio, 1):
		return "no string conducts"
	case c.State == impedance.Open && c.Strings == 1:
		return fmt.Sprintf("a string of %d is open", c.Length)
	case c.State == impedance.Open:
		return fmt.Sprintf("%d strings of %d are open", c.Strings, c.Length)
	case c.Drivers == c.Length:
		return fmt.Sprintf("a string of %d is shorted throughout", c.Length)
	case c.Drivers == 1:
		return fmt.Sprintf("a driver in a string of %d is shorted", c.Length)
	}
	return fmt.Sprintf("%d drivers in a string of %d are shorted", c.Drivers, c.Length)
}

// Load is a channel's measured impedance against the planned one. Which of several
// equal strings it is cannot be told from the channel's terminals.
type Load struct {
	Ratio  float64 // measured over planned magnitude, median where the drivers are all but resistors
	Cause  Cause
	Sure   bool    // no other cause is nearly as near, and this one is near enough
	Others []Cause // that are as likely, within the tolerance
	// Flat says that no resonance is to be seen where drivers must have one: whatever
	// was measured is hardly the channel.
	Flat bool
	// Loose says that a resonance is there, and is not that of equal drivers in a closed box: there is a
	// leak or an opening.
	Loose bool
	// Alike are mistakes in connecting that measure the same within the tolerance.
	Alike []Mistake
}

// Mistake is something else than the channel that may have been measured.
type Mistake int8

// The mistakes that are thought of.
const (
	OneDriver  Mistake = iota // alone, in place of the channel
	OneTooMany                // a further string hangs on the channel
)

// String says it in words.
func (m Mistake) String() string {
	return [...]string{"a single driver alone", "the channel with one string too many"}[m]
}

const (
	// Tolerance is by how much, as a factor less 1, a planned load may well be off:
	// drivers of a batch differ by some percent, a bank of them less (common
	// practice). In sweeps.csv it misses 3 of 100 shorted drivers and is not sure of 8 of 100 sound
	// channels; 0.03 misses 6 and is not sure of 11, 0.08 none and 22.
	Tolerance = 0.05

	// leaky is the least misfit of a box that leaks, of the impedance: sweeps.csv has 18 of 100 leaks missed and
	// 1 false alarm of 100 here, 42 and none at 0.03, 12 and 2 at 0.015.
	leaky = 0.02

	mostLog  = 4   // beyond e^4, 55 times, a load is open or shorted: no cause that is thought of comes near
	resistor = 1.3 // times the least magnitude: up to there a driver is about a resistor, to 40 degrees (cos 40 = 1/1.3)
	mostDead = 2   // strings, or drivers of a string, that are thought of at once: of three and more there are too many ways
	wide     = 16  // times as high from end to end: a driver's resonance is in it, four octaves below where its coil takes over
)

// Compare tells what a channel's measured impedance says about its bank, whose
// drivers have the planned impedance each. Only frequencies count where that is
// within a third of its least: there a driver's impedance is about that of its coil,
// which neither the box nor dead neighbours change. The error says what the points lack.
func Compare(points []impedance.Point, bank impedance.Bank, driver impedance.Curve) (Load, error) {
	if err := check(points); err != nil {
		return Load{}, err
	}
	frequency := make([]float64, len(points))
	for i, p := range points {
		frequency[i] = p.Frequency
	}
	each, planned := make([]complex128, len(points)), make([]complex128, len(points))
	driver.Fill(each, frequency)
	bank.Load(planned, each)
	least := math.Inf(1)
	for _, z := range each {
		least = min(least, cmplx.Abs(z))
	}
	var flat []int
	var logs []float64
	for i, z := range each {
		if ohm := cmplx.Abs(planned[i]); cmplx.Abs(z) <= resistor*least && ohm > 0 {
			flat = append(flat, i)
			logs = append(logs, bounded(points[i].Ohm/ohm))
		}
	}
	if len(flat) < leastInPeak {
		return Load{}, fmt.Errorf("%w: %d where the drivers are about resistors, %d are needed; measure further", errFew, len(flat), leastInPeak)
	}
	middle := flat[len(flat)/2]
	slices.Sort(logs)
	at := logs[len(logs)/2]
	l := Load{Ratio: math.Exp(at)}
	l.choose(at, causes(bank, each[middle]), Tolerance)
	l.alike(at, bank, each[middle])
	l.Flat = l.conducts() && flatThrough(points, planned)
	if f, err := Best(points); err == nil {
		l.Loose = f.loose(leaky)
	}
	return l, nil
}

// loose tells whether the circuit is off by more than a misfit, and not for noise.
func (f Fit) loose(misfit float64) bool { return f.Systematic && f.Misfit > misfit }

// conducts tells whether drivers are in the way of the current at all.
func (l Load) conducts() bool { return math.Abs(bounded(l.Ratio)) < mostLog/2 }

// flatThrough tells whether a measurement has no peak though the plan has one among its
// frequencies, or they reach far enough for any driver's.
func flatThrough(points []impedance.Point, planned []complex128) bool {
	measured, want := make([]float64, len(points)), make([]float64, len(points))
	for i, p := range points {
		measured[i], want[i] = math.Log(p.Ohm), bounded(cmplx.Abs(planned[i]))
	}
	_, none := peak(measured)
	_, unseen := peak(want)
	return none != nil && (unseen == nil || points[len(points)-1].Frequency > wide*points[0].Frequency)
}

// alike lists the mistakes that measure the same as the channel does.
func (l *Load) alike(at float64, bank impedance.Bank, z complex128) {
	whole := cmplx.Abs(bank.Of(z))
	near := func(b impedance.Bank, m Mistake) {
		if math.Abs(bounded(cmplx.Abs(b.Of(z))/whole)-at) < 2*Tolerance && l.Cause.State != impedance.Alive {
			l.Alike = append(l.Alike, m)
		}
	}
	near(impedance.Bank{Strings: []impedance.String{{Drivers: []impedance.State{impedance.Alive}}}, FeedOhm: bank.FeedOhm}, OneDriver)
	if len(bank.Strings) > 0 {
		near(impedance.Bank{Strings: append(slices.Clone(bank.Strings), bank.Strings[0]), FeedOhm: bank.FeedOhm}, OneTooMany)
	}
}

// bounded is the logarithm of a ratio, of which the extremes are all alike.
func bounded(ratio float64) float64 { return max(-mostLog, min(mostLog, math.Log(ratio))) }

// choose takes the nearest of causes, and those that are as near within a tolerance.
func (l *Load) choose(at float64, causes []Cause, tolerance float64) {
	off := func(c Cause) float64 { return math.Abs(bounded(c.Ratio) - at) }
	slices.SortStableFunc(causes, func(a, b Cause) int { return cmp.Compare(off(a), off(b)) })
	l.Cause = causes[0]
	for _, c := range causes[1:] {
		if off(c)-off(causes[0]) < tolerance {
			l.Others = append(l.Others, c)
		}
	}
	l.Sure = len(l.Others) == 0 && off(causes[0]) <= 2*tolerance
}

// causes lists what may have become of a bank, with the ratio of its load, at a
// driver's impedance, by network solution.
func causes(bank impedance.Bank, z complex128) []Cause {
	whole := cmplx.Abs(bank.Of(z))
	out := []Cause{{State: impedance.Alive, Ratio: 1}}
	add := func(c Cause) {
		c.Ratio = cmplx.Abs(c.of(bank).Of(z)) / whole
		out = append(out, c)
	}
	count := map[int]int{} // strings by their drivers: equal ones are told by nothing
	for _, s := range bank.Strings {
		count[len(s.Drivers)]++
	}
	for _, s := range bank.Strings {
		n := len(s.Drivers)
		for dead := 1; dead <= n && count[n] > 0; dead++ {
			if dead <= mostDead || dead == n {
				add(Cause{State: impedance.Shorted, Strings: 1, Drivers: dead, Length: n})
			}
		}
		for open := 1; open <= min(mostDead, count[n], len(bank.Strings)-1); open++ {
			add(Cause{State: impedance.Open, Strings: open, Length: n})
		}
		count[n] = 0
	}
	return append(out, Cause{State: impedance.Open, Strings: len(bank.Strings), Ratio: math.Inf(1)})
}

// of returns what a cause makes of a bank.
func (c Cause) of(bank impedance.Bank) impedance.Bank {
	bank.Strings = slices.Clone(bank.Strings)
	left := c.Strings
	for i, s := range bank.Strings {
		if left == 0 || len(s.Drivers) != c.Length {
			continue
		}
		left--
		bank.Strings[i].Drivers = slices.Clone(s.Drivers)
		for d := range max(1, c.Drivers) { // one that is open opens its string
			bank.Strings[i].Drivers[d] = c.State
		}
	}
	return bank
}
