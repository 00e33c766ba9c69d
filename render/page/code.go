package page

import (
	"strings"

	"rsc.io/qr"
)

// codeMargin is how wide a QR code's light margin is, in its squares (ISO/IEC 18004, 9.1).
const codeMargin = 4

// code is a QR code (ISO/IEC 18004) by its rows, 1 for a dark square, without its margin.
type code []string

// codeOf is the code of a text. A seventh of it may be unreadable (level M), so that it is read
// from a screen with a reflection on it.
func codeOf(text string) (code, error) {
	c, err := qr.Encode(text, qr.M)
	if err != nil {
		return nil, err
	}
	out := make(code, c.Size)
	for y := range out {
		row := make([]byte, c.Size)
		for x := range row {
			row[x] = '0'
			if c.Black(x, y) {
				row[x] = '1'
			}
		}
		out[y] = string(row)
	}
	return out, nil
}

// dark tells of a square, of which there are light ones all round.
func (c code) dark(x, y int) bool {
	return 0 <= y && y < len(c) && 0 <= x && x < len(c[y]) && c[y][x] == '1'
}

// terminal draws the code with its margin, two rows in a line of half blocks, dark on light
// whatever the terminal's own colours (ECMA-48, 8.3.117, with the 256 colours that terminals
// have).
func (c code) terminal() string {
	var b strings.Builder
	for y := -codeMargin; y < len(c)+codeMargin; y += 2 {
		b.WriteString("\x1b[38;5;16;48;5;231m")
		for x := -codeMargin; x < len(c)+codeMargin; x++ {
			switch upper, lower := c.dark(x, y), c.dark(x, y+1); {
			case upper && lower:
				b.WriteRune('█')
			case upper:
				b.WriteRune('▀')
			case lower:
				b.WriteRune('▄')
			default:
				b.WriteByte(' ')
			}
		}
		b.WriteString("\x1b[0m\n")
	}
	return b.String()
}
