package prose

import (
	"regexp"
	"strconv"
	"strings"
)

// spreadsheet is a number as people and spreadsheets write it: a sign, digits in groups
// or not, decimals after a point or a comma, and perhaps a unit.
var spreadsheet = regexp.MustCompile(`^([-+]?)([0-9][0-9 .,'_]*|[.,][0-9]+)(e[-+]?[0-9]{1,3})?\s*(°|%|[a-zA-Zµμ°²³/%]{1,6}[0-9]?)?$`)

// quotes are those that a word processor or a spreadsheet may put round a value, in pairs
// or not, and the straight ones.
const quotes = "\"'“”„‟‘’‚‛«»‹›`´″′"

// Unquoted takes quotes of any kind, and spaces of any kind, off both ends of a value.
func Unquoted(text string) string {
	return strings.Trim(strings.TrimSpace(text), quotes+" \t\u00a0\u202f")
}

// Typed replaces minus signs, spaces, apostrophes and decimal marks that only look like the
// ones of a keyboard.
func Typed(text string) string { return typed.Replace(text) }

var typed = strings.NewReplacer("−", "-", "–", "-", "—", "-", "‐", "-", "‑", "-", "‒", "-", "﹣", "-", "－", "-", "＋", "+",
	"\u00a0", " ", "\u202f", " ", "\u2009", " ", "’", "'", "٫", ",", "，", ",")

// Numbers returns what a text may mean as a number, each with a point for the decimals and
// nothing else: one for most; two for one such as 1,234, which may be a thousand and more
// or one and a little; none for what is no number.
func Numbers(text string) []string {
	m := spreadsheet.FindStringSubmatch(strings.TrimSpace(Typed(Unquoted(text))))
	if m == nil {
		return nil
	}
	sign, digits, exponent := strings.TrimPrefix(m[1], "+"), strings.TrimRight(m[2], " "), m[3]
	digits = strings.NewReplacer(" ", "", "'", "", "_", "").Replace(digits)
	var out []string
	for _, plain := range readings(digits) {
		v, err := strconv.ParseFloat(plain+exponent, 64)
		if err != nil {
			return nil
		}
		if v == 0 {
			sign = ""
		}
		out = append(out, sign+Number(v, 0))
	}
	return out
}

// readings returns what digits with points and commas may mean.
func readings(digits string) []string {
	points, commas := strings.Count(digits, "."), strings.Count(digits, ",")
	switch {
	case commas == 0 && points <= 1:
		return []string{digits}
	case commas == 0: // 1.234.567
		return grouped(digits, ".")
	case points == 0 && commas > 1: // 1,234,567
		return grouped(digits, ",")
	case points == 0:
		decimal := strings.Replace(digits, ",", ".", 1)
		if whole := grouped(digits, ","); whole != nil {
			return []string{decimal, whole[0]}
		}
		return []string{decimal}
	case commas == 1 && strings.LastIndex(digits, ".") < strings.Index(digits, ","): // 1.234,5
		whole, part, _ := strings.Cut(digits, ",")
		return with(grouped(whole, "."), part)
	case points == 1 && strings.LastIndex(digits, ",") < strings.Index(digits, "."): // 1,234.5
		whole, part, _ := strings.Cut(digits, ".")
		return with(grouped(whole, ","), part)
	}
	return nil
}

// grouped takes the marks between groups of three digits out; nil where they stand
// elsewhere.
func grouped(digits, mark string) []string {
	groups := strings.Split(digits, mark)
	if n := len(groups[0]); n < 1 || n > 3 || groups[0][0] == '0' {
		return nil
	}
	for _, g := range groups[1:] {
		if len(g) != 3 {
			return nil
		}
	}
	return []string{strings.Join(groups, "")}
}

func with(whole []string, part string) []string {
	if whole == nil {
		return nil
	}
	return []string{whole[0] + "." + part}
}
