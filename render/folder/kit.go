package folder

import (
	"context"
	"errors"
	"io"
	"slices"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/kit"
	"pappus/layout/shell"
	"pappus/render/document"
	"pappus/render/sheets"
	"pappus/render/table"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/bill"
)

// Kit is the parts that go together, and their files.
type Kit struct {
	Files []file
	plan  *timing.Plan
	kit   sheets.Kit
	bill  bill.Bill
}

// NewKit makes the parts of a plan's shell, and tells how many of how many are made, as sheets.NewKit
// does. Errors are those of ctx, and of packages shell and kit as of a key of the design.
func NewKit(ctx context.Context, p *timing.Plan, made func(n, of int)) (Kit, error) {
	if _, err := p.Array.Hollow(); err != nil {
		return Kit{}, err
	}
	print, meshes, err := kit.Segments(p.Array)
	if err != nil {
		return Kit{}, unmade(p.Array, err)
	}
	parts, err := sheets.NewKit(ctx, p.Array, print, meshes, Cores(p), made)
	if err != nil {
		return Kit{}, unmade(p.Array, err)
	}
	return Kit{kit: parts}.Of(p)
}

// unmade names the key of the design that keeps parts from being made; other errors stay.
func unmade(a *layout.Array, err error) error {
	var named *design.Error
	switch {
	case errors.As(err, &named):
	case errors.Is(err, shell.ErrNoCleanCut), errors.Is(err, shell.ErrTooMany), errors.Is(err, shell.ErrSegment):
		return a.Fault("print.bed_mm", "", err.Error()+"; must be larger, or the body smaller", err)
	case errors.Is(err, shell.ErrNoFlat):
		return a.Fault("mounts.on", "", err.Error()+"; must have each on a flat for printed parts, by \"faces\" or, on a ball, \"even\": `pappus sheets` has templates and tables to mark and drill this one by hand", err)
	case errors.Is(err, shell.ErrCutout):
		return a.Fault("driver.cutout_mm", "", err.Error()+"; must be smaller, or the body larger", err)
	case errors.Is(err, kit.ErrOrder):
		return a.Fault("print.bed_mm", "", err.Error()+"; must be another, by a few centimetres larger or smaller on a side, so that the shell is cut elsewhere", err)
	case errors.Is(err, kit.ErrPart):
		return a.Fault("kit", "", err.Error()+"; must be of another body, wall or bed", err)
	}
	return err
}

// Cores are those of the cable that leaves the first body: two for each channel that drives it.
func Cores(p *timing.Plan) (n int) {
	for _, c := range p.Channels {
		if slices.ContainsFunc(c.Mounts, func(m int) bool { return p.Array.Mounts[m].Body == 0 }) {
			n += 2
		}
	}
	return n
}

// Document is what other programs read of it.
func (k Kit) Document(files document.Written) document.Kit {
	return document.OfKit(files, k.plan.Array, k.kit.Made, k.bill)
}

// Of is the kit of another plan that has the same parts; its bill may be another. The error is that of
// layout.Array.Hollow.
func (k Kit) Of(p *timing.Plan) (Kit, error) {
	hollow, err := p.Array.Hollow()
	if err != nil {
		return Kit{}, err
	}
	b := bill.OfKit(p, k.kit.Made, hollow.Stuffing)
	out := Kit{plan: p, kit: k.kit, bill: b}
	out.Files = append(out.kit.Files(p, b, out.more()...), wiringBook(p))
	return out, nil
}

// Parts are the parts as they are together, and how many there are of each.
func (k Kit) Parts() []kit.Part { return k.kit.Parts }

// Fitted are the loose parts that belong to the whole, where they go.
func (k Kit) Fitted() []kit.Part { return k.kit.Fitted(k.plan.Array.Body.Cut, k.plan.Array.Stand) }

// Sentences say what the parts take, and what to mind.
func (k Kit) Sentences() []string {
	return words.KitSentences(k.plan.Array, k.kit.Made, k.plan.DriverVolt(), k.more()...)
}

// more is what the kit takes, and how it hangs.
func (k Kit) more() []string {
	balance, known := bill.BalanceOf(k.plan.Array, k.kit.Whole())
	return append([]string{words.TakesKit(k.bill)}, words.Hanging(k.plan.Array, balance, known)...)
}

// Screen writes what people read of it.
func (k Kit) Screen(w io.Writer) error {
	return table.KitScreen(w, k.plan.Array, k.kit.Made, k.plan.DriverVolt(), k.more()...)
}
