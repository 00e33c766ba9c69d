package printing_test

import (
	"errors"
	"fmt"
	"os"
	"testing"
	"time"

	"pappus/layout/body"
	"pappus/layout/printing"
	"pappus/layout/spread"

	"gonum.org/v1/gonum/spatial/r3"
)

type gridBody struct {
	name   string
	b      *body.Body
	mounts []printing.Mount
	hole   float64
}

func gridBodies(t testing.TB) []gridBody {
	must := func(b *body.Body, err error) *body.Body {
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	var out []gridBody
	add := func(name string, b *body.Body, hole float64) {
		out = append(out, gridBody{name, b, onFaces(b), hole})
		c := must(b.CutAt(0))
		var on []printing.Mount
		for _, m := range onFaces(b) {
			if m.Point.Z-hole > 0 {
				on = append(on, m)
			}
		}
		out = append(out, gridBody{name + " dome", c, on, hole})
	}
	add("geodesic 2", must(body.Geodesic("icosahedron", 2, 0.15)), 0.0165)
	add("geodesic 3", must(body.Geodesic("icosahedron", 3, 0.2)), 0.0155)
	add("dodecahedron", must(body.Platonic("dodecahedron", 0.15)), 0.03)
	add("icosahedron", must(body.Platonic("icosahedron", 0.15)), 0.03)
	for _, c := range []struct {
		n    int
		r, h float64
	}{{12, 0.1, 0.0165}, {60, 0.15, 0.0165}, {96, 0.18, 0.0165}, {300, 0.25, 0.0135}} {
		points, _, err := spread.Even(c.n, 1)
		if err != nil {
			t.Fatal(err)
		}
		var all, up []printing.Mount
		for _, p := range points {
			m := printing.Mount{Point: r3.Scale(c.r, p), Normal: p}
			all = append(all, m)
			if m.Point.Z-c.h > 0 {
				up = append(up, m)
			}
		}
		name := fmt.Sprintf("ball of %d", c.n)
		out = append(out, gridBody{name, body.Ball(c.r), all, c.h}, gridBody{name + " dome", must(body.Ball(c.r).CutAt(0)), up, c.h})
	}
	return out
}

func TestGridScratch(t *testing.T) {
	if os.Getenv("GRID") == "" {
		t.Skip()
	}
	total, ok := 0, 0
	var longest time.Duration
	for _, g := range gridBodies(t) {
		line := ""
		n, k := 0, 0
		start := time.Now()
		for _, bed := range []float64{0.1, 0.15, 0.18, 0.22, 0.25} {
			for _, margin := range []float64{0.001, 0.002, 0.004} {
				at := time.Now()
				p, err := printing.Cut(g.b, g.mounts, printing.Job{Bed: printing.Size{X: bed, Y: bed, Z: bed},
					Shell: printing.Shell{Wall: 0.003}, CutoutRadius: g.hole, Margin: margin, Density: 1240})
				longest = max(longest, time.Since(at))
				n++
				switch {
				case err == nil:
					k++
					line += fmt.Sprintf(" %d", len(p.Segments))
				case errors.Is(err, printing.ErrNoCleanCut):
					line += " !"
				case errors.Is(err, printing.ErrTooMany):
					line += " M"
				default:
					line += " E"
				}
			}
			line += " |"
		}
		total, ok = total+n, ok+k
		fmt.Printf("%-18s %3d mounts %2d/%d %6.1fs %s\n", g.name, len(g.mounts), k, n, time.Since(start).Seconds(), line)
	}
	fmt.Printf("clean: %d of %d; longest %v\n", ok, total, longest)
}
