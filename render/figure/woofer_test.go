package figure_test

import (
	"bytes"
	"image/png"
	"math"
	"slices"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/render/figure"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// bass is the lantern with a woofer behind it.
func bass(t testing.TB) (*timing.Plan, timing.Woofer) {
	t.Helper()
	d, err := lantern()
	if err != nil {
		t.Fatal(err)
	}
	p, array := *d.plan, *d.plan.Array
	p.Array = &array
	array.Woofer = layout.Woofer{Present: true, At: r3.Vec{X: -0.5, Y: 0.3, Z: 0.1}, Crossover: 450, Order: 4, Sensitivity: 88}
	w, err := timing.WithWoofer(&p.Spot)
	if err != nil {
		t.Fatal(err)
	}
	return &p, w
}

func TestWoofer(t *testing.T) {
	p, w := bass(t)
	var b bytes.Buffer
	if err := figure.Woofer(&b, figure.PNG, p, w); err != nil {
		t.Fatal(err)
	}
	leave(t, "woofer.png", b.Bytes())
	size := func(p *timing.Plan, w timing.Woofer) (wide, high int) {
		var b bytes.Buffer
		if err := figure.Woofer(&b, figure.PNG, p, w); err != nil {
			t.Fatal(err)
		}
		picture, err := png.Decode(&b)
		if err != nil {
			t.Fatal(err)
		}
		return picture.Bounds().Dx(), picture.Bounds().Dy()
	}
	wide, high := size(p, w)
	if wide <= high || high < 400 {
		t.Errorf("%d by %d", wide, high)
	}
	var svg bytes.Buffer
	if err := figure.Woofer(&svg, figure.SVG, p, w); err != nil {
		t.Fatal(err)
	}
	if n := elements(t, &svg); n < 20 {
		t.Errorf("%d elements", n)
	}
	odd := w
	odd.Sum = slices.Repeat([]float64{math.NaN()}, len(w.Sum))
	odd.WooferLevel = slices.Repeat([]float64{math.Inf(-1)}, len(w.Sum))
	size(p, odd)
}

func TestWooferOfNothing(t *testing.T) {
	p, _ := bass(t)
	if err := figure.Woofer(&bytes.Buffer{}, figure.PNG, p, timing.Woofer{}); err == nil || !strings.Contains(err.Error(), "nothing to draw") {
		t.Errorf("%v", err)
	}
}
