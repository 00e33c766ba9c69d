package design

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode"
)

// What can be wrong with a design; every *Error wraps one of these, or the
// error that the file system gave.
var (
	ErrSyntax     = errors.New("not readable as TOML")
	ErrUnknownKey = errors.New("unknown key")
	ErrType       = errors.New("wrong type")
	ErrMissing    = errors.New("missing value")
	ErrRange      = errors.New("value out of range")
	ErrConflict   = errors.New("values that do not go together")
	// ErrIdle is a conflict, too: a key that goes with another choice only.
	ErrIdle = fmt.Errorf("%w: key without use", ErrConflict)
)

// Error is what is wrong with a design, or with a file that it names.
type Error struct {
	File   string
	Line   int    // from 1; 0 where no line is to blame
	Key    string // full name, such as body.radius_mm; tables in a row count from 1, as in channel[2].gain_db
	Value  string // as it would be written in the file; empty where there is none
	Reason string // what is wrong or what is allowed
	Err    error  // the kind of error, for errors.Is
}

// Error gives one line of text: file:line: key = value: reason.
func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString(e.File)
	if e.Line > 0 {
		b.WriteString(":" + strconv.Itoa(e.Line))
	}
	if e.Key != "" {
		b.WriteString(": " + e.Key)
		if e.Value != "" {
			b.WriteString(" = " + e.Value)
		}
	}
	b.WriteString(": " + e.Reason)
	return oneLine(b.String())
}

// Unwrap gives the kind of error.
func (e *Error) Unwrap() error { return e.Err }

// oneLine writes out whatever would not print, so that a file's content
// cannot break the line or steer a terminal.
func oneLine(s string) string {
	var b strings.Builder
	for _, c := range s {
		if unicode.IsPrint(c) {
			b.WriteRune(c)
		} else {
			b.WriteString(strings.Trim(strconv.QuoteRuneToASCII(c), "'"))
		}
	}
	return b.String()
}

// shorten keeps a text that came from a file readable within a message.
func shorten(s string, most int) string {
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}
