package table

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// sheet is a table for other programs, in CSV with a head.
type sheet struct {
	places []int // of the numbers in each column; all digits below 0
	rows   [][]string
}

// newSheet begins a table. A column is named "name" or, where numbers have so many places,
// "name:2".
func newSheet(columns ...string) *sheet {
	s := &sheet{places: make([]int, len(columns)), rows: [][]string{make([]string, len(columns))}}
	for i, c := range columns {
		name, places, found := strings.Cut(c, ":")
		s.rows[0][i], s.places[i] = name, -1
		if found {
			s.places[i], _ = strconv.Atoi(places)
		}
	}
	return s
}

// add adds a row: numbers, words, lists of numbers, true or false. What is not known, NaN,
// infinite or nil, stays empty.
func (s *sheet) add(values ...any) {
	row := make([]string, len(values))
	for i, v := range values {
		switch v := v.(type) {
		case float64:
			row[i] = finite(v, s.places[i])
		case []int:
			row[i] = spaced(v)
		case nil:
		default:
			row[i] = fmt.Sprint(v)
		}
	}
	s.rows = append(s.rows, row)
}

// spaced writes numbers with spaces between.
func spaced(numbers []int) string { return strings.Trim(fmt.Sprint(numbers), "[]") }

// write writes the table.
func (s *sheet) write(w io.Writer) error { return csv.NewWriter(w).WriteAll(s.rows) }

// finite writes a number with so many places, all digits below 0, and no zero negative;
// nothing where it is not finite.
func finite(v float64, places int) string {
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return ""
	case places < 0:
		return strconv.FormatFloat(v, 'g', -1, 64)
	}
	text := strconv.FormatFloat(v, 'f', places, 64)
	if strings.Trim(text, "-0.") == "" {
		return strings.TrimPrefix(text, "-")
	}
	return text
}

// dash writes a number, a dash where it is not known.
func dash(v float64, places int) string {
	if text := finite(v, places); text != "" {
		return text
	}
	return "-"
}

// screen is what a person reads on a terminal.
type screen struct {
	strings.Builder
	style
}

// to writes the screen.
func (s *screen) to(w io.Writer) error {
	_, err := io.WriteString(w, s.String())
	return err
}

// say writes sentences in lines of at most 80 letters; nothing where there are none.
func (s *screen) say(text string) {
	if text != "" {
		fmt.Fprintln(s, Wrap(text))
	}
}

// sayAll writes paragraphs.
func (s *screen) sayAll(paragraphs []string) {
	for _, text := range paragraphs {
		s.say(text)
	}
}

// note writes what is less to be read.
func (s *screen) note(text string) { fmt.Fprintln(s, s.faint(text)) }

// section heads what comes next, after an empty line.
func (s *screen) section(text string) { fmt.Fprintln(s, "\n"+s.faint(text)) }

// lookOut writes what to mind.
func (s *screen) lookOut(text string) { s.say(s.alert("Look out:") + " " + text) }

// list writes the head of a table, and returns what writes a row as a format has it, for
// package fmt. Numbers that are not finite are a dash.
func (s *screen) list(head, format string) func(values ...any) {
	s.note(head)
	return func(values ...any) { s.row(format, values...) }
}

// row writes one row.
func (s *screen) row(format string, values ...any) {
	for i, v := range values {
		if f, ok := v.(float64); ok {
			values[i] = number(f)
		}
	}
	fmt.Fprintln(s, strings.TrimRight(fmt.Sprintf(format, values...), " "))
}

// number is one in a table for people.
type number float64

// Format writes a dash where the number is not finite, and no negative zero.
func (n number) Format(f fmt.State, verb rune) {
	places, _ := f.Precision()
	width, _ := f.Width()
	fmt.Fprintf(f, "%*s", width, dash(float64(n), places))
}

// style writes text for a terminal, plain where it is false.
type style bool

func (s style) strong(t string) string { return s.wrap("1", t) }
func (s style) faint(t string) string  { return s.wrap("2", t) }
func (s style) alert(t string) string  { return s.wrap("33", t) }

func (s style) wrap(code, t string) string {
	if !s {
		return t
	}
	return "\x1b[" + code + "m" + t + "\x1b[0m"
}

// Wrap breaks text into lines of at most 80 letters.
func Wrap(text string) string { return wrapAfter(0, text) }

// indented breaks text into lines of at most 80 letters, each after so many blanks.
func indented(blanks int, text string) string {
	margin := strings.Repeat(" ", blanks)
	lines := wrapped(80-blanks, 0, text)
	return margin + strings.Join(lines, "\n"+margin)
}

// wrapAfter breaks text into lines of at most 80 columns, the first of which already
// has so many taken.
func wrapAfter(taken int, text string) string { return strings.Join(wrapped(80, taken, text), "\n") }

// wrapped breaks text into lines of at most so many letters, the first of which already has so
// many taken.
func wrapped(most, taken int, text string) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && taken+len(line)+1+len(word) > most {
			lines, line, taken = append(lines, line), "", 0
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return append(lines, line)
}
