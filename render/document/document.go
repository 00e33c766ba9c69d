// Package document holds what is told of a plan to other programs and to the page: the
// structs of plan.json and of what the commands print with --json.
//
// The keys are stable. Their names carry the unit; each field says what it is. A number
// that there is not (no comb onset up to the highest frequency, silence) is null where the
// field says so. Lengths are rounded to a micrometre, times to a nanosecond, levels to a
// millidecibel, so that a file does not change with the machine.
//
// Levels are in level_unit: dB SPL where the driver's sensitivity is given, else over a
// point source of one driver's volume velocity from 1 m.
//
// The page's types are made from these structs by render/page/bundle: a number is null
// there where the comment of its field has the word.
package document

import (
	"encoding/json"
	"io"
	"math"
	"strconv"

	"pappus/layout/advice"
	"pappus/render/words"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// Write writes a document, indented, with a final newline. The error is the writer's.
func Write(w io.Writer, document any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(document)
}

// Number is a rounded float; what is no number is null.
type Number float64

// MarshalJSON writes the number, or null.
func (n Number) MarshalJSON() ([]byte, error) { return n.appendTo(nil), nil }

// UnmarshalJSON reads a number; null is NaN.
func (n *Number) UnmarshalJSON(data []byte) error {
	if string(data) == "null" {
		*n = Number(math.NaN())
		return nil
	}
	return json.Unmarshal(data, (*float64)(n))
}

func (n Number) appendTo(b []byte) []byte {
	if v := float64(n); math.IsNaN(v) || math.IsInf(v, 0) {
		return append(b, "null"...)
	}
	return strconv.AppendFloat(b, float64(n), 'f', -1, 64)
}

// Numbers are many at once, never null as a whole.
type Numbers []Number

// MarshalJSON writes the list in one go, which is much faster than one by one.
func (n Numbers) MarshalJSON() ([]byte, error) {
	b := append(make([]byte, 0, 8*len(n)+2), '[')
	for i, v := range n {
		if i > 0 {
			b = append(b, ',')
		}
		b = v.appendTo(b)
	}
	return append(b, ']'), nil
}

// To rounds a value to so many places after the point; no zero is negative.
func To(places int, v float64) Number {
	scale := math.Pow(10, float64(places))
	return Number(math.Round(v*scale)/scale + 0)
}

// All rounds values as To does.
func All(places int, values []float64) Numbers {
	return each(values, func(v float64) Number { return To(places, v) })
}

func mm(v float64) Number { return To(3, 1000*v) }
func us(v float64) Number { return To(3, 1e6*v) }
func ms(v float64) Number { return To(6, 1000*v) }
func m(v float64) Number  { return To(6, v) }
func db(v float64) Number { return To(3, v) }

// some returns a number, nothing for 0.
func some(n Number) *Number {
	if n == 0 {
		return nil
	}
	return &n
}

// Triple is a point or a direction; it is never null.
type Triple [3]float64

// TripleOf rounds a scaled vector to so many places.
func TripleOf(places int, scale float64, v r3.Vec) Triple {
	return Triple{float64(To(places, scale*v.X)), float64(To(places, scale*v.Y)), float64(To(places, scale*v.Z))}
}

// each turns every element of a list; the result is never nil, so that it is [] in JSON.
func each[T, U any](in []T, turn func(T) U) []U {
	out := make([]U, len(in))
	for i, v := range in {
		out[i] = turn(v)
	}
	return out
}

// Finding is one thing to know.
type Finding struct {
	Code string `json:"code"`           // what kind it is, stable
	Rank string `json:"rank"`           // danger, misfit, caution, cost or note
	What string `json:"what"`           // what is wrong, with figures; a sentence without its full stop
	Cure string `json:"cure,omitempty"` // what to do
}

// Findings returns all that there are, worst first.
func Findings(all []timing.Finding) []Finding {
	return each(words.Findings(all), func(f advice.Finding) Finding { return Finding{f.Code, f.Rank.String(), f.What, f.Cure} })
}

// Found is what to look out for in a plan.
type Found struct {
	Warnings []string  `json:"warnings"` // the findings in lines
	Findings []Finding `json:"findings"` // worst first
}

func foundOf(all []timing.Finding) Found {
	return Found{advice.Lines(words.Findings(all)), Findings(all)}
}
