package table

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"pappus/layout/impedance"
	"pappus/timing"
)

// Deaths writes one row for each driver or string that may fail: what is left of
// the load, who goes quiet, who gets more, and what is lost round the loudspeaker.
// The last two are of the channel's worst open string, spread and of neighbours.
func Deaths(w io.Writer, p *timing.Plan, deaths []timing.Death) error {
	rows := [][]string{{"channel", "string", "driver", "fault", "dc_ohm", "lowest_ohm", "under_minimum", "quiet", "power_times", "louder",
		"loss_at_worst_angle_db", "worst_angle_deg", "strung", "worst_if_spread_db", "worst_if_neighbours_db"}}
	for _, d := range deaths {
		driver := ""
		if !d.Whole {
			driver = strconv.Itoa(p.Array.Mounts[d.Mount].ID)
		}
		rows = append(rows, []string{strconv.Itoa(p.Channels[d.Channel].ID), strconv.Itoa(d.String + 1), driver, d.Fault(),
			finite(d.DCOhm, 2), finite(d.LowestOhm, 2), strconv.FormatBool(d.Under(p.Array.Wiring.MinimumLoad)),
			numbers(p.Array, d.Quiet), fixed(d.Power, 2), numbers(p.Array, d.Hotter),
			finite(d.Loss, 2), fixed(d.Angle*180/math.Pi, 0), strung(p.Banks[d.Channel]), finite(d.LossSpread, 2), finite(d.LossNeighbours, 2)})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// strung says how a channel's drivers are dealt out to its strings; nothing where
// there is one string only.
func strung(b timing.Bank) string {
	switch {
	case len(b.Strings) < 2:
		return ""
	case b.Near:
		return "neighbours"
	}
	return "spread"
}

// others writes how many times its power the driver of a channel that then gets most has
// after a fault; a dash where all of the channel are quiet.
func others(c timing.Channel, d timing.Death) string {
	if len(d.Quiet) >= len(c.Mounts) {
		return "-"
	}
	return fmt.Sprintf("%.2f x", d.Power)
}

// deathScreen writes the worst that each fault does to each channel.
func deathScreen(b *strings.Builder, p *timing.Plan, deaths []timing.Death, s style) {
	fmt.Fprintln(b, s.faint("if a driver dies          load ohm quiet  others' power  loss dB  at deg strings"))
	for _, d := range deaths {
		c := p.Channels[d.Channel]
		at := fixed(d.Angle*180/math.Pi, 0)
		if d.Loss >= timing.SilenceLoss || d.Loss < 0.05 {
			at = "-" // the same all round
		}
		end := ""
		if how := strung(p.Banks[d.Channel]); how != "" && d.State == impedance.Open {
			end = "  " + how
			if gain := d.Gain(); gain >= 0.05 {
				end += fmt.Sprintf(", %.1f dB better", gain)
			}
		}
		if d.Under(p.Array.Wiring.MinimumLoad) {
			end += "  " + s.alert("under the minimum")
		}
		fmt.Fprintf(b, "channel %2d %-14s %8s %5d %14s %8s %7s%s\n", c.ID, d.Fault(), dash(d.DCOhm, 2), len(d.Quiet), others(c, d), lost(d.Loss), at, end)
	}
	fmt.Fprintln(b, s.faint("  the worst of each kind, an open driver silencing its string; all: deaths.csv"))
	fmt.Fprintln(b, s.faint("  loss: at the worst place round the spot, 1 to 4 kHz, 90 degrees is its left"))
	fmt.Fprintln(b, s.faint("  strings: spread over the body or of neighbours, whichever loses less"))
}
