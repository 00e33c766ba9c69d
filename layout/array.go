package layout

import (
	"pappus/layout/advice"
	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/fit"
	"pappus/layout/impedance"

	"gonum.org/v1/gonum/spatial/r3"
)

// Array is a design laid out: where each driver sits and which channel it
// belongs to. It is the one value that leaves this room. All is SI: metres,
// kelvin, pascals, watts. Mounts, body and fits are in the body's own frame: the origin is the
// centre of the uncut body, x points to its front mark, y to its left and z to its top. All
// else is in the room's (Placing).
type Array struct {
	// File and Lines are where the design stands, for what is found wrong with it later.
	File  string
	Lines design.Lines

	Name       string
	Air        Air
	Body       *body.Body
	Stand      float64   // gap in m between the body and what it is fixed to
	Wall       float64   // m
	On         string    // what it is fixed to: surface, ceiling or wall; empty: surface
	Placings   []Placing // where each body is; empty: one that stands as designed
	Surface    Surface   // that the body is fixed to; none where there is a room
	Room       Room
	Woofer     Woofer
	Mounts     []Mount
	Empty      []Mount // places of the first body that stay empty, by mounts.skip
	Driver     Driver
	Box        Box
	Print      Print
	Kit        Kit
	Build      design.Build // what building takes beside
	Parts      []Part       // of the bill, beside what the design takes anyway
	Limits     fit.Limits
	Fits       []fit.Report // how each mount's driver fits: the one verdict
	Timing     Timing
	Wiring     Wiring
	Protection Protection
	Processor  Processor
	Channels   []Channel // laid out by hand; empty: timing works them out
	Spot       r3.Vec    // m
	Seats      []Seat    // where people sit, areas sampled; fewer than two: the spot alone is planned for
	Seating    Seating
	Coverage   Coverage
	Warnings   []advice.Finding // what the builder should know of fit, wiring and woofer, in the order in which it was found
}

// What a design says as it is.
type (
	Air            = design.Air
	Driver         = design.Driver
	Small          = design.Small
	ImpedancePoint = impedance.Point
	ResponsePoint  = design.ResponsePoint
	Box            = design.Box
	Print          = design.Print
	Kit            = design.Kit
	Part           = design.Part
	Timing         = design.Timing
	Wiring         = design.Wiring
	Protection     = design.Protection
	Processor      = design.Processor
	Room           = design.Room
	Absorption     = design.Absorption
	Woofer         = design.Woofer
	Coverage       = design.Coverage
	Seat           = design.Seat
	Seating        = design.Seating
)

// Mount is a place on the body for one driver.
type Mount struct {
	ID     int    // its number on the body, from 1; skipped places leave gaps
	Point  r3.Vec // m
	Normal r3.Vec // unit length, outward
	Face   int    // index into Body.Faces; -1 where it sits on none
	Body   int    // which of the bodies it is on: index into Array.Bodies
}

// IDs returns the numbers of the mounts at some indices, in their order; never nil.
func (a *Array) IDs(mounts []int) []int {
	out := make([]int, len(mounts))
	for i, m := range mounts {
		out[i] = a.Mounts[m].ID
	}
	return out
}

// Channel is one amplifier output, driving one bank.
type Channel struct {
	ID     int     // from 1
	Mounts []int   // indices into Array.Mounts
	Gain   float64 // dB
	Invert bool
	// Delay in s; NaN: to be worked out.
	Delay            float64
	Series, Parallel int // drivers in a string, strings in the bank
	NominalOhm       float64
	DCOhm            float64
}
