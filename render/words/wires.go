package words

import (
	"fmt"
	"strconv"
	"strings"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/loom"
)

// StringName is a string's name on labels: channel and string.
func StringName(p *timing.Plan, s loom.String) string {
	return fmt.Sprintf("%d.%d", p.Channels[s.Channel].ID, s.Number+1)
}

// The wires' colours (common practice): red to plus, black to minus, and a third between drivers.
const (
	FromPlus = "red"
	ToMinus  = "black"
	between  = "yellow"
)

// WireColour is the colour of a piece of wire.
func WireColour(piece loom.Piece) string {
	switch {
	case piece.From == loom.Terminal:
		return FromPlus
	case piece.To == loom.Terminal:
		return ToMinus
	}
	return between
}

// LeadsAt names the strings of a channel whose leads are joined at its plus or its minus, with their colour.
func LeadsAt(p *timing.Plan, of []loom.String, sign string) string {
	var names []string
	for _, s := range of {
		names = append(names, StringName(p, s))
	}
	colour := FromPlus
	if sign != "+" {
		colour = ToMinus
	}
	return strings.Join(names, ", ") + " " + colour
}

// WireFrom and WireTo name the ends of a piece: from a minus to a plus, but at the terminals.
func WireFrom(p *timing.Plan, s loom.String, piece loom.Piece) string {
	if piece.From == loom.Terminal {
		return wireEnd(p, s, piece.From, "+")
	}
	return wireEnd(p, s, piece.From, "−")
}

func WireTo(p *timing.Plan, s loom.String, piece loom.Piece) string {
	if piece.To == loom.Terminal {
		return wireEnd(p, s, piece.To, "−")
	}
	return wireEnd(p, s, piece.To, "+")
}

// wireEnd names one end of a piece: a driver's terminal, or a channel's.
func wireEnd(p *timing.Plan, s loom.String, mount int, sign string) string {
	if mount == loom.Terminal {
		return "terminal " + strconv.Itoa(p.Channels[s.Channel].ID) + " " + sign
	}
	return strconv.Itoa(p.Array.Mounts[mount].ID) + " " + sign
}

// ChannelOn names a channel, with its body where there are several.
func ChannelOn(p *timing.Plan, c, body int) string {
	return fmt.Sprintf("channel %d", p.Channels[c].ID) + OnBody(p.Array, body, ", body ")
}

// OnBody is a body's number behind some words; nothing where there is one body.
func OnBody(a *layout.Array, body int, words string) string {
	if len(a.Bodies()) == 1 {
		return ""
	}
	return words + strconv.Itoa(body+1)
}
