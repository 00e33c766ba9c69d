package design

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"pappus/layout/prose"
)

// kind is what a key's value may be, and where it goes.
type kind struct {
	// kindly and allowed end the sentence "must be": the first where the type
	// is wrong, the second where the value is.
	kindly, allowed string
	// set stores a value, or says ErrType or ErrRange.
	set func(v any) error
	// words are those that it takes, if it takes a few; nil for all else.
	words []string
}

// takes is a kind of value that may be more than a few words.
func takes(kindly, allowed string, set func(v any) error) kind {
	return kind{kindly: kindly, allowed: allowed, set: set}
}

// number takes a whole or broken number.
func number(to *float64, low, high float64) kind {
	span := fmt.Sprintf("from %s to %s", plain(low), plain(high))
	return takes("a number "+span, span, func(v any) error {
		switch n := v.(type) {
		case float64:
			*to = n
		case int64:
			*to = float64(n)
		default:
			return ErrType
		}
		// Written so that NaN fails.
		if !(*to >= low && *to <= high) {
			return ErrRange
		}
		return nil
	})
}

// optional is a number that may stay away: to is nil then.
func optional(to **float64, low, high float64) kind {
	var n float64
	k := number(&n, low, high)
	return takes(k.kindly, k.allowed, func(v any) error {
		*to = &n
		return k.set(v)
	})
}

// whole takes an integer.
func whole(to *int, low, high int) kind {
	span := fmt.Sprintf("from %d to %d", low, high)
	return takes("a whole number "+span, span, func(v any) error {
		n, ok := v.(int64)
		if !ok {
			return ErrType
		}
		if n < int64(low) || n > int64(high) {
			return ErrRange
		}
		*to = int(n)
		return nil
	})
}

// wholeOf takes one of a few integers.
func wholeOf(to *int, these ...int) kind {
	any1 := eitherWhole(these)
	return takes(any1, any1, func(v any) error {
		n, ok := v.(int64)
		if !ok {
			return ErrType
		}
		if !slices.Contains(these, int(n)) {
			return ErrRange
		}
		*to = int(n)
		return nil
	})
}

// wholes takes a list of integers, none of them twice.
func wholes(to *[]int, low, high int) kind {
	span := fmt.Sprintf("whole numbers from %d to %d in square brackets, none twice", low, high)
	return takes(span, span, func(v any) error {
		in, ok := v.([]any)
		if !ok {
			return ErrType
		}
		seen := map[int]bool{}
		out := make([]int, len(in))
		for i, v := range in {
			if err := whole(&out[i], low, high).set(v); err != nil {
				return err
			}
			if seen[out[i]] {
				return ErrRange
			}
			seen[out[i]] = true
		}
		*to = out
		return nil
	})
}

// three takes a list of three numbers.
func three(to *[3]float64, low, high float64) kind {
	span := fmt.Sprintf("three numbers from %s to %s in square brackets", plain(low), plain(high))
	return takes(span, span, func(v any) error { return list(to[:], v, low, high) })
}

// zones takes a list of places to keep clear, each as three numbers.
func zones(to *[]Zone) kind {
	const span = "a list of [azimuth from -360 to 360, elevation from -90 to 90, half angle from 0.1 to 90], in degrees, at most 100"
	return takes(span, span, func(v any) error {
		in, ok := v.([]any)
		if !ok {
			return ErrType
		}
		if len(in) > 100 {
			return ErrRange
		}
		out := make([]Zone, len(in))
		for i, v := range in {
			var n [3]float64
			if err := list(n[:], v, -360, 360); err != nil {
				return err
			}
			if math.Abs(n[1]) > 90 || n[2] < 0.1 || n[2] > 90 {
				return ErrRange
			}
			out[i] = Zone{n[0], n[1], n[2]}
		}
		*to = out
		return nil
	})
}

// octaves takes one number for all octave bands, or a list with one for each.
func octaves(to *Octaves, low, high float64) kind {
	span := fmt.Sprintf("from %s to %s, or seven such numbers in square brackets for the octaves from 125 Hz to 8 kHz", plain(low), plain(high))
	return takes("a number "+span, span, func(v any) error {
		if _, ok := v.([]any); ok {
			return list(to[:], v, low, high)
		}
		var n float64
		err := number(&n, low, high).set(v)
		for i := range to {
			to[i] = n
		}
		return err
	})
}

// everywhere takes octaves for all walls of a room at once.
func everywhere(to *[6]Octaves, low, high float64) kind {
	var wall Octaves
	k := octaves(&wall, low, high)
	return takes(k.kindly, k.allowed, func(v any) error {
		err := k.set(v)
		for i := range to {
			to[i] = wall
		}
		return err
	})
}

// list fills to from a list of as many numbers.
func list(to []float64, v any, low, high float64) error {
	in, ok := v.([]any)
	if !ok {
		return ErrType
	}
	if len(in) != len(to) {
		return ErrRange
	}
	for i, v := range in {
		if err := number(&to[i], low, high).set(v); err != nil {
			return err
		}
	}
	return nil
}

// choice takes one of a few words.
func choice(to *string, these []string) kind {
	any1 := oneOf(these)
	k := takes(any1, any1, func(v any) error {
		s, ok := v.(string)
		if !ok {
			return ErrType
		}
		if !slices.Contains(these, s) {
			return ErrRange
		}
		*to = s
		return nil
	})
	k.words = these
	return k
}

// text takes a short printable text.
func text(to *string, most int) kind {
	span := fmt.Sprintf("1 to %d letters on one line", most)
	return takes("text in quotes, "+span, span, func(v any) error {
		s, ok := v.(string)
		if !ok {
			return ErrType
		}
		bad := func(c rune) bool { return !unicode.IsPrint(c) }
		if n := len([]rune(s)); n < 1 || n > most || strings.TrimSpace(s) == "" || strings.ContainsFunc(s, bad) {
			return ErrRange
		}
		*to = s
		return nil
	})
}

// flag takes true or false.
func flag(to *bool) kind {
	return takes("true or false", "true or false", func(v any) error {
		b, ok := v.(bool)
		if !ok {
			return ErrType
		}
		*to = b
		return nil
	})
}

// oneOf writes words as "a, b or c", each as the file has them.
func oneOf(list []string) string {
	q := make([]string, len(list))
	for i, w := range list {
		q[i] = strconv.Quote(w)
	}
	return prose.Either(q)
}

// eitherWhole writes whole numbers as "2, 4 or 8".
func eitherWhole(numbers []int) string {
	list := make([]string, len(numbers))
	for i, n := range numbers {
		list[i] = strconv.Itoa(n)
	}
	return prose.Either(list)
}

// plain writes a number as the file would have it.
func plain(v float64) string { return prose.Number(v, 0) }

// written gives a value about as the file has it.
func written(v any) string {
	switch v := v.(type) {
	case string:
		return strconv.Quote(shorten(v, 40))
	case float64:
		s := plain(v)
		if strings.Trim(s, "-0123456789") == "" {
			s += ".0" // not to be taken for a whole number
		}
		return s
	case map[string]any:
		return "{…}"
	case []any:
		parts := make([]string, 0, 8)
		for i, e := range v {
			if i == 7 {
				parts = append(parts, "…")
				break
			}
			if _, deep := e.([]any); deep {
				parts = append(parts, "[…]")
				continue
			}
			parts = append(parts, written(e))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	default:
		return shorten(fmt.Sprint(v), 40)
	}
}
