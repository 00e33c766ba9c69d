package page

import (
	"pappus/layout"
	"pappus/render/document"
	"pappus/render/tape"
	"pappus/render/words"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// place is where somebody sits, in the words that all screens have for it.
type place struct {
	Along number `json:"along_m"` // along the floor
	Short string `json:"short"`
	Tape  string `json:"tape"` // where to hold the tape
	High  string `json:"high"`
}

func placeOf(a *layout.Array, p r3.Vec) place {
	at := tape.Of(a, p)
	return place{document.To(3, at.Along()), at.Short(), at.Full(), at.High()}
}

// shownFinding is one thing to know before a design is built.
type shownFinding struct {
	Rank  string `json:"rank"`
	Lead  string `json:"lead"`  // the word that stands before it
	Stops bool   `json:"stops"` // it should not be built so
	What  string `json:"what"`
	Cure  string `json:"cure"`
}

// findings gives what heads the page, worst first, and how many more there are.
func findings(all []timing.Finding) (out []shownFinding, more int) {
	out = []shownFinding{}
	shown, more := words.Shown(all)
	for _, f := range shown {
		out = append(out, shownFinding{f.Rank.String(), words.Lead(f.Rank), f.Rank.Stops(), f.What, f.Cure})
	}
	return out, more
}

// walk is a way from the chair.
type walk struct {
	Named
	to func(from r3.Vec) r3.Vec
}

// walks are the ways from the chair that can be heard, by their names.
var walks = []walk{
	{Named{Name: "round", Words: "to the far side"}, func(p r3.Vec) r3.Vec { return r3.Vec{X: -p.X, Y: -p.Y, Z: p.Z} }},
	{Named{Name: "left", Words: "half a metre to your left"}, func(p r3.Vec) r3.Vec { return tape.ToLeft(p, 0.5) }},
	{Named{Name: "right", Words: "half a metre to your right"}, func(p r3.Vec) r3.Vec { return tape.ToLeft(p, -0.5) }},
	{Named{Name: "near", Words: "half as far away"}, func(p r3.Vec) r3.Vec { return r3.Vec{X: p.X / 2, Y: p.Y / 2, Z: p.Z} }},
}

// walkNames are the walks that are offered.
func walkNames() []Named {
	out := make([]Named, len(walks))
	for i, w := range walks {
		out[i] = w.Named
	}
	return out
}
