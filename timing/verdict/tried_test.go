package verdict_test

import (
	"flag"
	"slices"
	"testing"

	"pappus/testdata/trialtable"
	"pappus/timing/verdict"
)

var (
	tried   = flag.String("try", "", "constants to multiply, with commas between: by testdata/thresholds")
	factors = flag.String("by", "", "by what")
	first   = flag.Int("first", 0, "the first case")
	kept    = flag.Bool("kept", false, "analyse recordings once, and leave out those that are not what they should be")
)

// TestTried judges the trial's cases, recorded once, with constants at other places, and prints a
// table of each, after a line with its name, what it is multiplied by and what it is then. Without
// constants of package recording, what recordings say is kept, too.
func TestTried(t *testing.T) {
	if *tried == "" {
		t.Skip("is run by testdata/thresholds")
	}
	all := trialCases(t, *first, *first+*cases)
	if *kept {
		verdict.Keep()
		all = slices.DeleteFunc(all, func(c *one) bool { return slices.Contains(names[c.fault.Kind], verdict.Unusable) })
	}
	do(t, all, (*one).record)
	judged := func() string {
		do(t, all, (*one).judge)
		var tally trialtable.Tally
		for _, c := range all {
			c.score(&tally)
			c.cover(&tally)
		}
		return trialtable.CSV(tally.Table)
	}
	if err := trialtable.Each(*tried, *factors, judged); err != nil {
		t.Fatal(err)
	}
}
