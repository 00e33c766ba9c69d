package table

import (
	"fmt"
	"io"

	"pappus/render/words"
	"pappus/timing/tolerance"
)

// Tolerance writes a row for each cause and figure: percentiles of all lots, each with the
// bounds that hold it with 90 percent certainty.
func Tolerance(w io.Writer, s *tolerance.Study) error {
	t := newSheet("cause", "figure", "unit", "percentile_5:4", "from:4", "to:4", "percentile_50:4", "from:4", "to:4", "percentile_95:4", "from:4", "to:4", "twins:4")
	for _, c := range s.Causes {
		for _, f := range []struct {
			name, unit string
			of         tolerance.Range
			per, twins float64
		}{
			{"level over twins", "dB", c.Level, 1, 0}, {"loss", "dB", c.Loss, 1, s.Twins.Loss}, {"smear", "us", c.Smear, 1e6, s.Twins.Smear},
			{"least load", "ohm", c.LeastOhm, 1, s.Twins.LeastOhm}, {"most power", "W", c.Watt, 1, s.Twins.Watt}, {"most travel", "mm", c.Travel, 1000, s.Twins.Travel},
		} {
			row := []any{words.CauseOf(c.Cause), f.name, f.unit}
			for _, q := range []tolerance.Quantile{f.of.Low, f.of.Middle, f.of.High} {
				row = append(row, f.per*q.Value, f.per*q.From, f.per*q.To)
			}
			t.add(append(row, f.per*f.twins)...)
		}
	}
	return t.write(w)
}

// ToleranceResponse writes the percentiles of the level at each frequency.
func ToleranceResponse(w io.Writer, s *tolerance.Study) error {
	t := newSheet("frequency_hz:2", "twins_db:3", "percentile_5_db:3", "percentile_50_db:3", "percentile_95_db:3")
	for f, hz := range s.Frequency {
		t.add(hz, s.Alike[f], s.Low[f], s.Middle[f], s.High[f])
	}
	return t.write(w)
}

// ToleranceScreen writes for people what lots of drivers come to.
func ToleranceScreen(w io.Writer, s *tolerance.Study, colour bool) error {
	o := &screen{style: style(colour)}
	fmt.Fprintln(o, o.strong(words.Name(s.Plan)))
	o.say(words.Tolerance(s))
	fmt.Fprintln(o)
	row := o.list("what is off        level dB        loss dB       smear  least  driver   cone\n"+
		"                   5 %   95 %    50 %   95 %     us    ohm     W       mm", "%-14s %7.2f %6.2f %7.2f %6.2f %6.0f %6.2f %7.3f %6.2f")
	row("twins", 0.0, 0.0, s.Twins.Loss, s.Twins.Loss, 1e6*s.Twins.Smear, s.Twins.LeastOhm, s.Twins.Watt, 1000*s.Twins.Travel)
	for _, c := range s.Causes {
		row(words.CauseOf(c.Cause), c.Level.Low.Value, c.Level.High.Value, c.Loss.Middle.Value, c.Loss.High.Value, 1e6*c.Smear.High.Value,
			c.LeastOhm.Low.Value, c.Watt.High.Value, 1000*c.Travel.High.Value)
	}
	o.note("smear, watts and travel at the 95th percentile, the load at the 5th")
	fmt.Fprintln(o)
	o.sayAll(words.ToleranceFound(s))
	if s.Plan.Array.Driver.Small.Fs == 0 {
		o.say(words.StillUnknown)
	}
	o.note(Wrap(words.ToleranceBounds(s)))
	for i, text := range words.ToleranceCautions(s) {
		if i == 0 {
			fmt.Fprintln(o)
		}
		o.lookOut(text)
	}
	return o.to(w)
}
