package folder

import (
	"io"
	"slices"

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

// NewKit makes the parts of a plan's shell. Errors are those of layout.Array.Segments and of
// packages shell and kit.
func NewKit(p *timing.Plan) (Kit, error) {
	print, err := p.Array.Segments()
	if err != nil {
		return Kit{}, err
	}
	meshes, err := sheets.Shells(p.Array, print)
	if err != nil {
		return Kit{}, err
	}
	hollow, err := p.Array.Hollow()
	if err != nil {
		return Kit{}, err
	}
	k := Kit{plan: p}
	if k.kit, err = sheets.NewKit(p.Array, print, meshes, 2*channelsOf(p)); err != nil {
		return Kit{}, err
	}
	k.bill = bill.OfKit(p, k.kit.Made, hollow.Stuffing)
	k.Files = k.kit.Files(p, k.bill)
	return k, nil
}

// channelsOf returns how many channels drive the first body.
func channelsOf(p *timing.Plan) (n int) {
	for _, c := range p.Channels {
		if slices.ContainsFunc(c.Mounts, func(m int) bool { return p.Array.Mounts[m].Body == 0 }) {
			n++
		}
	}
	return n
}

// Document is what other programs read of it.
func (k Kit) Document(files document.Written) document.Kit {
	return document.OfKit(files, k.plan.Array, k.kit.Made, k.bill)
}

// Screen writes what people read of it.
func (k Kit) Screen(w io.Writer) error {
	a := k.plan.Array
	balance, known := bill.BalanceOf(a, k.kit.Whole())
	more := append([]string{words.TakesKit(k.bill)}, words.Hanging(a, balance, known)...)
	return table.KitScreen(w, a, k.kit.Made, k.plan.DriverVolt(), more...)
}
