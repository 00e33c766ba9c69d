package blind

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The upper tails of ten tosses, in 1024ths: the running sums of the tenth row of
// Pascal's triangle (1, 10, 45, 120, 210, 252, ...), as in M. Abramowitz and I. A.
// Stegun, Handbook of Mathematical Functions, table 24.1, for the coefficients;
// rounded to four places they stand in the binomial tables of statistics
// textbooks (0.0107 for 9 of 10, 0.0547 for 8, 0.1719 for 7).
func TestTenTries(t *testing.T) {
	for right, want := range [Tries + 1]float64{1024, 1023, 1013, 968, 848, 638, 386, 176, 56, 11, 1} {
		if have := 1024 * (Result{right, Tries}).Chance(); math.Abs(have-want) > 1e-9 {
			t.Errorf("%d of 10: %.12g/1024, want %g", right, have, want)
		}
	}
	for right, want := range map[int]float64{9: 0.0107, 8: 0.0547, 7: 0.1719} {
		if have := (Result{right, Tries}).Chance(); math.Abs(have-want) > 5e-5 {
			t.Errorf("%d of 10: %.4f, want %.4f", right, have, want)
		}
	}
}

// A test broken off has other tails: 5 of 5 in 1/32, 3 of 4 in 5/16.
func TestBrokenOff(t *testing.T) {
	for r, want := range map[Result]float64{{5, 5}: 1. / 32, {3, 4}: 5. / 16, {0, 3}: 1, {0, 0}: 1, {1, 1}: 0.5} {
		if have := r.Chance(); math.Abs(have-want) > 1e-12 {
			t.Errorf("%+v: %g, want %g", r, have, want)
		}
	}
}

func TestRun(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		seed := rapid.Uint64().Draw(t, "seed")
		test, again := New(seed), New(seed)
		right := 0
		for i := range Tries {
			if test.Done() {
				t.Fatalf("done after %d", i)
			}
			x, ok := test.X()
			if same, _ := again.X(); !ok || same != x {
				t.Fatalf("try %d: %v, %v, the same seed gives %v", i, x, ok, same)
			}
			answer := Side(rapid.IntRange(0, 1).Draw(t, "answer"))
			test.Answer(answer)
			again.Answer(A)
			if x == answer {
				right++
			}
		}
		if have := test.Result(); have != (Result{right, Tries}) {
			t.Fatalf("%+v, want %d right", have, right)
		}
		test.Answer(A)
		if _, ok := test.X(); ok || !test.Done() || test.Result().Tries != Tries {
			t.Fatal("goes on after the last try")
		}
	})
}

// Over many seeds X must be A as often as B, in every try and after either. Five
// standard errors of 20000 tosses are 1.8 %.
func TestFairCoin(t *testing.T) {
	const tests = 20000
	var heads, changes [Tries]float64
	for seed := range uint64(tests) {
		test := New(seed)
		for i, x := range test.hidden {
			heads[i] += float64(x)
			if i > 0 && x != test.hidden[i-1] {
				changes[i]++
			}
		}
	}
	for i := range heads {
		if math.Abs(heads[i]/tests-0.5) > 0.018 {
			t.Errorf("try %d: B in %g", i, heads[i]/tests)
		}
		if i > 0 && math.Abs(changes[i]/tests-0.5) > 0.018 {
			t.Errorf("try %d: another than before in %g", i, changes[i]/tests)
		}
	}
}

func TestWords(t *testing.T) {
	for r, want := range map[Result][]string{
		{0, 0}:   {"No try"},
		{10, 10}: {"10 of 10 right", "in 1 test of 1000", "speaks for"},
		{9, 10}:  {"9 of 10 right", "in 11 tests of 1000", "speaks for"},
		{8, 10}:  {"8 of 10 right", "in 55 tests of 1000", "may well be chance", "nor that there is none"},
		{5, 10}:  {"5 of 10 right", "in 62 tests of 100.", "may well be chance"},
		{0, 10}:  {"0 of 10 right", "all tests, or nearly all", "may well be chance"},
	} {
		for _, part := range want {
			if have := r.String(); !strings.Contains(have, part) {
				t.Errorf("%+v: %q lacks %q", r, have, part)
			}
		}
	}
}

func ExampleTest() {
	test := New(7)
	for x, ok := test.X(); ok; x, ok = test.X() {
		test.Answer(x) // a listener who hears it every time
	}
	fmt.Println(test.Result())
	// Output: 10 of 10 right. By guessing alone one does so well or better in 1 test of 1000. That speaks for a difference that was heard.
}
