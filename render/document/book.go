package document

import (
	"slices"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/loom"
)

// Book is the wiring book but for its drawings: what stands on its sheets, and on the page.
type Book struct {
	Steps     []string       `json:"steps"` // the order of work
	Terminals []BookTerminal `json:"terminals"`
	Row       string         `json:"row"`    // how terminals are, in sentences
	Copper    string         `json:"copper"` // which wire is cut, in sentences
	Cut       []BookCut      `json:"cut"`
	Strings   []BookString   `json:"strings"`
	Readings  string         `json:"readings"`         // what readings are of, in sentences
	Cell      string         `json:"cell"`             // what a cell at a channel's terminals shows, in a sentence
	Alone     []BookReading  `json:"string_readings"`  // of each string at its two ends, before it is joined to others
	Whole     []BookReading  `json:"channel_readings"` // of each channel at its terminals, on each body, all strings joined
}

// BookTerminal is one terminal of a body's row, from the left as it is seen from outside.
type BookTerminal struct {
	Number  int    `json:"number"` // in its row, from 1: the cable's core, too
	Body    int    `json:"body"`   // from 0
	Channel int    `json:"channel"`
	Sign    string `json:"sign"`
	Leads   string `json:"leads"`   // the strings whose leads are joined there, and their colour
	Sleeves string `json:"sleeves"` // the colours of the channel's number (IEC 60062)
}

// BookCut is how many pieces of a length there are to cut.
type BookCut struct {
	Length Number `json:"length_mm"`
	Pieces int    `json:"pieces"`
}

// BookString is a string on a body, piece by piece.
type BookString struct {
	Name    string      `json:"name"` // channel and string, as on labels
	Channel int         `json:"channel"`
	Body    int         `json:"body"`  // from 0
	Takes   string      `json:"takes"` // the length, resistance and loss of its wire, in words
	Pieces  []BookPiece `json:"pieces"`
}

// BookPiece is a piece of wire.
type BookPiece struct {
	From   string `json:"from"`
	To     string `json:"to"`
	Colour string `json:"colour"`
	Length Number `json:"length_mm"`
}

// BookReading is what a meter reads.
type BookReading struct {
	What string `json:"what"`
	Ohm  string `json:"ohm"`  // between which values it is good
	Else string `json:"else"` // what other readings mean
}

// OfBook returns the wiring book of a plan.
func OfBook(p *timing.Plan) Book {
	strings := loom.Strings(p)
	out := Book{
		Steps: words.WiringSteps(p, strings), Terminals: terminalsOf(p, strings), Row: words.TerminalRow, Cell: words.CellShows, Copper: words.CutList(p), Readings: words.Readings(p.Array),
		Cut: each(loom.Batches(strings), func(b loom.Batch) BookCut { return BookCut{To(0, 1000*b.Cut), b.Count} }),
	}
	for _, s := range strings {
		out.Strings = append(out.Strings, bookString(p, s))
		r := loom.ReadString(p, s)
		out.Alone = append(out.Alone, BookReading{"string " + words.StringName(p, s), words.Ohms(r.Whole), words.StringFaults(len(s.Order), r)})
	}
	for c, bodies := range loom.ByChannel(p, strings) {
		for body, of := range bodies {
			if len(of) > 0 {
				r := loom.ReadChannel(p, of)
				out.Whole = append(out.Whole, BookReading{words.ChannelOn(p, c, body), words.Ohms(r.Whole), words.ChannelFaults(len(of), r)})
			}
		}
	}
	return out
}

// terminalsOf are the rows of all bodies: a channel's plus and minus, channel after channel.
func terminalsOf(p *timing.Plan, strings []loom.String) (out []BookTerminal) {
	number := make([]int, len(p.Array.Bodies()))
	for c, bodies := range loom.ByChannel(p, strings) {
		for body, of := range bodies {
			if len(of) == 0 {
				continue
			}
			id := p.Channels[c].ID
			for _, sign := range []string{"+", "−"} {
				number[body]++
				out = append(out, BookTerminal{number[body], body, id, sign, words.LeadsAt(p, of, sign), words.ColourCode(id)})
			}
		}
	}
	slices.SortStableFunc(out, func(a, b BookTerminal) int { return a.Body - b.Body })
	return out
}

func bookString(p *timing.Plan, s loom.String) BookString {
	return BookString{words.StringName(p, s), p.Channels[s.Channel].ID, s.Body(p), words.WireTakes(p.Array.Driver.DCOhm, s),
		each(s.Pieces, func(x loom.Piece) BookPiece {
			return BookPiece{words.WireFrom(p, s, x), words.WireTo(p, s, x), words.WireColour(x), To(0, 1000*x.Cut)}
		})}
}
