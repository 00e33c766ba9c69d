package words

import (
	"fmt"
	"strings"

	"pappus/layout"
	"pappus/render/tape"

	"gonum.org/v1/gonum/spatial/r3"
)

// Walk says between which places somebody walks, a line each.
func Walk(a *layout.Array, places []r3.Vec) string {
	var b strings.Builder
	for i, at := range places {
		lead := "then to"
		switch i {
		case 0:
			lead = "You walk from"
		case 1:
			lead = "to"
		}
		fmt.Fprintf(&b, "%s %s\n", lead, tape.Of(a, at).Full())
	}
	return b.String()
}
