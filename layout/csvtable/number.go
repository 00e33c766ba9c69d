package csvtable

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"pappus/layout/design"
	"pappus/layout/prose"
)

// numeral is a number as it is written, taken apart.
type numeral struct {
	plain string // minus signs made plain, without a degree sign
	marks string // its points and commas, in order
	// groups tells that spaces or apostrophes stand between its digits.
	groups bool
}

var (
	grouping  = regexp.MustCompile(`\d.*[ ']`)
	thousands = regexp.MustCompile(`^[+' -]*[1-9]\d{0,2}[.,]\d{3}[ ']*$`) // 1.500, not 0.500
)

// take takes a value of a column apart.
func take(c Column, s string) numeral {
	s = strings.TrimSpace(s)
	if strings.HasSuffix(c.Name, "deg") || c.Name == "degrees" {
		s = strings.TrimSpace(strings.TrimSuffix(s, "°"))
	}
	n := numeral{plain: prose.Typed(s)}
	digits, _, _ := strings.Cut(strings.ToLower(n.plain), "e")
	n.groups = grouping.MatchString(digits)
	n.marks = strings.Map(func(r rune) rune {
		if r == '.' || r == ',' {
			return r
		}
		return -1
	}, digits)
	return n
}

// grouped tells whether the one mark of a numeral can part thousands.
func (n numeral) grouped() bool { return thousands.MatchString(n.plain) }

// ungrouped takes out what may stand between groups of digits.
var ungrouped = strings.NewReplacer(" ", "", "'", "")

// value reads a numeral with a decimal mark; others are left out.
func (n numeral) value(decimal byte) (float64, error) {
	s := ungrouped.Replace(n.plain)
	for _, mark := range []byte{'.', ','} {
		if mark != decimal {
			s = strings.ReplaceAll(s, string(mark), "")
		}
	}
	if decimal == ',' {
		s = strings.ReplaceAll(s, ",", ".")
	}
	return strconv.ParseFloat(s, 64)
}

// holds tells whether a number may stand in the column; not NaN.
func (c Column) holds(v float64) bool { return v >= c.Low && v <= c.High }

// findMark finds the decimal mark that the file shows. Between commas it is the point,
// unless a value has a comma in quotes.
func (r *reader) findMark() error {
	seen := map[byte]int{} // the line that shows a mark
	commas := false
	err := r.rows(func(line int, row []string) error {
		for i, c := range r.Columns {
			if at := r.at[i]; at >= 0 && at < len(row) {
				n := take(c, row[at])
				commas = commas || strings.Contains(n.marks, ",")
				mark, clear := n.shows(c)
				if _, known := seen[mark]; clear && !known {
					seen[mark] = line
					if len(seen) == 2 {
						other := '.' + ',' - mark
						return r.ambiguous(line, c, row[at], fmt.Sprintf(
							"has a decimal %s, line %d a decimal %s; must be the same throughout", markWords[mark], seen[other], markWords[other]))
					}
				}
			}
		}
		return nil
	})
	if errors.Is(err, errAmbiguous) {
		return err
	}
	// Any other fault is told when the lines are read.
	for mark := range seen {
		r.decimal = mark
	}
	if r.separator == ',' && !commas {
		r.decimal = '.'
	}
	return nil
}

var markWords = map[byte]string{'.': "point", ',': "comma"}

// shows tells whether a numeral leaves no doubt that its mark is the decimal one.
func (n numeral) shows(c Column) (mark byte, clear bool) {
	if len(n.marks) != 1 || n.groups {
		return 0, false
	}
	mark = n.marks[0]
	v, err := n.value(mark)
	if err != nil || !c.holds(v) {
		return mark, false
	}
	if !n.grouped() {
		return mark, true
	}
	thousands, err := n.value(0)
	return mark, err != nil || !c.holds(thousands)
}

// number reads one value of a column.
func (r *reader) number(line int, c Column, s string) (float64, error) {
	n := take(c, s)
	if whole, err := n.value(0); err == nil && (n.groups || len(n.marks) > 1) {
		return 0, r.ambiguous(line, c, s, "has a thousands separator; must be written without"+example(n, whole))
	}
	mark := r.decimal
	if mark == 0 && len(n.marks) == 1 && !n.grouped() {
		mark = n.marks[0] // out of its range, or it would have shown it
	}
	if len(n.marks) == 1 && n.marks[0] != mark {
		if whole, err := n.value(0); err == nil {
			if mark == 0 {
				decimal, _ := n.value(n.marks[0])
				return 0, r.ambiguous(line, c, s, prose.Sprintf("can be %.10g or %.10g; must be written without a thousands separator, or with other than three decimals", decimal, whole))
			}
			return 0, r.ambiguous(line, c, s, fmt.Sprintf("has a %s where the decimal mark is the %s; must be written without a thousands separator", markWords[n.marks[0]], markWords[r.decimal]))
		}
	}
	v, err := n.value(mark)
	kind := design.ErrRange
	if err != nil && !errors.Is(err, strconv.ErrRange) {
		kind = design.ErrType
	}
	if err == nil && c.holds(v) {
		return v, nil
	}
	e := r.Fault(line, c.Name, prose.Sprintf("must be a number from %.10g to %.10g", c.Low, c.High), kind)
	if strings.HasSuffix(n.plain, "°") {
		e.Reason += ", without a degree sign"
	}
	e.Value = quoted(s)
	return 0, e
}

// example shows how a number is written without thousands separators, where only one way
// is left: 1 234 is 1234, but 1.234,5 has a decimal mark still.
func example(n numeral, whole float64) string {
	if len(n.marks) > 0 || math.Abs(whole) >= 1e9 {
		return ""
	}
	return prose.Sprintf(", as %.10g", whole)
}

// ambiguous is the error for a value that can be read in two ways.
func (r *reader) ambiguous(line int, c Column, s, reason string) *design.Error {
	e := r.Fault(line, c.Name, reason, errAmbiguous)
	e.Value = quoted(s)
	return e
}

// quoted keeps a value readable within a message.
func quoted(s string) string {
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "…"
	}
	return strconv.Quote(s)
}
