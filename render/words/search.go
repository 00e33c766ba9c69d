package words

import (
	"fmt"
	"math"
	"strings"

	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/timing/radiate"
	"pappus/timing/search"
)

// Offered is a design that a search offers: what it is, and why.
type Offered struct{ Name, Why string }

// aimWords names what a search is after: how an axis has it, with its unit; in a sentence; and
// so much better and worse in it, with so many decimals.
var aimWords = map[search.Aim]struct {
	axis, plain, better, worse string
	places                     int
}{
	search.Loss:     {"lost by being out of step, dB", "the loss", "%s dB less lost", "%s dB more lost", 2},
	search.Level:    {"loudest, dB", "the loudest level", "%s dB louder", "%s dB quieter", 1},
	search.Evenness: {"uneven all round, dB", "the unevenness", "%s dB evener", "%s dB less even", 1},
	search.Drivers:  {"drivers", "the drivers", "%s drivers fewer", "%s drivers more", 0},
	search.Price:    {"price", "the price", "%s cheaper", "%s dearer", 0},
	search.Hours:    {"hours of printing", "the hours of printing", "%s hours less to print", "%s hours more to print", 1},
	search.Litres:   {"litres inside", "the litres", "%s litres smaller", "%s litres larger", 2},
}

// against says how a design differs from another in what a search is after: what it is better
// in and what it is worse in; what rounds to nothing is left out.
func against(r *search.Result, own, other search.Figures) (better, worse []string) {
	for _, a := range r.Aims {
		a = Aimed(r, a)
		w, gain := aimWords[a], a.Of(own)-a.Of(other)
		if !a.More() {
			gain = -gain
		}
		by := prose.Fixed(math.Abs(gain), w.places)
		switch {
		case strings.Trim(by, "0.") == "":
		case gain > 0:
			better = append(better, one(by, fmt.Sprintf(w.better, by)))
		default:
			worse = append(worse, one(by, fmt.Sprintf(w.worse, by)))
		}
	}
	return better, worse
}

// one is a text about so many drivers where it is about one.
func one(by, text string) string {
	if by == "1" {
		return strings.Replace(text, "drivers", "driver", 1)
	}
	return text
}

// Aimed is the aim by its usual name: the cost is the price where that is known, else the
// drivers.
func Aimed(r *search.Result, a search.Aim) search.Aim {
	switch {
	case a != search.Cost:
		return a
	case len(r.Found) > 0 && !math.IsNaN(r.Found[0].Price):
		return search.Price
	}
	return search.Drivers
}

// AimAxis names an aim as an axis has it, with its unit and which way is better.
func AimAxis(r *search.Result, a search.Aim) string {
	a = Aimed(r, a)
	name, which := aimWords[a].axis, "less is better"
	switch {
	case a == search.Level:
		name, which = "loudest, "+Unit(r.Job.Design.Driver.Sensitivity > 0), "more is better"
	case a == search.Drivers:
		which = "fewer are better"
	}
	return name + ": " + which
}

// AimNames lists what a search is after.
func AimNames(r *search.Result) string {
	var names []string
	for _, a := range r.Aims {
		names = append(names, aimWords[Aimed(r, a)].plain)
	}
	return prose.Each(names)
}

// Searched heads what a search found.
func Searched(r *search.Result) string {
	text := "what to build from " + stock(r)
	if name := r.Job.Design.Name; name != "" && name != design.Unnamed {
		return name + ": " + text
	}
	return Capital(text)
}

// SearchedHow says how many designs were looked at, and how.
func SearchedHow(r *search.Result) string {
	text := prose.Count(r.Space, "design", "designs")
	if r.Screened < r.Space {
		text = fmt.Sprintf("%d of %s", r.Screened, text)
	}
	text += fmt.Sprintf(": %d can be built and keep all limits, %d planned in full", r.Fit, r.Full+r.Polished)
	if n := onFront(r); n > 0 {
		text += fmt.Sprintf("; no other beats %d of them in %s at once", n, AimNames(r))
	}
	return text
}

// NotLookedFor says which designs a search leaves out of itself, where the file sets no such
// limit; nothing where it sets all.
func NotLookedFor(r *search.Result) string {
	var out []string
	s := r.Job.Design.Search
	if r.Job.Design.Lines["search.least_drivers"] == 0 {
		out = append(out, fmt.Sprintf("fewer than %d drivers", s.LeastDrivers))
	}
	if s.Lowest == 0 && r.Lowest > 0 {
		out = append(out, prose.Sprintf("what does not play down to %.3g Hz", r.Lowest))
	}
	if s.Level == nil {
		out = append(out, "what is more than 10 dB quieter than the loudest")
	}
	if len(out) == 0 {
		return ""
	}
	return "Not looked for, as [search] says nothing of it: " + prose.Each(out) + "."
}

// SearchedBy says that a search hears by the ball where the design's model is another; nothing
// where that is what it says.
func SearchedBy(r *search.Result) string {
	if r.Job.Design.Timing.Model != radiate.BodyModel {
		return ""
	}
	return "All were heard by the ball that stands for the body, since to solve for each takes minutes; the files keep model = \"body\", and planning one solves for it."
}

// onFront is how many designs no other beats in all aims.
func onFront(r *search.Result) (n int) {
	for _, p := range r.Tried {
		if p.Front {
			n++
		}
	}
	return n
}

// OfSearch heads the picture of a front.
func OfSearch(r *search.Result) Picture { return Picture{Searched(r), SearchedHow(r)} }

// first says what a design is first by.
var first = map[search.Code]string{
	search.Loudest:   "the loudest",
	search.LeastLoss: "the one most in step",
	search.Cheapest:  "the cheapest",
	search.Evenest:   "the evenest all round",
	search.Fewest:    "the one with the fewest drivers",
	search.Quickest:  "the quickest to print",
	search.Smallest:  "the smallest",
	search.Middle:    "the middle way, near the best in all at once",
}

// Why says why a design is offered: what it is first by, and where that is not among all, what
// it has over the next; a sentence without its full stop.
func Why(r *search.Result, f search.Found) string {
	if len(r.Found) == 1 {
		return "The only one that no other beats"
	}
	text, trade := reasons(f), ""
	if len(f.Why) == 0 || f.Why[0].Code == search.OneOf || f.Why[0].Code == search.Middle || f.Why[0].Among == search.UpTo {
		trade = overNext(r, f)
	}
	switch {
	case trade == "" && text == "":
		return "Another way between the others"
	case text == "":
		return Capital(trade)
	case trade != "":
		text += ": " + trade
	}
	return Capital(text)
}

// reasons lists what a design is first by; nothing where it is by nothing.
func reasons(f search.Found) string {
	var said []string
	for _, w := range f.Why {
		if w.Code != search.OneOf {
			said = append(said, reason(w))
		}
	}
	return prose.Each(said)
}

// overNext says what a design has over the next that is offered, or over the one before where
// it is the last, and for what; nothing where it is alone.
func overNext(r *search.Result, f search.Found) string {
	if len(r.Found) < 2 {
		return ""
	}
	next := f.Found // the index of the next
	if next >= len(r.Found) {
		next = f.Found - 2
	}
	better, worse := against(r, f.Figures, r.Found[next].Figures)
	if len(better) == 0 {
		return ""
	}
	text := fmt.Sprintf("%s than %d", prose.Each(better), next+1)
	if len(worse) > 0 {
		text += ", for " + prose.Each(worse)
	}
	return text
}

// reason says by what, and among which, a design is first.
func reason(r search.Reason) string {
	switch text := first[r.Code]; r.Among {
	case search.OnePiece:
		return strings.TrimSuffix(text, " to print") + " that prints in one piece"
	case search.UpTo:
		return text + prose.Sprintf(" with up to %g drivers", r.Limit)
	default:
		return text
	}
}

// FileOf names the file of a design that is offered, by its number and the first reason.
func FileOf(f search.Found) string {
	text := "design"
	if len(f.Why) > 0 && f.Why[0].Code != search.OneOf {
		text = string(f.Why[0].Code)
		switch f.Why[0].Among {
		case search.OnePiece:
			text += "_in_one_piece"
		case search.UpTo:
			text += fmt.Sprintf("_up_to_%.0f", f.Why[0].Limit)
		}
	}
	return fmt.Sprintf("%d_%s.toml", f.Found, text)
}

// OfferedBy lists the designs that a search offers, each with why in a few words: what it is
// first by, or where it is by nothing, what it has over the next.
func OfferedBy(r *search.Result) []Offered {
	var out []Offered
	for _, f := range r.Found {
		why := Capital(reasons(f))
		if why == "" || len(r.Found) == 1 {
			why = Why(r, f)
		}
		out = append(out, Offered{Capital(f.Name), why})
	}
	return out
}

// stock says what there is to build from.
func stock(r *search.Result) string {
	s := r.Job.Design.Search
	text := prose.Count(s.Drivers, "driver", "drivers")
	if s.Channels > 0 {
		text += " and " + prose.Count(s.Channels, "channel", "channels")
	}
	return text
}

// OfferedAs says what a design is that is offered, and why.
func OfferedAs(r *search.Result, f search.Found) string {
	return Capital(f.Name) + ". " + Why(r, f) + "."
}

// SearchStage names what was done with a design that was tried.
func SearchStage(p search.Point) string {
	switch {
	case !p.Full:
		return "screened"
	case p.Variant < 0:
		return "polished"
	}
	return "full"
}

// SearchStopped says how far a search came that was stopped.
func SearchStopped(r *search.Result) string {
	text := "stopped before all was done"
	if len(r.Found) == 0 {
		text += ", and before any design was planned in full"
	} else {
		text += "; this is the best of what was found by then"
	}
	return text + ". The same command goes on from there."
}

// SearchNote says what the columns of the list of designs are.
func SearchNote(r *search.Result) string {
	where := "at the spot"
	if len(r.Job.Design.AllSeats()) > 1 {
		where = "at the seats, by their aim"
	}
	return "lost: " + where + ", against all drivers in step, 500 Hz to 8 kHz; loudest: mean of the octaves from 500 Hz to 4 kHz, " +
		Unit(r.Job.Design.Driver.Sensitivity > 0) + "; uneven: over angle, on the level circle; from: the resonance or the high-pass"
}

// SearchProgress says how far a search is, and how its front grows, in 60 letters.
func SearchProgress(p search.Progress) string {
	text := fmt.Sprintf("%s %d of %d", p.Stage, p.Done, p.Of)
	if p.Stage == search.Full {
		text = fmt.Sprintf("planning %d of %d", p.Done, p.Of)
	}
	if p.Front == 0 || math.IsNaN(p.Level) {
		return text
	}
	return text + fmt.Sprintf(": front %d, %.2f dB lost, %.1f dB", p.Front, p.Loss, p.Level)
}

// NothingFound says why a search found nothing; without a full stop.
func NothingFound(r *search.Result) string {
	text := fmt.Sprintf("nothing found: none of %s can be built and keeps all limits", prose.Count(r.Screened, "design", "designs"))
	for _, s := range OutOfReach(r) {
		return text + ". " + strings.TrimSuffix(s, ".")
	}
	if len(r.Short) > 0 {
		text += fmt.Sprintf("; %d of them fail by nothing but %s", r.Short[0].Broken, binding(r.Short[0]))
	}
	return text
}
