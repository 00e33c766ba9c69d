package layout

import (
	"fmt"
	"strings"

	"pappus/layout/advice"
	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/fit"
	"pappus/layout/prose"
)

// visible is the least length in m that is worth a word: what a saw or a
// printer cannot keep.
const visible = 0.05 * mm

// misfit is one way in which drivers do not fit: how near something is, what is
// asked of it, whose it is, and how it is said.
type misfit struct {
	near        func(fit.Report) float64
	limit       float64
	to          func(fit.Report) int // an index of a mount, -1: none; nil: never one
	noun, nouns string
	past, pasts string // where it is below 0, of one and of many
	what        string // that it is too near, where it is not
}

// misfits lists the ways of an array, those first that a builder sees first.
func misfits(a *Array) []misfit {
	edge := "the edge of the face"
	if a.Body.IsBall() {
		edge = "the rim"
	}
	l := a.Limits
	return []misfit{
		{func(r fit.Report) float64 { return r.Flange }, l.Edge, nil,
			"flange", "flanges", "reaches over " + edge, "reach over " + edge, edge},
		{func(r fit.Report) float64 { return r.Gap }, l.Apart, func(r fit.Report) int { return r.GapTo },
			"flange", "flanges", "overlaps a neighbour", "overlap", "a neighbour"},
		{func(r fit.Report) float64 { return r.Inside }, l.Apart, func(r fit.Report) int { return r.InsideTo },
			"basket", "baskets", "meets a neighbour", "meet", "a neighbour"},
		{func(r fit.Report) float64 { return r.Wall }, l.Apart, nil,
			"basket", "baskets", "is too deep for the body", "are too deep for the body", "a wall behind"},
		{func(r fit.Report) float64 { return r.Cutout }, l.Edge, nil,
			"cut-out", "cut-outs", "reaches into a neighbouring wall", "reach into a neighbouring wall", "a neighbouring wall"},
		{func(r fit.Report) float64 { return r.Terminal }, l.Apart, func(r fit.Report) int { return r.TerminalTo },
			"terminal", "terminals", "meets a wall or a basket", "meet a wall or a basket", "a wall or a basket"},
		{func(r fit.Report) float64 { return r.ScrewEdge }, l.Edge, nil,
			"ring of screws", "rings of screws", "reaches over " + edge, "reach over " + edge, edge},
		{func(r fit.Report) float64 { return r.ScrewFlange }, l.Edge, nil,
			"flange", "flanges", "is too narrow for its screws", "are too narrow for their screws", "its screws"},
	}
}

// mostMisfits is how many ways of not fitting one sentence names.
const mostMisfits = 3

// healer says what would make every driver fit.
type healer func(a *Array, d *design.Design, whole *body.Body) string

// verdict says how many drivers do not fit, in which ways, and what cures it;
// nothing where all fit.
func verdict(a *Array, d *design.Design, whole *body.Body, heal healer) []advice.Finding {
	bad := 0
	for _, r := range a.Fits {
		if !r.Fits(a.Limits) {
			bad++
		}
	}
	if bad == 0 {
		return nil
	}
	var ways []string
	for _, m := range misfits(a) {
		if w := m.words(a); w != "" && len(ways) < mostMisfits {
			ways = append(ways, w)
		}
	}
	of := fmt.Sprintf("%d of %s", bad, prose.Count(len(a.Fits), "driver does not fit", "drivers do not fit"))
	return []advice.Finding{{Code: "drivers_misfit", Rank: advice.Misfit,
		What: of + ": " + strings.Join(ways, "; "), Cure: heal(a, d, whole)}}
}

// words says of how many drivers something is too near, and of which most; nothing
// where of none.
func (m misfit) words(a *Array) string {
	n, worst, most := 0, 0, 0.0
	for i, r := range a.Fits {
		lack := m.limit - m.near(r)
		if !(lack > fit.Slack) {
			continue
		}
		if n++; n == 1 || lack > most+visible {
			worst, most = i, lack
		}
	}
	if n == 0 {
		return ""
	}
	r := a.Fits[worst]
	who := fmt.Sprintf("driver %d", a.Mounts[worst].ID)
	if m.to != nil && m.to(r) >= 0 {
		who = fmt.Sprintf("drivers %d and %d", a.Mounts[worst].ID, a.Mounts[m.to(r)].ID)
	}
	if near := m.near(r); near >= 0 {
		return prose.Sprintf("%s too near %s (%s most, %s mm where %.4g is asked)",
			prose.Count(n, m.noun+" is", m.nouns+" are"), m.what, who, millimetres(near), m.limit/mm)
	}
	return fmt.Sprintf("%s (%s most, by %s mm)", prose.Count(n, m.noun+" "+m.past, m.nouns+" "+m.pasts), who, millimetres(-m.near(r)))
}

// millimetres writes a length in m to a tenth of a millimetre, and finer where
// that would be nothing.
func millimetres(m float64) string {
	if m > 0 && m < visible {
		return prose.Sprintf("%.1g", m/mm)
	}
	return fmt.Sprintf("%.1f", m/mm)
}

// leftOut says which places carry no driver though nobody skipped them: of even
// places those that a cut took, of all others those that are kept clear.
func leftOut(d *design.Design, p placed) []advice.Finding {
	var out []advice.Finding
	if d.Mounts.On == "even" && p.cut > 0 {
		out = append(out, advice.Finding{Code: "places_cut", Rank: advice.Note,
			What: fmt.Sprintf("of the %d places asked for %s cut away or too near the cut, and %d left", p.places, prose.Count(p.cut, "is", "are"), p.places-p.cut),
			Cure: fmt.Sprintf("set over = \"dome\" to spread all %d over what is left of the body", p.places)})
	}
	var why []string
	if p.low > 0 {
		why = append(why, prose.Sprintf("%d lower than keep_clear_below_deg = %.4g", p.low, *d.Mounts.KeepClearBelowDeg))
	}
	if p.kept > 0 {
		why = append(why, fmt.Sprintf("%d where keep_clear_deg lets no flange be", p.kept))
	}
	if len(why) > 0 {
		n := p.low + p.kept
		out = append(out, advice.Finding{Code: "places_kept_clear", Rank: advice.Note,
			What: fmt.Sprintf("%s left out of %d: %s", prose.Count(n, "place is", "places are"), p.places-p.cut, strings.Join(why, " and "))})
	}
	return out
}

// Fits is how the drivers fit the body, and which sizes just would.
type Fits struct {
	Reports []fit.Report // one for each mount
	// Largest is the largest driver of the same proportions that fits; its flange
	// radius is 0 where none does.
	Largest fit.Outline
	// Smallest is the least radius of the body in m that takes the driver; 0 where
	// none does.
	Smallest float64
}

// Fit looks for the sizes that just fit, beside how those of the design do.
func (a *Array) Fit() Fits {
	mounts := fitMounts(a.Own())
	out := Fits{Reports: a.Fits}
	// That no size fits is an answer, not a fault.
	if d, err := fit.LargestDriver(a.Body, mounts, a.Driver.Outline, a.Limits); err == nil {
		out.Largest = d
	}
	if factor, err := fit.SmallestBody(a.Body, mounts, a.Driver.Outline, a.Limits); err == nil {
		out.Smallest = factor * a.Body.Radius
	}
	return out
}
