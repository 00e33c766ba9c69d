package space

import (
	"math"

	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// Cost is what an array takes, of all its bodies together but for its measures. SI but for
// Price and Hours.
type Cost struct {
	Drivers int
	Price   float64 // of drivers and plastic; NaN: a driver's is not known. Plastic without a price counts nothing
	Plastic float64 // kg, the shell printed solid
	Mass    float64 // kg, of the shell, and of the drivers where one's is known
	Hours   float64 // of printing, at the printer's flow
	Volume  float64 // m3, that the drivers of one body share
	// Of one body, with its stand where it stands or hangs, as it is held: from side to
	// side, up and down, from back to front. In m.
	Width, Height, Depth float64
	InOne                bool // one body's shell fits the bed as it is
}

// CostOf returns what an array takes. The error tells of walls or drivers that leave no room.
func CostOf(a *layout.Array) (Cost, error) {
	room, err := a.Shared()
	if err != nil {
		return Cost{}, err
	}
	n, bodies := len(a.Mounts), float64(len(a.Bodies()))
	hole := math.Pi * a.Driver.CutoutRadius * a.Driver.CutoutRadius * a.Wall
	plastic := max(0, bodies*room.Walls-float64(n)*hole) // m3
	c := Cost{Drivers: n, Price: math.NaN(), Plastic: plastic * a.Print.Density, Volume: room.Net, InOne: a.InOne()}
	c.Mass = c.Plastic + float64(n)*a.Driver.Mass
	c.Hours = plastic / a.Print.Flow / 3600
	if a.Driver.Price != nil {
		c.Price = float64(n) * *a.Driver.Price
		if a.Print.Price != nil {
			c.Price += c.Plastic * *a.Print.Price
		}
	}
	c.Width, c.Depth, c.Height = across(a, r3.Vec{Y: 1}), across(a, r3.Vec{X: 1}), across(a, r3.Vec{Z: 1})
	return c, nil
}

// across is how far an array's first body reaches along a direction of the room, with the
// stand where that lies along it.
func across(a *layout.Array, u r3.Vec) float64 {
	out := a.Extent(u) + a.Extent(r3.Scale(-1, u))
	return out + math.Abs(r3.Dot(layout.Towards(a.On), u))*a.Stand
}
