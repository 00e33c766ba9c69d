// Package jargon knows what no screen and no error may say to a builder: names of system
// calls and packages, numbers with a programmer's exponent, a plural after 1. It is for
// tests.
package jargon

import "regexp"

// kind is one kind of jargon.
type kind struct {
	name    string
	pattern *regexp.Regexp
}

// packages are names that errors of Go begin with, by custom, and that say nothing to a
// reader.
const packages = `outdir|timing|layout|design|preview|figure|document|spread|shell|poly|wiring|body|impedance|impedancefit|crossover|` +
	`equaliser|recording|rehearsal|verdict|radiate|ball|shoebox|band|hearing|drive|excursion|exposure|channelcount|damping|dampinglog|` +
	`decode|wave|play|programme|loudness|resample|limit|sweep|stl|sheets|page|toml|json|csv|wav|flac|mp3|strconv|strings|bytes|bufio|time|net|http|exec|os|fs`

var kinds = []kind{
	{"an exponent", regexp.MustCompile(`[0-9][eE]([+]|-?0)[0-9]`)},
	{"a thousand or more with an exponent", regexp.MustCompile(`\b[0-9](\.[0-9]+)?e[0-6]\b`)},
	{"what is no number", regexp.MustCompile(`\bNaN\b|[-+]Inf\b`)},
	{"a context", regexp.MustCompile(`(?i)context (cancell?ed|deadline)`)},
	{"a system call", regexp.MustCompile(`(^|[^-a-z])(open|openat|stat|lstat|statat|mkdir|mkdirat|rename|renameat|unlink|unlinkat|remove|readdirent|fork/exec|bind|dial|listen) [^ ]+: `)},
	{"an outdir", regexp.MustCompile(`\boutdir\b`)},
	{"a package", regexp.MustCompile(`(^|: )(` + packages + `): `)},
	{"what the system says", regexp.MustCompile(`no such file or directory|permission denied|file (already )?exists|is a directory|not a directory|invalid argument|` +
		`input/output error|address already in use|operation not permitted|bad file descriptor|unexpected EOF|no space left`)},
	{"a parser", regexp.MustCompile(`invalid syntax|value out of range|invalid character|expected newline|unmarshal|parsing "|U\+[0-9A-F]{4}|non-quoted-field|wrong number of fields`)},
	{"a value of the language", regexp.MustCompile(`%!|<nil>|\b0x[0-9a-f]{3,}|goroutine|runtime error|nil pointer|interface \{\}|map\[`)},
	{"both numbers of a noun", regexp.MustCompile(`\b[a-z]+\(s\)`)},
	{"a plural after 1", regexp.MustCompile(`(^|[^0-9.,])1 (drivers|channels|mounts|strings|files|cases|faces|segments|points|pieces|flanges|designs|samples|trials|openings|places|places|faults|rows|edges|corners|days|hours|minutes|seconds|made-up measurements)\b`)},
	{"reckoning", regexp.MustCompile(`(?i)\breckon`)},
}

// In returns what of that a text holds, and where; nothing where it holds none.
func In(text string) string {
	for _, k := range kinds {
		if found := k.pattern.FindString(text); found != "" {
			return k.name + ": " + found
		}
	}
	return ""
}
