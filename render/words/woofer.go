package words

import (
	"fmt"
	"math"

	"pappus/timing"
)

// WooferSet says what a woofer is to be set to, and whether the array waits for it.
func WooferSet(w timing.Woofer) string {
	waits := ""
	if w.ArrayDelay > 0 {
		waits = fmt.Sprintf("; every channel of the array waits for it, with %.3f ms that are in its delay already", 1000*w.ArrayDelay)
	}
	return fmt.Sprintf("Woofer: %v, the like high-pass on every channel of the array; delay %.4f ms%s; polarity %s.",
		w.LowPass, 1000*w.Delay, waits, Polarity(w.Invert))
}

// Polarity writes one.
func Polarity(inverted bool) string {
	if inverted {
		return "-"
	}
	return "+"
}

// WooferMeets says where array and woofer are as loud, what is lost there, and how their
// levels stand, with the woofer's gain in dB as it is; or that the array is not heard.
func WooferMeets(w timing.Woofer, gain float64) string {
	if math.IsNaN(w.Loss) {
		return "The array is not heard at the spot: there the woofer plays alone, and there is nothing that it could be in step with."
	}
	if !w.Matched && (math.IsInf(w.Louder, 0) || math.IsNaN(w.Louder)) {
		return "Nothing of the array is heard at the spot, so there is nothing for the woofer to meet."
	}
	lost := Lost(w.OtherLoss)
	if lost == "all" {
		lost = "all of it"
	} else {
		lost += " dB"
	}
	return fmt.Sprintf("Both meet at %.0f Hz; the sum there is %.1f dB short of both in step, with the other polarity %s. %s",
		w.Meets, max(0, w.Loss), lost, loudness(w, gain))
}

// loudness says how the woofer's level stands to the array's.
func loudness(w timing.Woofer, gain float64) string {
	switch {
	case w.Matched:
		return "For want of a sensitivity the woofer is taken for as loud as the array at the crossover, gain_db on top: set its level by a measurement."
	case math.Abs(w.Louder) < 0.05:
		return "Both are as loud at the crossover."
	case w.Louder < 0:
		return fmt.Sprintf("The woofer is %.1f dB weaker than the array at the crossover; gain_db = %.1f makes both alike, if its maker allows that.", -w.Louder, gain-w.Louder)
	}
	return fmt.Sprintf("The woofer is %.1f dB louder than the array at the crossover; gain_db = %.1f makes both alike.", w.Louder, gain-w.Louder)
}

// WooferNote says what the figures of a woofer are of.
const WooferNote = "The woofer is a point source; the body's shadow on it is left out. It is in the sounds, and in the levels that hearing is warned of. All other figures are those of the array alone, without the crossover."

// Lost writes a loss in dB; all, where nothing is left.
func Lost(db float64) string {
	switch {
	case db >= timing.SilenceLoss:
		return "all"
	case math.IsNaN(db):
		return "-"
	}
	return fmt.Sprintf("%.1f", db)
}
