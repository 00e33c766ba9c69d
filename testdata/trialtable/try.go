package trialtable

import (
	"fmt"
	"math"
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
