package layout

import (
	"fmt"
	"math"

	"pappus/layout/body"
	"pappus/layout/design"

	"gonum.org/v1/gonum/spatial/r3"
)

// us is a microsecond in s.
const us = 1e-6

// zeroCelsius is 0 degrees Celsius in K.
const zeroCelsius = 273.15

// Build lays a design out. Mounts are placed on the whole body; those whose
// cut-out would reach below the cut are left out, then those in the zone to be
// kept clear. The rest is numbered from the top down, ring by ring, each ring
// counter-clockwise from x, and then the places to skip are taken out.
func Build(d *design.Design) (*Array, error) {
	whole, err := shape(d)
	if err != nil {
		return nil, fault(d, "body.shape", d.Body.Shape, err.Error(), err)
	}
	cut := whole
	if d.Body.HasCut {
		if cut, err = whole.CutAt(d.Body.CutHeightMM / 1000); err != nil {
			return nil, fault(d, "body.cut_height_mm", fmt.Sprint(d.Body.CutHeightMM), err.Error(), err)
		}
	}
	a := convert(d, cut)
	if cut.Contains(a.Spot) {
		return nil, fault(d, "spot", "", "the spot is inside the body", ErrSpotInside)
	}
	if a.Mounts, err = mounts(d, whole, cut, a.Driver); err != nil {
		return nil, err
	}
	if a.Channels, err = channels(d, a); err != nil {
		return nil, err
	}
	a.Warnings = warnings(a)
	return a, nil
}

// fault is an error about a key of the design.
func fault(d *design.Design, key, value, reason string, err error) error {
	return &design.Error{File: d.Path, Key: key, Value: value, Reason: reason, Err: err}
}

// shape makes the whole body.
func shape(d *design.Design) (*body.Body, error) {
	radius := d.Body.RadiusMM / 1000
	switch d.Body.Shape {
	case "ball":
		return body.Ball(radius), nil
	case "geodesic":
		return body.Geodesic(d.Body.Base, d.Body.Subdivision, radius)
	}
	return body.Platonic(d.Body.Shape, radius)
}

// convert turns a design's quantities into SI.
func convert(d *design.Design, b *body.Body) *Array {
	a := &Array{
		Name: d.Name,
		Air: Air{
			Temperature: d.Air.TemperatureC + zeroCelsius,
			Humidity:    d.Air.HumidityPercent / 100,
			Pressure:    d.Air.PressureKPa * 1000,
		},
		Body:  b,
		Stand: d.Body.StandHeightMM / 1000,
		Wall:  d.Body.WallMM / 1000,
		Driver: Driver{
			ConeRadius:    d.Driver.DiameterMM / 2000,
			CutoutRadius:  d.Driver.CutoutMM / 2000,
			FlangeRadius:  d.Driver.FlangeMM / 2000,
			Depth:         d.Driver.DepthMM / 1000,
			NominalOhm:    d.Driver.NominalOhm,
			DCOhm:         d.Driver.DCOhm,
			Sensitivity:   math.NaN(),
			PowerHandling: d.Driver.PowerW,
		},
		Timing:   Timing(d.Timing),
		Wiring:   Wiring{Channels: d.Wiring.Channels, MinimumLoad: d.Wiring.MinimumLoadOhm},
		Spot:     r3.Vec{X: d.Spot.XM, Y: d.Spot.YM, Z: d.Spot.ZM},
		Coverage: Coverage{HalfWidth: d.Coverage.HalfWidthM, Cells: d.Coverage.Cells},
	}
	if d.Driver.SensitivityDB != nil {
		a.Driver.Sensitivity = *d.Driver.SensitivityDB
	}
	return a
}
