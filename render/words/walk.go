package words

import (
	"fmt"
	"strings"

	"pappus/layout"
	"pappus/render/tape"
)

// Walk says between which places somebody walks, a line each, seats by their names.
func Walk(a *layout.Array, places []layout.Seat) string {
	var b strings.Builder
	for i, at := range places {
		lead := "then to"
		switch i {
		case 0:
			lead = "You walk from"
		case 1:
			lead = "to"
		}
		if at.Name != "" {
			lead += " " + at.Name + ","
		}
		fmt.Fprintf(&b, "%s %s\n", lead, tape.Of(a, at.At).Full())
	}
	return b.String()
}
