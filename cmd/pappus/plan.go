package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"pappus/preview"
	"pappus/render/document"
	"pappus/render/folder"
	"pappus/render/outdir"
	"pappus/render/table"
	"pappus/timing"

	"github.com/spf13/cobra"
)

func newPlan(f *flags) *cobra.Command {
	return f.command(&cobra.Command{
		Use:   "plan [DESIGN.toml]",
		Short: "Plan a design (the built-in demo if none is named) into a folder",
	}, "plan", "folder for tables, pictures and sounds", func(j *job) (outcome, error) {
		p, err := j.plan()
		if err != nil {
			return outcome{}, err
		}
		j.say("surveying the room")
		survey, err := timing.Look(p)
		if err != nil {
			return outcome{}, err
		}
		files, err := planFiles(p, survey)
		return outcome{
			plan: p, files: files,
			json:   func() any { return document.OfPlan(p, survey) },
			screen: func(w io.Writer, colour bool) error { return table.Screen(w, p, survey, colour) },
			last:   fmt.Sprintf("\nTables, pictures and sounds are in %s; begin with coverage_above_1k.png.\n", j.folder),
		}, err
	})
}

// planFiles lists every file of a plan. The sounds are made with the first of them, which
// takes longest: it comes first, and the others when they are made.
func planFiles(p *timing.Plan, survey *timing.Survey) ([]outdir.File, error) {
	files, err := folder.Plan(p, survey)
	heard := sounds(p)
	return append(append(heard[:1:1], files...), heard[1:]...), err
}

func newChannels(f *flags) *cobra.Command {
	return f.command(&cobra.Command{
		Use:   "channels [DESIGN.toml]",
		Short: "Show what each channel is to be set to, and what more channels would bring",
	}, "", "folder to write it into, too", func(j *job) (outcome, error) {
		p, err := j.plan()
		if err != nil {
			return outcome{}, err
		}
		rows, err := timing.Processor(p, nil)
		if err != nil {
			return outcome{}, err
		}
		channels, err := document.OfChannels(p, rows)
		return outcome{
			plan: p, files: folder.Channels(p, rows),
			json:   func() any { return channels },
			screen: func(w io.Writer, colour bool) error { return table.ChannelScreen(w, p, rows, colour) },
			last:   fmt.Sprintf("\nIt is in %s, too; begin with processor.csv.\n", j.folder),
		}, err
	})
}

func newWiring(f *flags) *cobra.Command {
	return f.command(&cobra.Command{
		Use:   "wiring [DESIGN.toml]",
		Short: "Show how drivers are strung, the load on the amplifier, and what a dead driver does",
	}, "", "folder to write it into, too", func(j *job) (outcome, error) {
		p, err := j.plan()
		if err != nil {
			return outcome{}, err
		}
		deaths, err := timing.Dead(p)
		return outcome{
			plan: p, files: folder.Wiring(p),
			json: func() any { return document.OfWiring(p, deaths) },
			screen: func(w io.Writer, colour bool) error {
				if err := table.WiringScreen(w, p, deaths, colour); err != nil {
					return err
				}
				fmt.Fprintln(w)
				return table.ArrangementScreen(w, p, timing.Stringings(p), colour)
			},
			last: fmt.Sprintf("\nIt is in %s, too; begin with strings.csv.\n", j.folder),
		}, err
	})
}

func newLevel(f *flags) *cobra.Command {
	return f.command(&cobra.Command{
		Use:   "level [DESIGN.toml]",
		Short: "Make the spot's level even: sections for the processor, or FIR filters",
	}, "level", "folder for the sections, filters and picture", func(j *job) (outcome, error) {
		p, err := j.plan()
		if err != nil {
			return outcome{}, err
		}
		l, c, files, err := levelled(p)
		return outcome{
			plan: p, files: files,
			json:   func() any { return document.OfLevel(p, l, c) },
			screen: func(w io.Writer, colour bool) error { return table.LevelScreen(w, p, l, c, colour) },
			last:   fmt.Sprintf("\nSections, filters and a picture are in %s; begin with level.png.\n", j.folder),
		}, err
	})
}

// levelled makes the spot's level even, and lists the files of that.
func levelled(p *timing.Plan) (timing.Levelling, timing.Correction, []outdir.File, error) {
	l, err := timing.Level(&p.Spot)
	if err != nil {
		return l, timing.Correction{}, nil, err
	}
	c, err := l.Correction(p.Array.Processor.Rate)
	if err != nil {
		return l, c, nil, err
	}
	files, err := folder.Level(p, l, c)
	return l, c, append(files, ofSounds(preview.Filters(c))...), err
}

func newSheets(f *flags) *cobra.Command {
	return f.command(&cobra.Command{
		Use:   "sheets [DESIGN.toml]",
		Short: "Write what the workshop needs: drilling templates, net, map, parts, shell",
	}, "sheets", "folder for the sheets", func(j *job) (outcome, error) {
		p, err := j.plan()
		if err != nil {
			return outcome{}, err
		}
		s, err := folder.NewSheets(p)
		return outcome{
			plan: p, files: s.Files,
			json:   func() any { return s.Document(j.written(s.Files, p)) },
			screen: func(w io.Writer, _ bool) error { return s.Screen(w) },
			last:   fmt.Sprintf("The sheets are in %s; print sheets.pdf at 100 percent and check the bar with a ruler.\n", j.folder),
		}, err
	})
}

func newCompare(f *flags) *cobra.Command {
	return f.command(&cobra.Command{
		Use:   "compare A.toml B.toml ...",
		Short: "Put designs side by side: a table and a picture of their responses",
		Args:  argsOf(1, -1, "the design to compare"),
	}, "comparison", "folder for the picture", func(j *job) (outcome, error) {
		var designs []timing.Candidate
		var plans []*timing.Plan
		for _, path := range j.args {
			j.say("planning " + path)
			p, err := j.planned(j.Context(), path)
			if err != nil {
				return outcome{}, err
			}
			d, err := timing.NewCandidate(p)
			if err != nil {
				return outcome{}, err
			}
			designs, plans = append(designs, d), append(plans, p)
		}
		nameApart(plans, j.args)
		return outcome{
			files: folder.Comparison(plans),
			json:  func() any { return document.OfComparison(designs) },
			screen: func(w io.Writer, colour bool) error {
				if err := table.AdviceOfEach(w, designs, colour); err != nil {
					return err
				}
				return table.Compare(w, designs, colour)
			},
			last: fmt.Sprintf("\nThe picture is %s/comparison.png.\n", j.folder),
		}, nil
	})
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
