package verdict_test

import (
	"flag"
	"fmt"
	"slices"
	"strconv"
	"strings"
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
	asIs := judged()
	for _, name := range strings.Split(*tried, ",") {
		for _, by := range strings.Split("1,"+*factors, ",") {
			factor, err := strconv.ParseFloat(by, 64)
			if err != nil {
				t.Fatal(err)
			}
			value, back, err := trialtable.Times(name, factor)
			if err != nil {
				t.Fatal(err)
			}
			table := asIs
			if factor != 1 {
				table = judged()
			}
			fmt.Printf("tried %s %s %.4g\n%s\n", name, by, value, table)
			back()
		}
	}
}
