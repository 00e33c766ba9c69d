package table

import (
	"fmt"
	"math"
	"strings"

	"pappus/timing"
)

// woofer says in plain words what the woofer is to be set to, and what to look out
// for; nothing where there is none.
func woofer(b *strings.Builder, p *timing.Plan, s style) error {
	if !p.Array.Woofer.Present {
		return nil
	}
	w, err := timing.WithWoofer(&p.Spot)
	if err != nil {
		return err
	}
	fmt.Fprintln(b, wrap(fmt.Sprintf("Woofer: %v, the like high-pass on every channel of the array; %s; polarity %s.",
		w.LowPass, waits(w), sign(w.Invert))))
	fmt.Fprintln(b, wrap(fmt.Sprintf("Both meet at %.0f Hz; the sum there is %.1f dB short of both in step, with the other polarity %s. %s",
		w.Meets, max(0, w.Loss), decibels(w.OtherLoss), loudness(w, p.Array.Woofer.Gain))))
	fmt.Fprintln(b, s.faint(wrap("The woofer is a point source; the body's shadow on it is left out. It is in the sounds, and in the levels that hearing is warned of. All other figures are those of the array alone, without the crossover.")))
	return nil
}

// waits says what the woofer is delayed by, and whether the array waits for it.
func waits(w timing.Woofer) string {
	text := fmt.Sprintf("delay %.4f ms", 1000*w.Delay)
	if w.ArrayDelay > 0 {
		text += fmt.Sprintf("; every channel of the array waits for it, with %.3f ms that are in its delay already", 1000*w.ArrayDelay)
	}
	return text
}

// sign writes a polarity.
func sign(inverted bool) string {
	if inverted {
		return "-"
	}
	return "+"
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
