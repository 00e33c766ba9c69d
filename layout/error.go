package layout

import (
	"errors"

	"pappus/layout/design"
)

// What can be wrong with a design that reads well but cannot be laid out. Each
// comes wrapped in a *design.Error that names file, key and numbers.
var (
	ErrNoMounts      = errors.New("no driver left")
	ErrTooManyMounts = errors.New("too many drivers")
	ErrNoSuchMount   = errors.New("no such mount")
	ErrNotInChannel  = errors.New("driver in no channel")
	ErrBadMount      = errors.New("place that no driver can have")
	ErrBadResponse   = errors.New("response that no driver can have")
	ErrBelowSurface  = errors.New("place below the surface")
	ErrOutsideRoom   = errors.New("place outside the room")
	ErrWooferInside  = errors.New("woofer inside the body")
	ErrSpotInside    = design.ErrSpotInside
)
