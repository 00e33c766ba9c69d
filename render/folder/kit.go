package folder

import (
	"io"

	"pappus/render/document"
	"pappus/render/sheets"
	"pappus/render/table"
	"pappus/timing"
)

// Kit is the parts that go together, and their files.
type Kit struct {
	Files []file
	plan  *timing.Plan
	kit   sheets.Kit
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
	k, err := sheets.NewKit(p.Array, print, meshes)
	return Kit{k.Files(p.Array), p, k}, err
}

// Document is what other programs read of it.
func (k Kit) Document(files document.Written) document.Kit {
	return document.OfKit(files, k.plan.Array, k.kit.Parts)
}

// Screen writes what people read of it.
func (k Kit) Screen(w io.Writer) error {
	return table.KitScreen(w, k.plan.Array, k.kit.Parts, k.kit.Prints, k.kit.Spots)
}
