package blind

import (
	"fmt"
	"math/rand/v2"

	"gonum.org/v1/gonum/stat/distuv"
)

// Tries is how many tries a test has.
const Tries = 10

// Side is one of the two sounds.
type Side int8

const (
	A Side = iota
	B
)

// String returns A or B.
func (s Side) String() string { return [...]string{"A", "B"}[s] }

// Test is a blind test under way. It does no input or output: the caller plays
// and asks.
type Test struct {
	hidden [Tries]Side
	result Result
}

// New draws what X is in each try, by the toss of a coin. The same seed gives the
// same test: take one that the listener does not know.
func New(seed uint64) *Test {
	t := &Test{}
	coin := rand.New(rand.NewPCG(seed, 1982))
	for i := range t.hidden {
		t.hidden[i] = Side(coin.IntN(2))
	}
	return t
}

// X returns what X is in the try that awaits its answer, to be played and not to
// be shown; false once the test is done.
func (t *Test) X() (Side, bool) {
	if t.Done() {
		return A, false
	}
	return t.hidden[t.result.Tries], true
}

// Answer records what the listener says that X is, and goes on to the next try. After
// the last it does nothing.
func (t *Test) Answer(s Side) {
	x, ok := t.X()
	if !ok {
		return
	}
	t.result.Tries++
	if s == x {
		t.result.Right++
	}
}

// Done tells whether all tries are answered.
func (t *Test) Done() bool { return t.result.Tries == Tries }

// Result returns the outcome so far.
func (t *Test) Result() Result { return t.result }

// Result is how many answers were right.
type Result struct{ Right, Tries int }

// Chance returns the probability of so many right answers or more by guessing.
func (r Result) Chance() float64 {
	if r.Right <= 0 {
		return 1
	}
	return distuv.Binomial{N: float64(r.Tries), P: 0.5}.Survival(float64(r.Right - 1))
}

// significant is the chance below which a difference is taken as heard.
const significant = 0.05

// String says in plain words what the outcome means.
func (r Result) String() string {
	if r.Tries == 0 {
		return "No try is answered yet."
	}
	said := fmt.Sprintf("%d of %d right. By guessing alone one does so well or better in %s.", r.Right, r.Tries, share(r.Chance()))
	if r.Chance() < significant {
		return said + " That speaks for a difference that was heard."
	}
	return said + " That may well be chance: it shows neither that a difference was heard nor that there is none."
}

// share says a probability as so many tests of a hundred, or of a thousand where
// that is too coarse.
func share(p float64) string {
	switch {
	case p >= 0.995:
		return "all tests, or nearly all"
	case p >= 0.095:
		return fmt.Sprintf("%.0f tests of 100", 100*p)
	case p >= 0.0015:
		return fmt.Sprintf("%.0f tests of 1000", 1000*p)
	}
	return "1 test of 1000"
}
