package trialtable

import (
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"
)

// beyondChance is how many cases that are judged otherwise, all one way, are no chance: six by the sign test, of
// which 1 in 32 are.
const beyondChance = 6

// place is a row of a sweep: a constant at one place.
type place struct {
	times, value  string
	is            float64
	missed, wrong float64
}

// Swept checks a file that testdata/thresholds wrote against what constants are: what stands in the code is a row of
// it, and none beside it is better beyond chance: it misses no more and says no more falsely, and less of both together
// by that many.
func Swept(t *testing.T, file string, constants map[string]float64) {
	t.Helper()
	rows := places(t, file)
	for name, value := range constants {
		stands := stand(rows[name])
		if stands == nil || len(rows[name]) < 3 || math.Abs(stands.is-value) > 1e-3*math.Abs(value) {
			t.Errorf("%s is %g, and %s has %+v of %d", name, value, file, stands, len(rows[name]))
			continue
		}
		for _, p := range rows[name] {
			if missed, wrong := p.missed-stands.missed, p.wrong-stands.wrong; missed <= 0 && wrong <= 0 && missed+wrong <= -beyondChance {
				t.Errorf("%s: %s would miss %g more and call %g more faulty than %s", name, p.value, missed, wrong, stands.value)
			}
		}
	}
	for name := range rows {
		if _, known := constants[name]; !known {
			t.Errorf("%s has %s, which no test holds against the code", file, name)
		}
	}
}

// stand returns the place where a constant stands; nil where there is none.
func stand(rows []place) *place {
	for _, p := range rows {
		if p.times == "1" {
			return &p
		}
	}
	return nil
}

// places reads the rows of a sweep by their constants.
func places(t *testing.T, file string) map[string][]place {
	t.Helper()
	r := csv.NewReader(strings.NewReader(read(t, file)))
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	column := map[string]int{}
	for i, name := range lines[0] {
		column[name] = i
	}
	out := map[string][]place{}
	for _, line := range lines[1:] {
		number := func(name string) float64 {
			v, err := strconv.ParseFloat(line[column[name]], 64)
			if err != nil {
				t.Fatal(err)
			}
			return v
		}
		name := line[column["constant"]]
		out[name] = append(out[name], place{line[column["times"]], line[column["value"]], number("value"), number("missed"), number("called_faulty") + number("false_words")})
	}
	return out
}
