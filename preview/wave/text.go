package wave

import (
	"strings"

	"github.com/go-audio/wav"
)

// software is who made the file, in its text chunk.
const software = "Pappus"

// text returns what stands in the file's text chunk (LIST INFO: name INAM,
// comment ICMT, software ISFT), nil for none.
func (f Format) text() *wav.Metadata {
	if f.Title == "" && f.Comment == "" {
		return nil
	}
	return &wav.Metadata{Title: even(f.Title), Comments: even(f.Comment), Software: even(software)}
}

// even makes a text, unless it is empty, such that with its final NUL it fills an
// even number of bytes, as chunks must. A NUL within would end it early and becomes
// a space.
func even(text string) string {
	text = strings.ReplaceAll(text, "\x00", " ")
	if text != "" && len(text)%2 == 0 {
		text += "\x00"
	}
	return text
}
