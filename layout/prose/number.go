package prose

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// Numbers from tiny to vast, either sign, are written without an exponent: a frequency
// of 96000 Hz and a length of 0.0005 m are easier to read so, and nobody who is not used
// to it reads 1e+03 as a thousand.
const tiny, vast = 1e-4, 1e9

// Number writes a number with so many significant digits, as many as it takes if that is
// below 1, without zeros at the end. NaN and infinities are written as TOML has them.
func Number(v float64, digits int) string {
	switch {
	case math.IsNaN(v):
		return "nan"
	case math.IsInf(v, 1):
		return "inf"
	case math.IsInf(v, -1):
		return "-inf"
	}
	if digits > 0 {
		v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'e', digits-1, 64), 64)
	}
	if v == 0 {
		return "0" // no minus sign before it
	}
	if a := math.Abs(v); a >= tiny && a < vast {
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	mantissa, exponent, _ := strings.Cut(strconv.FormatFloat(v, 'e', -1, 64), "e")
	sign := ""
	if exponent[0] == '-' {
		sign = "-"
	}
	return mantissa + "e" + sign + strings.TrimLeft(exponent, "+-0")
}

// Sprintf is that of package fmt, but that %g and %v write numbers as Number does, where
// the precision, if there is one, is the significant digits, and that no zero has a minus.
func Sprintf(format string, values ...any) string {
	for i, v := range values {
		values[i] = readable(v)
	}
	return fmt.Sprintf(format, values...)
}

// Errorf is that of package fmt, but that it writes numbers as Sprintf does.
func Errorf(format string, values ...any) error {
	for i, v := range values {
		values[i] = readable(v)
	}
	return fmt.Errorf(format, values...)
}

// Fprintf is that of package fmt, but that it writes numbers as Sprintf does.
func Fprintf(w io.Writer, format string, values ...any) (n int, err error) {
	for i, v := range values {
		values[i] = readable(v)
	}
	return fmt.Fprintf(w, format, values...)
}

func readable(v any) any {
	if f, ok := v.(float64); ok {
		return figure(f)
	}
	return v
}

// figure is a number that is to be read.
type figure float64

// Format writes the number for %g and %v as Number does, and else as package fmt does, but for a
// minus before zero.
func (f figure) Format(s fmt.State, verb rune) {
	if places, ok := s.Precision(); ok && verb == 'f' && strings.Trim(strconv.FormatFloat(float64(f), 'f', places, 64), "-0.") == "" {
		f = 0
	}
	if verb != 'g' && verb != 'v' {
		fmt.Fprintf(s, fmt.FormatString(s, verb), float64(f))
		return
	}
	digits, _ := s.Precision()
	text := Number(float64(f), digits)
	if s.Flag('+') && text[0] != '-' {
		text = "+" + text
	}
	width, _ := s.Width()
	if s.Flag('-') {
		width = -width
	}
	fmt.Fprintf(s, "%*s", width, text)
}

// Fixed writes a number with so many decimals, none that is zero as negative; nothing for
// NaN.
func Fixed(v float64, places int) string {
	if math.IsNaN(v) {
		return ""
	}
	s := strconv.FormatFloat(v, 'f', places, 64)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

// Trimmed is Fixed without zeros at the end.
func Trimmed(v float64, places int) string {
	s := Fixed(v, places)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// Hertz writes a frequency with so many significant digits and its unit.
func Hertz(f float64, digits int) string {
	if f >= 1000 {
		return Number(f/1000, digits) + " kHz"
	}
	return Number(f, digits) + " Hz"
}

// Minus puts true minus signs for hyphens.
func Minus(text string) string { return strings.ReplaceAll(text, "-", "\u2212") }
