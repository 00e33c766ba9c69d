package layout

import (
	"errors"
	"fmt"
	"math"
	"path/filepath"

	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/fit"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

const (
	mm = 1e-3 // m
	us = 1e-6 // s

	zeroCelsius = 273.15 // K
)

// Build lays a design out. The design is one that package design has read: its
// values are in range and its defaults filled in.
//
// What cannot be laid out is a *design.Error that wraps one of this package's
// errors, one of package body's, or for a list of mounts one of package
// design's. What can but should not be is in Array.Warnings.
func Build(d *design.Design) (*Array, error) {
	whole, err := wholeBody(d)
	if err != nil {
		return nil, err
	}
	shell, err := cutBody(d, whole)
	if err != nil {
		return nil, err
	}
	a := &Array{
		Name: d.Name,
		Air: Air{
			Temperature: zeroCelsius + d.Air.TemperatureC,
			Humidity:    d.Air.HumidityPercent / 100,
			Pressure:    d.Air.PressureKPa * 1000,
		},
		Body:    shell,
		Stand:   d.Body.StandHeightMM * mm,
		Wall:    d.Body.WallMM * mm,
		Driver:  driver(d.Driver),
		Outline: outlineOf(d.Driver),
		Limits:  limitsOf(d),
		Box: Box{
			Braces: d.Box.BracesL / 1000, TargetQ: d.Box.TargetQ,
			VentRadius: d.Box.VentHoleMM / 2 * mm, VentHoles: d.Box.VentHoles, Stuffing: d.Box.StuffingKgM3,
		},
		Print:      Print{Bed: r3.Scale(mm, vec(d.Print.BedMM)), Margin: d.Print.MarginMM * mm, Density: d.Print.DensityKgM3},
		Surface:    surface(d, shell),
		Room:       room(d.Room),
		Woofer:     woofer(d.Woofer),
		Timing:     timing(d.Timing),
		Wiring:     amplified(d.Wiring),
		Protection: Protection{Family: d.Protection.Family, Order: d.Protection.Order, Corner: d.Protection.CornerHz},
		Processor:  processor(d.Processor),
		Spot:       r3.Vec{X: d.Spot.XM, Y: d.Spot.YM, Z: d.Spot.ZM},
		Coverage:   Coverage{HalfWidth: d.Coverage.HalfWidthM, Cells: d.Coverage.Cells, SmearLimit: d.Coverage.SmearLimitUS * us},
	}
	if a.Driver.Response, err = response(d); err != nil {
		return nil, err
	}
	if a.Driver.Impedance, err = impedances(d); err != nil {
		return nil, err
	}
	if !a.standing() {
		a.Body = shell.InOpenAir()
	}
	if a.Body.Contains(a.Spot) || a.Body.InBall(a.Spot) {
		return nil, fault(d, "spot", "", prose.Sprintf("the listening spot is %.3g m from the body's centre, inside the body; must be outside",
			r3.Norm(a.Spot)), ErrInside)
	}
	places, err := place(d, whole, shell)
	if err != nil {
		return nil, err
	}
	a.Mounts = places.mounts
	if err := checkPlaces(d, a); err != nil {
		return nil, err
	}
	if err := a.tuneToBody(); err != nil {
		return nil, fault(d, "driver", "", err.Error(), err)
	}
	if err := checkWoofer(d, a); err != nil {
		return nil, err
	}
	if err := checkLoad(d, a); err != nil {
		return nil, err
	}
	if a.Fits, err = fit.Check(shell, fitMounts(a.Mounts), a.Outline, a.Limits); err != nil {
		return nil, fault(d, "driver", "", err.Error(), err)
	}
	a.Warnings = append(verdict(a, d, whole), leftOut(d, places)...)
	if a.Channels, err = channels(d, a); err != nil {
		return nil, err
	}
	a.Warnings = append(a.Warnings, offBody(d, whole, a)...)
	a.Warnings = append(a.Warnings, wiringWarnings(a)...)
	a.Warnings = append(a.Warnings, wooferWarnings(a)...)
	return a, nil
}

// cutBody cuts the body where the design asks for it.
func cutBody(d *design.Design, whole *body.Body) (*body.Body, error) {
	if !d.Body.HasCut {
		return whole, nil
	}
	shell, err := whole.CutAt(d.Body.CutHeightMM * mm)
	if errors.Is(err, body.ErrNothingLeft) {
		return nil, fault(d, "body.cut_height_mm", fmt.Sprint(d.Body.CutHeightMM), "nothing of the body is left above this height; must be lower", err)
	}
	if err != nil {
		return nil, fault(d, "body.cut_height_mm", fmt.Sprint(d.Body.CutHeightMM), err.Error(), err)
	}
	return shell, nil
}

func driver(d design.Driver) Driver {
	return Driver{
		ConeRadius:    d.DiameterMM / 2 * mm,
		CutoutRadius:  d.CutoutMM / 2 * mm,
		FlangeRadius:  d.FlangeMM / 2 * mm,
		Depth:         d.DepthMM * mm,
		NominalOhm:    d.NominalOhm,
		DCOhm:         d.DCOhm,
		Sensitivity:   orNaN(d.SensitivityDB),
		PowerHandling: d.PowerW,
		Small: Small{
			Fs: d.FsHz, Qms: d.Qms, Qes: d.Qes, Vas: d.VasL / 1000, BL: d.BLTM, Mass: d.MmsG / 1000,
			Area: d.SdCM2 * 1e-4, Inductance: d.LeMH / 1000, Reach: d.XmaxMM * mm,
		},
		Resonance:  d.ResonanceHz,
		ResonanceQ: d.ResonanceQ,
	}
}

// orNaN gives a number, NaN where there is none.
func orNaN(v *float64) float64 {
	if v == nil {
		return math.NaN()
	}
	return *v
}

func outlineOf(d design.Driver) fit.Driver {
	return fit.Driver{
		CutoutRadius:   d.CutoutMM / 2 * mm,
		FlangeRadius:   d.FlangeMM / 2 * mm,
		Depth:          d.DepthMM * mm,
		MagnetRadius:   d.MagnetMM / 2 * mm,
		MagnetHeight:   d.MagnetHeightMM * mm,
		TerminalReach:  d.TerminalReachMM * mm,
		TerminalFront:  d.TerminalFrontMM * mm,
		TerminalLength: d.TerminalLengthMM * mm,
		ScrewRadius:    d.ScrewMM / 2 * mm,
	}
}

func limitsOf(d *design.Design) fit.Limits {
	return fit.Limits{Wall: d.Body.WallMM * mm, Apart: d.Fit.ApartMM * mm, Edge: d.Fit.EdgeMM * mm}
}

// processor gives what delays can be set; without a step, one sample.
func processor(d design.Processor) Processor {
	p := Processor{Rate: d.RateHz, Step: d.StepUS * us}
	if p.Step == 0 {
		p.Step = 1 / p.Rate
	}
	return p
}

func amplified(d design.Wiring) Wiring {
	return Wiring{Channels: d.Channels, MinimumLoad: d.MinimumLoadOhm, Voltage: d.AmplifierVolt, HasAmplifier: d.HasAmplifier,
		Watt: d.AmplifierW, IntoOhm: d.AmplifierIntoOhm, Split: d.Split, LongestString: d.LongestString,
		WireLength: d.WireM, WireSection: d.WireMM2 * 1e-6}
}

func timing(d design.Timing) Timing {
	return Timing{Model: d.Model, DelaysBy: d.DelaysBy, FieldLow: d.FieldLowHz, FieldHigh: d.FieldHighHz}
}

// beside gives the path of a file that the design names: beside the design,
// unless it says where.
func beside(d *design.Design, path string) string {
	if filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(filepath.Dir(d.Path), path)
}

// fault is the error for a key of the design.
func fault(d *design.Design, key, value, reason string, err error) *design.Error {
	return &design.Error{File: d.Path, Key: key, Value: value, Reason: reason, Err: err}
}
