package words

import (
	"fmt"
	"math"
	"strings"

	"pappus/layout/prose"
	"pappus/timing/intake"
)

// ValueOf names a value by which drivers are judged.
func ValueOf(v intake.Value) string {
	return [...]string{"resonance", "Qts", "Re", "level", "response"}[v]
}

// valued writes a value with its unit.
func valued(v intake.Value, x float64) string {
	switch v {
	case intake.Resonance:
		return prose.Sprintf("%.4g Hz", x)
	case intake.Q:
		return prose.Sprintf("%.3g", x)
	case intake.Ohm:
		return prose.Sprintf("%.3g ohm", x)
	case intake.Level:
		return fmt.Sprintf("%+.1f dB", x)
	}
	return fmt.Sprintf("%.1f dB", x)
}

// Reason says why a driver is rejected, or what else is to be known of it.
func Reason(r intake.Reason) string {
	switch r.Code {
	case intake.Unreadable:
		return prose.Reason(r.Err).Error()
	case intake.Copy:
		return "the very table of " + r.Other + ": measure this one"
	case intake.Odd:
		if r.Value == intake.Response {
			return fmt.Sprintf("its response is uneven by %s against the others: listen for a rub or a buzz, or record it again", valued(r.Value, r.Is))
		}
		return fmt.Sprintf("%s %s, the middle of all is %s", ValueOf(r.Value), valued(r.Value, r.Is), valued(r.Value, r.Want))
	case intake.OffDesign:
		return fmt.Sprintf("%s %s, the design has %s", ValueOf(r.Value), valued(r.Value, r.Is), valued(r.Value, r.Want))
	case intake.Rough:
		return prose.Sprintf("its impedance is that of a driver only within %.2g percent, where the middle of all has %.2g: does the coil rub?", 100*r.Is, 100*r.Want)
	case intake.Turned:
		return "plays the other way round: swap its two wires"
	}
	return r.Other + " was not looked at: there is another file of that name"
}

// Reasons says all that is wrong with a driver in one line.
func Reasons(all []intake.Reason) string {
	out := make([]string, len(all))
	for i, r := range all {
		out[i] = Reason(r)
	}
	return strings.Join(out, "; ")
}

// Lot says how many drivers there are, and how many are good.
func Lot(l *intake.Lot) string {
	good, measured, heard := 0, 0, 0
	for _, d := range l.Drivers {
		if d.Good() {
			good++
		}
		if d.Fit != nil {
			measured++
		}
		if d.Heard != nil {
			heard++
		}
	}
	text := fmt.Sprintf("%s: %d good, %d rejected. The impedance of %d could be read", prose.Count(len(l.Drivers), "driver", "drivers"), good, len(l.Drivers)-good, measured)
	if heard > 0 {
		text += fmt.Sprintf(", and the sweep as heard of %d", heard)
	}
	return text + "."
}

// LotNotes say what else is to be known of a lot.
func LotNotes(l *intake.Lot) (out []string) {
	for _, r := range l.OffDesign {
		out = append(out, fmt.Sprintf("the whole lot is off the design: %s. Write the lot's own values into the design and plan again.", Reason(r)))
	}
	if few := l.Middles[intake.Resonance].Count; few > 0 && few < 5 {
		out = append(out, "fewer than five drivers cannot be held against each other: only the design judges them.")
	}
	if n := len(l.Ignored); n > 0 {
		names := strings.Join(l.Ignored[:min(n, 5)], ", ")
		if n > 5 {
			names += " and so on"
		}
		out = append(out, fmt.Sprintf("%s of the folder %s neither a table nor a recording: %s.", prose.Count(n, "file", "files"), isAre(n), names))
	}
	return out
}

func isAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}

// Deal says what sorting brings, or why there is none.
func Deal(l *intake.Lot, d *intake.Deal) []string {
	if d.Lacking > 0 {
		return []string{fmt.Sprintf("The design needs %s; %d more good ones are lacking, so none are given places yet.", prose.Count(len(d.Plan.Arrivals), "driver", "drivers"), d.Lacking)}
	}
	scatter := func(h intake.Dealt) float64 { return 20 * math.Log10(1+h.Scatter) }
	out := []string{fmt.Sprintf("What each driver gives scatters by %.2f dB as they come and by %.2f dB sorted (RMS, half by what its place weighs at the spot).", scatter(d.AsCome), scatter(d.Sorted))}
	out = append(out, fmt.Sprintf("The cone that moves furthest against its twin moves %.1f dB further as they come, %.1f dB sorted.", d.AsCome.Rise, d.Sorted.Rise))
	if more := d.AsCome.Loss - d.Twins.Loss; math.Abs(more) < leastCost {
		out = append(out, "The sum at the spot loses next to nothing by their differences: what sorting is for here is loads and travel.")
	}
	if n := len(d.Spares); n > 0 {
		names := make([]string, 0, n)
		for _, s := range d.Spares {
			names = append(names, l.Drivers[s].Name)
		}
		out = append(out, fmt.Sprintf("%s to keep: %s.", prose.Count(n, "spare", "spares"), strings.Join(names, ", ")))
	}
	return out
}

// DealCautions say what sorted drivers still can hurt.
func DealCautions(d *intake.Deal) (out []string) {
	if d == nil || d.Lacking > 0 {
		return nil
	}
	b, p, h := d.Sorted.Beyond(d.Plan), d.Plan, d.Sorted
	if b.Under {
		out = append(out, prose.Sprintf("channel %d loads the amplifier with %.3g ohm at least, below its minimum of %.3g ohm.", p.Channels[h.LeastChannel].ID, h.LeastOhm, p.Array.Wiring.MinimumLoad))
	}
	if b.Hot {
		out = append(out, prose.Sprintf("the driver on mount %d gets up to %.2g W, and stands %.2g W long: turn down by %.1f dB.", p.Array.Mounts[h.WattMount].ID, h.Watt, p.Array.Driver.PowerHandling,
			up(10*math.Log10(h.Watt/p.Array.Driver.PowerHandling))))
	}
	if reach := p.Array.Driver.Small.Reach; b.Far {
		out = append(out, prose.Sprintf("the cone on mount %d moves up to %.2g mm, beyond its %.2g mm: turn down by %.1f dB, or set the high-pass higher.", p.Array.Mounts[h.TravelMount].ID, 1000*h.Travel, 1000*reach,
			up(20*math.Log10(h.Travel/reach))))
	}
	return out
}

// up rounds dB up to a tenth.
func up(db float64) float64 { return math.Ceil(10*db) / 10 }

// IntakeCautions are what to mind when single drivers are measured.
var IntakeCautions = []string{
	"run drivers in for some hours before, and measure all on one day at one low voltage: suspensions soften, and warm coils have more ohms (common practice).",
	"for recordings leave every gain, the driver's fixture and the microphone where they are from one driver to the next.",
}

// OfLot heads the picture of a lot.
func OfLot(folder string, l *intake.Lot) Picture {
	return Picture{"Drivers in " + folder, Lot(l)}
}

// OfDeal heads the picture of what sorting brings.
func OfDeal(d *intake.Deal) Picture {
	return Picture{Name(d.Plan) + ": level at the listening spot with these drivers, over that of twins", "third-octave smoothed; twins as the design has them"}
}
