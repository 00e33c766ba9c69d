package table

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"

	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/omni"
)

// Delays writes one row for each driver: where it sits, how far and when it is
// heard at the spot by the path, by the straight line, by the field and by the
// peak of the impulse response (empty where not computed), and its delay.
func Delays(w io.Writer, p *timing.Plan) error {
	rows := [][]string{{"driver", "channel", "x_mm", "y_mm", "z_mm", "path_m", "straight_path_m",
		"arrival_us", "straight_arrival_us", "field_arrival_us", "peak_arrival_us", "delay_us", "level_db", "seen"}}
	for i, r := range p.Arrivals {
		m := p.Array.Mounts[i]
		rows = append(rows, []string{
			strconv.Itoa(m.ID), strconv.Itoa(p.Channels[r.Channel].ID),
			fixed(1000*m.Point.X, 2), fixed(1000*m.Point.Y, 2), fixed(1000*m.Point.Z, 2),
			fixed(r.Path, 5), fixed(r.Straight, 5),
			fixed(1e6*r.Time, 2), fixed(1e6*r.Straight/p.SpeedOfSound, 2),
			fixed(1e6*r.Field, 2), fixed(1e6*p.Peaks[i], 2), fixed(1e6*r.Delay, 2),
			fixed(r.Level, 2), strconv.FormatBool(r.Seen),
		})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// Channels writes one row for each channel: its drivers, how they are strung,
// what the amplifier sees, and its delay: what can be set, and exactly.
func Channels(w io.Writer, p *timing.Plan) error {
	rows := [][]string{{"channel", "delay_us", "exact_us", "delay_mm", "gain_db", "inverted", "drivers",
		"in_series", "in_parallel", "nominal_ohm", "dc_ohm", "lowest_ohm", "lowest_hz",
		"amplifier_v", "amplifier_a", "amplifier_w", "driver_v", "driver_w", "damping", "driver_ids"}}
	for i, c := range p.Channels {
		bank := p.Banks[i]
		var ids []string
		for _, m := range c.Mounts {
			ids = append(ids, strconv.Itoa(p.Array.Mounts[m].ID))
		}
		rows = append(rows, []string{
			strconv.Itoa(c.ID), fixed(1e6*c.Delay, 2), fixed(1e6*c.Exact, 2), fixed(1000*c.Delay*p.SpeedOfSound, 2),
			fixed(c.Gain, 2), strconv.FormatBool(c.Invert), strconv.Itoa(len(c.Mounts)),
			strconv.Itoa(c.Series), strconv.Itoa(c.Parallel), fixed(c.NominalOhm, 2), fixed(c.DCOhm, 2),
			finite(bank.LowestOhm, 2), finite(bank.LowestHz, 0), finite(bank.Volt, 3), finite(bank.Ampere, 4), finite(bank.Watt, 3),
			finite(bank.DriverVolt, 3), finite(bank.DriverWatt, 4), finite(bank.Damping, 1),
			strings.Join(ids, " "),
		})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// fixed writes a number with so many places, no zero negative; nothing for NaN.
func fixed(v float64, places int) string {
	if math.IsNaN(v) {
		return ""
	}
	s := strconv.FormatFloat(v, 'f', places, 64)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

// Choices writes one row for each way of taking delays: by how many dB each
// octave at the spot falls short of all drivers in step.
func Choices(w io.Writer, p *timing.Plan) error {
	head := []string{"delays_by"}
	for _, centre := range band.Octaves() {
		head = append(head, "short_"+band.Name(centre)+"_db")
	}
	rows := [][]string{head}
	for _, c := range p.Choices {
		row := []string{c.By}
		for b := range c.Band {
			row = append(row, fixed(c.Short[b], 3))
		}
		rows = append(rows, row)
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// Octaves writes one row for each octave band: what the loudspeaker does beyond
// the spot.
func Octaves(w io.Writer, s *timing.Survey) error {
	rows := [][]string{{"octave_hz", "directivity_db", "power_db", "unevenness_db", "within_3_db_m2",
		"omni_limit_db", "omni_as_built_deviation_db", "omni_as_built_pass", "omni_deviation_db", "omni_pass", "reverb_sabine_s", "reverb_eyring_s"}}
	for b, o := range s.Octaves {
		row := []string{fixed(o.Band, 1), fixed(o.Directivity, 2), fixed(o.Power, 2), fixed(o.Unevenness, 2), fixed(o.Reach, 4), "", "", "", "", "", "", ""}
		for i, results := range [][]omni.Result{s.Omni.AsBuilt, s.Omni.Aligned} {
			for _, r := range results {
				if r.Band == o.Band {
					row[5], row[6+2*i], row[7+2*i] = fixed(r.Limit, 0), fixed(r.Deviation, 2), strconv.FormatBool(r.Pass)
				}
			}
		}
		if len(s.Reverb) > 0 {
			row[10], row[11] = fixed(s.Reverb[b].Sabine, 3), fixed(s.Reverb[b].Eyring, 3)
		}
		rows = append(rows, row)
	}
	return csv.NewWriter(w).WriteAll(rows)
}
