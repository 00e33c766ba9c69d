package layout

import (
	"fmt"

	"pappus/layout/fit"

	"gonum.org/v1/gonum/spatial/r3"
)

// warnings says in a line for each kind what does not fit.
func warnings(a *Array) []string {
	var out []string
	for _, w := range []string{touching(a), overhanging(a), deep(a)} {
		if w != "" {
			out = append(out, w)
		}
	}
	return out
}

func touching(a *Array) string {
	points, normals := make([]r3.Vec, len(a.Mounts)), make([]r3.Vec, len(a.Mounts))
	for i, m := range a.Mounts {
		points[i], normals[i] = m.Point, m.Normal
	}
	pairs := fit.Flanges(points, normals, a.Driver.FlangeRadius)
	if len(pairs) == 0 {
		return ""
	}
	worst := pairs[0]
	for _, p := range pairs {
		if p.Gap < worst.Gap {
			worst = p
		}
	}
	return fmt.Sprintf("%s touch; the worst, %d and %d, overlap by %.1f mm",
		count(len(pairs), "pair of flanges", "pairs of flanges"), a.Mounts[worst.A].ID, a.Mounts[worst.B].ID, -1000*worst.Gap)
}

func overhanging(a *Array) string {
	n, worst, at := 0, 0.0, 0
	for _, m := range a.Mounts {
		if m.Face < 0 {
			continue
		}
		if over := fit.Overhang(a.Body, m.Face, m.Point, a.Driver.FlangeRadius); over > 1e-9 {
			if n++; over > worst {
				worst, at = over, m.ID
			}
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("%s over the edge of the face; the worst, %d, by %.1f mm",
		count(n, "flange reaches", "flanges reach"), at, 1000*worst)
}

func deep(a *Array) string {
	n := 0
	for _, m := range a.Mounts {
		if a.Driver.Depth+a.Wall > r3.Norm(m.Point) {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("%s past the centre of the body", count(n, "driver reaches", "drivers reach"))
}

// count writes a number with the word that goes with it.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
