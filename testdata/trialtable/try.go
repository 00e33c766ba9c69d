package trialtable

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// tried are variables that stand for constants, as testdata/thresholds makes them.
var tried = map[string]any{}

// Try tells of a variable of type float64 or int that stands for a constant.
func Try(name string, variable any) bool {
	tried[name] = variable
	return true
}

// Times multiplies one of them, whole ones to the nearest whole one, and returns what it is then, and what undoes that.
func Times(name string, factor float64) (value float64, back func(), err error) {
	switch v := tried[name].(type) {
	case *float64:
		was := *v
		*v *= factor
		return *v, func() { *v = was }, nil
	case *int:
		was := *v
		*v = int(math.Round(factor * float64(was)))
		return float64(*v), func() { *v = was }, nil
	}
	return 0, nil, fmt.Errorf("%s is no variable: run it by testdata/thresholds", name)
}

// Each prints a table of a trial for each of some constants, with commas between, at each of what they are multiplied
// by, after a line with its name, what it is multiplied by and what it is then; and as it is, before that.
func Each(names, factors string, judged func() string) error {
	asIs := judged()
	for _, name := range strings.Split(names, ",") {
		for _, by := range strings.Split("1,"+factors, ",") {
			factor, err := strconv.ParseFloat(by, 64)
			if err != nil {
				return err
			}
			value, back, err := Times(name, factor)
			if err != nil {
				return err
			}
			table := asIs
			if factor != 1 {
				table = judged()
			}
			fmt.Printf("tried %s %s %.4g\n%s\n", name, by, value, table)
			back()
		}
	}
	return nil
}
