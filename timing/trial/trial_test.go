package trial_test

import (
	"math"
	"testing"

	"pappus/testdata/trialtable"
	"pappus/timing/trial"

	"github.com/google/go-cmp/cmp"
)

// TestInterval: Wilson's intervals of shares. 0 of n reaches to z2/(n + z2), and 5 of 10 is
// 1/2 -+ z/(2 sqrt(n + z2)).
func TestInterval(t *testing.T) {
	for _, c := range []struct {
		name      string
		count     trial.Count
		low, high float64
	}{
		{"none of ten", trial.Count{Cases: 10}, 0, 0.277533},
		{"all of ten", trial.Count{Cases: 10, Times: 10}, 0.722467, 1},
		{"half of ten", trial.Count{Cases: 10, Times: 5}, 0.236593, 0.763407},
		{"one in fifty of 500", trial.Count{Cases: 500, Times: 10}, 0.010899, 0.036420},
		{"no cases", trial.Count{}, 0, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			if low, high := c.count.Interval(); math.Abs(low-c.low) > 1e-6 || math.Abs(high-c.high) > 1e-6 {
				t.Errorf("%.6f to %.6f, want %.6f to %.6f", low, high, c.low, c.high)
			}
		})
	}
}

// TestIntervalCovers: a share of a twentieth is in the interval of 95 in 100 samples of 200 or
// so, summed over the binomial distribution.
func TestIntervalCovers(t *testing.T) {
	const n, p = 200, 0.05
	in := 0.0
	for k := 0; k <= n; k++ {
		if low, high := (trial.Count{Cases: n, Times: k}).Interval(); low <= p && p <= high {
			all, _ := math.Lgamma(n + 1)
			some, _ := math.Lgamma(float64(k + 1))
			others, _ := math.Lgamma(float64(n - k + 1))
			in += math.Exp(all - some - others + float64(k)*math.Log(p) + float64(n-k)*math.Log(1-p))
		}
	}
	if in < 0.93 || in > 0.97 {
		t.Errorf("covered in %.4f", in)
	}
}

// TestTable: a table is counted, written and read.
func TestTable(t *testing.T) {
	var made trialtable.Tally
	for k := range 200 {
		made.Add("open string", trial.Missed, k < 3)
		made.Add("open string", trial.FalseAlarm, false)
	}
	const want = `of,what,cases,times,percent,low_percent,high_percent
open string,missed,200,3,1.5,0.5,4.3
open string,false alarm,200,0,0.0,0.0,1.9
`
	if diff := cmp.Diff(want, trialtable.CSV(made.Table)); diff != "" {
		t.Error(diff)
	}
	read, err := trial.Read("# how it was made\n" + want)
	if diff := cmp.Diff(made.Table, read); diff != "" || err != nil {
		t.Error(err, diff)
	}
	if c := read.Of("open string", trial.Missed); c != (trial.Count{Cases: 200, Times: 3}) || c.Share() != 0.015 {
		t.Error(c)
	}
	if c := read.Of("leak", trial.Missed); c.Cases != 0 {
		t.Error(c)
	}
}

func TestReadFaults(t *testing.T) {
	const head = "of,what,cases,times,percent,low_percent,high_percent\n"
	for name, text := range map[string]string{
		"empty": "", "other columns": "a,b\n", "uneven": head + "a,b\n",
		"no number": head + "a,b,ten,1,0,0,0\n", "more than all": head + "a,b,10,11,0,0,0\n", "less than none": head + "a,b,10,-1,0,0,0\n",
	} {
		if _, err := trial.Read(text); err == nil {
			t.Error(name)
		}
	}
}
