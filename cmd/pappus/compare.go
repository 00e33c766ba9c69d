package main

import (
	"fmt"
	"io"
	"math"
	"path/filepath"
	"strings"

	"pappus/render/document"
	"pappus/render/figure"
	"pappus/render/outdir"
	"pappus/render/table"
	"pappus/timing"

	"github.com/spf13/cobra"
)

func newCompare(f *flags) *cobra.Command {
	var folder string
	c := &cobra.Command{
		Use:   "compare A.toml B.toml ...",
		Short: "Put designs side by side: a table and a picture of their responses",
		Args:  argsOf(1, -1, "the design to compare"),
		RunE: func(c *cobra.Command, args []string) error {
			return compare(c, f, args, folder)
		},
	}
	c.Flags().StringVarP(&folder, "output", "o", "comparison", "folder for the picture")
	return c
}

func compare(c *cobra.Command, f *flags, paths []string, folder string) error {
	said := startProgress(c.ErrOrStderr(), f.quiet)
	defer said.stop()
	var designs []table.Candidate
	var plans []*timing.Plan
	for _, path := range paths {
		said.say("planning " + path)
		d, err := candidate(f, path)
		if err != nil {
			return err
		}
		designs, plans = append(designs, d), append(plans, d.Plan)
	}
	nameApart(plans, paths)
	dir, err := outdir.Open(folder)
	if err != nil {
		return err
	}
	defer dir.Abort()
	for _, format := range []figure.Format{figure.PNG, figure.SVG} {
		err := dir.Add("comparison."+string(format), func(w io.Writer) error { return figure.Compare(w, format, plans) })
		if err != nil {
			return err
		}
	}
	if err := dir.Commit(); err != nil {
		return err
	}
	said.stop()
	switch {
	case f.json:
		return compareJSON(c.OutOrStdout(), designs)
	case f.quiet:
		return nil
	}
	if err := table.AdviceOfEach(c.OutOrStdout(), designs, colour(c.OutOrStdout())); err != nil {
		return err
	}
	if err := table.Compare(c.OutOrStdout(), designs, colour(c.OutOrStdout())); err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.OutOrStdout(), "\nThe picture is %s/comparison.png.\n", folder)
	return err
}

// nameApart names designs of the same name after their files.
func nameApart(plans []*timing.Plan, paths []string) {
	count := map[string]int{}
	for _, p := range plans {
		count[p.Array.Name]++
	}
	for i, p := range plans {
		if count[p.Array.Name] > 1 {
			p.Array.Name = strings.TrimSuffix(filepath.Base(paths[i]), filepath.Ext(paths[i]))
		}
	}
}

// candidate plans one design and measures its coverage.
func candidate(f *flags, path string) (table.Candidate, error) {
	p, err := f.planned(path)
	if err != nil {
		return table.Candidate{}, err
	}
	c, err := timing.Cover(p, timing.HorizontalSlice(p))
	if err != nil {
		return table.Candidate{}, err
	}
	even, err := p.Omni()
	if err != nil {
		return table.Candidate{}, err
	}
	return table.Candidate{
		Omni:       even,
		Plan:       p,
		Unevenness: p.Unevenness(),
		Within3DB:  timing.MeanFrom500To4k(c.Band, c.AreaWithin(p.Array.Spot, 3)),
	}, nil
}

// compareJSON prints what the table shows, null for no comb onset.
func compareJSON(w io.Writer, designs []table.Candidate) error {
	type row struct {
		Name      string   `json:"name"`
		Drivers   int      `json:"drivers"`
		Before    float64  `json:"unaligned_smear_us"`
		After     float64  `json:"aligned_smear_us"`
		OnsetThen *float64 `json:"unaligned_comb_onset_hz"`
		OnsetNow  *float64 `json:"aligned_comb_onset_hz"`
		OmniBuilt *float64 `json:"omni_as_built_up_to_hz"` // null: not even the lowest octave
		OmniNow   *float64 `json:"omni_aligned_up_to_hz"`
		Uneven    float64  `json:"unevenness_db"`
		Area      float64  `json:"area_within_3_db_m2"`

		Findings []document.Finding `json:"findings"`
	}
	finite := func(v float64) *float64 {
		if math.IsInf(v, 0) {
			return nil
		}
		return &v
	}
	above := func(v float64) *float64 {
		if v == 0 {
			return nil
		}
		return &v
	}
	rows := make([]row, len(designs))
	for i, d := range designs {
		p := d.Plan
		rows[i] = row{p.Array.Name, len(p.Array.Mounts), 1e6 * p.Unaligned.Smear, 1e6 * p.Aligned.Smear,
			finite(p.Unaligned.CombOnset), finite(p.Aligned.CombOnset),
			above(timing.UpTo(d.Omni.AsBuilt)), above(timing.UpTo(d.Omni.Aligned)), d.Unevenness, d.Within3DB, document.Findings(p.Warnings)}
	}
	return printJSON(w, rows)
}
