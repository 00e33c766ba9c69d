package verdict

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// swept are constants that sweeps.csv has at other places, too.
var swept = map[string]float64{
	"foreign": foreign, "quiet": quiet, "alike": alike, "clean": clean, "mostScatter": mostScatter, "better": better, "likeRest": likeRest, "inTime": inTime, "reach": reach, "elsewhere": elsewhere, "otherUneven": otherUneven, "otherBetter": otherBetter, "mostInTime": mostInTime, "fewInTime": fewInTime, "same": same, "planApart": planApart, "wireApart": wireApart, "costResidual": costResidual, "costSaved": costSaved, "costLeft": costLeft, "least": least, "few": few, "looks": looks, "bodyLevel": bodyLevel, "bodyOctave": bodyOctave, "bodyAll": bodyAll, "bodyLate": bodyLate,
}

// beyondChance is how many cases that are judged otherwise, all one way, are no chance: six by the sign test, of
// which 1 in 32 are.
const beyondChance = 6

// TestSwept: what stands in the code is a row of sweeps.csv, and none beside it is better beyond chance: it
// misses no more and says no more falsely, and less of both together by that many.
func TestSwept(t *testing.T) {
	text, err := os.ReadFile("sweeps.csv")
	if err != nil {
		t.Fatal(err)
	}
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	number := func(text string) float64 {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	stands, count := map[string][]string{}, map[string]int{}
	for _, line := range lines[1:] {
		if count[line[0]]++; line[1] == "1" {
			stands[line[0]] = line
		}
	}
	for name, value := range swept {
		line := stands[name]
		if line == nil || count[name] < 3 || math.Abs(number(line[2])-value) > 1e-3*math.Abs(value) {
			t.Errorf("%s is %g, and sweeps.csv has %q of %d", name, value, line, count[name])
		}
	}
	for _, line := range lines[1:] {
		is := stands[line[0]]
		if missed, wrong := number(line[4])-number(is[4]), number(line[7])+number(line[8])-number(is[7])-number(is[8]); missed <= 0 && wrong <= 0 && missed+wrong <= -beyondChance {
			t.Errorf("%s: %s would miss %g more and call %g more faulty than %s", line[0], line[2], missed, wrong, is[2])
		}
	}
}
