package design

import (
	"cmp"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// Row is one key of a table, as data: what may stand there, where it goes and what it is.
type Row struct {
	Name string // as the file has it; a unit stands at its end
	// To points to where the value goes, and so says what kind of value it is: float64,
	// *float64 (nil without one), int, bool, string, a list of them, or Absorption. A
	// func(any) error takes what none of them can.
	To any
	Limits
	Scale   float64 // what one of the key's unit is where it goes, such as 0.001 for mm in m; 0: 1
	Default any     // where the zero value is none; needed: there is none, and the key must be there
	Label   string  // what the key is, in a few words; empty: its name says it
}

// needed is the default of a key that must be there where its table is.
var needed = new(any)

// Limits are what a key's values may be, beyond their kind.
type Limits struct {
	low, high float64  // of a number, or of each in a list; of a text, its letters
	words     []string // the only ones
	few       []int    // the only ones
	Says      string   // ends the sentence "must be" where the rest does not
}

// From limits a number, or each in a list.
func From(low, high float64) Limits { return Limits{low: low, high: high} }

// Letters limits a text to one line of at most so many.
func Letters(most float64) Limits { return Limits{low: 1, high: most} }

func among(words ...string) Limits { return Limits{words: words} }

func either(few ...int) Limits {
	return Limits{few: few, low: float64(few[0]), high: float64(few[len(few)-1])}
}

// Kind is what a value may be.
type Kind string

// A List may also be one number where it is of absorptions.
const (
	Number Kind = "number"
	Whole  Kind = "whole"
	Choice Kind = "choice"
	Flag   Kind = "flag"
	Text   Kind = "text"
	List   Kind = "list"
)

func (r Row) kind() Kind {
	switch r.To.(type) {
	case *float64, **float64, cut, kelvin:
		return Number
	case *int:
		return Whole
	case *bool:
		return Flag
	case *string:
		if r.words != nil {
			return Choice
		}
		return Text
	}
	return List
}

// cut is where the height of a body's cut goes, kelvin where degrees Celsius do.
type (
	cut    struct{ *Body }
	kelvin struct{ to *float64 }
)

// allowed ends the sentence "must be" where a value is of the right kind.
func (r Row) allowed() string {
	span := "from " + plain(r.low) + " to " + plain(r.high)
	v, many := r.To.(varying)
	switch {
	case many:
		return choosing(v.of)
	case r.Says != "":
		return r.Says
	case r.words != nil:
		return oneOf(r.words)
	case r.few != nil:
		return eitherWhole(r.few)
	}
	switch r.To.(type) {
	case *bool:
		return "true or false"
	case *string:
		return "1 to " + plain(r.high) + " letters on one line"
	case *[]int:
		return "whole numbers " + span + " in square brackets, none twice"
	case *r3.Vec:
		return "three numbers " + span + " in square brackets"
	case *[]Zone:
		return "a list of [azimuth from -360 to 360, elevation from -90 to 90, half angle from 0.1 to 90], in degrees, at most 100"
	case *Absorption, *[6]Absorption:
		return span + ", or seven such numbers in square brackets for the octaves from 125 Hz to 8 kHz"
	}
	return span
}

// kindly ends that sentence where a value is of another kind.
func (r Row) kindly() string {
	if r.Says != "" || r.words != nil || r.few != nil {
		return r.allowed()
	}
	switch r.To.(type) {
	case *float64, **float64, cut, kelvin, *Absorption, *[6]Absorption:
		return "a number " + r.allowed()
	case *int:
		return "a whole number " + r.allowed()
	case *string:
		return "text in quotes, " + r.allowed()
	}
	return r.allowed()
}

// must begins with some words what the key must be; nothing where that is not known.
func (r Row) must(begin string) string {
	if r.To == nil {
		return ""
	}
	return begin + r.kindly()
}

// take puts a value of a file where the row says, or says ErrType or ErrRange.
func (r Row) take(v any) error {
	got, err := r.read(v)
	if err != nil {
		return err
	}
	switch to := r.To.(type) {
	case cut:
		to.Cut, to.HasCut = got.(float64), true
	case kelvin:
		*to.to = got.(float64)
	case func(any) error:
	default:
		reflect.ValueOf(to).Elem().Set(reflect.ValueOf(got))
	}
	return nil
}

// read turns a value of a file into what goes where the row says.
func (r Row) read(v any) (any, error) {
	switch to := r.To.(type) {
	case *float64, cut:
		return r.scaled(v)
	case **float64:
		n, err := r.scaled(v)
		return &n, err
	case kelvin:
		n, err := r.number(v)
		return n + zeroCelsius, err
	case *int:
		return r.whole(v)
	case *bool:
		b, ok := v.(bool)
		return b, asType(ok)
	case *string:
		return r.text(v)
	case *[]int:
		return r.wholes(v)
	case *[]string:
		return r.texts(v)
	case *r3.Vec:
		var n [3]float64
		err := r.numbers(n[:], v)
		return r3.Scale(r.scale(), r3.Vec{X: n[0], Y: n[1], Z: n[2]}), err
	case *[]Zone:
		return r.zones(v)
	case *Absorption:
		return r.octaves(v)
	case *[6]Absorption:
		wall, err := r.octaves(v)
		return [6]Absorption{wall, wall, wall, wall, wall, wall}, err
	case func(any) error:
		return nil, to(v)
	}
	panic(fmt.Sprintf("design: %s goes into a %T", r.Name, r.To))
}

func (r Row) scale() float64 { return cmp.Or(r.Scale, 1) }

// scaled reads a number and turns it into SI.
func (r Row) scaled(v any) (float64, error) {
	n, err := r.number(v)
	return n * r.scale(), err
}

// unscaled turns a number of SI back, without what rounding adds.
func (r Row) unscaled(v float64) float64 {
	if r.scale() == 1 {
		return v
	}
	v, _ = strconv.ParseFloat(strconv.FormatFloat(v/r.scale(), 'g', 13, 64), 64)
	return v
}

// asType and asRange say what is wrong with a value that is not ok.
func asType(ok bool) error {
	if ok {
		return nil
	}
	return ErrType
}

func asRange(ok bool) error {
	if ok {
		return nil
	}
	return ErrRange
}

func (l Limits) number(v any) (n float64, err error) {
	switch v := v.(type) {
	case float64:
		n = v
	case int64:
		n = float64(v)
	default:
		return 0, ErrType
	}
	return n, asRange(n >= l.low && n <= l.high) // false for NaN
}

func (l Limits) whole(v any) (int, error) {
	n, ok := v.(int64)
	if !ok {
		return 0, ErrType
	}
	return int(n), asRange(float64(n) >= l.low && float64(n) <= l.high && (l.few == nil || slices.Contains(l.few, int(n))))
}

func (l Limits) text(v any) (string, error) {
	s, ok := v.(string)
	if !ok || l.words != nil {
		return s, cmp.Or(asType(ok), asRange(slices.Contains(l.words, s)))
	}
	n := float64(len([]rune(s)))
	hidden := func(c rune) bool { return !unicode.IsPrint(c) }
	return s, asRange(n >= l.low && n <= l.high && strings.TrimSpace(s) != "" && !strings.ContainsFunc(s, hidden))
}

// numbers fills dst from a list of as many.
func (l Limits) numbers(dst []float64, v any) error {
	in, ok := v.([]any)
	if !ok || len(in) != len(dst) {
		return cmp.Or(asType(ok), ErrRange)
	}
	for i, v := range in {
		var err error
		if dst[i], err = l.number(v); err != nil {
			return err
		}
	}
	return nil
}

func (l Limits) wholes(v any) ([]int, error) {
	in, ok := v.([]any)
	out := make([]int, 0, len(in))
	for _, v := range in {
		n, err := l.whole(v)
		if err != nil {
			return nil, err
		}
		if slices.Contains(out, n) {
			return nil, ErrRange
		}
		out = append(out, n)
	}
	return out, asType(ok)
}

func (l Limits) texts(v any) ([]string, error) {
	in, ok := v.([]any)
	out := make([]string, 0, len(in))
	for _, v := range in {
		s, err := l.text(v)
		if err != nil {
			return nil, err
		}
		if slices.Contains(out, s) {
			return nil, ErrRange
		}
		out = append(out, s)
	}
	return out, cmp.Or(asType(ok), asRange(len(out) > 0))
}

func (l Limits) zones(v any) ([]Zone, error) {
	in, ok := v.([]any)
	if !ok || len(in) > 100 {
		return nil, cmp.Or(asType(ok), ErrRange)
	}
	out := make([]Zone, len(in))
	for i, v := range in {
		var n [3]float64
		if err := l.numbers(n[:], v); err != nil {
			return nil, err
		}
		if math.Abs(n[1]) > 90 || n[2] < 0.1 || n[2] > 90 {
			return nil, ErrRange
		}
		out[i] = Zone{n[0], n[1], n[2]}
	}
	return out, nil
}

// octaves takes one number for all bands, or a list with one for each.
func (l Limits) octaves(v any) (out Absorption, err error) {
	if _, ok := v.([]any); ok {
		err = l.numbers(out[:], v)
		return out, err
	}
	n, err := l.number(v)
	for i := range out {
		out[i] = n
	}
	return out, err
}

// value returns what stands where the row's value goes, as a file would have it; nil where
// that says that there is none.
func (r Row) value() any {
	switch to := r.To.(type) {
	case *float64:
		return settled(r.unscaled(*to), r.number)
	case **float64:
		if *to != nil {
			return r.unscaled(**to)
		}
	case cut:
		if to.HasCut {
			return r.unscaled(to.Cut)
		}
	case kelvin:
		return math.Round(1e9*(*to.to-zeroCelsius)) / 1e9
	case *int:
		if _, err := r.whole(int64(*to)); err == nil {
			return *to
		}
	case *bool:
		return *to
	case *string:
		return settled(*to, r.text)
	case *[]int:
		return list(*to, func(n int) any { return n })
	case *[]string:
		return list(*to, func(s string) any { return s })
	case varying:
		return to.value()
	case *r3.Vec:
		return list([]float64{to.X, to.Y, to.Z}, func(v float64) any { return r.unscaled(v) })
	case *[]Zone:
		return list(*to, func(z Zone) any { return []any{z.AzimuthDeg, z.ElevationDeg, z.HalfAngleDeg} })
	case *Absorption:
		return to.value()
	case *[6]Absorption:
		return to[0].value()
	}
	return nil
}

// settled is a value that may stand in a file; nil for one that says that there is none.
func settled[T any](v T, read func(any) (T, error)) any {
	if _, err := read(v); err != nil {
		return nil
	}
	return v
}

func list[T any](in []T, as func(T) any) []any {
	out := make([]any, len(in))
	for i, v := range in {
		out[i] = as(v)
	}
	return out
}

// value is one number where all octaves are alike, else all seven.
func (a Absorption) value() any {
	for _, v := range a {
		if v != a[0] {
			return list(a[:], func(v float64) any { return v })
		}
	}
	return a[0]
}

// oneOf writes words as "a, b or c", each as the file has them.
func oneOf(words []string) string {
	q := make([]string, len(words))
	for i, w := range words {
		q[i] = strconv.Quote(w)
	}
	return prose.Either(q)
}

// eitherWhole writes whole numbers as "2, 4 or 8".
func eitherWhole(numbers []int) string { return prose.Either(texts(numbers)) }

func texts(numbers []int) []string {
	out := make([]string, len(numbers))
	for i, n := range numbers {
		out[i] = strconv.Itoa(n)
	}
	return out
}
