package words

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"pappus/layout/box"
	"pappus/layout/prose"
	"pappus/timing/damping"
	"pappus/timing/impedancefit"
)

// Vents names a trial's openings.
func Vents(t damping.Trial) string {
	if t.Vents == 0 {
		return "closed"
	}
	return prose.Sprintf("%d x %.3g", t.Vents, t.VentMM)
}

// Change says what a change did.
func Change(trials []damping.Trial, c damping.Change) string {
	a, b := trials[c.From], trials[c.To]
	text := fmt.Sprintf("Trial %d against %d: ", c.To+1, c.From+1)
	switch c.Thing {
	case damping.Nothing:
		text += "the same again; "
	case damping.Openings:
		text += fmt.Sprintf("openings %s, were %s; ", Vents(b), Vents(a))
	case damping.Stuffing:
		text += prose.Sprintf("stuffing %.4g g, was %.4g g; ", b.StuffingG, a.StuffingG)
	case damping.Depth:
		text += prose.Sprintf("packed %.4g mm deep, was %.4g mm; ", b.DepthMM, a.DepthMM)
	case damping.Filling:
		text += prose.Sprintf("%.4g g in each vent, was %.4g g; ", b.FillG, a.FillG)
	case damping.Several:
		text += "several things changed at once; "
	}
	switch {
	case b.Flat:
		return text + "no resonance is to be seen any more."
	case a.Flat:
		return text + "the resonance is back."
	}
	text += fmt.Sprintf("Q %s, peak %s, resonance %s Hz", signed(c.Q, 3), signed(c.PeakOver, 2), signed(c.Resonance, 1))
	switch {
	case c.Thing == damping.Several:
		return text + ". Which of them did it cannot be told: change one at a time."
	case !c.Clear:
		return text + ": no more than trials scatter."
	}
	return text + "."
}

// signed writes a difference with its sign and its error.
func signed(e impedancefit.Estimate, places int) string {
	sign := "+"
	if e.Value < 0 {
		sign = ""
	}
	return sign + fmt.Sprintf("%.*f +- %.*f", places, e.Value, places, e.Error)
}

// Next says what to try next.
func Next(t damping.Study) string {
	n := t.Next
	switch {
	case errors.Is(t.Why, damping.ErrNoTrials):
		return "Measure the impedance of a channel with the box bare and closed, and add that: " +
			prose.Command("pappus tune add", t.Design) + " --impedance FILE."
	case t.Why != nil:
		return strings.TrimSpace(spent(t) + Capital(t.Why.Error()) + ". " + fillingAtLast(t))
	case n.Reached:
		return fmt.Sprintf("Trial %d is there: its Q is %.3f, within %.0f percent of the target. Leave it so, and listen.", n.Base+1, n.Q.Value, 100*damping.Within) + sounding(t)
	}
	text := spent(t) + fmt.Sprintf("Begin from trial %d and change the %v alone: ", n.Base+1, n.Thing)
	if n.Thing == damping.Openings {
		text += prose.Sprintf("%d of %.3g mm", n.Trial.Vents, n.Trial.VentMM)
		if n.Trial.FillG > 0 {
			text += prose.Sprintf(", each with %.3g g as before", n.Trial.FillG)
		}
	} else {
		text += prose.Sprintf("%.4g g", n.Trial.StuffingG)
		switch {
		case n.Trial.StuffingG == 0:
		case n.Trial.DepthMM > 0:
			text += prose.Sprintf(", packed %.4g mm deep as before", n.Trial.DepthMM)
		case !math.IsNaN(t.Goal.MostDepthMM):
			text += prose.Sprintf(", packed no deeper than %.4g mm", t.Goal.MostDepthMM)
		}
	}
	if math.IsNaN(n.Q.Value) {
		text += ". How much that does cannot be told yet"
	} else {
		text += fmt.Sprintf(". Expect a Q of %.2f, give or take %.2f", n.Q.Value, n.Q.Error)
	}
	if n.Bracketed {
		text += "; the target lies between two trials"
	}
	return text + ". " + filling(t) + room(t.Goal)
}

// sounding says what is heard of a trial with open vents that read as if they did all they can; nothing where
// they do.
func sounding(t damping.Study) string {
	s := t.Sounds
	if s == nil || s.Q < (1+damping.Within)*s.Best {
		return ""
	}
	return prose.Sprintf(" With open vents that is a mean of two resonances: what sounds has a Q of about %.2f, a hump of up to %.1f dB. Where that is too much, open more, one by one: these come to %.2f, where about %.2f is read, and beyond that Q rises again.",
		s.Q, box.Hump(s.Q), s.Best, s.Read)
}

// filling says how much fibre to put into each vent, by what trials tell of it; where they tell
// nothing, which way it goes, since its resistance is to be as low as the air in the vent lets it.
func filling(t damping.Study) string {
	base, f := t.Trials[t.Next.Base], t.Fibre
	switch {
	case base.FillG == 0:
		return ""
	case f != nil && f.Grams.Likely > 0:
		return prose.Sprintf("Or change the vents' filling alone, to %.3g g each, %.3g to %.3g g in 95 of 100 cases: ", f.Grams.Likely, f.Grams.Least, f.Grams.Most) + fibreTold(*f) +
			fmt.Sprintf(" Expect a Q of %.2f, give or take %.2f. ", f.Q.Value, f.Q.Error)
	case f != nil:
		return "No other filling of these vents brings Q clearly nearer: " + fibreTold(*f) + " "
	case base.Q.Value > t.Goal.Q:
		return prose.Sprintf("Or change the vents' filling alone, to %.2g g each: less of it lowers Q, until they are too open, and Q rises again. ", 0.75*base.FillG) + fibreUntold
	}
	return prose.Sprintf("Or change the vents' filling alone, to %.2g g each: more of it raises Q. ", 1.25*base.FillG) + fibreUntold
}

// fillingAtLast is filling where nothing else is left to try, and trials tell of it.
func fillingAtLast(t damping.Study) string {
	if t.Fibre == nil || t.Fibre.Grams.Likely == 0 {
		return ""
	}
	return filling(t)
}

// fibreUntold says what a log lacks to tell grams.
const fibreUntold = "A trial with the vents closed off and the same stuffing would tell what a gram of it does. "

// fibreTold says what trials tell of fibre, and whose.
func fibreTold(f damping.Fibre) string {
	var numbers []string
	for _, i := range f.Trials {
		numbers = append(numbers, strconv.Itoa(i+1))
	}
	trials := "trial "
	if len(numbers) > 1 {
		trials = "trials "
	}
	return prose.Sprintf("by the impedance of %s it resists %.2g times what is published for such fibre, %.2g to %.2g (after Garai and Pompoli 2005).", trials+prose.Each(numbers), f.Resists.Likely, f.Resists.Least, f.Resists.Most)
}

// spent says what does harm, and by which trials.
func spent(t damping.Study) string {
	var text strings.Builder
	for _, one := range t.Next.Spent {
		better, worse := t.Trials[one.Better], t.Trials[one.Worse]
		dose := func(r damping.Trial) string {
			if one.Thing == damping.Openings {
				return Vents(r)
			}
			return prose.Sprintf("%.4g g", r.StuffingG)
		}
		change, does := "More", "lowers"
		if better.Q.Value < t.Goal.Q {
			change, does = "Less", "raises"
		}
		if one.Thing == damping.Openings {
			change, does = strings.ReplaceAll(change, "Less", "Fewer"), strings.TrimSuffix(does, "s")
		}
		fmt.Fprintf(&text, "%s %v no longer %s Q: it is %.3f in trial %d (%s) and %.3f in trial %d (%s). If that surprises you, see whether each file belongs to its trial. ",
			change, one.Thing, does, better.Q.Value, one.Better+1, dose(better), worse.Q.Value, one.Worse+1, dose(worse))
	}
	return text.String()
}

// room says what there is room for, and who says so.
func room(g damping.Goal) string {
	text := prose.Sprintf("There is room for %.4g g and %s", g.MostG, prose.Count(g.MostVents, "opening", "openings"))
	var unsaid []string
	if !g.Said {
		unsaid = append(unsaid, "--most-stuffing-g")
	}
	if !g.SaidVents {
		unsaid = append(unsaid, "--most-vents")
	}
	if len(unsaid) == 0 {
		return text + "."
	}
	return text + ", going by the design and the trials. If more fits, say so with the next trial: " + strings.Join(unsaid, " and ") + "."
}

// TuningCautions are what to mind when a box is stuffed and measured.
var TuningCautions = []string{
	lower(Stuffing) + " Keep it off the resistors of crossovers too.",
	"switch off before you open the body. Measure with a low voltage, and on one channel at a time.",
}

// lower writes the first letter small.
func lower(text string) string { return strings.ToLower(text[:1]) + text[1:] }
