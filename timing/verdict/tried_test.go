package verdict_test

import (
	"flag"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"pappus/testdata/trialtable"
)

var (
	tried   = flag.String("try", "", "constants to multiply, with commas between: by testdata/thresholds")
	factors = flag.String("by", "", "by what")
	first   = flag.Int("first", 0, "the first case")
)

// TestTried judges the trial's cases, recorded once, with constants at other places, and prints a
// table of all as they are and of each, after a line with its name and what it is multiplied by.
func TestTried(t *testing.T) {
	if *tried == "" {
		t.Skip("is run by testdata/thresholds")
	}
	all := trialCases(t, *first, *first+*cases)
	do(t, all, (*one).record)
	told := func(name, by string) {
		do(t, all, (*one).judge)
		var tally trialtable.Tally
		for _, c := range all {
			c.score(&tally)
			c.cover(&tally)
		}
		fmt.Printf("tried %s %s\n%s\n", name, by, trialtable.CSV(tally.Table))
	}
	told("none", "1")
	for _, name := range strings.Split(*tried, ",") {
		for _, by := range strings.Split(*factors, ",") {
			factor, err := strconv.ParseFloat(by, 64)
			if err != nil {
				t.Fatal(err)
			}
			back, err := trialtable.Times(name, factor)
			if err != nil {
				t.Fatal(err)
			}
			told(name, by)
			back()
		}
	}
}
